"""Findings as a JSON list, for programs. Fields are only ever added."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping

from dotleader.report.order import facts_of, ordered
from dotleader.report.places import place_object
from dotleader.source.finding import Finding, Fix, RuleFacts
from dotleader.source.suppression import Suppressed


def json_list(
    findings: Iterable[Finding], facts: Mapping[str, RuleFacts], suppressed: Iterable[Suppressed] = ()
) -> str:
    """One object for each finding. All ASCII, so that any pipe carries it.

    `suppressed` is null for what a lint shows; else it says what keeps the finding from being shown (`comment`, `rules
    block`, `baseline`) and why. `fix` is null, or the edits that mend it, and whether they are safe.

    `line` and `column` are counted from 1, columns in code points; `end_line` and `end_column` are those of the
    first character that is no longer meant.
    """
    held = {each.finding.order: each for each in suppressed}
    listed = ordered([*findings, *(each.finding for each in held.values())])
    return json.dumps([_object(finding, facts, held.get(finding.order)) for finding in listed], indent=2)


def _object(finding: Finding, facts: Mapping[str, RuleFacts], held: Suppressed | None) -> dict[str, object]:
    known = facts_of(finding, facts)
    return {
        "rule": finding.rule,
        "severity": known.severity.word,
        "message": finding.message,
        "help": finding.help,
        "reason": known.reason,
        **place_object(finding.spot),
        "related": [{**place_object(other.spot), "message": other.message} for other in finding.related],
        "confidence": known.confidence,
        "fix": _fix(finding.fix),
        "suppressed": None if held is None else {"by": held.by.word, "reason": held.reason},
    }


def _fix(fix: Fix | None) -> dict[str, object] | None:
    if fix is None:
        return None
    return {"safe": fix.safe, "edits": [{**place_object(edit.spot), "text": edit.text} for edit in fix.edits]}
