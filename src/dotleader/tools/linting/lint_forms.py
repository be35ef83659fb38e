"""The forms in which a lint answers, and where each goes. Only a form that is asked for is imported."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from dotleader.report.glyphs import escaped
from dotleader.report.terminal import Terminal, terminal_for
from dotleader.source.finding import Finding
from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.files import ENDING, STDIN, shown_name
from dotleader.tools.linting.looking import BASELINE, Looked
from dotleader.tools.rule_facts import FACTS

FORMS = ("full", "brief", "json", "sarif", "github")


class Form(NamedTuple):
    """A form, and the file that it is written to; "" for standard output."""

    name: str
    path: str


def forms_of(asked: Sequence[Form]) -> tuple[Form, ...]:
    """The forms of one run; without any the usual one. Raises CannotRun where two would go to one place."""
    forms = tuple(asked) or (Form("full", ""),)
    places = [os.path.realpath(form.path) if form.path else "" for form in forms]
    for form, place in zip(forms, places, strict=True):
        if places.count(place) > 1:
            where = f"`{form.path}`" if form.path else "Standard output"
            raise CannotRun(
                f"{where} cannot take two forms.",
                "Give all but one a file of its own: `--as sarif=lint.sarif --as full`.",
            )
        if form.path.lower().endswith(ENDING):
            raise CannotRun(f"`{form.path}` is the name of a source.", f"Name a file that does not end in `{ENDING}`.")
        if os.path.basename(place) == BASELINE:
            raise CannotRun(f"`{form.path}` is where accepted findings are kept.", "Name another file.")
    return forms


def spare_sources(forms: Sequence[Form], read: Iterable[str]) -> None:
    """Raise CannotRun where a form would go onto a file that was read, be it by a link or under another ending."""
    sources = {os.path.realpath(path) for path in read if path != STDIN and "\0" not in path}
    for form in forms:
        if form.path and os.path.realpath(form.path) in sources:
            raise CannotRun(f"`{form.path}` is one of the sources that were read.", "Name another file.")


def answered(form: str, looked: Looked, said: Sequence[str], *, to_file: bool, complete: bool = True) -> Iterator[str]:
    """The lines of a form. `said` are remarks for people; `complete` says whether everything could be read."""
    terminal = Terminal() if to_file else terminal_for(sys.stdout, os.environ)
    match form:
        case "brief":
            from dotleader.report.brief import brief  # noqa: PLC0415

            yield from brief(looked.findings, FACTS, terminal)
        case "json":
            from dotleader.report.json_list import json_list  # noqa: PLC0415

            yield json_list(looked.findings, FACTS, looked.suppressed)
        case "sarif":
            from dotleader.report.sarif import sarif  # noqa: PLC0415
            from dotleader.rules.baseline import keys_of, with_ordinals  # noqa: PLC0415

            all_of_them = [*looked.findings, *(each.finding for each in looked.suppressed)]
            keys = {
                finding.order: (*key, str(ordinal))
                for finding, key, ordinal in with_ordinals(keys_of(all_of_them, tuple(looked.trees.values())))
            }
            yield sarif(looked.findings, looked.suppressed, FACTS, keys, complete=complete)
        case "github":
            from dotleader.report.github import github  # noqa: PLC0415

            yield from github(looked.findings, FACTS)
        case _:
            yield from _full(looked, said, terminal)


def _full(looked: Looked, said: Sequence[str], terminal: Terminal) -> Iterator[str]:
    from dotleader.report.full import full  # noqa: PLC0415
    from dotleader.report.summary import summary  # noqa: PLC0415

    yield from full(looked.findings, FACTS, terminal)
    yield summary(looked.findings, FACTS, looked.cards, len(looked.files))
    for line in (*_mendable(looked.findings), *_set_aside(looked), *said):
        yield escaped(line, terminal)
    for part, main in sorted(looked.parts.items()):
        yield escaped(f"`{part}` was read as a part of `{main}`.", terminal)


def _mendable(findings: Sequence[Finding]) -> Iterator[str]:
    fixes = [finding.fix for finding in findings if finding.fix is not None]
    safe = sum(fix.safe for fix in fixes)
    if safe:
        yield f"`dotleader lint --fix` mends {safe:,} of them."
    if len(fixes) > safe:
        which = f"{len(fixes) - safe:,} {'more' if safe else 'of them'}"
        yield f"`dotleader lint --fix-unsafe` offers an answer to {which}."


def _set_aside(looked: Looked) -> Iterator[str]:
    """Whoever turns a rule off, or accepts an old book, is seen to have done so."""
    if not looked.suppressed:
        return
    from dotleader.source.suppression import Held  # noqa: PLC0415

    off: dict[tuple[str, str], int] = {}
    for each in looked.suppressed:
        if each.by is Held.RULES:
            key = (each.finding.rule, each.reason)
            off[key] = off.get(key, 0) + 1
    for (rule, reason), count in sorted(off.items()):
        yield f"`{rule}` is off ({count:,} not shown)" + (f": {reason}" if reason else "")
    accepted = sum(each.by is Held.BASELINE for each in looked.suppressed)
    if accepted:
        yield f"{accepted:,} accepted in `baseline.txt` and not shown"


def write_form(path: str, lines: Iterator[str]) -> None:
    """Write an answer to a file, whole or not at all. Raises CannotRun."""
    from dotleader.tools.writing import put_file  # noqa: PLC0415

    if os.path.exists(path) and not os.path.isfile(path):
        what = "a folder" if os.path.isdir(path) else "no plain file"
        raise CannotRun(f"`{shown_name(path)}` cannot be written: it is {what}.")
    data = "".join(line + "\n" for line in lines).encode("utf-8", "backslashreplace")
    try:
        put_file(path, data)
    except OSError as error:
        raise CannotRun(f"`{shown_name(path)}` cannot be written: {because(error)}.") from error
