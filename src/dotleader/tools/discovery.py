"""From the paths that were named to what is linted: each handbook as a whole, and what no handbook includes by itself.

Which file includes which is read off the unindented lines; parsing comes later.
"""

from __future__ import annotations

import os
import posixpath
import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from dotleader.syntax.blocks import chunks, is_head
from dotleader.tools.caching import world
from dotleader.tools.caching.world import ENDING
from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.files import STDIN, Files, shown_name
from dotleader.tools.printing.printed_into import PRINTED

_HANDBOOK = re.compile(r"^handbook(?:\s|$)", re.MULTILINE)
_INCLUDE = re.compile(r"^include[^\S\n]+(\S[^\n]*)", re.MULTILINE)
_INDENTED = re.compile(r"^[^\S\n]+(?:include|handbook)\b", re.MULTILINE)
_ALLOW = re.compile(r"\s{2,}#\s*allow\b.*")
_NAMED = 5  # handbooks that are named where one has to be chosen
_LEVELS = 3  # folders above a file in which its handbook is looked for


class Task(NamedTuple):
    """One handbook, or one loose file: its path, and the names of the files whose findings are shown (None: all)."""

    main: str
    only: frozenset[str] | None = None


class Found(NamedTuple):
    tasks: list[Task]
    troubles: list[CannotRun]


def find(paths: Sequence[str], files: Files) -> Found:
    """What to lint, in the order of the paths, each handbook once."""
    wanted: dict[str, Task] = {}
    troubles: list[CannotRun] = []
    for path in paths:
        try:
            if path != STDIN and world.is_folder(path):
                tasks = _in_folder(path, files, troubles)
            else:
                tasks = [_of_file(path, files)]
        except CannotRun as trouble:
            troubles.append(trouble)
            continue
        for task in tasks:
            key = _real(task.main)
            before = wanted.get(key, task)
            both = before.only is not None and task.only is not None
            wanted[key] = Task(before.main, (before.only or frozenset()) | (task.only or frozenset()) if both else None)
    return Found(list(wanted.values()), troubles)


def sources_in(path: str) -> list[str]:
    """Every source in a folder and the folders in it, in order; hidden ones and what was printed are left out.

    Links are followed, each folder is entered once. Raises CannotRun where there is none, or a folder cannot be read.
    """
    found = list(_walk(path, set()))
    if not found:
        raise CannotRun(f"There is no {ENDING} file in `{shown_name(path)}`.", f"Sources end in `{ENDING}`.")
    return found


def handbook_at(path: str, files: Files) -> Task:
    """The one handbook that a path means: the file, the handbook that includes it, or the only one of a folder.

    Raises CannotRun where there is none, or more than one.
    """
    tasks, troubles = find([path], files)
    if troubles:
        raise troubles[0]
    if len(tasks) > 1:
        names = ", ".join(f"`{shown_name(task.main)}`" for task in tasks[:_NAMED])
        more = f" and {len(tasks) - _NAMED} more" if len(tasks) > _NAMED else ""
        raise CannotRun(
            f"There is more than one handbook in `{shown_name(path)}`.", f"Name one of them: {names}{more}."
        )
    return tasks[0]


def _walk(folder: str, entered: set[str]) -> Iterator[str]:
    real = world.real(folder)
    if real in entered:
        return
    entered.add(real)
    try:
        inside = world.names_in(folder)
    except OSError as error:
        raise CannotRun(f"`{shown_name(folder)}` cannot be read: {because(error)}.") from error
    for name in inside:
        path = os.path.join(folder, name)
        if name.startswith("."):
            continue
        if world.is_folder(path):
            if name != PRINTED:
                yield from _walk(path, entered)
        elif name.lower().endswith(ENDING) and world.may_be_read(path):
            yield path


def _in_folder(path: str, files: Files, troubles: list[CannotRun]) -> list[Task]:
    """Handbooks, and the files that none of them includes; of these, those that another one includes are read there."""
    texts: dict[str, str] = {}
    for source in sources_in(path):
        try:
            texts[source] = files.named(source).value.text
        except CannotRun as trouble:
            troubles.append(trouble)
    mains = [source for source in texts if is_handbook(texts[source])]
    covered = {_real(included) for main in mains for included in included_by(main, files)}
    rest = [source for source in texts if source not in mains and _real(source) not in covered]
    included = {source: {_real(other) for other in included_by(source, files)} for source in rest}
    tops = [source for source in rest if not any(_real(source) in included[other] for other in rest if other != source)]
    for top in tops:
        covered |= {_real(top), *included[top]}
    circles = [source for source in rest if _real(source) not in covered]  # they include each other
    return [Task(main) for main in (*mains, *tops, *circles)]


def _of_file(path: str, files: Files) -> Task:
    """The file itself; one that a handbook near it includes is read as a part of that, for it cannot stand alone."""
    text = files.named(path).value.text
    if path == STDIN or is_handbook(text):
        return Task(path)
    wanted = _real(path)
    for folder in _folders_above(path):
        for main in _handbooks_in(folder, files):
            for included in included_by(main, files):
                if _real(included) == wanted:
                    return Task(main, frozenset({shown_name(included)}))
    return Task(path)


def _folders_above(path: str) -> Iterator[str]:
    """The file's folder and those above it, nearest first: to the root of the repository, or a few levels."""
    folder = os.path.dirname(os.path.abspath(path))
    for _ in range(_LEVELS + 1):
        yield folder
        above = os.path.dirname(folder)
        if above == folder or world.exists(os.path.join(folder, ".git")):
            return
        folder = above


def _handbooks_in(folder: str, files: Files) -> Iterator[str]:
    try:
        names = world.names_in(folder)
    except OSError:
        return
    for name in names:
        path = os.path.join(folder, name)
        if name.startswith(".") or not name.lower().endswith(ENDING) or not world.is_file(path):
            continue
        try:
            text = files.named(path).value.text
        except CannotRun:
            continue
        if is_handbook(text):
            yield path


def is_handbook(text: str) -> bool:
    return _HANDBOOK.search(_at_the_edge(text)) is not None


def _at_the_edge(text: str) -> str:
    """The text with the heads of blocks that are indented (a finding) where they should be: at the left edge."""
    if _INDENTED.search(text) is None:
        return text
    parts = [chunk.text for chunk in chunks(text)]
    return "".join(part.lstrip() if is_head(part.lstrip().partition("\n")[0]) else part for part in parts)


def included_by(main: str, files: Files) -> list[str]:
    """The paths of all files that a file includes, and those include, as far as they can be read."""
    folder = os.path.dirname(main)
    read = files.reader(folder)
    found: dict[str, None] = {}
    waiting = [(files.named(main).value.text, "")]
    while waiting:
        text, inside = waiting.pop()
        for match in _INCLUDE.finditer(_at_the_edge(text)):
            written = _ALLOW.sub("", match[1]).strip().replace("\\", "/")
            target = posixpath.normpath(posixpath.join(inside, written))
            if target in found or target.startswith("../") or posixpath.isabs(target):
                continue
            result = read(target)
            if not isinstance(result, str):
                found[target] = None
                waiting.append((result.value.text, posixpath.dirname(target)))
    return [os.path.join(folder, *target.split("/")) for target in found]


def _real(path: str) -> str:
    return path if path == STDIN else world.real(path)
