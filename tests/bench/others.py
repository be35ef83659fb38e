"""Well-known linters of other languages over as many lines, as whole processes: to show the order of size, no more."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from statistics import median

from tests.bench.growing import grown
from tests.bench.timing import processes_in_turn, ratios, spent

SIZES = (1_000, 5_000, 20_000)
ROUNDS = 5
LINT = "dotleader lint"


def _yaml(lines: int) -> str:
    """Settings of eleven lines each, in a form that yamllint finds nothing in."""
    out = ["---"]
    number = 0
    while len(out) < lines:
        number += 1
        out += [
            f"list_{number}:",
            f"  title: Before takeoff {number}",
            "  phase: before takeoff",
            "  items:",
            *(f"    - challenge: Item {n} of {number}\n      response: {n} is so" for n in range(3)),
            "  leave: true",
        ]
    return "\n".join("\n".join(out).split("\n")[:lines]) + "\n"


def _python(lines: int) -> str:
    """Functions of nine lines each, in a form that ruff finds nothing in."""
    out = ['"""Made for a measurement."""', ""]
    number = 0
    while len(out) < lines:
        number += 1
        out += [
            "",
            f"def total_{number}(items: list[int], most: int = {number}) -> int:",
            f'    """Return the sum of what is at most {number}."""',
            "    found = 0",
            "    for item in items:",
            "        if item <= most:",
            "            found += item",
            "    return found",
            "",
        ]
    return "\n".join(out).rstrip("\n") + "\n"


def main() -> None:
    print(f"Whole processes, processor time, median of {ROUNDS} rounds, in turn; no caches.\n")
    print("| lines | dotleader lint ms | yamllint ms | ruff check ms | dotleader / yamllint | dotleader / ruff |")
    print("|---" * 6 + "|")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for size in SIZES:
            text = grown(size)
            count = text.count("\n")
            (folder / "grown.cards").write_text(text, encoding="utf-8")
            (folder / "grown.yaml").write_text(_yaml(count), encoding="utf-8")
            (folder / "grown.py").write_text(_python(count), encoding="utf-8")
            commands = {
                LINT: [sys.executable, "-m", "dotleader", "lint", str(folder / "grown.cards")],
                "yamllint": [sys.executable, "-m", "yamllint", "-d", "default", str(folder / "grown.yaml")],
                "ruff check": [
                    sys.executable, "-m", "ruff", "check", "--isolated", "--no-cache", str(folder / "grown.py"),
                ],
            }  # fmt: skip
            works = {
                name: lambda command=command: spent(command, {"DOTLEADER_NO_CACHE": "1"})
                for name, command in commands.items()
            }
            taken = processes_in_turn(works, ROUNDS)
            times = {name: median(each) for name, each in taken.items()}
            by = {name: 1 / ratio for name, ratio in ratios(taken, LINT).items()}
            print(
                f"| {count:,} | " + " | ".join(f"{seconds * 1000:.0f}" for seconds in times.values())
                + f" | {by['yamllint']:.2f} | {by['ruff check']:.2f} |"
            )  # fmt: skip
