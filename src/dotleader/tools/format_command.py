"""`dotleader format`: sources brought into their canonical form, each replaced whole or not at all."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from dotleader.report.glyphs import escaped
from dotleader.report.summary import counted
from dotleader.report.terminal import terminal_for
from dotleader.source.decode import decode
from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import sources_in
from dotleader.tools.ending import end_tidily
from dotleader.tools.files import STDIN, bytes_of, shown_name
from dotleader.tools.linting.diffs import Changed, changed, show_diffs
from dotleader.tools.saying import complain, say, say_bytes
from dotleader.tools.writing import replace_file

if TYPE_CHECKING:  # argparse is at hand only where a command line is read
    from dotleader.tools.command_line import Options, Parser

HELP = """\
dotleader format PATH...    bring sources into their canonical form

  PATH is a file or a folder; - formats standard input to standard output. No
  word, number, order or unit is changed, and comments stay where they are.
  A file is replaced whole or not at all.

  --check                   only say which files would change
  --diff                    only show what would change
  -h, --help                this text

  Ends with 0 if all is in form afterwards; with --check or --diff, 1 if
  something would change; 1 if a file is not UTF-8 text; 2 if a file could not
  be read or written.

  dotleader format .
  dotleader format --diff normal.cards
"""


class _NotText(Exception):  # noqa: N818  # nothing is wrong here; the file is left alone
    """The bytes are not UTF-8 text. Its words say where."""


def arguments(parser: Parser) -> None:
    parser.add_argument("paths", nargs="*", metavar="PATH")
    parser.add_argument("--check", action="store_true")
    parser.add_argument("--diff", action="store_true")


def run(options: Options) -> int:
    if not options.paths:
        raise CannotRun("Nothing to format was named.", "Name files or folders: `dotleader format .`")
    if STDIN in options.paths and len(options.paths) > 1:
        raise CannotRun("Standard input is formatted by itself.", "Give `-` alone, or leave it out.")
    only_look = options.check or options.diff
    end_tidily()
    done: list[Changed] = []
    code = 0
    for path in _all(options.paths):
        try:
            formatted = _formatted(path)
            if path == STDIN and not only_look:
                say_bytes(formatted.new)
                return 0
            if formatted.changed and not only_look:
                replace_file(path, formatted.new, formatted.old)
            done.append(formatted)
        except CannotRun as trouble:
            complain(trouble.message, trouble.advice)
            code = 2
        except _NotText as why:
            complain(f"`{shown_name(path)}` was left as it is. {why}", f"See `dotleader lint {shown_name(path)}`.")
            code = max(code, 1)
    differing = [each for each in done if each.changed]
    if options.diff:
        show_diffs(differing)
    else:
        say(_report(differing, len(done), only_look))
    return max(code, int(only_look and bool(differing)))


def _report(differing: Sequence[Changed], files: int, only_look: bool) -> Iterator[str]:
    terminal = terminal_for(sys.stdout, os.environ)
    verb = "would format" if only_look else "formatted"
    for each in differing:
        yield f"{verb} {escaped(each.name, terminal)}"
    if differing:
        yield f"{len(differing):,} of {counted(files, 'file')} {'would change' if only_look else 'changed'}"
    elif files:
        yield f"{counted(files, 'file')} in form"


def _all(paths: Sequence[str]) -> Iterator[str]:
    """Every file once, however often it was named."""
    seen: set[str] = set()
    for path in paths:
        for source in sources_in(path) if path != STDIN and os.path.isdir(path) else [path]:
            real = os.path.realpath(source)
            if real not in seen:
                seen.add(real)
                yield source


def _formatted(path: str) -> Changed:
    """A file in its canonical form. Its byte-order mark and its kind of line end stay."""
    old = bytes_of(path)
    read = decode(shown_name(path), old)
    if read.findings:
        raise _NotText(read.findings[0].message)
    before = read.value.text
    after = format_text(SourceText(read.value.name, before))
    return changed(path, old, before, after)
