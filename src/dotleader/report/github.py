"""Findings as commands that a GitHub workflow turns into annotations.

The form is that of "Workflow commands for GitHub Actions" in GitHub's documentation: `::error file=...::message`, with
percent, carriage return and line feed escaped, in properties colon and comma too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from dotleader.report.order import facts_of, ordered
from dotleader.source.finding import Finding, RuleFacts, Severity

_COMMAND = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "notice"}


def github(findings: Iterable[Finding], facts: Mapping[str, RuleFacts]) -> Iterator[str]:
    """One line each. Lines and columns are counted from 1; `endColumn` is that of the last character meant."""
    for finding in ordered(findings):
        known = facts_of(finding, facts)
        spot = finding.spot
        line, column = spot.source.line_and_column(spot.start)
        last = max(spot.end - 1, spot.start)
        end_line, end_column = spot.source.line_and_column(last)
        place = {"file": spot.source.name, "line": str(line), "endLine": str(end_line), "col": str(column)}
        if end_line == line:  # columns of several lines are refused there
            place["endColumn"] = str(end_column)
        place["title"] = finding.rule
        properties = ",".join(f"{name}={_property(value)}" for name, value in place.items())
        yield f"::{_COMMAND[known.severity]} {properties}::{_data(f'{finding.message} {finding.help}'.strip())}"


def _data(text: str) -> str:
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
