"""Findings as a JSON list, for programs. Fields are only ever added."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping

from dotleader.report.order import facts_of, ordered
from dotleader.report.places import place_object
from dotleader.source.finding import Finding, RuleFacts


def json_list(findings: Iterable[Finding], facts: Mapping[str, RuleFacts]) -> str:
    """One object for each finding. All ASCII, so that any pipe carries it.

    `line` and `column` are counted from 1, columns in code points; `end_line` and `end_column` are those of the
    first character that is no longer meant.
    """
    return json.dumps([_object(finding, facts) for finding in ordered(findings)], indent=2)


def _object(finding: Finding, facts: Mapping[str, RuleFacts]) -> dict[str, object]:
    known = facts_of(finding, facts)
    return {
        "rule": finding.rule,
        "severity": known.severity.word,
        "message": finding.message,
        "help": finding.help,
        "reason": known.reason,
        **place_object(finding.spot),
        "related": [{**place_object(other.spot), "message": other.message} for other in finding.related],
    }
