"""The folder that is printed into: all of a print or nothing of it.

Files are written completely beside the old ones, then the old ones are moved aside, the new ones moved in, and the
manifest replaced last. The manifest of the new print, under its unfinished name, says that everything is written: a
print that was killed after that is completed by the next one, a print that was killed before is thrown away. So at no
time do files of two prints stand together. Files that no manifest names are somebody else's and are never touched;
files that somebody changed since they were printed are kept under another name before they are replaced.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import json
import os
from collections.abc import Iterable, Mapping

from dotleader import __version__
from dotleader.source.record import record, replace
from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.files import shown_name
from dotleader.tools.lock import PATIENCE, locked
from dotleader.tools.printing.changed_files import digest_of, keep_changed
from dotleader.tools.writing import sync_folder, write_through

MANIFEST = "printed.json"
ELSEWHERE = "Print into another folder with `--to`."
_NEW = ".dotleader-new-"
_OLD = ".dotleader-old-"


@record
class Written:
    """Names of files: `removed` only the print before had; `left` too, but somebody changed them.

    `kept` are those that somebody changed and that were printed anew, each with the name that it has now.
    """

    written: tuple[str, ...]
    removed: tuple[str, ...]
    left: tuple[str, ...]
    kept: tuple[tuple[str, str], ...] = ()


def refuse_no_folder(folder: str) -> None:
    """Raises CannotRun where something that is no folder has the name of one."""
    if os.path.isfile(folder):
        raise CannotRun(f"`{shown_name(folder)}` is a file.", "Name a folder to print into.")
    if "\0" in folder or (os.path.lexists(folder) and not os.path.isdir(folder)):
        raise CannotRun(f"`{shown_name(folder)}` is no folder.", "Name a folder to print into.")


def write_folder(folder: str, files: Mapping[str, bytes], patience: float = PATIENCE) -> Written:
    """Put a whole print into a folder, which is made if need be. Raises CannotRun, and then it stands as it was."""
    refuse_no_folder(folder)
    new = not os.path.isdir(folder)
    try:
        os.makedirs(folder, exist_ok=True)
    except OSError as error:
        raise CannotRun(f"`{shown_name(folder)}` cannot be made: {because(error)}.", ELSEWHERE) from error
    try:
        return _written(folder, files, patience)
    except CannotRun:
        if new:
            with contextlib.suppress(OSError):  # somebody else may have put something there
                os.rmdir(folder)
        raise


def _written(folder: str, files: Mapping[str, bytes], patience: float) -> Written:
    with locked(folder, patience, advice=ELSEWHERE):
        try:
            kept = _clear_up(folder)
            before = _manifest(folder, MANIFEST) or {}
            strangers = [name for name in files if name not in before and os.path.lexists(os.path.join(folder, name))]
            if strangers:
                raise CannotRun(
                    f"`{shown_name(os.path.join(folder, strangers[0]))}` is there, and no print of dotleader made it.",
                    "Move it away, or print into another folder with `--to`.",
                )
            written = _replace(folder, files, before)
            return replace(written, kept=(*kept, *written.kept))
        except OSError as error:
            printed = _manifest(folder, MANIFEST) is not None
            stands = "What was printed before stands as it was." if printed else "Nothing was printed."
            raise CannotRun(
                f"`{shown_name(folder)}` cannot be written into: {because(error)}{_open_elsewhere(error)}.",
                f"{stands} {_way_out(error)}",
            ) from error


def _way_out(error: OSError) -> str:
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return "Make room on that disk, or print into another folder with `--to`."
    return ELSEWHERE


def _open_elsewhere(error: OSError) -> str:
    return " (is a file of it open in another program?)" if isinstance(error, PermissionError) else ""


def _replace(folder: str, files: Mapping[str, bytes], before: Mapping[str, str]) -> Written:
    digests = {name: hashlib.sha256(data).hexdigest() for name, data in sorted(files.items())}
    removed, left = _no_longer_printed(folder, files, before)
    there = set(os.listdir(folder))
    kept: list[tuple[str, str]] = []
    try:
        kept += keep_changed(folder, [name for name in files if name in before], before, digests, _NEW)
        for name, data in files.items():
            write_through(os.path.join(folder, _NEW + name), data, None)
        write_through(os.path.join(folder, _NEW + MANIFEST), _written_out(digests), None)
        sync_folder(folder)
        _swap(folder, list(files), [name for name in before if name in files] + removed)
    except BaseException:
        _undo(folder, list(files))
        _forget(folder, [(name, copy) for name, copy in kept if copy not in there])
        raise
    sync_folder(folder)
    for name in _names(folder, _OLD):
        with contextlib.suppress(OSError):
            os.unlink(os.path.join(folder, _OLD + name))
    return Written(tuple(files), tuple(removed), tuple(left), tuple(kept))


def _forget(folder: str, kept: Iterable[tuple[str, str]]) -> None:
    """Take copies away again of files that stand as they were."""
    for name, copy in kept:
        digest = digest_of(os.path.join(folder, copy))
        if digest and digest == digest_of(os.path.join(folder, name)):
            with contextlib.suppress(OSError):
                os.unlink(os.path.join(folder, copy))


def _no_longer_printed(folder: str, files: Iterable[str], before: Mapping[str, str]) -> tuple[list[str], list[str]]:
    """Files that only the print before has: those to remove, and those to leave because somebody changed them."""
    gone = [name for name in sorted(before) if name not in files and os.path.lexists(os.path.join(folder, name))]
    left = [name for name in gone if digest_of(os.path.join(folder, name)) != before[name]]
    return [name for name in gone if name not in left], left


def _swap(folder: str, new: Iterable[str], old: Iterable[str]) -> None:
    for name in old:
        with contextlib.suppress(FileNotFoundError):
            os.replace(os.path.join(folder, name), os.path.join(folder, _OLD + name))
    for name in new:
        os.replace(os.path.join(folder, _NEW + name), os.path.join(folder, name))
    os.replace(os.path.join(folder, _NEW + MANIFEST), os.path.join(folder, MANIFEST))


def _undo(folder: str, new: Iterable[str]) -> None:
    """Back to the print before; where even that fails, the unfinished manifest stays and the next print goes on."""
    if _manifest(folder, _NEW + MANIFEST) is None:
        _clear_up(folder)  # nothing was moved yet
        return
    for name in new:
        if not os.path.lexists(os.path.join(folder, _NEW + name)):
            with contextlib.suppress(OSError):
                os.replace(os.path.join(folder, name), os.path.join(folder, _NEW + name))
    for name in _names(folder, _OLD):
        with contextlib.suppress(OSError):
            os.replace(os.path.join(folder, _OLD + name), os.path.join(folder, name))
    if not _names(folder, _OLD):
        with contextlib.suppress(OSError):
            os.unlink(os.path.join(folder, _NEW + MANIFEST))
        _clear_up(folder)


def _clear_up(folder: str) -> list[tuple[str, str]]:
    """After a print that did not end: complete it if everything was written, else take away what is unfinished.

    Gives what somebody changed in the meantime, and the name that it is kept under.
    """
    kept: list[tuple[str, str]] = []
    finished = _manifest(folder, _NEW + MANIFEST)
    if finished is not None:
        before = _manifest(folder, MANIFEST) or {}
        aside, new = _names(folder, _OLD), _names(folder, _NEW)
        waiting = [name for name in finished if name in new]
        removed, _ = _no_longer_printed(folder, finished, before)
        going = [name for name in before if name in waiting and name not in aside]
        kept = keep_changed(folder, waiting, before, finished, _NEW)
        _swap(folder, waiting, going + removed)
    for prefix in (_NEW, _OLD):
        for name in _names(folder, prefix):
            os.unlink(os.path.join(folder, prefix + name))
    return kept


def _names(folder: str, prefix: str) -> list[str]:
    return sorted(name[len(prefix) :] for name in os.listdir(folder) if name.startswith(prefix))


def _manifest(folder: str, name: str) -> dict[str, str] | None:
    """Name and digest of each file of a print; None where there is no manifest of ours."""
    try:
        with open(os.path.join(folder, name), "rb") as file:
            read = json.load(file)
    except (FileNotFoundError, ValueError):
        return None
    files = read.get("files") if isinstance(read, dict) else None
    if not isinstance(files, dict):
        return None
    return {name: digest for name, digest in files.items() if _plain(name) and isinstance(digest, str)}


def _plain(name: str) -> bool:
    """Whether a name stays in its folder and is none of ours."""
    return name == os.path.basename(name) and name not in ("", ".", "..", MANIFEST) and not name.startswith(".")


def _written_out(digests: Mapping[str, str]) -> bytes:
    return (json.dumps({"made by": f"dotleader {__version__}", "files": digests}, indent=2) + "\n").encode()
