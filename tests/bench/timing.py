"""Times as the operating system counts them, side by side, so that a slow minute of the machine hits all alike."""

from __future__ import annotations

import os
import subprocess
import time
from collections.abc import Callable, Sequence
from statistics import median


def whole_process(commands: dict[str, Sequence[str]], rounds: int) -> dict[str, list[float]]:
    """Wall seconds of each command in each round, the commands in turn; one round before is not counted.

    Byte code is written, as it is on anybody's machine.
    """
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    taken: dict[str, list[float]] = {name: [] for name in commands}
    for number in range(rounds + 1):
        for name, command in commands.items():
            start = time.perf_counter()
            subprocess.run(command, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
            if number:
                taken[name].append(time.perf_counter() - start)
    return taken


def in_turn(works: dict[str, Callable[[], object]], rounds: int) -> dict[str, list[float]]:
    """Wall seconds of each work in each round, in this process; one round before is not counted."""
    taken: dict[str, list[float]] = {name: [] for name in works}
    for number in range(rounds + 1):
        for name, work in works.items():
            start = time.perf_counter()
            work()
            if number:
                taken[name].append(time.perf_counter() - start)
    return taken


def ratios(taken: dict[str, list[float]], base: str) -> dict[str, float]:
    """The median over the rounds of each one's time over that of `base` in the same round."""
    return {
        name: median(a / b for a, b in zip(times, taken[base], strict=True))
        for name, times in taken.items()
        if name != base
    }
