"""What is seen of the outside world: files and folders, each look noted while somebody keeps watch.

A look is a question with one answer: what is in this file, which names has this folder. Whoever has kept the answers
can look again later and knows, where all are the same, that everything made of them is the same, too.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Callable

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
    look = _AGAIN.get(kind)
    return look is not None and look(path) == before


def read_named(path: str) -> bytes | str:
    """What is in a file that the user named, or why it cannot be read."""
    return _noted_read("named", path, _read(path, plain=False))


def read_plain(path: str) -> bytes | str:
    """What is in a file that must be a plain one, because reading another could hang."""
    return _noted_read("plain", path, _read(path, plain=True))


def real(path: str) -> str:
    """The path with all links followed."""
    found = os.path.realpath(path)
    _note("real", path, found.encode(errors="surrogatepass"))
    return found


def is_folder(path: str) -> bool:
    return _noted("folder", path, os.path.isdir(path))


def is_file(path: str) -> bool:
    return _noted("file", path, os.path.isfile(path))


def exists(path: str) -> bool:
    return _noted("exists", path, os.path.exists(path))


def names_in(folder: str) -> list[str]:
    """The names in a folder, in order. Raises OSError."""
    try:
        names = sorted(os.listdir(folder))
    except OSError as error:
        _note("names", folder, because(error).encode())
        raise
    _note("names", folder, "\0".join(names).encode(errors="surrogatepass"))
    return names


def _names(folder: str) -> str:
    try:
        return digest("\0".join(sorted(os.listdir(folder))).encode(errors="surrogatepass"))
    except OSError as error:
        return digest(because(error).encode())


def may_be_read(path: str) -> bool:
    """Whether reading what is there ends: a pipe waits for a writer. A link that leads nowhere is left to be said."""
    return _noted("readable", path, _may_be_read(path))


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


def _noted_read(kind: str, path: str, answer: bytes | str) -> bytes | str:
    if _seen is not None:
        _note(kind, path, _form(answer))
    return answer


def _noted(kind: str, path: str, answer: bool) -> bool:
    _note(kind, path, _form(answer))
    return answer


def _note(kind: str, path: str, answer: bytes) -> None:
    if _seen is not None and _seen.setdefault((kind, path), now := digest(answer)) != now:
        spoil()  # it changed in between: what was made of both looks is the answer to neither


def _form(answer: bytes | str | bool) -> bytes:
    """An answer as bytes, so that no two answers are alike."""
    if isinstance(answer, bytes):
        return b"in it: " + answer
    return repr(answer).encode(errors="surrogatepass")


_AGAIN: dict[str, Callable[[str], str]] = {
    "named": lambda path: digest(_form(_read(path, plain=False))),
    "plain": lambda path: digest(_form(_read(path, plain=True))),
    "real": lambda path: digest(os.path.realpath(path).encode(errors="surrogatepass")),
    "folder": lambda path: digest(_form(os.path.isdir(path))),
    "file": lambda path: digest(_form(os.path.isfile(path))),
    "exists": lambda path: digest(_form(os.path.exists(path))),
    "readable": lambda path: digest(_form(_may_be_read(path))),
    "names": _names,
}
