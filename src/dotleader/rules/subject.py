"""What rules are asked with: the handbook, and for some of them its cards as laid out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cache
from typing import TYPE_CHECKING

from dotleader.cockpit.running import run
from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.model import Handbook
from dotleader.rules.lines import Lines, lines_of
from dotleader.rules.numbers.typed import Again, Otherwise, typed_numbers
from dotleader.rules.thresholds import Limits
from dotleader.source.record import record

if TYPE_CHECKING:  # laying out is paid for only where it is asked for
    from dotleader.cockpit.timeline import Run
    from dotleader.page.lay.laid_books import Continued


@record
class Subject:
    """`books` are those that are looked at: all, or the one that is to be printed.

    `continued` lays out their checklists that do not stay on one face; None where the stock is none to stand on.
    `limits` are the thresholds of the rules, as the handbook sets them. `run` works the cards through, `lines`
    sorts their lines by kind, `typed` holds typed numbers against declared ones, each once for all rules that ask.
    """

    handbook: Handbook
    run: Callable[[], Run]
    lines: Callable[[], Lines]
    typed: Callable[[], tuple[Again | Otherwise, ...]]
    limits: Limits
    continued: Callable[[], Iterable[Continued]] | None = None
    books: tuple[DeclaredBook, ...] = ()


def subject_of(
    handbook: Handbook,
    continued: Callable[[], Iterable[Continued]] | None = None,
    books: tuple[DeclaredBook, ...] = (),
) -> Subject:
    """What rules are asked with; the cards are worked through when the first rule wants it."""
    ran, sorted_lines = cache(lambda: run(handbook)), cache(lambda: lines_of(handbook))
    typed = cache(lambda: typed_numbers(handbook, sorted_lines()))
    return Subject(handbook, ran, sorted_lines, typed, _limits(handbook), continued, books)


def _limits(handbook: Handbook) -> Limits:
    if not handbook.settings:
        return Limits()
    # Only a handbook that sets something pays for this import.
    from dotleader.rules.settings import limits_of  # noqa: PLC0415

    return limits_of(handbook.settings)
