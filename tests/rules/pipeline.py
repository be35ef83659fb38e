"""A piece of source through the whole line: read, parsed, resolved, checked, settled."""

from __future__ import annotations

from collections.abc import Mapping

from dotleader.handbook.contents import books_of
from dotleader.handbook.gather import Read
from dotleader.handbook.resolve import resolve
from dotleader.page.lay.laid_books import LaidBooks
from dotleader.rules.baseline import NAME, Baseline, entries_of
from dotleader.rules.checks import check
from dotleader.rules.settling import settled
from dotleader.rules.subject import subject_of
from dotleader.source.decode import decode
from dotleader.source.finding import Finding
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText

MAIN = "handbook.cards"


def findings_of(
    text: str | bytes, included: Mapping[str, str] | None = None, *, laid: bool = True, baseline: str = ""
) -> list[Finding]:
    """What is said of a handbook in the file `handbook.cards`; `included` are further files by their paths.

    `baseline` is what has been accepted of it.
    Without `laid` its cards are not laid out, and nothing is said of their length.
    """
    data = text if isinstance(text, bytes) else text.encode()
    main = decode(MAIN, data)
    resolved = resolve(main.value, MAIN, _reader(included or {}))
    handbook, files = resolved.value
    possible = not any(finding.rule == "impossible-stock" for finding in resolved.findings)
    books = books_of(handbook)
    subject = subject_of(handbook, LaidBooks(handbook, books).continued if possible and laid else None, books)
    found = [*main.findings, *resolved.findings, *check(subject)]
    if not baseline:
        return settled(found, files, handbook.settings).findings
    entries = entries_of(SourceText(NAME, baseline))
    assert not isinstance(entries, str)
    known = Baseline(entries)
    return [*settled(found, files, handbook.settings, baseline=known).findings, *known.unused()]


def said(findings: list[Finding]) -> list[tuple[str, str]]:
    """Rule and marked text of each."""
    return [(finding.rule, finding.spot.text) for finding in findings]


def _reader(included: Mapping[str, str]) -> Read:
    def read(path: str) -> Outcome[SourceText] | str:
        return decode(path, included[path].encode()) if path in included else "there is no such file"

    return read
