"""One slip in several places: as likely as not it is the declared name that is misspelt."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence

from dotleader.rules.rule import Rule
from dotleader.source.finding import Finding
from dotleader.source.record import replace
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import File

_Slip = tuple[str, str]


def doubted(findings: Sequence[Finding], files: Sequence[File], rules: Mapping[str, Rule]) -> list[Finding]:
    """The findings; where a spelling that stands more often than the declared one would become that, somebody looks.

    A slip of the pen is seldom made twice in the same letters. Mended without a question, `Lnding light` in the list of
    the equipment would go from there onto every card.
    """
    slips = Counter(filter(None, (_respelt(finding, rules) for finding in findings)))
    doubtful = {slip for slip, count in slips.items() if count > 1 and count >= _standing(slip[1], files)}
    if not doubtful:
        return list(findings)
    return [
        replace(finding, fix=replace(finding.fix, safe=False))
        if finding.fix is not None and _respelt(finding, rules) in doubtful
        else finding
        for finding in findings
    ]


def _respelt(finding: Finding, rules: Mapping[str, Rule]) -> _Slip | None:
    """What is written and what it would become, where a finding's safe fix is the spelling of a name."""
    fix = finding.fix
    if fix is None or not fix.safe or rules[finding.rule].family != "references" or len(fix.edits) != 1:
        return None
    return folded(fix.edits[0].spot.text), fix.edits[0].text


def _standing(name: str, files: Sequence[File]) -> int:
    """How often a name stands as it is declared, its declaration included."""
    whole = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)", re.IGNORECASE)
    return sum(len(whole.findall(file.source.text)) for file in files)
