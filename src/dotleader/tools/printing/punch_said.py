"""How the holes of a book are punched, in the words that `print` ends with."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.model import Handbook
from dotleader.page.bench.nearest import punching
from dotleader.page.bench.plan_words import plan_text, plan_title
from dotleader.page.bench.punching import pattern_of
from dotleader.report.terminal import Terminal
from dotleader.report.wrapping import wrapped

_INDENT = "  "


def said_of_punches(handbook: Handbook, terminal: Terminal) -> Iterator[str]:
    """A plan for each punch that the handbook describes; nothing where it describes none, or the stock has no holes."""
    if not handbook.stock.holes:
        return
    pattern = pattern_of(handbook.stock)
    for punch in handbook.punches:
        plan = punching(pattern, punch)
        yield ""
        yield from wrapped(plan_title(plan), terminal.width, terminal)
        for step in plan_text(plan):
            for number, line in enumerate(wrapped(step, terminal.width - len(_INDENT) - 3, terminal)):
                numbered = step[:1].isdigit()
                yield _INDENT + ("   " if number and numbered else "") + line
