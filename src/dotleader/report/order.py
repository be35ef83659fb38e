"""The one order in which findings are shown, and what is known of their rules."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dotleader.source.finding import Finding, RuleFacts, Severity


def ordered(findings: Iterable[Finding]) -> list[Finding]:
    """By file, place, rank, rule and message; what would be shown twice is shown once."""
    seen: dict[tuple[object, ...], Finding] = {}
    for finding in findings:
        related = tuple((*other.spot.order, other.message) for other in finding.related)
        seen.setdefault((*finding.order, finding.help, related), finding)
    once: dict[tuple[object, ...], Finding] = {}
    for key in sorted(seen):
        once.setdefault(seen[key].order, seen[key])
    return list(once.values())


def facts_of(finding: Finding, facts: Mapping[str, RuleFacts]) -> RuleFacts:
    """A finding whose rule nobody knows is shown as an error rather than lost."""
    return facts.get(finding.rule) or RuleFacts(finding.rule, Severity.ERROR, "", "")


def severity_of(finding: Finding, facts: Mapping[str, RuleFacts]) -> Severity:
    return facts_of(finding, facts).severity
