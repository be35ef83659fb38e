"""What of a book is printed, how often and in which inks: the options, and what is wrong with them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dotleader.handbook.ledger import offered
from dotleader.handbook.model import Handbook
from dotleader.page.face.selection import Wanted, read_span
from dotleader.syntax.heads import CARD_KINDS
from dotleader.syntax.plain import folded
from dotleader.tools.cannot_run import CannotRun

if TYPE_CHECKING:
    from dotleader.tools.command_line import Options, Parser

MOST_COPIES = 100


def arguments(parser: Parser) -> None:
    parser.add_argument("--book", metavar="NAME")
    parser.add_argument("--only", action="append", default=[], metavar="KIND")
    parser.add_argument("--cards", action="append", default=[], metavar="TITLE")
    parser.add_argument("--faces", action="append", default=[], metavar="LABELS")
    parser.add_argument("--copies", default="1", metavar="N")
    parser.add_argument("--black", action="store_true")


def wanted(options: Options, handbook: Handbook) -> Wanted | None:
    """What is asked for; None for the whole book. Raises CannotRun for what is not in it."""
    kinds = [word.strip() for text in options.only for word in text.split(",")]
    for kind in kinds:
        if kind not in CARD_KINDS:
            advice = offered(kind, CARD_KINDS, f"Take one of {', '.join(CARD_KINDS)}.")
            raise CannotRun(f"`--only {kind}`: there is no such kind of card.", advice)
    titles = {folded(card.title): card.key for card in handbook.cards}
    for title in options.cards:
        if folded(title) not in titles:
            advice = offered(title, [card.title for card in handbook.cards], "Write its title as it is declared.")
            raise CannotRun(f"`--cards {title}`: there is no such card in the book.", advice)
    spans = []
    for text in (word for words in options.faces for word in words.split(",")):
        span = read_span(text)
        if span is None:
            raise CannotRun(f"`--faces {text}` names no faces.", "Write labels: `--faces 3-5..3-9`, or `--faces 4-2`.")
        spans.append(span)
    if not (kinds or options.cards or spans):
        return None
    keys = frozenset(titles[folded(title)] for title in options.cards)
    return Wanted(frozenset(kinds), keys, tuple(spans))


def copies(options: Options) -> int:
    """How many copies of each sheet. Raises CannotRun where that is no number, none, or too many."""
    text: str = options.copies
    if not (text.isascii() and text.isdigit() and 1 <= int(text[:9]) <= MOST_COPIES):
        raise CannotRun(f"`--copies {text}` cannot be printed.", f"Take a whole number from 1 to {MOST_COPIES}.")
    return int(text)
