"""From a path to a handbook and everything that is to be said about it: all stages in their order."""

from __future__ import annotations

import os
from dataclasses import dataclass

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.rules.run import check, settle
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding
from dotleader.tools.files import STDIN, Files


@dataclass(frozen=True, slots=True)
class Linted:
    """`findings` of all stages, settled: each fault once, suppressions applied, in order."""

    handbook: Handbook
    findings: list[Finding]


def lint_handbook(main: str, files: Files) -> Linted:
    """Read, resolve and check the handbook, or the loose file, at a path. Raises CannotRun where it cannot be read."""
    read = files.named(main)
    folder, name = ("", STDIN) if main == STDIN else os.path.split(main)
    resolved = resolve(read.value, name, files.reader(folder))
    handbook, trees = resolved.value
    findings = [*read.findings, *resolved.findings, *check(Subject(handbook))]
    return Linted(handbook, settle(findings, trees))
