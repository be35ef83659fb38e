"""What all stages found brought into its final form."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from operator import attrgetter
from typing import TYPE_CHECKING, NamedTuple

from dotleader.handbook.model import Setting
from dotleader.rules.allowance import Allowance, allowances, meant
from dotleader.rules.catalogue import BY_NAME
from dotleader.rules.follow_up import without_follow_ups
from dotleader.rules.same_slip import doubted
from dotleader.rules.suppressions import allow_of_error, allow_unknown_rule, allow_unused, allow_without_reason
from dotleader.source.finding import Finding, Severity
from dotleader.source.suppression import Held, Suppressed
from dotleader.syntax.tree import File

if TYPE_CHECKING:  # an old book alone has one
    from dotleader.rules.baseline import Baseline

_ORDER = attrgetter("order")
_Order = tuple[object, ...]
_Why = tuple[Held, str]


class Settled(NamedTuple):
    """`findings` are shown; `suppressed` are those that somebody has decided about, in the same order."""

    findings: list[Finding]
    suppressed: list[Suppressed]


def settle(findings: Iterable[Finding], files: Sequence[File], asked: Collection[str] = BY_NAME) -> list[Finding]:
    """The findings of a handbook without a `rules` block as they are shown; see `settled`."""
    return settled(findings, files, (), asked).findings


def settled(
    findings: Iterable[Finding],
    files: Sequence[File],
    settings: Sequence[Setting],
    asked: Collection[str] = BY_NAME,
    baseline: Baseline | None = None,
) -> Settled:
    """The findings as they are shown: each fault once, suppressions applied and judged, in one total order.

    `findings` are those of all stages, `files` the trees they were found in, `settings` the rows of the handbook's
    `rules` block; what is wrong with these rows cannot be turned off in them. `asked` names the rules that had their
    say; a suppression of another is not called unused. `baseline` takes from the rest what has been accepted.
    """
    found = doubted(sorted({finding.order: finding for finding in findings}.values(), key=_ORDER), files, BY_NAME)
    if settings:
        # Only a handbook that sets something pays for these imports.
        from dotleader.rules.judging import judged_settings, turned_off  # noqa: PLC0415
        from dotleader.rules.settings import spelling_on  # noqa: PLC0415
    if not settings or not spelling_on(settings):
        asked = frozenset(asked) - {"unknown-word"}
    allowed, judged = _suppressed(found, files, asked)
    if settings:
        off = turned_off(settings, BY_NAME)
        for finding in (*found, *judged):
            if finding.rule in off:
                allowed.setdefault(finding.order, (Held.RULES, off[finding.rule]))
        judged += judged_settings(settings, {finding.rule for finding in (*found, *judged)}, asked, BY_NAME)
    shown = {finding.order: finding for finding in (*without_follow_ups(found, files, BY_NAME), *judged)}
    if baseline is not None:
        left = sorted((finding for order, finding in shown.items() if order not in allowed), key=_ORDER)
        allowed |= {each.finding.order: (each.by, each.reason) for each in baseline.take(left, files)}
    kept = {order: finding for order, finding in shown.items() if order not in allowed}
    if allowed:
        kept |= _uncovered(found, files, allowed)
    return Settled(
        sorted(kept.values(), key=_ORDER),
        [Suppressed(shown[order], *allowed[order]) for order in sorted(shown.keys() & allowed.keys())],
    )


def _uncovered(
    found: Sequence[Finding], files: Sequence[File], allowed: Mapping[_Order, _Why]
) -> dict[_Order, Finding]:
    """Errors that were left out in favour of a finding that is allowed: they come back, for they cannot be allowed."""
    left = [finding for finding in found if finding.order not in allowed]
    errors = (f for f in without_follow_ups(left, files, BY_NAME) if BY_NAME[f.rule].severity is Severity.ERROR)
    return {finding.order: finding for finding in errors}


def _suppressed(
    found: Sequence[Finding], files: Sequence[File], asked: Collection[str]
) -> tuple[dict[_Order, _Why], list[Finding]]:
    """The orders of the findings that a comment allows, with its reason, and what is wrong with the comments."""
    allowed: dict[_Order, _Why] = {}
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
                for finding in covered:
                    allowed.setdefault(finding.order, (Held.COMMENT, allowance.reason))
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
