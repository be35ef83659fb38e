"""The few colours of a terminal. Weight of a finding is always said in a word too."""

from __future__ import annotations

from dotleader.report.terminal import Terminal
from dotleader.source.finding import Severity

BOLD = "1"
QUIET = "2"
WEIGHT = {Severity.ERROR: "1;31", Severity.WARNING: "1;33", Severity.NOTE: "1;36"}
MARK = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


def painted(text: str, paint: str, terminal: Terminal) -> str:
    return f"\x1b[{paint}m{text}\x1b[0m" if terminal.colour and paint and text else text
