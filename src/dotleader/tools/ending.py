"""Asked to end, by Ctrl-C or by another program.

A command ends at once, wherever it is (`dotleader.__main__`): an exception could get lost, for whatever imports or
takes away a module swallows some. Only while something is being written it ends by an exception, so that unfinished
files are taken away first; and should that be lost, the request is remembered.
"""

from __future__ import annotations

import _signal  # type: ignore[import-not-found]  # the half of `signal` that costs no import
import contextlib
import sys
from typing import TYPE_CHECKING, NoReturn

if TYPE_CHECKING:
    from sys import UnraisableHookArgs

_SIGNALS = ("SIGTERM", "SIGHUP")
_asked: list[int] = []


def end_tidily() -> None:
    """From here on a request to end is an exception. One that came before and got lost is raised now."""
    for name in _SIGNALS:
        if hasattr(_signal, name):
            _take(getattr(_signal, name))
    if _signal.getsignal(_signal.SIGINT) not in (_signal.SIG_IGN, _signal.SIG_DFL, _signal.default_int_handler, None):
        _take(_signal.SIGINT)
        sys.unraisablehook = _unless_asked
    if _asked:
        _raise(_asked[0])


def asked_to_end() -> int:
    """The exit code of a request to end that came since `end_tidily`, whether it was heeded or not; 0 without one."""
    return 128 + _asked[0] if _asked else 0


def _take(number: int) -> None:
    with contextlib.suppress(ValueError):  # not in the main thread: whoever runs us there sees to it
        _signal.signal(number, _end)


def _end(number: int, _: object) -> NoReturn:
    _asked.append(int(number))
    _raise(number)


def _raise(number: int) -> NoReturn:
    if number == _signal.SIGINT:
        raise KeyboardInterrupt
    sys.exit(128 + number)


def _unless_asked(lost: UnraisableHookArgs) -> None:
    """Say nothing of a request that got lost: it is remembered."""
    if not issubclass(lost.exc_type, KeyboardInterrupt | SystemExit):
        sys.__unraisablehook__(lost)
