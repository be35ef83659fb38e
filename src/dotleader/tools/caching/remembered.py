"""The answer of a whole run, given again while nothing has changed that it depends on.

The key takes in everything but the sources: this tool and its files, Python and what is installed beside it, the words
of the command, the working folder, and the place that is written to. With the answer is kept every look that was
taken at files and folders, absent ones too, and what was seen; all are taken again before the answer is given.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Sequence

from dotleader.report.terminal import terminal_for
from dotleader.tools.caching import cache_folder, world
from dotleader.tools.caching.digests import digest
from dotleader.tools.caching.identity import identity
from dotleader.tools.saying import heard, listen, say_bytes

_KIND = "answer"
_FORM = "1"
_ENVIRONMENT = ("NO_COLOR", "FORCE_COLOR", "COLUMNS", "TERM", "WT_SESSION", "ANSICON")
_MOST_LOOKS = 10_000


def again(arguments: Sequence[str], run: Callable[[Sequence[str]], int]) -> int:
    """Run a lint, or say again what it said; the exit code."""
    key = _key(arguments)
    before = answer(key)
    if before is not None:
        say_bytes(None, before[1])
        return before[0]
    if key:
        world.keep_watch()
        listen()
    code = run(arguments)
    said = heard()
    if key and said is not None:
        remember(key, code, said)
    return code


def _key(arguments: Sequence[str]) -> str:
    """What the answer depends on besides files and folders; `""` where nothing can be kept."""
    if any(word.startswith("--fix") or "=" in word for word in arguments):
        return ""  # it changes files, or writes some
    return key_of(arguments)


def key_of(arguments: Sequence[str]) -> str:
    """What the answer depends on besides files and folders; `""` where nothing can be kept."""
    if sys.stdout is None or not cache_folder.folder():
        return ""
    try:
        about = (
            _FORM,
            sys.version,
            sys.platform,
            identity(),
            _installed(),
            list(arguments),
            os.getcwd(),  # pathlib is not at hand here, and takes long to import
            [os.environ.get(name) for name in _ENVIRONMENT],
            tuple(terminal_for(sys.stdout, os.environ)),
        )
    except OSError:
        return ""
    return digest(repr(about).encode(errors="surrogatepass"))


def answer(key: str) -> tuple[int, str] | None:
    """Exit code and output of the run that was the same; None where there was none, or something has changed."""
    body = cache_folder.kept(_KIND, key) if key else None
    if body is None:
        return None
    try:
        head, _, rest = body.partition(b"\n\n")
        code, length, *looks = head.decode("utf-8", "surrogatepass").split("\n")
        output = rest.decode("utf-8", "surrogatepass")
        if len(output) != int(length):
            return None
        for look in looks:
            kind, before, path = look.split(" ", 2)
            if not world.same(kind, _unquoted(path), before):
                return None
        return int(code), output
    except ValueError:
        return None


def remember(key: str, code: int, output: str) -> None:
    """Keep an answer with the looks that it was made of."""
    looks = world.watched()
    if not key or looks is None or len(looks) > _MOST_LOOKS:
        return
    lines = [str(code), str(len(output))]
    lines += [f"{kind} {before} {_quoted(path)}" for (kind, path), before in looks.items()]
    body = "\n".join(lines) + "\n\n" + output
    cache_folder.keep(_KIND, key, body.encode("utf-8", "surrogatepass"))


def _installed() -> list[int]:
    """When something was last installed: the times of the folders that modules are taken from."""
    here = os.getcwd()
    return [os.stat(path).st_mtime_ns for path in sys.path if path not in ("", here) and os.path.isdir(path)]


def _quoted(path: str) -> str:
    return path.replace("%", "%25").replace("\n", "%0A").replace("\0", "%00")


def _unquoted(path: str) -> str:
    return path.replace("%0A", "\n").replace("%00", "\0").replace("%25", "%")
