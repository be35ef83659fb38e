"""Short ways to a resolved handbook in tests."""

from __future__ import annotations

from textwrap import dedent

from dotleader.handbook.model import Handbook
from dotleader.handbook.resolve import resolve
from dotleader.source.finding import Finding
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText


def resolved(text: str, **included: str) -> tuple[Handbook, tuple[Finding, ...]]:
    """The handbook of a text and its findings; `included` are files by their name without `.cards`."""
    files = {f"{name.replace('__', '/')}.cards": dedent(content) for name, content in included.items()}

    def read(path: str) -> Outcome[SourceText] | str:
        return Outcome(SourceText(path, files[path])) if path in files else "no such file"

    outcome = resolve(SourceText("main.cards", dedent(text)), "main.cards", read)
    return outcome.value[0], outcome.findings


def said(text: str, **included: str) -> list[tuple[str, str]]:
    """Rule and marked text of each finding, in order."""
    findings = sorted(resolved(text, **included)[1], key=lambda finding: finding.order)
    return [(finding.rule, finding.spot.text) for finding in findings]
