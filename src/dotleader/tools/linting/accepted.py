"""`baseline.txt` beside a handbook: read, and written as a whole."""

from __future__ import annotations

import os
from collections.abc import Collection

from dotleader.rules.baseline import NAME, Baseline, Entry, entries_of
from dotleader.source.decode import decode
from dotleader.source.finding import Finding
from dotleader.tools.caching import world
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.files import ENDING, shown_name


def baseline_path(main: str) -> str:
    """Where what was accepted of a handbook, or of a loose file, is kept."""
    return os.path.join(os.path.dirname(main), NAME)


def read_entries(path: str) -> list[Entry]:
    """The entries of a file that there is. Raises CannotRun where it cannot be read, or is none of ours."""
    name = shown_name(path)
    data = world.read_plain(path)
    if isinstance(data, str):
        raise CannotRun(f"`{name}` cannot be read: {data}.")
    read = decode(name, data)
    entries = read.findings[0].message.rstrip(".") if read.findings else entries_of(read.value)
    if isinstance(entries, str):
        raise CannotRun(
            f"`{name}` is no list of accepted findings: {entries[:1].lower()}{entries[1:]}.",
            "Mend that, or take the file away and run `dotleader baseline` again.",
        )
    return entries


class Accepted:
    """The files of one lint, each read once; handbooks in one folder share theirs."""

    def __init__(self) -> None:
        self._by_path: dict[str, Baseline] = {}

    def beside(self, main: str) -> Baseline:
        """What has been accepted of a handbook, beside which there is such a file. Raises CannotRun."""
        path = baseline_path(main)
        if path not in self._by_path:
            self._by_path[path] = Baseline(read_entries(path))
        return self._by_path[path]

    def unused(self, files: Collection[str]) -> list[Finding]:
        """Entries that no longer apply, of the files beside which everything was linted: `files`, by shown names."""
        return [
            finding
            for path, baseline in self._by_path.items()
            if everything_read(os.path.dirname(path), files)
            for finding in baseline.unused()
        ]


def everything_read(folder: str, files: Collection[str]) -> bool:
    """Whether all sources directly in a folder are among `files`, by shown names."""
    try:
        names = world.names_in(folder or ".")
    except OSError:
        return False
    sources = (os.path.join(folder, name) for name in names if name.endswith(ENDING) and not name.startswith("."))
    return all(shown_name(source) in files for source in sources)
