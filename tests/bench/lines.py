"""Lines a second, memory, and what the parts of a lint cost, from one thousand lines to a hundred thousand.

`python -m tests.bench.lines WORK FILE` does one work in a process of its own and prints its processor seconds; the
seconds of `parts` are those of parsing, resolving, the run, laying out and all rules together.
"""

from __future__ import annotations

import gc
import subprocess
import sys
import tempfile
import time
from importlib import import_module
from pathlib import Path
from statistics import median

from dotleader.handbook.contents import books_of
from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.page.lay.laid_books import LaidBooks
from dotleader.rules.checks import check
from dotleader.rules.settling import settle
from dotleader.rules.subject import Subject, subject_of
from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from dotleader.syntax.parse import parse
from tests.bench.growing import TOP, faulty, grown
from tests.bench.timing import exponent, spent

SIZES = (1_000, 5_000, 20_000, 100_000)
ROUNDS = 3
NAME = "grown.cards"


def _parse(text: str) -> None:
    parse(SourceText(NAME, text))


def _lint(text: str) -> None:
    outcome = resolve(SourceText(NAME, text), NAME, lambda path: "not there")
    handbook, files = outcome.value
    settle([*outcome.findings, *check(_asked(handbook))], files)


def _format(text: str) -> None:
    format_text(SourceText(NAME, text))


def _run(text: str) -> None:
    """The run alone, and how many items it came to."""
    subject = _subject(text)
    _start()
    done = subject.run()
    print("", time.process_time() - _since)
    print("items", sum(len(ran.lines) for ran in done.cards))


def _parts(text: str) -> None:
    for module in _LATER:
        import_module(module)
    _start()
    _parse(text)
    _start("parse")
    subject = _subject(text)
    _start("resolve")
    subject.run()
    _start("run")
    if subject.continued is not None:
        list(subject.continued())
    _start("layout")
    check(subject)
    _start("rules")


def _subject(text: str) -> Subject:
    handbook, _ = resolve(SourceText(NAME, text), NAME, lambda path: "not there").value
    return _asked(handbook)


def _asked(handbook: Handbook) -> Subject:
    books = books_of(handbook)
    return subject_of(handbook, LaidBooks(handbook, books).continued, tuple(books))


WORKS = {"parse": _parse, "lint": _lint, "run": _run, "format": _format, "parts": _parts}
_since = 0.0


def _start(ended: str = "") -> None:
    """Begin to count anew; what has been counted belongs to `ended`, if that is named."""
    global _since  # noqa: PLW0603  # the clock of the process
    now = time.process_time()
    if ended:
        print(ended, now - _since)
    _since = time.process_time()


def main() -> None:
    print(f"Processor time, median of {ROUNDS} runs, each in a process of its own, imports not counted. Lint is parse,")
    print("resolve, the run, all rules and laying out what may not stay on one face.\n")
    with tempfile.TemporaryDirectory() as folder:
        _rates(Path(folder))
        _costs(Path(folder))


def _rates(folder: Path) -> None:
    columns = [("parse", ""), ("lint", ""), ("run", ""), ("format", ""), ("lint", "faulty")]
    heads = [f"{work}{', a fault at every tenth line' if kind else ''}, lines/s" for work, kind in columns]
    print("| lines | " + " | ".join(heads) + " | lint, peak MiB | faulty, peak MiB |")
    print("|---" * (len(heads) + 3) + "|")
    points: dict[tuple[str, str], list[tuple[float, float]]] = {column: [] for column in columns}
    for size in SIZES:
        text = grown(size)
        files = {"": folder / NAME, "faulty": folder / "faulty.cards"}
        files[""].write_text(text, encoding="utf-8")
        files["faulty"].write_text(faulty(text), encoding="utf-8")
        cells = []
        for work, kind in columns:
            count = files[kind].read_text(encoding="utf-8").count("\n")
            found = [_seconds(work, files[kind]) for _ in range(ROUNDS)]
            seconds = median(one[""] for one in found)
            points[work, kind].append((found[0].get("items", count), seconds))
            cells.append(f"{count / seconds:,.0f}")
        for file in files.values():
            command = [sys.executable, "-m", "dotleader", "lint", "--as", "brief", str(file)]
            cells.append(f"{spent(command, {'XDG_CACHE_HOME': str(folder)}).peak / 1024:.0f}")
        print(f"| {text.count(chr(10)):,} | " + " | ".join(cells) + " |", flush=True)
    for what, some in (("of all sizes", slice(None)), ("of the last two", slice(-2, None))):
        found = ", ".join(
            f"{work}{' with faults' if kind else ''} {exponent(points[work, kind][some]):.2f}" for work, kind in columns
        )
        print(f"\nExponent of time over size (of the run over items), {what}: {found}.")


def _costs(folder: Path) -> None:
    file = folder / NAME
    print("\nWhat a lint of such a book costs besides parsing; ratio to parsing alone, median of the rounds.\n")
    print("| lines | parse ms | resolve, with its parsing | run | layout | all rules |\n|---|---|---|---|---|---|")
    for size in (1_000, 5_000, 20_000):
        text = grown(size)
        file.write_text(text, encoding="utf-8")
        rounds = [_seconds("parts", file) for _ in range(ROUNDS)]
        over = [f"{median(one[part] / one['parse'] for one in rounds):.2f}" for part in _PARTS]
        parsing = median(one["parse"] for one in rounds)
        print(f"| {text.count(chr(10)):,} | {parsing * 1000:.0f} | {' | '.join(over)} |")


_LATER = ("dotleader.cockpit.circuits", "dotleader.cockpit.electric_words", "dotleader.cockpit.endurance",
          "dotleader.cockpit.peaks", "rapidfuzz.distance", "dotleader.page.lay.lay_card")  # fmt: skip
"""What is imported only where a book needs it."""

_PARTS = ("resolve", "run", "layout", "rules")


def _seconds(work: str, file: Path) -> dict[str, float]:
    """The seconds of a work; those of its parts by their names."""
    command = [sys.executable, "-m", "tests.bench.lines", work, str(file)]
    said = subprocess.run(command, cwd=TOP, check=True, capture_output=True, text=True, timeout=600).stdout
    return {name: float(seconds) for name, _, seconds in (line.rpartition(" ") for line in said.splitlines())}


if __name__ == "__main__":
    gc.disable()  # as the command has it for a lint
    asked_for = WORKS[sys.argv[1]]
    given = Path(sys.argv[2]).read_text(encoding="utf-8")
    _start()
    asked_for(given)
    if asked_for not in (_parts, _run):
        print("", time.process_time() - _since)
