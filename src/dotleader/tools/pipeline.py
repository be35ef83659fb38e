"""From a path to a handbook and everything that is to be said about it: all stages in their order."""

from __future__ import annotations

import os
from typing import NamedTuple

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.page.lay.checklists import Checklists
from dotleader.rules.checks import check
from dotleader.rules.subject import subject_of
from dotleader.source.finding import Finding
from dotleader.tools.files import STDIN, Files

IMPOSSIBLE = frozenset({"impossible-stock"})
"""Rules with whose findings nothing can be laid out."""


class Linted(NamedTuple):
    """`findings` of all stages, settled: each fault once, suppressions applied, in order.

    `checklists` lays the cards out when it is asked; None where the stock is impossible.
    """

    handbook: Handbook
    findings: list[Finding]
    checklists: Checklists | None


def lint_handbook(main: str, files: Files) -> Linted:
    """Read, resolve and check the handbook, or the loose file, at a path. Raises CannotRun where it cannot be read."""
    read = files.named(main)
    folder, name = ("", STDIN) if main == STDIN else os.path.split(main)
    resolved = resolve(read.value, name, files.reader(folder))
    handbook, trees = resolved.value

    possible = IMPOSSIBLE.isdisjoint(finding.rule for finding in resolved.findings)
    laid = Checklists(handbook) if possible else None
    findings = [
        *read.findings,
        *resolved.findings,
        *check(subject_of(handbook, (lambda: laid.continued) if laid else None)),
    ]
    if findings or any("llow" in tree.source.text for tree in trees):
        # What is known of every rule is needed only where there is something to say.
        from dotleader.rules.settling import settle  # noqa: PLC0415

        findings = settle(findings, trees)
    return Linted(handbook, findings, laid)
