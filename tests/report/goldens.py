"""Whole renderings of findings, kept beside the sources they are about: `name.cards` and `name.txt`.

Sources in `tests/bad` have findings, those in `tests/good` none. A handbook of several files has a folder in which the
file with the `handbook` block is rendered. `python -m tests.tables.update_goldens` writes the renderings anew; then the
difference is read, line by line.
"""

from __future__ import annotations

from pathlib import Path

from dotleader.report.full import full
from dotleader.report.summary import summary
from dotleader.report.terminal import Terminal
from dotleader.rules.catalogue import FACTS
from dotleader.tools.discovery import find
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook

TESTS = Path(__file__).parents[1]
BAD = TESTS / "bad"
GOOD = TESTS / "good"


def sources(folder: Path) -> list[Path]:
    """What is linted in a folder: handbooks, and files that none of them includes. Works from within the folder."""
    tasks, troubles = find([str(folder)], Files())
    assert not troubles
    return sorted(Path(task.main) for task in tasks)


def rendering(source: Path) -> str:
    """What `dotleader lint NAME` shows in the source's folder, on 80 columns that show everything and have no colour.

    The working folder has to be that of the source.
    """
    linted = lint_handbook(source.name, Files())
    shown = [*full(linted.findings, FACTS, Terminal())]
    cards, files = len(linted.handbook.cards), len(linted.handbook.files)
    return "\n".join([*shown, summary(linted.findings, FACTS, cards, files)]) + "\n"


def golden(source: Path) -> Path:
    return source.with_suffix(".txt")
