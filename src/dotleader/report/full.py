"""Findings for people: what is, the lines it is about, what to do, why it matters and who says so."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from dotleader.report.excerpt import excerpt, place_of
from dotleader.report.glyphs import escaped, width_of
from dotleader.report.order import facts_of, ordered
from dotleader.report.paint import BOLD, MARK, QUIET, WEIGHT, painted
from dotleader.report.terminal import Terminal
from dotleader.report.wrapping import wrapped
from dotleader.source.finding import Finding, RuleFacts, Severity
from dotleader.source.text import Spot

_LABEL = 10  # columns of the labels at the left of the texts
_FEWEST_DOTS = 3
_SMALLEST_GUTTER = 5
_RELATED_SHOWN = 4  # further places that are shown with their lines; the rest are named only


def full(findings: Iterable[Finding], facts: Mapping[str, RuleFacts], terminal: Terminal) -> Iterator[str]:
    """The lines, without line ends; a blank line after each finding.

    Reason and source of a rule stand with its first finding, and the lines of a place with the first of several that
    a rule has to say of it.
    """
    before: Finding | None = None
    explained: set[str] = set()
    for finding in ordered(findings):
        again = before is not None and (before.spot.order, before.rule) == (finding.spot.order, finding.rule)
        known = facts_of(finding, facts)
        yield from _one(finding, known, terminal, again=again, explain=finding.rule not in explained)
        yield ""
        before = finding
        explained.add(finding.rule)


def _one(finding: Finding, known: RuleFacts, terminal: Terminal, *, again: bool, explain: bool) -> Iterator[str]:
    places = [place_of(spot) for spot in (finding.spot, *(other.spot for other in finding.related))]
    gutter = max(_SMALLEST_GUTTER, *(len(str(place.last)) for place in places))
    yield from _heading(finding, known.severity, terminal)
    for line in wrapped(finding.message, terminal.width - 2, terminal):
        yield "  " + painted(line, BOLD, terminal)
    if not again:
        yield from excerpt(finding.spot, gutter, MARK[known.severity], terminal, block=True)
    yield from _labelled("help", finding.help, terminal)
    if explain:
        yield from _labelled("reason", known.reason, terminal)
        yield from _labelled("source", known.source, terminal)
    for number, other in enumerate(finding.related):
        yield from _labelled("see", f"{_where(other.spot)}  {other.message}", terminal)
        if number < _RELATED_SHOWN:
            yield from excerpt(other.spot, gutter, QUIET, terminal, block=False)


def _heading(finding: Finding, severity: Severity, terminal: Terminal) -> Iterator[str]:
    """Weight and rule, leader dots, place; the place on a line of its own where it is long."""
    rule = escaped(finding.rule, terminal)
    place = escaped(_where(finding.spot), terminal)
    left = f"{painted(severity.word, WEIGHT[severity], terminal)} {painted(rule, BOLD, terminal)}"
    used = len(severity.word) + 1 + width_of(rule, terminal) + width_of(place, terminal) + 2
    dots = terminal.width - used
    if dots >= _FEWEST_DOTS:
        yield f"{left} {painted('.' * dots, QUIET, terminal)} {place}"
    else:
        yield f"{left} {painted('.' * _FEWEST_DOTS, QUIET, terminal)}"
        yield f"  {place}"


def _where(spot: Spot) -> str:
    line, column = spot.source.line_and_column(spot.start)
    return f"{spot.source.name}:{line}:{column}"


def _labelled(label: str, text: str, terminal: Terminal) -> Iterator[str]:
    if not text:
        return
    said = painted(label, QUIET, terminal) + " " * (_LABEL - 2 - len(label))
    for line in wrapped(text, terminal.width - _LABEL, terminal):
        yield f"  {said}{line}".rstrip()
        said = " " * (_LABEL - 2)
