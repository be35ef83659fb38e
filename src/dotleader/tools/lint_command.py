"""`dotleader lint`: findings, in the forms that are asked for, and mended where that is asked for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from dotleader.report.order import severity_of
from dotleader.source.finding import Severity
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import Task, find
from dotleader.tools.files import STDIN, Files
from dotleader.tools.linting.lint_forms import FORMS, Form, answered, forms_of, spare_sources, write_form
from dotleader.tools.linting.looking import Looked, look
from dotleader.tools.rule_facts import FACTS
from dotleader.tools.saying import complain, say

if TYPE_CHECKING:  # argparse is at hand only where a command line is read
    from dotleader.tools.command_line import Options, Parser

HELP = """\
dotleader lint PATH...      say what is wrong, and what to do about it

  PATH is a file, a folder, or - for standard input. Of a folder every
  handbook in it is read with what it includes, and every file that no
  handbook includes by itself. A file that a handbook near it includes is read
  as a part of that handbook.

  --as full                 with the lines, help, reason and source (default)
  --as brief                one line each: file:line:column: severity rule: ...
  --as json                 a list of objects, for programs; what was allowed,
                            turned off or accepted is marked as such
  --as sarif                SARIF 2.1.0, for code-scanning services
  --as github               annotations of a GitHub workflow
  --as FORM=FILE            that form to a file, whole or not at all; `--as` can
                            be given several times
  --strict                  warnings count as errors do
  --no-baseline             show also what `dotleader baseline` has accepted
  --fix                     first mend what has one exact answer that cannot
                            change what is meant: indentation, the spelling of
                            a declared name or a keyword
  --fix-unsafe              mend also what changes words, order, numbers or
                            units: shows what would change, and asks
  --yes                     with --fix-unsafe: do not ask
  -h, --help                this text

  Of standard input `--fix` puts the mended text out, and the findings that are
  left go to standard error.

  Ends with 0 if there is no error (left), 1 if there is one (with --strict, or
  a warning), 2 if something could not be read or written, or nobody could be
  asked.

  dotleader lint .
  dotleader lint --strict handbook.cards
  dotleader lint --as brief . | sort
  dotleader lint --as sarif=lint.sarif --as full .
  dotleader lint --fix handbook.cards
"""


def arguments(parser: Parser) -> None:
    parser.add_argument("paths", nargs="*", metavar="PATH")
    parser.choices("--as", FORMS, dest="forms")
    parser.add_argument("--strict", action="store_true")
    parser.add_argument("--no-baseline", dest="baseline", action="store_false")
    parser.add_argument("--fix", action="store_true")
    parser.add_argument("--fix-unsafe", action="store_true")
    parser.add_argument("--yes", action="store_true")


def run(options: Options) -> int:
    if not options.paths:
        raise CannotRun("Nothing to lint was named.", "Name files or folders: `dotleader lint .`")
    forms = forms_of([Form(*form) for form in options.forms])
    if options.yes and not options.fix_unsafe:
        raise CannotRun("`--yes` answers what only `--fix-unsafe` asks.", "Write `--fix-unsafe --yes`.")
    files = Files()
    tasks, troubles = find(options.paths, files)
    looked = look(tasks, files, troubles, baseline=options.baseline)
    spare_sources(forms, files.paths.values())
    said: list[str] = []
    complete = True
    if options.fix or options.fix_unsafe:
        looked, said, complete = _mended(options, forms, tasks, files, looked)
    if looked.files:
        troubles += _answer(forms, looked, said, complete=not troubles, piped=_is_piped(options))
    for trouble in troubles:
        complain(trouble.message, trouble.advice)
    if troubles or not complete:
        return 2
    limit = Severity.WARNING if options.strict else Severity.ERROR
    return int(any(severity_of(finding, FACTS) >= limit for finding in looked.findings))


def _is_piped(options: Options) -> bool:
    """Whether standard output is for a mended text."""
    return STDIN in options.paths and (options.fix or options.fix_unsafe)


def _mended(
    options: Options, forms: Sequence[Form], tasks: Sequence[Task], files: Files, looked: Looked
) -> tuple[Looked, list[str], bool]:
    """What is found when everything that can be mended is; remarks; whether every file could be written."""
    from dotleader.tools.linting.fixing import Fixing, fix_files, fix_piped  # noqa: PLC0415

    ask = options.fix_unsafe and not options.yes
    fixing = Fixing(tasks, files, unsafe=options.fix_unsafe, baseline=options.baseline)
    if _is_piped(options):
        if len(options.paths) > 1:
            raise CannotRun("Standard input is mended by itself.", "Give `-` alone, or leave it out.")
        if ask:
            raise CannotRun("Standard input is the text, and there is nobody to ask.", "Add `--yes`.")
        return fix_piped(fixing, looked) if looked.files else looked, [], True
    for_people = any(form.name in ("full", "brief") for form in forms if not form.path)
    if ask and not for_people:
        raise CannotRun("The answer goes to a program, and there is nobody to ask.", "Add `--yes`, or `--as full`.")
    return fix_files(fixing, looked, ask=ask, show=options.fix_unsafe and for_people)


def _answer(
    forms: Sequence[Form], looked: Looked, said: Sequence[str], *, complete: bool, piped: bool
) -> list[CannotRun]:
    """Each form where it belongs; standard output last, for it says what happened. Files that cannot be written."""
    troubles: list[CannotRun] = []
    for form in sorted(forms, key=lambda form: not form.path):
        lines = answered(form.name, looked, said, to_file=bool(form.path), complete=complete)
        if form.path:
            try:
                write_form(form.path, lines)
            except CannotRun as trouble:  # what was found is said all the same
                troubles.append(trouble)
        elif not piped:
            say(lines)
    if piped:
        for line in answered("brief", looked, said, to_file=True):
            complain(line)
    return troubles
