"""A file replaced as a whole or not at all."""

from __future__ import annotations

import contextlib
import os
import stat
from collections.abc import Iterator

from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.ending import end_tidily
from dotleader.tools.files import shown_name

_FRESH = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
_TRIES = 100


def replace_file(path: str, data: bytes, before: bytes) -> None:
    """Put `data` in the place of `before`, the file at `path`, keeping its mode; a link stays, its target is replaced.

    The new file is written beside the old one and renamed when it is safely on the disk: whoever looks sees the old or
    the new one, whole. Raises CannotRun, and then the old one stands as it was; also where it is no longer `before`,
    because somebody saved it in the meantime.
    """
    target = os.path.realpath(path)
    try:
        about = os.stat(target)
        if not os.access(target, os.W_OK):
            raise CannotRun(f"`{shown_name(path)}` is write-protected and was left as it is.")
        with _beside(target) as fresh:
            if hasattr(os, "chown"):
                with contextlib.suppress(OSError):  # only the administrator may give files away
                    os.chown(fresh, about.st_uid, about.st_gid)
            write_through(fresh, data, stat.S_IMODE(about.st_mode))
            if not _holds(target, before):
                raise CannotRun(f"`{shown_name(path)}` was changed in the meantime and was left as it is.")
            os.replace(fresh, target)
        sync_folder(os.path.dirname(target))
    except OSError as error:
        raise CannotRun(
            f"`{shown_name(path)}` cannot be written: {because(error)}.", "The file was left as it is."
        ) from error


def put_file(path: str, data: bytes) -> None:
    """Write a file, new or in the place of one, as a whole; a link stays. Raises OSError, and then all is as it was."""
    target = os.path.realpath(path)
    with _beside(target) as fresh:
        write_through(fresh, data, None)
        os.replace(fresh, target)
    sync_folder(os.path.dirname(target))


@contextlib.contextmanager
def _beside(target: str) -> Iterator[str]:
    """A new empty file in the same folder; whatever happens, nothing is left of it but what was renamed."""
    end_tidily()
    folder, name = os.path.split(target)
    for number in range(_TRIES):
        fresh = os.path.join(folder, f".{name[:100]}.{os.getpid()}-{number}.new")
        try:
            os.close(os.open(fresh, _FRESH, 0o600))
        except FileExistsError:
            continue
        break
    else:
        raise OSError(17, "unfinished files of earlier runs are in the way")
    try:
        yield fresh
    finally:
        with contextlib.suppress(OSError):
            os.unlink(fresh)


def _holds(path: str, data: bytes) -> bool:
    with open(path, "rb") as file:
        return file.read(len(data) + 1) == data


def write_through(path: str, data: bytes, mode: int | None) -> None:
    """Write a file and wait until the disk has it. `mode` None gives it what a new file gets. Raises OSError."""
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0), 0o666)
    try:
        left = memoryview(data)
        while left:
            left = left[os.write(handle, left) :]
        os.fsync(handle)
        os.chmod(path, usual_mode() if mode is None else mode)
    finally:
        os.close(handle)


def usual_mode() -> int:
    """What a new file may be: 0o666 without what the user's mask takes away."""
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def sync_folder(folder: str) -> None:
    """Make renames in a folder last; not every system can, and then its own habit has to do."""
    with contextlib.suppress(OSError):
        handle = os.open(folder or ".", os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
