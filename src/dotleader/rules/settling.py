"""What all stages found brought into its final form."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from operator import attrgetter

from dotleader.rules.allowance import Allowance, allowances, meant
from dotleader.rules.catalogue import BY_NAME
from dotleader.rules.follow_up import without_follow_ups
from dotleader.rules.suppressions import allow_of_error, allow_unknown_rule, allow_unused, allow_without_reason
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.tree import File

_ORDER = attrgetter("order")


def settle(findings: Iterable[Finding], files: Sequence[File], asked: Collection[str] = BY_NAME) -> list[Finding]:
    """The findings as they are shown: each fault once, suppressions applied and judged, in one total order.

    `findings` are those of all stages, `files` the trees they were found in. `asked` names the rules that had their
    say; a suppression of another is not called unused.
    """
    found = sorted({finding.order: finding for finding in findings}.values(), key=_ORDER)
    allowed, judged = _suppressed(found, files, asked)
    kept = {f.order: f for f in without_follow_ups(found, files, BY_NAME) if f.order not in allowed}
    if allowed:
        # An error that was left out in favour of a finding that is allowed comes back: errors cannot be allowed.
        left = [finding for finding in found if finding.order not in allowed]
        errors = (f for f in without_follow_ups(left, files, BY_NAME) if BY_NAME[f.rule].severity is Severity.ERROR)
        kept |= {finding.order: finding for finding in errors}
    return sorted([*kept.values(), *judged], key=_ORDER)


def _suppressed(
    found: Sequence[Finding], files: Sequence[File], asked: Collection[str]
) -> tuple[set[tuple[object, ...]], list[Finding]]:
    """The orders of the findings that are allowed, and what is wrong with the suppressions."""
    allowed: set[tuple[object, ...]] = set()
    judged: list[Finding] = []
    for file in files:
        if "llow" not in file.source.text:  # `allow`, or `Allow` at the head of a comment
            continue
        here = [finding for finding in found if finding.spot.source.name == file.source.name]
        for allowance in allowances(file):
            covered = [f for f in here if f.rule == allowance.rule and allowance.covers(f.spot)]
            judged.extend(_judged(allowance, bool(covered), asked))
            rule = BY_NAME.get(allowance.rule)
            if rule is not None and rule.severity is not Severity.ERROR:
                allowed.update(finding.order for finding in covered)
    return allowed, judged


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
