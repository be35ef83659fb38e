"""Times as the operating system counts them, side by side, so that a slow minute of the machine hits all alike."""

from __future__ import annotations

import os
import subprocess
import time
from collections.abc import Callable, Mapping, Sequence
from math import log
from statistics import median
from typing import NamedTuple


class Spent(NamedTuple):
    """What a process took: seconds of the processor, of its own and in the system for it, and KiB at the peak."""

    cpu: float
    peak: int


def whole_process(commands: dict[str, Sequence[str]], rounds: int) -> dict[str, list[float]]:
    """Wall seconds of each command in each round, the commands in turn; one round before is not counted.

    Byte code is written, as it is on anybody's machine.
    """
    taken: dict[str, list[float]] = {name: [] for name in commands}
    for number in range(rounds + 1):
        for name, command in commands.items():
            start = time.perf_counter()
            spent(command)
            if number:
                taken[name].append(time.perf_counter() - start)
    return taken


def spent(command: Sequence[str], environment: Mapping[str, str] | None = None) -> Spent:
    """What a command takes; what it says is thrown away. `environment` is added to ours."""
    ours = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    started = subprocess.Popen(
        command, env=ours | dict(environment or {}), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    _, status, used = os.wait4(started.pid, 0)
    started.returncode = os.waitstatus_to_exitcode(status)
    return Spent(used.ru_utime + used.ru_stime, used.ru_maxrss)


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


def processes_in_turn(works: Mapping[str, Callable[[], Spent]], rounds: int) -> dict[str, list[float]]:
    """Processor seconds of each work in each round, the works in turn; one round before is not counted."""
    taken: dict[str, list[float]] = {name: [] for name in works}
    for number in range(rounds + 1):
        for name, work in works.items():
            cpu = work().cpu
            if number:
                taken[name].append(cpu)
    return taken


def ratios(taken: dict[str, list[float]], base: str) -> dict[str, float]:
    """The median over the rounds of each one's time over that of `base` in the same round."""
    return {
        name: median(a / b for a, b in zip(times, taken[base], strict=True))
        for name, times in taken.items()
        if name != base
    }


def exponent(points: Sequence[tuple[float, float]]) -> float:
    """The slope of the straight line through (size, time) on paper with two logarithmic scales: 1 is linear."""
    logs = [(log(size), log(taken)) for size, taken in points]
    middle = sum(x for x, _ in logs) / len(logs), sum(y for _, y in logs) / len(logs)
    across = sum((x - middle[0]) * (y - middle[1]) for x, y in logs)
    return across / sum((x - middle[0]) ** 2 for x, _ in logs)
