"""One line for each finding: `file:line:column: severity rule: message`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from dotleader.report.glyphs import escaped
from dotleader.report.order import facts_of, ordered
from dotleader.report.terminal import Terminal
from dotleader.source.finding import Finding, RuleFacts


def brief(findings: Iterable[Finding], facts: Mapping[str, RuleFacts], terminal: Terminal) -> Iterator[str]:
    """The lines, without line ends. Lines and columns are counted from 1, columns in code points."""
    for finding in ordered(findings):
        line, column = finding.spot.source.line_and_column(finding.spot.start)
        word = facts_of(finding, facts).severity.word
        place = f"{finding.spot.source.name}:{line}:{column}"
        yield escaped(f"{place}: {word} {finding.rule}: {' '.join(finding.message.split())}", terminal)
