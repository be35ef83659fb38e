"""From a path to a handbook and everything that is to be said about it: all stages in their order."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.contents import books_of
from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.page.lay.laid_books import LaidBooks
from dotleader.rules.checks import check
from dotleader.rules.subject import subject_of
from dotleader.source.finding import Finding
from dotleader.syntax.parse import knowing
from dotleader.syntax.tree import File
from dotleader.tools.caching import cache_folder
from dotleader.tools.caching.kept_blocks import KeptBlocks
from dotleader.tools.files import STDIN, Files

if TYPE_CHECKING:  # imported only where something was suppressed
    from dotleader.rules.baseline import Baseline
    from dotleader.source.suppression import Suppressed

IMPOSSIBLE = frozenset({"impossible-stock"})
"""Rules with whose findings nothing can be laid out."""

_OF_BOOKS = frozenset({"card-continued", "card-too-long", "go-to-outside-book"})
"""Rules that look at books, and have not had their say of those that are not looked at."""


class Linted(NamedTuple):
    """`findings` of all stages, settled: each fault once, suppressions applied, in order.

    `books` are those that were looked at; `laid` lays their cards out when it is asked, None where a stock is
    impossible. `suppressed` are findings that somebody has decided about, `trees` the files as parsed.
    """

    handbook: Handbook
    findings: list[Finding]
    laid: LaidBooks | None
    books: Sequence[DeclaredBook]
    suppressed: list[Suppressed]
    trees: Sequence[File]


def lint_handbook(
    main: str,
    files: Files,
    choose: Callable[[Handbook], Sequence[DeclaredBook]] = books_of,
    baseline: Baseline | None = None,
) -> Linted:
    """Read, resolve and check the handbook, or the loose file, at a path. Raises CannotRun where it cannot be read.

    `choose` says which of its books are looked at, `baseline` is what has been accepted of it. Blocks that the last
    lint of it has parsed are not parsed again.
    """
    read = files.named(main)
    folder, name = ("", STDIN) if main == STDIN else os.path.split(main)
    kept = KeptBlocks(main) if main != STDIN and cache_folder.folder() else None
    with knowing(kept):
        resolved = resolve(read.value, name, files.reader(folder))
    if kept is not None:
        kept.keep()
    handbook, trees = resolved.value

    suppressed: list[Suppressed] = []
    possible = IMPOSSIBLE.isdisjoint(finding.rule for finding in resolved.findings)
    books = choose(handbook)
    laid = LaidBooks(handbook, books) if possible else None
    findings = [
        *read.findings,
        *resolved.findings,
        *check(subject_of(handbook, laid.continued if laid else None, tuple(books))),
    ]
    if findings or handbook.settings or any("llow" in tree.source.text for tree in trees):
        # What is known of every rule is needed only where there is something to say.
        from dotleader.rules.catalogue import BY_NAME  # noqa: PLC0415
        from dotleader.rules.settling import settled  # noqa: PLC0415

        asked = BY_NAME.keys() if len(books) == len(books_of(handbook)) else BY_NAME.keys() - _OF_BOOKS
        findings, suppressed = settled(findings, trees, handbook.settings, asked, baseline=baseline)
    return Linted(handbook, findings, laid, books, suppressed, trees)
