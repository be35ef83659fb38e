"""What is said: answers to standard output, everything else to standard error."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable

from dotleader.tools.cannot_run import CannotRun, because


def ready_streams() -> None:
    """What a stream's encoding cannot show, or what was typed in another one, is escaped instead of ending the run."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


_heard: list[str] | None = None


def listen() -> None:
    """Keep what is said from here on."""
    global _heard  # noqa: PLW0603  # there is one standard output
    _heard = []


def heard() -> str | None:
    """What was said since `listen`; None where something was that is no text, or went elsewhere."""
    return None if _heard is None else "".join(_heard)


def _not_heard() -> None:
    global _heard  # noqa: PLW0603
    _heard = None


def say(lines: Iterable[str]) -> None:
    """Lines to standard output. Whoever has read enough (`| head`) is left in peace."""
    say_bytes(None, "".join(line + "\n" for line in lines))


def say_bytes(data: bytes | None, text: str = "") -> None:
    """Text, or bytes as they are, to standard output; raises CannotRun where they do not fit there."""
    if data is not None:
        _not_heard()
    elif _heard is not None:
        _heard.append(text)
    if sys.stdout is None:
        return
    try:
        if data is None:
            sys.stdout.write(text)
        else:
            sys.stdout.flush()
            sys.stdout.buffer.write(data)
        sys.stdout.flush()
    except BrokenPipeError:
        quiet()
    except OSError as error:
        quiet()
        raise CannotRun(f"Standard output cannot be written: {because(error)}.") from error


def quiet() -> None:
    """Nothing more can be said; keeps the interpreter from trying again when it ends."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
    os.close(nowhere)


def complain(message: str, advice: str = "") -> None:
    """A sentence to standard error, and a second one that says what to do."""
    _not_heard()
    if sys.stderr is None:
        return
    try:
        sys.stderr.write(f"dotleader: {message}\n" + (f"  {advice}\n" if advice else ""))
        sys.stderr.flush()
    except OSError:
        pass  # nobody listens any more; the exit code still tells
