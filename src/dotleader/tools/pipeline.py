"""From a path to a handbook and everything that is to be said about it: all stages in their order."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from typing import NamedTuple

from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.contents import books_of
from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.page.lay.laid_books import LaidBooks
from dotleader.rules.checks import check
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding
from dotleader.tools.files import STDIN, Files

IMPOSSIBLE = frozenset({"impossible-stock"})
"""Rules with whose findings nothing can be laid out."""

_OF_BOOKS = frozenset({"card-continued", "card-too-long", "go-to-outside-book"})
"""Rules that look at books, and have not had their say of those that are not looked at."""


class Linted(NamedTuple):
    """`findings` of all stages, settled: each fault once, suppressions applied, in order.

    `books` are those that were looked at; `laid` lays their cards out when it is asked, None where a stock is
    impossible.
    """

    handbook: Handbook
    findings: list[Finding]
    laid: LaidBooks | None
    books: Sequence[DeclaredBook]


def lint_handbook(main: str, files: Files, choose: Callable[[Handbook], Sequence[DeclaredBook]] = books_of) -> Linted:
    """Read, resolve and check the handbook, or the loose file, at a path. Raises CannotRun where it cannot be read.

    `choose` says which of its books are looked at.
    """
    read = files.named(main)
    folder, name = ("", STDIN) if main == STDIN else os.path.split(main)
    resolved = resolve(read.value, name, files.reader(folder))
    handbook, trees = resolved.value

    possible = IMPOSSIBLE.isdisjoint(finding.rule for finding in resolved.findings)
    books = choose(handbook)
    laid = LaidBooks(handbook, books) if possible else None
    findings = [
        *read.findings,
        *resolved.findings,
        *check(Subject(handbook, laid.continued if laid else None, tuple(books))),
    ]
    if findings or any("llow" in tree.source.text for tree in trees):
        # What is known of every rule is needed only where there is something to say.
        from dotleader.rules.catalogue import BY_NAME  # noqa: PLC0415
        from dotleader.rules.settling import settle  # noqa: PLC0415

        asked = BY_NAME.keys() if len(books) == len(books_of(handbook)) else BY_NAME.keys() - _OF_BOOKS
        findings = settle(findings, trees, asked)
    return Linted(handbook, findings, laid, books)
