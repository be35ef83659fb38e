"""How far a long job is, shown only to somebody who waits at a terminal for more than a second."""

from __future__ import annotations

import sys
import time

_PATIENCE = 1.0
_EVERY = 0.1


class Progress:
    """A line on standard error that is written over itself and gone when the job is done."""

    def __init__(self, what: str, total: int) -> None:
        self._what, self._total = what, total
        self._started = self._last = time.monotonic()
        self._shown = 0

    def done(self, count: int) -> None:
        now = time.monotonic()
        if now - self._started < _PATIENCE or now - self._last < _EVERY or not _watched():
            return
        self._last = now
        line = f"{self._what}: {count:,} of {self._total:,}"
        self._write(line)
        self._shown = len(line)

    def end(self) -> None:
        if self._shown:
            self._write("")
            self._shown = 0

    def _write(self, line: str) -> None:
        sys.stderr.write(f"\r{line:<{self._shown}}" + ("" if line else "\r"))
        sys.stderr.flush()


def _watched() -> bool:
    return sys.stderr is not None and sys.stderr.isatty()
