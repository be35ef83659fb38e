"""A source, and findings in it, for the tests of this folder."""

from __future__ import annotations

from dotleader.source.finding import Finding, Related, RuleFacts, Severity
from dotleader.source.text import SourceText, Spot

TEXT = """\
# An invented aircraft.
normal Before takeoff
  when holding short
  group Controls
    Flight controls ..... FREE AND CORRECT
    Airspeed ............ {VGG}
    Brakes\t\tHELD
    燃料ポンプ \u202e\x07 .......... ON é

speeds
  VG .................... 82 KIAS
"""
SOURCE = SourceText("books/normal.cards", TEXT)

FACTS = {
    "unknown-value": RuleFacts("unknown-value", Severity.ERROR, "A blank is no speed.", "common practice, no source"),
    "near-name": RuleFacts("near-name", Severity.WARNING, "Two names look like two things.", "NASA CR-177549 A(4)"),
    "long-list": RuleFacts("long-list", Severity.NOTE, "Long lists lose items.", "NASA CR-177549"),
}


def spot(marked: str, source: SourceText = SOURCE) -> Spot:
    """Where a text stands first."""
    start = source.text.index(marked)
    return Spot(source, start, start + len(marked))


def finding(rule: str, marked: str | Spot, message: str = "It is so.", *related: Related) -> Finding:
    where = spot(marked) if isinstance(marked, str) else marked
    return Finding(rule, where, message, "Mend it.", related)


UNKNOWN = finding(
    "unknown-value", "{VGG}", "No value `VGG` is declared.", Related(spot("VG ......"), "`VG` is declared here.")
)
