"""Faults to be planted, one at a time, in books in which nothing is wrong: `tests/planted/*.txt`.

A file of them begins with the book (`book hand-started/brindle.cards`); paragraphs follow, one for each fault:

    rule  the rule that finds it
    file  the file of the book that it is planted in; without it, the book itself
    take  a line that goes, as it is written, or as much of it as is unique (several of them stand below one another)
    give  what comes in the place of all of them, to as many lines
    mark  what the marked line begins with, indentation left out; without it, what the first `give` does
    in    the file of the marked line; without it, that which the fault is planted in
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from dotleader.source.finding import Finding
from dotleader.source.record import record
from tests.rules.pipeline import MAIN, findings_of

TESTS = Path(__file__).parents[1]


@record
class Plant:
    """Paths are relative to the book's folder; that of the file with the `handbook` block is `MAIN`."""

    book: str
    rule: str
    file: str
    take: str
    give: str
    mark: str
    marked_in: str
    number: int  # in its file, from 1


def plants() -> Iterator[Plant]:
    """All faults, in the order of the books' names."""
    for path in sorted((TESTS / "planted").glob("*.txt")):
        head, *paragraphs = path.read_text(encoding="utf-8").strip("\n").split("\n\n")
        book = head.removeprefix("book ")
        for number, paragraph in enumerate(paragraphs, 1):
            yield _plant(book, paragraph, number)


def _plant(book: str, paragraph: str, number: int) -> Plant:
    said: dict[str, list[str]] = {}
    for line in paragraph.splitlines():
        key, _, text = line.partition(" ")
        assert key in ("rule", "file", "take", "give", "mark", "in"), line
        said.setdefault(key, []).append(text)
    take, give = "\n".join(said["take"]), "\n".join(said.get("give", ()))
    mark = said.get("mark", [give.partition("\n")[0]])[0].strip()
    file = said.get("file", [MAIN])[0]
    return Plant(book, said["rule"][0], file, take, give, mark, said.get("in", [file])[0], number)


def texts(book: str) -> dict[str, str]:
    """The files of a book by their paths within its folder; the one with the `handbook` block as `MAIN`."""
    main = TESTS / "good" / book
    found = {
        path.relative_to(main.parent).as_posix(): path.read_text(encoding="utf-8")
        for path in main.parent.rglob("*.cards")
    }
    return {MAIN: found.pop(main.name), **found}


def planted(plant: Plant) -> list[Finding]:
    """What is found in the book with this fault in it. Fails where it cannot be planted in one place."""
    files = texts(plant.book)
    before = files[plant.file]
    assert before.count(plant.take) == 1, f"{plant.take!r} stands {before.count(plant.take)} times in {plant.file}"
    files[plant.file] = before.replace(plant.take, plant.give)
    return findings_of(files.pop(MAIN), files)


def where(finding: Finding) -> tuple[str, str, str]:
    """Rule, file and the line that a finding begins in, without its indentation."""
    source = finding.spot.source
    return finding.rule, source.name, source.line(source.line_and_column(finding.spot.start)[0]).strip()


def is_found(plant: Plant, findings: list[Finding]) -> bool:
    """Whether the fault is found on its line, and nothing else is."""
    if len(findings) != 1:
        return False
    rule, file, line = where(findings[0])
    return rule == plant.rule and file == plant.marked_in and line.startswith(plant.mark)
