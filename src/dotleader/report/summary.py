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
    where = {finding.spot.source.name for finding in findings}
    return f"{weights(findings, facts)} in {counted(len(where), 'file')}"


def weights(findings: Sequence[Finding], facts: Mapping[str, RuleFacts]) -> str:
    """How many of each weight: `1 error, 2 warnings and 1 note`; empty where there are none."""
    found = [severity_of(finding, facts) for finding in findings]
    parts = [counted(found.count(weight), weight.word) for weight in reversed(Severity) if weight in found]
    return " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)
