"""All rules asked, and what they and the stages before them found brought into its final form."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from operator import attrgetter

from dotleader.rules.allowance import Allowance, allowances, meant
from dotleader.rules.catalogue import BY_NAME, RULES
from dotleader.rules.follow_up import without_follow_ups
from dotleader.rules.subject import Subject
from dotleader.rules.suppressions import allow_of_error, allow_unknown_rule, allow_unused, allow_without_reason
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.tree import File

_ORDER = attrgetter("order")


def check(subject: Subject) -> list[Finding]:
    """What the rules with a check of their own find, in the order of the catalogue."""
    return [finding for rule in RULES if rule.check is not None for finding in rule.check(subject)]


def settle(findings: Iterable[Finding], files: Sequence[File], asked: Collection[str] = BY_NAME) -> list[Finding]:
    """The findings as they are shown: each fault once, suppressions applied and judged, in one total order.

    `findings` are those of all stages, `files` the trees they were found in. `asked` names the rules that had their
    say; a suppression of another is not called unused.
    """
    found = sorted({finding.order: finding for finding in findings}.values(), key=_ORDER)
    standing = without_follow_ups(found, files, BY_NAME)
    by_file: dict[str, list[Finding]] = {}
    for finding in found:
        by_file.setdefault(finding.spot.source.name, []).append(finding)
    allowed: set[tuple[object, ...]] = set()
    judged: list[Finding] = []
    for file in files:
        here = by_file.get(file.source.name, [])
        for allowance in allowances(file):
            suppressed = [f for f in here if f.rule == allowance.rule and allowance.covers(f.spot)]
            verdict = _judged(allowance, bool(suppressed), asked)
            judged.extend(verdict)
            if allowance.rule in BY_NAME and BY_NAME[allowance.rule].severity is not Severity.ERROR:
                allowed.update(finding.order for finding in suppressed)
    kept = [finding for finding in standing if finding.order not in allowed]
    return sorted(kept + judged, key=_ORDER)


def _judged(allowance: Allowance, suppresses: bool, asked: Collection[str]) -> list[Finding]:
    """What is wrong with a suppression: one finding at most."""
    rule, spot = allowance.rule, allowance.spot
    known = BY_NAME.get(rule)
    if known is None:
        return [allow_unknown_rule.finding(spot, rule, BY_NAME)] if meant(allowance) else []
    if known.severity is Severity.ERROR:
        return [allow_of_error.finding(spot, rule)]
    if not suppresses and rule in asked:
        return [allow_unused.finding(spot, rule)]
    if not allowance.reason:
        return [allow_without_reason.finding(spot, rule)]
    return []
