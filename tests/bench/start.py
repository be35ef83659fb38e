"""A cold lint of the whole example, as a process, against `python -c pass`."""

from __future__ import annotations

import sys
from pathlib import Path
from statistics import median

from tests.bench.timing import ratios, whole_process

TOP = Path(__file__).parents[2]
EXAMPLE = str(TOP / "examples" / "ostrel-two")
ROUNDS = 9


def main() -> None:
    lint = [sys.executable, "-m", "dotleader", "lint"]
    commands = {
        "python -c pass": [sys.executable, "-c", "pass"],
        "lint --as brief": [*lint, "--as", "brief", EXAMPLE],
        "lint --as full": [*lint, EXAMPLE],
        "format --check": [sys.executable, "-m", "dotleader", "format", "--check", EXAMPLE],
    }
    taken = whole_process(commands, ROUNDS)
    over = ratios(taken, "python -c pass")
    count = sum(len(file.read_text(encoding="utf-8").splitlines()) for file in Path(EXAMPLE).glob("*.cards"))
    print(f"{count} lines, median of {ROUNDS} rounds, commands in turn\n")
    print("| command | median ms | times `python -c pass` |\n|---|---|---|")
    for name, times in taken.items():
        print(f"| `{name}` | {median(times) * 1000:.0f} | {over.get(name, 1.0):.1f} |")
