"""Where what can be made again is kept: a folder in the user's cache folder, of a size that stays small.

Which folder that is: on Windows `%LOCALAPPDATA%`; else `$XDG_CACHE_HOME` where it is set to a whole path; else on macOS
`~/Library/Caches`, elsewhere `~/.cache` (XDG Base Directory Specification 0.8). Everything in it may be deleted at any
time. Each file begins with a digest of the rest, so that one that is damaged is as good as none; files come into
being as a whole, so that two runs at once never read half of one. Nothing that goes wrong here is ever said: without a
cache the answer is the same, a little later.
"""

from __future__ import annotations

import contextlib
import os
import sys

from dotleader.tools.caching.digests import digest

MOST_BYTES = 40_000_000
"""Above this the oldest files go, down to three quarters of it."""

LARGEST_FILE = 4_000_000
NOT_WANTED = "DOTLEADER_NO_CACHE"
_DIGITS = 32
_STALE = 3600  # seconds after which a file that was never finished is nobody's


def folder() -> str:
    """The folder, which may not be there yet; `""` where there is none or the user wants none."""
    if os.environ.get(NOT_WANTED):
        return ""
    home = os.path.expanduser("~")
    xdg = os.environ.get("XDG_CACHE_HOME", "")
    if sys.platform == "win32":
        top = os.environ.get("LOCALAPPDATA", "")
    elif os.path.isabs(xdg):
        top = xdg
    elif sys.platform == "darwin":
        top = os.path.join(home, "Library", "Caches")
    else:
        top = os.path.join(home, ".cache")
    return os.path.join(top, "dotleader") if os.path.isabs(top) else ""


def kept(kind: str, key: str) -> bytes | None:
    """What was kept under a key; None where there is nothing that is whole."""
    top = folder()
    if not top:
        return None
    path = os.path.join(top, f"{kind}-{key}")
    try:
        with open(path, "rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except (OSError, ValueError):
        return None
    head, body = data[:_DIGITS], data[_DIGITS:]
    return body if head == digest(body).encode() else None


def keep(kind: str, key: str, body: bytes) -> None:
    """Keep something, if that can be."""
    top = folder()
    if not top or len(body) + _DIGITS > LARGEST_FILE:
        return
    fresh = os.path.join(top, f".new-{os.getpid()}-{key}")
    try:
        os.makedirs(top, mode=0o700, exist_ok=True)
        with open(fresh, "xb") as file:
            file.write(digest(body).encode() + body)
        os.replace(fresh, os.path.join(top, f"{kind}-{key}"))
        _tidy(top)
    except (OSError, ValueError):
        _gone(fresh)


def _tidy(top: str) -> None:
    """Let the oldest files go where there are too many, and what was never finished."""
    with os.scandir(top) as entries:
        files = [(entry.stat().st_mtime, entry.stat().st_size, entry.path, entry.name) for entry in entries]
    newest = max((time for time, *_ in files), default=0.0)
    for time, _, path, name in files:
        if name.startswith(".new-") and newest - time > _STALE:
            _gone(path)
    total = sum(size for _, size, *_ in files)
    if total <= MOST_BYTES:
        return
    for _, size, path, _ in sorted(files):
        _gone(path)
        total -= size
        if total <= MOST_BYTES * 3 // 4:
            return


def _gone(path: str) -> None:
    with contextlib.suppress(OSError):
        os.unlink(path)
