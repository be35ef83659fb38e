"""One slip in several places: as likely as not it is the declared name that is misspelt."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from dotleader.rules.rule import Rule
from dotleader.source.finding import Finding
from dotleader.source.record import replace
from dotleader.syntax.plain import folded


def doubted(findings: Sequence[Finding], rules: Mapping[str, Rule]) -> list[Finding]:
    """The findings; where several would bring one spelling to that of one declaration, somebody has to look first.

    A slip of the pen is seldom made twice in the same letters. Mended without a question, `Lnding light` in the list of
    the equipment would go from there onto every card.
    """
    slips = Counter(filter(None, (_respelt(finding, rules) for finding in findings)))
    return [
        replace(finding, fix=replace(finding.fix, safe=False))
        if finding.fix is not None and slips[_respelt(finding, rules) or ("", "")] > 1
        else finding
        for finding in findings
    ]


def _respelt(finding: Finding, rules: Mapping[str, Rule]) -> tuple[str, str] | None:
    """What is written and what it would become, where a finding's safe fix is the spelling of a name."""
    fix = finding.fix
    if fix is None or not fix.safe or rules[finding.rule].family != "references" or len(fix.edits) != 1:
        return None
    return folded(fix.edits[0].spot.text), folded(fix.edits[0].text)
