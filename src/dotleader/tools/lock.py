"""One process at a time in a folder.

The system drops the lock when its holder ends, however it ends, so a lock file that a killed process left behind is
simply taken over. It holds the number of the process for whoever has to wait.
"""

from __future__ import annotations

import contextlib
import os
import sys
import time
from collections.abc import Iterator

from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.ending import end_tidily
from dotleader.tools.files import shown_name

LOCK = ".dotleader-lock"
PATIENCE = 10.0
_PAUSE = 0.05
_PRINTING = ("Another print is going on in", "Wait until it has ended, or use `--to`.")

if sys.platform == "win32":
    import msvcrt

    def _take(handle: int) -> bool:
        os.lseek(handle, 1 << 20, os.SEEK_SET)  # beyond the number, so that others can read it
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _take(handle: int) -> bool:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True


@contextlib.contextmanager
def locked(
    folder: str, patience: float = PATIENCE, busy: tuple[str, str] = _PRINTING, advice: str = ""
) -> Iterator[None]:
    """Hold a folder. Raises CannotRun where another process holds it for longer than `patience` seconds.

    `busy` says then what that process does there, and what to do; `advice` what to do where it cannot be written into.
    """
    end_tidily()
    path = os.path.join(folder, LOCK)
    try:
        handle = _wait_for(path, folder, time.monotonic() + patience, busy)
    except OSError as error:
        raise CannotRun(f"`{shown_name(folder)}` cannot be written into: {because(error)}.", advice) from error
    try:
        with contextlib.suppress(OSError):  # a full disk has room for the name of a file, and for nothing in it
            os.ftruncate(handle, 0)
            os.pwrite(handle, f"{os.getpid()}\n".encode(), 0) if hasattr(os, "pwrite") else None
        yield
    finally:
        with contextlib.suppress(OSError):
            os.unlink(path)  # before the lock is dropped, so that nobody else's is taken away
        os.close(handle)


def _wait_for(path: str, folder: str, until: float, busy: tuple[str, str]) -> int:
    while True:
        handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o666)
        if _take(handle) and _still_there(handle, path):
            return handle
        holder = os.read(handle, 20).decode("ascii", "replace").strip()
        os.close(handle)
        if time.monotonic() > until:
            who = f" (process {holder})" if holder.isdigit() else ""
            raise CannotRun(f"{busy[0]} `{shown_name(folder)}`{who}.", busy[1])
        time.sleep(_PAUSE)


def _still_there(handle: int, path: str) -> bool:
    """Whether the file that was locked is still the one at the path: the holder before may have taken it away."""
    try:
        return os.path.samestat(os.fstat(handle), os.stat(path))
    except FileNotFoundError:
        return False
