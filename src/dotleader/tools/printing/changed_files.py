"""Files of a print that somebody changed since: they are kept beside the next print, under a name of their own.

A cut file that was adapted to a plotter by hand is an hour's work, and nothing says that it was meant to be lost.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterable, Mapping
from itertools import count

from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.files import shown_name
from dotleader.tools.writing import write_through

_SAID = "-changed"


def digest_of(path: str) -> str:
    """What tells one content of a file from another; `""` where it cannot be read."""
    try:
        with open(path, "rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError:
        return ""


def keep_changed(
    folder: str, names: Iterable[str], before: Mapping[str, str], after: Mapping[str, str], unfinished: str
) -> list[tuple[str, str]]:
    """Copy what will be replaced and is not as it was printed; pairs of its name and the name it is kept under.

    `before` and `after` are the digests of both prints by name. A copy is written under a name that begins with
    `unfinished`, and gets its own when it is whole: `cut-changed.svg`, then `cut-changed-2.svg`. Nothing is written
    over; a copy with the same content that is there already serves. Raises OSError, and CannotRun where a file has
    become something else.
    """
    kept = []
    for name in names:
        path = os.path.join(folder, name)
        if not os.path.lexists(path):
            continue
        digest = digest_of(path)
        if digest == before.get(name) or (digest and digest == after.get(name)):
            continue
        if not os.path.isfile(path):
            raise CannotRun(
                f"`{shown_name(path)}` is no plain file any more, as the print before left it.",
                "Move it away, or print into another folder with `--to`.",
            )
        kept.append((name, _kept(folder, name, digest, unfinished)))
    return kept


def _kept(folder: str, name: str, digest: str, unfinished: str) -> str:
    path = os.path.join(folder, name)
    stem, ending = os.path.splitext(name)
    for number in count(1):
        other = f"{stem}{_SAID}{f'-{number}' if number > 1 else ''}{ending}"
        there = os.path.join(folder, other)
        if os.path.lexists(there):
            if digest and digest_of(there) == digest:
                return other
            continue
        with open(path, "rb") as file:
            data = file.read()
        about = os.stat(path)
        copy = os.path.join(folder, unfinished + other)
        write_through(copy, data, None)
        os.utime(copy, ns=(about.st_atime_ns, about.st_mtime_ns))
        os.rename(copy, there)
        return other
    raise AssertionError("there is always a further number")
