"""Make `docs/rules/evidence.md`, what the rules find in all books: run `python -m tests.tables.make_evidence`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from dotleader.handbook.cards import Item
from dotleader.handbook.walking import every_step
from dotleader.rules.catalogue import RULES
from dotleader.source.record import record
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook
from tests.report.goldens import BAD, GOOD, sources
from tests.rules.planted import plants
from tests.tables.make_rule_pages import EVIDENCE

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"
WITH_MISTAKES = EXAMPLES / "with-mistakes.cards"

_HEAD = """\
# What the rules find

Made by `python -m tests.tables.make_evidence`, and held by a test. Every rule is asked over every book.

- *Books* are the examples and the books in `tests/good`: {books}, {cards} cards with {items} items.
- *Mistakes* are the files in `tests/bad` and `examples/with-mistakes.cards`, which have been written to be wrong.
- *Planted* are faults put into a clean book one at a time, {planted} in all (`tests/planted`).
  `tests/rules/test_planted.py` holds that each is found on its line, by its rule, and that nothing else is said.
- *Own* are the bad and the good examples on the page of the rule, which are tests as well.

## What that means, and what not

The books are by writers of unlike habits. What was found in them was looked at, one finding at a time: where it was
right the book was mended, where it was not the rule was. None in *Books* says that a rule is silent on these cards. It
does not say that it is silent in a book by somebody else: all of these have been written by those who made the rules,
all aircraft in them are invented, and none is a book that has been flown by.

A number in *Planted* says that faults of that kind were found where they had been put. It is no share of all faults
that there are: whoever plants a fault thinks of those that can be found, and a plant that turned out to be no fault of
the kind was taken out or put right. A rule with none there has its own examples only.

The six books that came last ({last})
were written before it was looked up what the rules ask for. They had {first} findings when they were linted for the
first time. {right} were right, and were mended; {wrong} were not: eight go-to chains that led to a landing, two books
whose card for landing out was not taken for a forced landing, and two controls said to be left on by a line that could
not be read. Two further books (microlight, aerobatic) had 8 findings at first, of which 3 were not right: a flat
battery that was not taken for an electrical failure, an order that two cards of different phases need not share, and
`Fields` beside `Field`. Faults planted in the books showed findings that only followed from the fault: up to 41 for
one switch that nobody had put on. The rules were mended, with examples and planted faults to hold them.
"""

_LAST = ("hand-started", "one-page", "touring-glider", "retractable", "amphibian", "airline")
_PIECES = ("tests/good/sample/handbook.cards", "tests/good/pasted.cards", "tests/good/windows.cards")
_FIRST, _WRONG = 49, 12  # counted when they were linted for the first time, before anything was mended


@record
class Book:
    """A book that was linted: where it stands, its size, and how often each rule spoke; what is allowed by itself."""

    name: str
    cards: int
    items: int
    found: Counter[str]
    allowed: Counter[str]


def book(source: Path) -> Book:
    linted = lint_handbook(str(source), Files())
    cards = linted.handbook.cards
    return Book(
        source.relative_to(ROOT).as_posix(),
        len(cards),
        sum(isinstance(step, Item) for card in cards for step in every_step(card.steps)),
        Counter(finding.rule for finding in linted.findings),
        Counter(each.finding.rule for each in linted.suppressed),
    )


def wanted() -> str:
    """The text of the page, as it should stand."""
    books = [book(path) for path in (*sources(EXAMPLES), *sources(GOOD)) if path != WITH_MISTAKES]
    mistakes = [book(path) for path in (*sources(BAD), WITH_MISTAKES)]
    seeded = Counter(plant.rule for plant in plants())
    head = _HEAD.format(
        books=f"{len(books)} books",
        cards=f"{sum(each.cards for each in books):,}",
        items=f"{sum(each.items for each in books):,}",
        planted=seeded.total(),
        last=", ".join(_LAST),
        first=_FIRST,
        right=_FIRST - _WRONG,
        wrong=_WRONG,
    )
    return "\n".join([head, *_books(books), "", *_rules(books, mistakes, seeded)]) + "\n"


def _books(books: list[Book]) -> Iterator[str]:
    yield "## The books\n"
    yield "| book | cards | items | found | allowed, with a reason |"
    yield "|---|---:|---:|---|---|"
    for each in books:
        yield f"| `{each.name}` | {each.cards} | {each.items} | {_counts(each.found)} | {_counts(each.allowed)} |"
    yield ""
    yield "`tests/good/sample` holds one block of each kind and is no whole handbook: what it lacks is said rightly."
    yield "`pasted` and `windows` are a few lines each, for how they are written."


def _counts(found: Counter[str]) -> str:
    return ", ".join(f"{count} {rule}" for rule, count in sorted(found.items())) or "none"


def _rules(books: list[Book], mistakes: list[Book], seeded: Counter[str]) -> Iterator[str]:
    whole = sum((each.found for each in books if each.name not in _PIECES), Counter[str]())
    wrong = sum((each.found for each in mistakes), Counter[str]())
    yield "## The rules\n"
    yield "*Books* is without the sample and the few lines.\n"
    yield "| rule | books | mistakes | planted | own, bad and good |"
    yield "|---|---:|---:|---:|---:|"
    for rule in RULES:
        yield (
            f"| [{rule.name}]({rule.name}.md) | {whole[rule.name]} | {wrong[rule.name]} | {seeded[rule.name]} "
            f"| {len(rule.bad)} and {len(rule.good)} |"
        )


def main() -> None:
    EVIDENCE.write_text(wanted(), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
