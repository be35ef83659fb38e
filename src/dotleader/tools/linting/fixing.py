"""`lint --fix` and `--fix-unsafe`: fixes applied until there is none left, and files replaced whole or not at all."""

from __future__ import annotations

import sys
from collections.abc import Collection, Sequence

from dotleader.report.summary import counted
from dotleader.source.decode import decode
from dotleader.source.editing import compatible, edited
from dotleader.source.finding import Edit, Fix
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import Task
from dotleader.tools.ending import end_tidily
from dotleader.tools.files import STDIN, Files
from dotleader.tools.linting.diffs import Changed, changed, show_diffs
from dotleader.tools.linting.looking import Looked, look
from dotleader.tools.saying import complain, say, say_bytes
from dotleader.tools.writing import replace_file

ROUNDS = 10
"""A mended name may show the next fault; more than a few times it never does."""
_UNREADABLE = frozenset({"not-utf8", "not-text"})
"""Files with these findings are left alone: what was read is a guess at what is there."""


class Fixing:
    """The fixes of one run. Texts are changed in `files`, and on the disk by `written` alone."""

    def __init__(self, tasks: Sequence[Task], files: Files, *, unsafe: bool, baseline: bool) -> None:
        self.tasks, self.files, self.unsafe, self.baseline = tasks, files, unsafe, baseline
        self.before: dict[str, str] = {}
        self.count = 0

    def mend(self, looked: Looked) -> Looked:
        """Apply what can be applied, in rounds, and look again after each; what is found in the end."""
        seen: set[tuple[tuple[str, str], ...]] = set()
        for _ in range(ROUNDS):
            fixes = compatible(self._wanted(looked))
            by_name: dict[str, list[Edit]] = {}
            for fix in fixes:
                for edit in fix.edits:
                    by_name.setdefault(edit.spot.source.name, []).append(edit)
            texts = {name: edited(edits[0].spot.source.text, edits) for name, edits in by_name.items()}
            state = tuple(sorted(texts.items()))
            if not fixes or state in seen:
                break
            seen.add(state)
            for name, edits in by_name.items():
                self.before.setdefault(name, edits[0].spot.source.text)
                self.files.with_text(name, texts[name])
            self.count += len(fixes)
            looked = self.look()
        return looked

    def look(self) -> Looked:
        return look(self.tasks, self.files, [], baseline=self.baseline)

    def changes(self) -> list[Changed]:
        """The files that would be another afterwards."""
        return [self._changed(name) for name in sorted(self.before)]

    def undo(self, names: Collection[str]) -> None:
        for name in names:
            self.files.with_text(name, self.before.pop(name))

    def written(self) -> bool:
        """Write every file that is another now; a file that cannot be written is said, and counts as it was."""
        end_tidily()
        failed: list[str] = []
        for name in sorted(self.before):
            try:
                change = self._changed(name)
                if change.path != STDIN and change.changed:
                    replace_file(change.path, change.new, change.old)
            except CannotRun as trouble:
                complain(trouble.message, trouble.advice)
                failed.append(name)
        self.undo(failed)
        return not failed

    def _changed(self, name: str) -> Changed:
        path, old = self.files.paths[name], self.files.bytes_now(name)
        if decode(name, old).value.text != self.before[name]:
            raise CannotRun(f"`{name}` was changed in the meantime and was left as it is.")
        return changed(path, old, self.before[name], self.files.named(path).value.text)

    def _wanted(self, looked: Looked) -> list[Fix]:
        unreadable = {finding.spot.source.name for finding in looked.findings if finding.rule in _UNREADABLE}
        mine = {STDIN} if STDIN in looked.files else looked.files
        return [
            finding.fix
            for finding in looked.findings
            if finding.fix is not None
            and (finding.fix.safe or self.unsafe)
            and all(self._is_mine(edit, mine - unreadable) for edit in finding.fix.edits)
        ]

    def _is_mine(self, edit: Edit, names: Collection[str]) -> bool:
        """Whether an edit is in a file that was asked for, and speaks of its text as it is now."""
        name = edit.spot.source.name
        return name in names and self.files.named(self.files.paths[name]).value.text is edit.spot.source.text


def fix_files(fixing: Fixing, looked: Looked, *, ask: bool, show: bool) -> tuple[Looked, list[str], bool]:
    """Mend what was found; what is found then, remarks, and whether every file could be written.

    `show` shows what would change, `ask` asks before anything is written. Raises CannotRun where nobody can be asked.
    """
    mended = fixing.mend(looked)
    changes = fixing.changes()
    if not changes:
        return mended, ["There is nothing to fix."], True
    if show:
        show_diffs(changes)
    if ask and not _agreed(len(changes)):
        return looked, ["Nothing was changed."], True
    complete = fixing.written()
    if not complete:
        mended = fixing.look()
    files = counted(len(fixing.before), "file")
    said = [f"{counted(fixing.count, 'finding')} mended in {files}."] if complete else [f"{files} mended."]
    return mended, said, complete


def fix_piped(fixing: Fixing, looked: Looked) -> Looked:
    """Mend standard input and put it out, changed or not; what is found then."""
    mended = fixing.mend(looked)
    changes = fixing.changes()
    say_bytes(changes[0].new if changes else fixing.files.bytes_now(STDIN))
    return mended


def _agreed(files: int) -> bool:
    """Ask on the terminal; no is the answer of whoever says nothing."""
    if sys.stdin is None or not sys.stdin.isatty() or sys.stdout is None or not sys.stdout.isatty():
        raise CannotRun("There is nobody to ask, and nothing was changed.", "Add `--yes` to write what is shown.")
    say([f"Words, order, numbers and units are yours to decide. Write this to {counted(files, 'file')}? (yes or no)"])
    answer = sys.stdin.readline().strip().lower()
    return answer in ("y", "yes")
