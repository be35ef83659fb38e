"""Asked to end while something is being written."""

from __future__ import annotations

import signal
import sys
from typing import NoReturn


def end_tidily() -> None:
    """From here on a request to end is an exception, so that unfinished files are taken away first."""
    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), _end)


def _end(number: int, _: object) -> NoReturn:
    sys.exit(128 + number)
