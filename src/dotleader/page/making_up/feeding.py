"""How sheets are printed, fed again and piled: sentences, for the terminal and for the bench alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.page.making_up.names import BACKS, FRONTS
from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.page.sheet.sheets import Sheet


def setting(turning: Turning, one_sided: bool) -> str:
    sides = "on one side" if one_sided else f"on both sides, turned on the {edge_said(turning)}"
    return f"Print at actual size (100 %), {sides}."


def measured(ruler: int) -> str:
    """How it is seen that the size is right; `ruler` is how long each of the two on a sheet is, in micrometres."""
    return f"Print one sheet first and measure its rulers: each is {ruler // 1000} mm long."


def fed_again(turning: Turning) -> Iterator[str]:
    """For a printer of one side, how the paper goes back in.

    Told by heads, not by the edge that goes in first: that edge changes where paper goes in lengthwise or across.
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


def piled(papers: Sequence[Sheet], together: int = 1) -> Iterator[str]:
    """How the pile of one copy in stack order is cut and becomes the book; `together` leaves are cut out in one."""
    leaves = [len(sheet.front.leaves) // together for sheet in papers if sheet.front.leaves]
    most = max(leaves)
    if most == 1:
        what = "leaf" if together == 1 else "card"
        yield f"There is one {what} to a sheet: the cut pile is the book in order."
        return
    yield "Pile the sheets of one copy, fronts up, sheet 1 on the top, without the setting-up sheet if there is one."
    yield (
        f"Cut the pile into {most} stacks and put them on each other as one reads, from the upper left: each below the "
        "one before, all heads the same way. The book is in order."
    )
    if sum(leaves) < most * len(leaves):
        yield "Pieces with nothing printed on them come last; take them away."
