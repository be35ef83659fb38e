"""From a path to a handbook and everything that is to be said about it: all stages in their order."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.rules.run import check, settle
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding
from dotleader.tools.files import STDIN, Files

if TYPE_CHECKING:  # laying out is paid for only where it is asked for
    from dotleader.page.laid import LaidCard

IMPOSSIBLE = frozenset({"impossible-stock"})
"""Rules with whose findings nothing can be laid out."""


class Linted(NamedTuple):
    """`findings` of all stages, settled: each fault once, suppressions applied, in order.

    `checklists` lays the checklists out when it is first called; None where the stock is impossible.
    """

    handbook: Handbook
    findings: list[Finding]
    checklists: Callable[[], tuple[LaidCard, ...]] | None


def lint_handbook(main: str, files: Files) -> Linted:
    """Read, resolve and check the handbook, or the loose file, at a path. Raises CannotRun where it cannot be read."""
    read = files.named(main)
    folder, name = ("", STDIN) if main == STDIN else os.path.split(main)
    resolved = resolve(read.value, name, files.reader(folder))
    handbook, trees = resolved.value

    @cache
    def checklists() -> tuple[LaidCard, ...]:
        from dotleader.page.checklists import lay_checklists  # only where there are cards to lay out  # noqa: PLC0415

        return lay_checklists(handbook)

    possible = IMPOSSIBLE.isdisjoint(finding.rule for finding in resolved.findings)
    laid = checklists if possible else None
    findings = [*read.findings, *resolved.findings, *check(Subject(handbook, laid))]
    return Linted(handbook, settle(findings, trees), laid)
