"""A way out of a book: to a card that the handbook has and the book has not."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.cards import Card, GoTo
from dotleader.handbook.model import Handbook
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity
from dotleader.source.text import Spot

_CARDS = """\
emergency Smoke in the cabin
  when smoke is seen or smelt
  Master switch .... OFF
  go to Landing without flaps

abnormal Landing without flaps
  when the flaps stay up
  Approach .... FLAT AND LONG
  end

book Cockpit set
  section .... Emergency
"""

BAD = Example(_CARDS, (("go-to-outside-book", "Cockpit set"),))

GOOD = Example(f"{_CARDS}  card ....... Landing without flaps\n")


def check(subject: Subject) -> Iterator[Finding]:
    for book in subject.books:
        if not book.whole:
            for target, sent in _outside(book, subject.handbook):
                yield _finding(book, target, sent)


def _outside(book: DeclaredBook, handbook: Handbook) -> Iterator[tuple[Card, list[tuple[Card, Spot]]]]:
    """The cards that are missing, each with the cards that lead to it and where they do."""
    found: dict[str, list[tuple[Card, Spot]]] = {}
    for card in handbook.cards:
        if book.has(card):
            for step in every_step(card.steps):
                if isinstance(step, GoTo) and step.target in handbook.by_key:
                    found.setdefault(step.target, []).append((card, step.spot))
    for key, sent in found.items():
        if not book.has(handbook.by_key[key]):
            yield handbook.by_key[key], sent


def _finding(book: DeclaredBook, target: Card, sent: list[tuple[Card, Spot]]) -> Finding:
    titles = list(dict.fromkeys(f"`{card.title}`" for card, _ in sent))
    *others, last = titles if len(titles) <= _MOST else [*titles[: _MOST - 1], f"{len(titles) - _MOST + 1} more cards"]
    leads = f"{', '.join(others)} and {last} lead" if others else f"{last} leads"
    return Finding(
        RULE.name,
        book.spot,
        f"The book `{book.name}` has no card `{target.title}`, to which {leads}.",
        f"Put it in, too: `card .... {target.title}`.",
        tuple(Related(spot, "It is sent to from here.") for _, spot in sent[:_MOST]),
    )


_MOST = 3
"""Cards and places that a finding names."""

RULE = Rule(
    name="go-to-outside-book",
    severity=Severity.ERROR,
    family="references",
    what=(
        "A `go to` on a card of a `book` that leads to a card which is not in that book. In a draft the face says `not "
        "in this book` where its label would stand."
    ),
    why="Somebody in the middle of an emergency would be sent to a card that is not on board.",
    source=NO_SOURCE,
    mend="Put the card into the book by a row `card .... TITLE`, or the section that it stands in.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
