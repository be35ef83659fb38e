"""`dotleader baseline`: what is found in an old book today is accepted, but for its errors."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.report.glyphs import escaped
from dotleader.report.order import severity_of
from dotleader.report.summary import counted, weights
from dotleader.report.terminal import terminal_for
from dotleader.rules.baseline import Key, accepted, keys_of
from dotleader.rules.catalogue import FACTS
from dotleader.source.finding import Finding, Severity
from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.discovery import Task, find
from dotleader.tools.files import STDIN, Files, bytes_of, shown_name
from dotleader.tools.linting.accepted import baseline_path, everything_read, read_entries
from dotleader.tools.linting.looking import look
from dotleader.tools.pipeline import lint_handbook
from dotleader.tools.saying import say
from dotleader.tools.writing import put_file, replace_file

if TYPE_CHECKING:  # argparse is at hand only where a command line is read
    from dotleader.tools.command_line import Options, Parser

HELP = """\
dotleader baseline HANDBOOK accept what is found in an old book today

  HANDBOOK is a file or a folder. Warnings and notes that are found now are
  written to `baseline.txt` beside the handbook, and `dotleader lint` shows
  them no more; what is new is shown. An entry is known by its card and the
  words of its line: it stays right when lines move, files are renamed or the
  book is formatted. What no longer applies, lint says. Run again, it writes
  the file anew. Errors are never accepted.

  -h, --help                this text

  Ends with 0 if everything is accepted now, 1 if there are errors, 2 if
  something could not be read or written.

  dotleader baseline handbook.cards
"""


def arguments(parser: Parser) -> None:
    parser.add_argument("paths", nargs="*", metavar="HANDBOOK")


def run(options: Options) -> int:
    if not options.paths:
        raise CannotRun("No handbook was named.", "Name its file: `dotleader baseline handbook.cards`.")
    if STDIN in options.paths:
        raise CannotRun("What is found in standard input cannot be accepted.", "Name the file of the handbook.")
    files = Files()
    tasks, troubles = find(options.paths, files)
    if troubles:
        raise troubles[0]
    found: dict[str, list[tuple[Finding, Key]]] = {}
    read: set[str] = set()
    whole = [Task(main) for main in dict.fromkeys(task.main for task in tasks)]
    for main, _ in whole:
        linted = lint_handbook(main, files)
        read.update(source.name for source in linted.handbook.files)
        found.setdefault(baseline_path(main), []).extend(keys_of(linted.findings, linted.trees))
    lines: list[str] = []
    for path, keyed in found.items():
        lines += _accepted(path, keyed, whole=everything_read(os.path.dirname(path), read))
    terminal = terminal_for(None, os.environ)
    errors = sum(map(_is_error, look(whole, files, []).findings))  # also what an accepted finding was shown in place of
    if errors:
        lines.append(f"{counted(errors, 'error')} left: errors are never accepted, `dotleader lint` shows them")
    say(escaped(line, terminal) for line in lines)
    return int(errors > 0)


def _accepted(path: str, keyed: list[tuple[Finding, Key]], *, whole: bool) -> Iterator[str]:
    """Write one file and say what is in it now. Not `whole`: entries of books that were not linted stay."""
    before = [entry.key for entry in read_entries(path)] if os.path.exists(path) else []
    kept = [finding for finding, _ in keyed if not _is_error(finding)]
    now = Counter(key for finding, key in keyed if not _is_error(finding))
    fell = Counter(before) - now
    wanted = now if whole else now | Counter(before)
    name = shown_name(path)
    if not wanted and not before:
        yield "nothing to accept"
        return
    _write(path, accepted(wanted.elements()))
    yield f"accepted {weights(kept, FACTS) or 'nothing'} in {name}"
    entries = counted(sum(fell.values()), "entry", "entries")
    if fell and whole:
        yield f"{entries} that no longer applied fell away"
    elif fell:
        yield f"{entries} not found now stayed: other sources stand in the folder"


def _write(path: str, text: str) -> None:
    before = bytes_of(path) if os.path.exists(path) else None
    try:
        if before is None:
            put_file(path, text.encode())
        elif before != text.encode():
            replace_file(path, text.encode(), before)
    except OSError as error:
        raise CannotRun(f"`{shown_name(path)}` cannot be written: {because(error)}.") from error


def _is_error(finding: Finding) -> bool:
    return severity_of(finding, FACTS) is Severity.ERROR
