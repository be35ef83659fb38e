"""Whole lints as processes against `python -c pass`: for the first time, with one card changed, and unchanged."""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path
from statistics import median

from tests.bench.growing import EXAMPLE, grown
from tests.bench.timing import Spent, processes_in_turn, ratios, spent

ROUNDS = 9
PASS = "python -c pass"


class _Lints:
    """Lints of one copy of a handbook, with a cache folder of its own."""

    def __init__(self, folder: Path, changed: str) -> None:
        self.folder, self.changed = folder, folder / changed
        self.cache = {"XDG_CACHE_HOME": str(folder / "cache"), "LOCALAPPDATA": str(folder / "cache")}
        self.number = 0

    def lint(self, *options: str) -> Spent:
        return spent([sys.executable, "-m", "dotleader", "lint", *options, str(self.folder / "book")], self.cache)

    def first(self, *options: str) -> Spent:
        shutil.rmtree(self.folder / "cache", ignore_errors=True)
        return self.lint(*options)

    def after_a_change(self) -> Spent:
        """One card has a line more than at the lint before."""
        self.number += 1
        text = self.changed.read_text(encoding="utf-8").rstrip("\n")
        kept = text if self.number == 1 else text.rpartition("\n")[0]
        self.changed.write_text(f"{kept}\n  # change {self.number}\n", encoding="utf-8")
        return self.lint()


def _pass() -> Spent:
    return spent([sys.executable, "-c", "pass"])


def _table(count: int, lints: _Lints, *, forms: Sequence[str]) -> None:
    works = {
        PASS: _pass,
        "lint, nothing known of it": lints.first,
        "lint, one card changed": lints.after_a_change,
        "lint, unchanged": lints.lint,
    }
    for form in forms:
        works[f"lint --as {form}, nothing known of it"] = lambda form=form: lints.first("--as", form)
    if forms:
        works["format --check"] = lambda: spent(
            [sys.executable, "-m", "dotleader", "format", "--check", str(lints.folder / "book")]
        )
    taken = processes_in_turn(works, ROUNDS)
    over = ratios(taken, PASS)
    print(f"\n{count:,} lines; processor time, median of {ROUNDS} rounds, in turn\n")
    print(f"| | median ms | times `{PASS}` |\n|---|---|---|")
    for name, times in taken.items():
        print(f"| {name} | {median(times) * 1000:.0f} | {over.get(name, 1.0):.1f} |")
    print(f"\nThe bound for the first lint is {30 + 12 * max(0, count - 1000) / 1000:.0f}, for an unchanged one 6.")


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        shutil.copytree(EXAMPLE, folder / "book")
        count = sum(file.read_text(encoding="utf-8").count("\n") for file in EXAMPLE.glob("*.cards"))
        _table(count, _Lints(folder, "book/abnormal.cards"), forms=("brief", "json"))
    for size in (1_000, 3_000, 5_000):
        with tempfile.TemporaryDirectory() as name:
            book = Path(name) / "book" / "handbook.cards"
            book.parent.mkdir()
            text = grown(size)
            book.write_text(text, encoding="utf-8")
            _table(text.count("\n"), _Lints(Path(name), "book/handbook.cards"), forms=())
