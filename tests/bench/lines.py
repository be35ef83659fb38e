"""Lines a second of a whole lint, in one process, from one thousand lines to twenty thousand."""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

from dotleader.handbook.resolve import resolve
from dotleader.rules.checks import check
from dotleader.rules.settling import settle
from dotleader.rules.subject import subject_of
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


def parse_it(text: str) -> None:
    parse(SourceText("grown.cards", text))


def lint_it(text: str) -> None:
    outcome = resolve(SourceText("grown.cards", text), "grown.cards", lambda path: "not there")
    handbook, files = outcome.value
    settle([*outcome.findings, *check(subject_of(handbook))], files)


def format_it(text: str) -> None:
    format_text(SourceText("grown.cards", text))


WORKS = {"parse": parse_it, "lint": lint_it, "format": format_it}


def main() -> None:
    print(f"Median of {ROUNDS} runs, each in a process of its own, imports not counted.")
    print("Lint is parse, resolve and all rules but those that lay cards out.\n")
    print("| lines | " + " | ".join(f"{work}, lines/s" for work in WORKS) + " |\n|---" + "|---" * len(WORKS) + "|")
    with tempfile.TemporaryDirectory() as folder:
        for size in SIZES:
            text = grown(size)
            file = Path(folder) / "grown.cards"
            file.write_text(text, encoding="utf-8")
            count = text.count("\n")
            cells = [f"{count / median(_seconds(work, file) for _ in range(ROUNDS)):,.0f}" for work in WORKS]
            print(f"| {count:,} | " + " | ".join(cells) + " |")


def _seconds(work: str, file: Path) -> float:
    command = [sys.executable, "-m", "tests.bench.lines", work, str(file)]
    return float(subprocess.run(command, cwd=TOP, check=True, capture_output=True, text=True, timeout=600).stdout)


if __name__ == "__main__":
    asked = WORKS[sys.argv[1]]
    given = Path(sys.argv[2]).read_text(encoding="utf-8")
    start = time.perf_counter()
    asked(given)
    print(time.perf_counter() - start)
