"""What is seen of the outside world: files and folders, each look noted while somebody keeps watch.

A look is a question with one answer: what is in this file, which names has this folder. Whoever has kept the answers
can look again later and knows, where all are the same, that everything made of them is the same, too.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Callable
from typing import Any

from dotleader.tools.caching.digests import digest
from dotleader.tools.cannot_run import because

LARGEST = 20_000_000
"""Bytes of the largest file that is read: some hundred times a flight handbook with everything in it."""

ENDING = ".cards"

_seen: dict[tuple[str, str], str] | None = None
_spoilt = False


def keep_watch() -> None:
    """Note every look from here on."""
    global _seen, _spoilt  # there is one outside world
    _seen, _spoilt = {}, False


def watched() -> dict[tuple[str, str], str] | None:
    """The looks since `keep_watch`, by kind and path, each with a digest of its answer; None where they are not all."""
    return None if _spoilt else _seen


def spoil() -> None:
    """Something was seen that cannot be looked at again, such as standard input."""
    global _spoilt  # noqa: PLW0603
    _spoilt = True


def same(kind: str, path: str, before: str) -> bool:
    """Whether a look has the answer that it had."""
    look = _LOOKS.get(kind)
    return look is not None and digest(_form(look(path))) == before


def read_named(path: str) -> bytes | str:
    """What is in a file that the user named, or why it cannot be read."""
    found: bytes | str = _look("named", path)
    return found


def read_plain(path: str) -> bytes | str:
    """What is in a file that must be a plain one, because reading another could hang."""
    found: bytes | str = _look("plain", path)
    return found


def real(path: str) -> str:
    """The path with all links followed."""
    found: str = _look("real", path)
    return found


def is_folder(path: str) -> bool:
    found: bool = _look("folder", path)
    return found


def is_file(path: str) -> bool:
    found: bool = _look("file", path)
    return found


def exists(path: str) -> bool:
    found: bool = _look("exists", path)
    return found


def names_in(folder: str) -> list[str]:
    """The names in a folder, in order. Raises OSError."""
    found: list[str] | OSError = _look("names", folder)
    if isinstance(found, OSError):
        raise found
    return found


def may_be_read(path: str) -> bool:
    """Whether reading what is there ends: a pipe waits for a writer. A link that leads nowhere is left to be said."""
    found: bool = _look("readable", path)
    return found


def _look(kind: str, path: str) -> Any:
    """Look, and note what was seen while somebody keeps watch. What the answer is says the table of looks."""
    answer = _LOOKS[kind](path)
    if _seen is not None:
        now = digest(_form(answer))
        if _seen.setdefault((kind, path), now) != now:
            spoil()  # it changed in between: what was made of both looks is the answer to neither
    return answer


def _names(folder: str) -> list[str] | OSError:
    try:
        return sorted(os.listdir(folder))
    except OSError as error:
        return error


def _may_be_read(path: str) -> bool:
    return os.path.isfile(path) or (os.path.islink(path) and not os.path.exists(path))


def _read(path: str, *, plain: bool) -> bytes | str:
    try:
        about = os.stat(path)
        if stat.S_ISDIR(about.st_mode):
            return "it is a folder"
        if plain and not stat.S_ISREG(about.st_mode):
            return "it is not a plain file"
        if about.st_size > LARGEST:
            return too_large()
        with open(path, "rb") as file:
            data = file.read(LARGEST + 1)
    except (FileNotFoundError, NotADirectoryError):
        return "there is no such file" + _near(path)
    except OSError as error:
        return because(error)
    except ValueError:  # a NUL in the name
        return "no file can have this name"
    return data if len(data) <= LARGEST else too_large()


def too_large() -> str:
    return f"it is larger than {LARGEST // 1_000_000} MB, which is not read"


def _near(path: str) -> str:
    """A file in the same folder that may be meant."""
    folder, name = os.path.split(path)
    try:
        others = os.listdir(folder or ".")
    except OSError:
        return ""
    wanted = name.casefold()
    for other in sorted(others):
        if other != name and other.casefold() in (wanted, wanted + ENDING):
            return f", but there is `{other}`"
    return ""


def _form(answer: bytes | str | bool | list[str] | OSError) -> bytes:
    """An answer as bytes, so that no two answers are alike."""
    if isinstance(answer, bytes):
        return b"in it: " + answer
    if isinstance(answer, OSError):
        return b"not there: " + because(answer).encode(errors="surrogatepass")
    return repr(answer).encode(errors="surrogatepass")


_LOOKS: dict[str, Callable[[str], Any]] = {
    "named": lambda path: _read(path, plain=False),
    "plain": lambda path: _read(path, plain=True),
    "real": os.path.realpath,
    "folder": os.path.isdir,
    "file": os.path.isfile,
    "exists": os.path.exists,
    "readable": _may_be_read,
    "names": _names,
}
"""Each kind of look, taken for the first time and again."""
