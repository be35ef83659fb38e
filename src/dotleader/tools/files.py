"""Sources read from files: the one place that does so."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

from dotleader.source.decode import decode
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText
from dotleader.tools.caching import world
from dotleader.tools.cannot_run import CannotRun

if TYPE_CHECKING:  # only its type is needed, and `format` does without all that it imports
    from dotleader.handbook.gather import Read

STDIN = "-"
ENDING = world.ENDING


class Files:
    """The files of one run, each read once; a path is as given, relative to the working folder or absolute."""

    def __init__(self) -> None:
        self._read: dict[str, Outcome[SourceText]] = {}
        self._piped = b""
        self.paths: dict[str, str] = {}
        """By the name under which a source is shown, the path that it was read from."""

    def named(self, path: str) -> Outcome[SourceText]:
        """A file the user named, or standard input. Raises CannotRun where it cannot be read."""
        result = self._of(path, named=True)
        if isinstance(result, str):
            raise CannotRun(f"`{shown_name(path)}` cannot be read: {result}.")
        return result

    def reader(self, folder: str) -> Read:
        """Reads what a handbook in `folder` includes, by paths from there with forward slashes."""
        inside = world.real(folder or ".")

        def read(target: str) -> Outcome[SourceText] | str:
            path = os.path.join(folder, *target.split("/"))
            if "\0" not in path and not _within(world.real(path), inside):
                return "it is a link that leads out of the handbook's folder"
            return self._of(path, named=False)

        return read

    def _of(self, path: str, *, named: bool) -> Outcome[SourceText] | str:
        key = path if path == STDIN else os.path.abspath(path) if "\0" not in path else path
        if key not in self._read:
            data = _bytes(path, named=named)
            if isinstance(data, str):
                return data
            self._read[key] = decode(shown_name(path), data)
            self.paths[self._read[key].value.name] = path
            if path == STDIN:
                self._piped = data
        return self._read[key]

    def with_text(self, name: str, text: str) -> None:
        """Take another text for a source that was read; nothing is written."""
        path = self.paths[name]
        key = path if path == STDIN else os.path.abspath(path)
        self._read[key] = Outcome(SourceText(name, text), self._read[key].findings)

    def bytes_now(self, name: str) -> bytes:
        """What is in the file of a source now. Raises CannotRun where it cannot be read any more."""
        path = self.paths[name]
        return self._piped if path == STDIN else bytes_of(path)


def shown_name(path: str) -> str:
    """How a file is shown: relative to the working folder, forward slashes, `-` for standard input."""
    if path in (STDIN, "") or "\0" in path:
        return path
    try:
        near = os.path.relpath(path)
    except ValueError:  # another drive
        near = os.path.abspath(path)
    return near.replace(os.sep, "/")


def standard_input() -> bytes:
    """All of standard input. Raises CannotRun where it is larger than what is read."""
    if sys.stdin is None:
        raise CannotRun("There is no standard input to read.")
    world.spoil()
    data = sys.stdin.buffer.read(world.LARGEST + 1)
    if len(data) > world.LARGEST:
        raise CannotRun(f"Standard input cannot be read: {world.too_large()}.")
    return data


def bytes_of(path: str) -> bytes:
    """What is in a file the user named, or standard input. Raises CannotRun where it cannot be read."""
    data = _bytes(path, named=True)
    if isinstance(data, str):
        raise CannotRun(f"`{shown_name(path)}` cannot be read: {data}.")
    return data


def _bytes(path: str, *, named: bool) -> bytes | str:
    """What is in a file, or why it cannot be read. What is only included must be a plain file; it could hang else."""
    if path == STDIN:
        return standard_input()
    return world.read_named(path) if named else world.read_plain(path)


def _within(path: str, folder: str) -> bool:
    return os.path.commonpath((path, folder)) == folder if _same_drive(path, folder) else False


def _same_drive(one: str, other: str) -> bool:
    return os.path.splitdrive(one)[0] == os.path.splitdrive(other)[0]
