"""Findings as SARIF 2.1.0 (OASIS, "Static Analysis Results Interchange Format"), for code-scanning services."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable, Mapping, Sequence
from hashlib import sha256
from urllib.parse import quote

from dotleader import __version__
from dotleader.report.order import facts_of, ordered
from dotleader.source.finding import Finding, Fix, RuleFacts, Severity
from dotleader.source.suppression import Held, Suppressed
from dotleader.source.text import Spot

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
BASE = "SRCROOT"
"""Stands for the folder that the lint was started in; where that is, is for the reader to say."""
FINGERPRINT = "content/v1"
_LEVEL = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "note"}
_Object = dict[str, object]


def sarif(
    findings: Iterable[Finding],
    suppressed: Iterable[Suppressed],
    facts: Mapping[str, RuleFacts],
    keys: Mapping[tuple[object, ...], tuple[str, ...]],
    *,
    complete: bool,
) -> str:
    """One log with one run, all ASCII. Columns are counted in code points, which `columnKind` says.

    `keys` hold by a finding's order what it is known by whatever stands above it; `complete` is false where something
    could not be read.
    """
    held = {each.finding.order: each for each in suppressed}
    results = ordered([*findings, *(each.finding for each in held.values())])
    rules = sorted({finding.rule for finding in results})
    index = {rule: number for number, rule in enumerate(rules)}
    driver: _Object = {
        "name": "dotleader",
        "semanticVersion": __version__,
        "rules": [_rule(facts_of(finding, facts)) for finding in _one_each(results)],
    }
    run: _Object = {
        "tool": {"driver": driver},
        "invocations": [{"executionSuccessful": complete}],
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {BASE: {"description": {"text": "The folder in which dotleader was started."}}},
        "results": [_result(finding, facts, index, held.get(finding.order), keys) for finding in results],
    }
    return json.dumps({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, indent=2)


def _one_each(findings: Sequence[Finding]) -> list[Finding]:
    """A finding of each rule, by the names of the rules."""
    by_rule = {finding.rule: finding for finding in reversed(findings)}
    return [by_rule[rule] for rule in sorted(by_rule)]


def _rule(known: RuleFacts) -> _Object:
    rule: _Object = {
        "id": known.name,
        "defaultConfiguration": {"level": _LEVEL[known.severity]},
        "properties": {
            "tags": [known.family] if known.family else [],
            "confidence": known.confidence,
            "fix": known.fix or "none",
        },
    }
    if known.what:
        short = known.what.partition(". ")[0].rstrip(".") + "."
        help_ = f"{known.what}\n\n{known.reason}\n\nSource: {known.source}.\n\n{known.mend}"
        rule |= {
            "shortDescription": _message(short),
            "fullDescription": _message(known.what),
            "help": {**_message(help_.replace("`", "")), "markdown": _braces_doubled(help_)},
        }
    return rule


def _result(
    finding: Finding,
    facts: Mapping[str, RuleFacts],
    index: Mapping[str, int],
    held: Suppressed | None,
    keys: Mapping[tuple[object, ...], tuple[str, ...]],
) -> _Object:
    known = facts_of(finding, facts)
    result: _Object = {
        "ruleId": finding.rule,
        "ruleIndex": index[finding.rule],
        "level": _LEVEL[known.severity],
        "message": _message(f"{finding.message} {finding.help}".strip()),
        "locations": [_location(finding.spot)],
        "suppressions": [] if held is None else [_suppression(held)],
    }
    if finding.order in keys:
        digest = sha256("\0".join(keys[finding.order]).encode("utf-8", "backslashreplace")).hexdigest()
        result["partialFingerprints"] = {FINGERPRINT: digest[:32]}
    if finding.related:
        result["relatedLocations"] = [
            {"id": number, **_location(other.spot), "message": _message(other.message)}
            for number, other in enumerate(finding.related, 1)
        ]
    if finding.fix is not None:
        result["fixes"] = [_fix(finding.fix)]
    return result


def _suppression(held: Suppressed) -> _Object:
    kind = "external" if held.by is Held.BASELINE else "inSource"
    return {"kind": kind, "status": "accepted", "justification": held.reason or "No reason was given."}


def _fix(fix: Fix) -> _Object:
    changes: dict[str, list[_Object]] = {}
    artifacts: dict[str, _Object] = {}
    for edit in fix.edits:
        name = edit.spot.source.name
        artifacts[name] = _artifact(name)
        changes.setdefault(name, []).append(
            {"deletedRegion": _region(edit.spot), "insertedContent": {"text": edit.text}}
        )
    return {
        "description": _message("Safe: no meaning changes." if fix.safe else "Unsafe: somebody has to look."),
        "artifactChanges": [{"artifactLocation": artifacts[name], "replacements": changes[name]} for name in changes],
    }


def _message(text: str) -> _Object:
    return {"text": _braces_doubled(text)}


def _braces_doubled(text: str) -> str:
    """Single braces hold the places of arguments in a message (section 3.11.5)."""
    return text.replace("{", "{{").replace("}", "}}")


def _location(spot: Spot) -> _Object:
    return {"physicalLocation": {"artifactLocation": _artifact(spot.source.name), "region": _region(spot)}}


def _artifact(name: str) -> _Object:
    """Relative to the folder that the lint was started in; what lies on another drive has its own beginning."""
    if name.startswith("/"):
        return {"uri": "file://" + _quoted(name)}
    if name[1:3] == ":/":
        return {"uri": "file:///" + name[:2] + _quoted(name[2:])}
    return {"uri": _quoted(name), "uriBaseId": BASE}


def _quoted(name: str) -> str:
    """Percent-encoded, by its bytes where a name is no UTF-8."""
    return quote(name, errors=sys.getfilesystemencodeerrors())


def _region(spot: Spot) -> _Object:
    """Lines and columns from 1; the end is that of the first character no longer meant."""
    line, column = spot.source.line_and_column(spot.start)
    end_line, end_column = spot.source.line_and_column(spot.end)
    return {"startLine": line, "startColumn": column, "endLine": end_line, "endColumn": end_column}
