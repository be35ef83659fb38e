"""What a lint finds in everything that was named, accepted findings of old books set apart."""

from __future__ import annotations

import os
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from dotleader.report.order import ordered
from dotleader.source.finding import Finding
from dotleader.syntax.tree import File
from dotleader.tools.caching import world
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import Task, is_handbook
from dotleader.tools.files import STDIN, Files
from dotleader.tools.pipeline import lint_handbook

if TYPE_CHECKING:  # imported only where something was suppressed or accepted
    from dotleader.rules.baseline import Baseline
    from dotleader.source.suppression import Suppressed
    from dotleader.tools.linting.accepted import Accepted

BASELINE = "baseline.txt"
"""`rules.baseline.NAME`, said again for a lint that finds no such file, and so imports nothing of it."""


class Looked(NamedTuple):
    """What was found, and where it was looked for; `parts` are files that were read as a part of another's handbook.

    `trees` are the files of all handbooks as parsed, for what is known of a finding by its content.
    """

    findings: list[Finding]
    suppressed: list[Suppressed]
    cards: int
    files: set[str]
    parts: dict[str, str]
    trees: dict[str, File]


def look(tasks: Sequence[Task], files: Files, troubles: list[CannotRun], *, baseline: bool = True) -> Looked:
    """Lint the tasks; what cannot be read is added to `troubles`. Without `baseline` nothing counts as accepted."""
    looked = Looked([], [], 0, set(), {}, {})
    accepted: Accepted | None = None
    cards = 0
    for main, only in tasks:
        try:
            source = files.named(main).value
            if source.name in looked.files and not is_handbook(source.text):
                continue  # a handbook has read it, by an `include` line with a slip in it
            old: Baseline | None = None
            if baseline and main != STDIN and world.exists(_beside(main)):
                if accepted is None:
                    # Only where something was accepted it is needed.
                    from dotleader.tools.linting.accepted import Accepted  # noqa: PLC0415

                    accepted = Accepted()
                old = accepted.beside(main)
            linted = lint_handbook(main, files, baseline=old)
        except CannotRun as stopped:
            troubles.append(stopped)
            continue
        handbook = linted.handbook
        asked = only or {each.name for each in handbook.files}
        looked.files.update(asked)
        looked.parts.update(dict.fromkeys(only or (), source.name))
        looked.trees.update((tree.source.name, tree) for tree in linted.trees)
        cards += sum(card.spot.source.name in asked for card in handbook.cards)
        looked.findings.extend(
            finding for finding in linted.findings if only is None or finding.spot.source.name in only
        )
        looked.suppressed.extend(
            each for each in linted.suppressed if only is None or each.finding.spot.source.name in only
        )
    unused = accepted.unused(looked.files) if accepted is not None else []
    return looked._replace(findings=ordered([*looked.findings, *unused]), cards=cards)


def _beside(main: str) -> str:
    return os.path.join(os.path.dirname(main), BASELINE)
