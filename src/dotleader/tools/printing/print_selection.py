"""What of a book is printed, how often and in which inks: the options, and what is wrong with them."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from dotleader.handbook.model import Handbook
from dotleader.handbook.names import offered
from dotleader.page.face.selection import Wanted, read_span
from dotleader.page.sheet.cut_files import and_last
from dotleader.syntax.heads import CARD_KINDS
from dotleader.syntax.plain import folded
from dotleader.tools.cannot_run import CannotRun

if TYPE_CHECKING:
    from dotleader.page.face.book import Book
    from dotleader.page.labels import Label
    from dotleader.tools.command_line import Options, Parser

MOST_COPIES = 100
OPTIONS = ("book", "only", "cards", "faces", "copies", "black")
_FEW = 5
"""Of so many cards the titles are named."""


def arguments(parser: Parser) -> None:
    parser.add_argument("--book", metavar="NAME")
    parser.add_argument("--only", action="append", default=[], metavar="KIND")
    parser.add_argument("--cards", action="append", default=[], metavar="TITLE")
    parser.add_argument("--faces", action="append", default=[], metavar="LABELS")
    parser.add_argument("--copies", metavar="N")
    parser.add_argument("--black", action="store_true")


def wanted(options: Options, handbook: Handbook) -> Wanted | None:
    """What is asked for; None for the whole book. Raises CannotRun for what is not in it."""
    kinds = [word.strip() for text in options.only for word in text.split(",")]
    for kind in kinds:
        if kind not in CARD_KINDS:
            advice = offered(kind, CARD_KINDS, f"Take one of {', '.join(CARD_KINDS)}.")
            raise CannotRun(f"`--only {kind}`: there is no such kind of card.", advice)
        there = [one for one in CARD_KINDS if any(card.kind.value == one for card in handbook.cards)]
        if kind not in there:
            has = f"It has {and_last(there)} ones." if there else "It has no cards at all."
            raise CannotRun(f"`--only {kind}`: there is no {kind} card in the book.", has)
    titles = {folded(card.title): card.key for card in handbook.cards}
    for title in options.cards:
        if folded(title) not in titles:
            advice = offered(title, [card.title for card in handbook.cards], _cards_there(handbook))
            raise CannotRun(f"`--cards {title}`: there is no such card in the book.", advice)
    spans = []
    for text in (word for words in options.faces for word in words.split(",")):
        spans.append(_span(text))
    if not (kinds or options.cards or spans):
        return None
    keys = frozenset(titles[folded(title)] for title in options.cards)
    return Wanted(frozenset(kinds), keys, tuple(spans))


def refuse_missing(book: Book, asked: Wanted) -> None:
    """Raises CannotRun where faces are asked for, and the book has none of them."""
    labels = [face.label for face in book.faces]
    for first, last in asked.spans:
        if not any(first.order <= label.order <= last.order for label in labels):
            some = _joined(first, last)
            has = [_joined(run[0], run[-1]) for run in (list(of) for _, of in groupby(labels, lambda one: one.section))]
            raise CannotRun(
                f"`--faces {some}`: the book has no {'such face' if first == last else 'face between these'}.",
                f"It has {and_last(has)}." if has else "It has no faces.",
            )


def _joined(first: Label, last: Label) -> str:
    return str(first) if first == last else f"{first}..{last}"


def _span(text: str) -> tuple[Label, Label]:
    """The faces that a text names, first and last. Raises CannotRun where it names none, or the last one first."""
    span = read_span(text)
    if span is not None:
        return span
    first, _, last = (part.strip() for part in text.partition(".."))
    if read_span(f"{last}..{first}") is not None:
        raise CannotRun(
            f"`--faces {text}` begins with the face that comes last.", f"Write it as `--faces {last}..{first}`."
        )
    raise CannotRun(f"`--faces {text}` names no faces.", "Write labels: `--faces 3-5..3-9`, or `--faces 3-1,4-2`.")


def _cards_there(handbook: Handbook) -> str:
    titles = [f"`{card.title}`" for card in handbook.cards]
    if not titles:
        return "It has no cards."
    more = len(titles) - _FEW
    return f"Its cards are {', '.join(titles[:_FEW])} and {more} more." if more > 0 else f"It has {and_last(titles)}."


def copies(options: Options) -> int:
    """How many copies of each sheet. Raises CannotRun where that is no number, none, or too many."""
    text: str = "1" if options.copies is None else options.copies
    if not (text.isascii() and text.isdigit() and 1 <= int(text[:9]) <= MOST_COPIES):
        raise CannotRun(f"`--copies {text}` cannot be printed.", f"Take a whole number from 1 to {MOST_COPIES}.")
    return int(text)
