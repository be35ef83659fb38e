"""The last line: how many findings of which weight, or what was looked at."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dotleader.report.order import severity_of
from dotleader.source.finding import Finding, RuleFacts, Severity


def counted(number: int, noun: str, several: str = "") -> str:
    return f"{number:,} {noun if number == 1 else several or noun + 's'}"


def summary(findings: Sequence[Finding], facts: Mapping[str, RuleFacts], cards: int, files: int) -> str:
    """`findings` as shown; `cards` and `files` are what was looked at."""
    if not findings:
        return f"no findings: {counted(cards, 'card')} in {counted(files, 'file')}"
    weights = [severity_of(finding, facts) for finding in findings]
    parts = [counted(weights.count(weight), weight.word) for weight in reversed(Severity) if weight in weights]
    where = {finding.spot.source.name for finding in findings}
    said = " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)
    return f"{said} in {counted(len(where), 'file')}"
