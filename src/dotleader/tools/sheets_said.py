"""How sheets are printed, fed again and piled, in words."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.report.terminal import terminal_for
from dotleader.report.wrapping import wrapped
from dotleader.tools.printed_names import BACKS, FRONTS

if TYPE_CHECKING:  # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.printed_book import Planned


def how(turning: Turning, one_sided: bool) -> Iterator[str]:
    """What is to be set in the print dialogue, and for a printer of one side how the paper goes back in."""
    yield ""
    yield from _in_lines(_set(turning, one_sided))


def _set(turning: Turning, one_sided: bool) -> Iterator[str]:
    sides = "on one side" if one_sided else f"on both sides, turned on the {edge_said(turning)}"
    yield f"Print at actual size (100 %), {sides}."
    yield "Print one sheet first and measure its rulers: each is 100 mm long."
    if one_sided:
        yield from _fed_again(turning)


def _fed_again(turning: Turning) -> Iterator[str]:
    """Told by heads, not by the edge that goes in first: that edge changes where paper goes in lengthwise or across.

    A page is drawn with its head to the same side of the printer whenever it is fed. The head of a back that is turned
    about the long edge is at the head of its front; about the short edge, at its foot.
    """
    heads = "as the fronts did" if turning == "long-edge" else "the opposite way from the fronts"
    yield f"Print {FRONTS} on one side, then {BACKS} on the backs of these sheets."
    yield (
        "Pencil an arrow, pointing into the printer, on the upper side of a sheet to spare, and print page 1 of "
        f"{FRONTS} on it: it shows which side is printed and which way the head of a sheet points, where page 1 has "
        "its first line."
    )
    yield (
        f"For {BACKS} the paper goes in with the blank side where the printer prints, the heads of the sheets pointing "
        f"{heads}, the sheet that was printed first going in first."
    )
    yield f"If the last sheet goes in first, print {BACKS} in reverse order."
    yield "Try it with two sheets: behind each odd face belongs the even one that follows it."


def stacked(plan: Planned) -> Iterator[str]:
    """How the cut pile becomes the book."""
    yield from _in_lines(_piled(plan))


def _piled(plan: Planned) -> Iterator[str]:
    most = max(len(sheet.front.leaves) for sheet in plan.papers)
    if most == 1:
        yield "There is one leaf to a sheet: the cut pile is the book in order."
        return
    yield "Pile the sheets of one copy, fronts up, sheet 1 on the top, without the setting-up sheet if there is one."
    yield (
        f"Cut the pile into {most} stacks and put them on each other as one reads, from the upper left: each below the "
        "one before, all heads the same way. The book is in order."
    )
    leaves = [len(sheet.front.leaves) for sheet in plan.papers if sheet.front.leaves]
    if sum(leaves) < most * len(leaves):
        yield "Pieces with nothing printed on them come last; take them away."


def _in_lines(sentences: Iterable[str]) -> Iterator[str]:
    terminal = terminal_for(sys.stdout, os.environ)
    for sentence in sentences:
        yield from wrapped(sentence, terminal.width, terminal)
