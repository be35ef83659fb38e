"""Lines a second of a whole lint, in one process, from one thousand lines to twenty thousand."""

from __future__ import annotations

import re
import time
from pathlib import Path
from statistics import median

from dotleader.handbook.resolve import resolve
from dotleader.rules.checks import check
from dotleader.rules.settling import settle
from dotleader.rules.subject import Subject
from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from dotleader.syntax.parse import parse

TOP = Path(__file__).parents[2]
SIZES = (1_000, 5_000, 20_000)
ROUNDS = 5


def grown(lines: int) -> str:
    """The example in one file, its cards again and again under other titles until there are `lines` lines."""
    folder = TOP / "examples" / "ostrel-two"
    names = ("handbook", "numbers", "cockpit", "words", "normal", "emergency", "abnormal")
    texts = [(folder / f"{name}.cards").read_text(encoding="utf-8") for name in names]
    whole = re.sub(r"^include .*\n", "", "\n".join(texts), flags=re.MULTILINE)
    cards = "\n".join(texts[4:])
    parts, have, copy = [whole], whole.count("\n"), 1
    while have < lines:
        copy += 1
        again = re.sub(r"^((?:normal|abnormal|emergency) .*)$", rf"\1, copy {copy}", cards, flags=re.MULTILINE)
        again = re.sub(r"^(\s+go to .*)$", rf"\1, copy {copy}", again, flags=re.MULTILINE)
        parts.append(again)
        have += again.count("\n")
    kept = "\n".join(parts).split("\n")
    while len(kept) > lines and not kept[lines].startswith(("normal", "abnormal", "emergency")):
        lines += 1
    return "\n".join(kept[:lines]) + "\n"


def lint(text: str) -> None:
    outcome = resolve(SourceText("grown.cards", text), "grown.cards", lambda path: "not there")
    handbook, files = outcome.value
    settle([*outcome.findings, *check(Subject(handbook))], files)


def main() -> None:
    print(f"median of {ROUNDS} rounds in one process; lint is parse, resolve and all rules but those of layout\n")
    print("| lines | parse, lines/s | lint, lines/s | format, lines/s |\n|---|---|---|---|")
    for size in SIZES:
        text = grown(size)
        count = text.count("\n")
        cells = [
            f"{count / median(_times(work, text)):,.0f}"
            for work in (
                lambda t: parse(SourceText("grown.cards", t)),
                lint,
                lambda t: format_text(SourceText("grown.cards", t)),
            )
        ]
        print(f"| {count:,} | " + " | ".join(cells) + " |")


def _times(work: object, text: str) -> list[float]:
    assert callable(work)
    taken = []
    for number in range(ROUNDS + 1):
        start = time.perf_counter()
        work(text)
        if number:
            taken.append(time.perf_counter() - start)
    return taken
