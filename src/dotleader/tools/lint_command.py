"""`dotleader lint`: findings, in the form that is asked for."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from dotleader.report.glyphs import escaped
from dotleader.report.order import ordered, severity_of
from dotleader.report.terminal import terminal_for
from dotleader.source.finding import Finding, Severity
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import Task, find, is_handbook
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook
from dotleader.tools.rule_facts import FACTS
from dotleader.tools.saying import complain, say

if TYPE_CHECKING:  # argparse is at hand only where a command line is read
    from dotleader.tools.command_line import Options, Parser

FORMS = ("full", "brief", "json")

HELP = """\
dotleader lint PATH...      say what is wrong, and what to do about it

  PATH is a file, a folder, or - for standard input. Of a folder every
  handbook in it is read with what it includes, and every file that no
  handbook includes by itself. A file that a handbook near it includes is read
  as a part of that handbook.

  --as full                 with the lines, help, reason and source (default)
  --as brief                one line each: file:line:column: severity rule: ...
  --as json                 a list of objects, for programs
  --strict                  warnings count as errors do
  -h, --help                this text

  Ends with 0 if there is no error, 1 if there is one (with --strict, or a
  warning), 2 if something could not be read.

  dotleader lint .
  dotleader lint --strict handbook.cards
  dotleader lint --as brief . | sort
"""


def arguments(parser: Parser) -> None:
    parser.add_argument("paths", nargs="*", metavar="PATH")
    parser.choice("--as", FORMS, dest="form", default="full")
    parser.add_argument("--strict", action="store_true")


class _Looked(NamedTuple):
    """What was found, and where it was looked for; `parts` are files that were read as a part of another's handbook."""

    findings: list[Finding]
    cards: int
    files: set[str]
    parts: dict[str, str]


def run(options: Options) -> int:
    if not options.paths:
        raise CannotRun("Nothing to lint was named.", "Name files or folders: `dotleader lint .`")
    files = Files()
    tasks, troubles = find(options.paths, files)
    looked = _look(tasks, files, troubles)
    if looked.files:
        say(_lines(options.form, looked))
    for trouble in troubles:
        complain(trouble.message, trouble.advice)
    if troubles:
        return 2
    limit = Severity.WARNING if options.strict else Severity.ERROR
    return int(any(severity_of(finding, FACTS) >= limit for finding in looked.findings))


def _look(tasks: Sequence[Task], files: Files, troubles: list[CannotRun]) -> _Looked:
    findings: list[Finding] = []
    cards = 0
    names: set[str] = set()
    parts: dict[str, str] = {}
    for main, only in tasks:
        try:
            source = files.named(main).value
            if source.name in names and not is_handbook(source.text):
                continue  # a handbook has read it, by an `include` line with a slip in it
            handbook, found, *_ = lint_handbook(main, files)
        except CannotRun as stopped:
            troubles.append(stopped)
            continue
        asked = only or {source.name for source in handbook.files}
        names |= asked
        parts |= dict.fromkeys(only or (), source.name)
        cards += sum(card.spot.source.name in asked for card in handbook.cards)
        findings += [finding for finding in found if only is None or finding.spot.source.name in only]
    return _Looked(ordered(findings), cards, names, parts)


def _lines(form: str, looked: _Looked) -> Iterator[str]:
    """The answer in the form that is asked for; only that form is imported."""
    terminal = terminal_for(sys.stdout, os.environ)
    if form == "brief":
        from dotleader.report.brief import brief  # noqa: PLC0415

        yield from brief(looked.findings, FACTS, terminal)
    elif form == "json":
        from dotleader.report.json_list import json_list  # noqa: PLC0415

        yield json_list(looked.findings, FACTS)
    else:
        from dotleader.report.full import full  # noqa: PLC0415
        from dotleader.report.summary import summary  # noqa: PLC0415

        yield from full(looked.findings, FACTS, terminal)
        yield summary(looked.findings, FACTS, looked.cards, len(looked.files))
        for part, main in sorted(looked.parts.items()):
            yield escaped(f"`{part}` was read as a part of `{main}`.", terminal)
