"""What `explain` shows, set with rich: the console, and the few shapes its pages are made of."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable

from rich.cells import cell_len
from rich.console import Console, Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from dotleader.report.glyphs import escaped
from dotleader.report.terminal import Terminal, terminal_for
from dotleader.source.finding import Severity

WEIGHT = {Severity.ERROR: "bold red", Severity.WARNING: "bold yellow", Severity.NOTE: "bold cyan"}
_QUOTED = re.compile(r"`[^`\n]+`")
_CURRENT = re.compile(r"\d (?:A|Ah|V|%|min)(?!\w)")
_TIE = "\ue000"  # a space where no line is broken: rich breaks at every real one
_TIED = 44
_TIED_PART = 28


def show(*parts: RenderableType) -> str:
    """The parts below each other, as text for this terminal."""
    terminal = terminal_for(sys.stdout, os.environ)
    console = Console(
        width=terminal.width,
        color_system="standard" if terminal.colour else None,
        force_terminal=terminal.colour,
        no_color=not terminal.colour,
        highlight=False,
        legacy_windows=False,
    )
    with console.capture() as captured:
        console.print(Group(*parts))
    return "\n".join(line.rstrip() for line in captured.get().replace(_TIE, " ").splitlines())


def terminal() -> Terminal:
    return terminal_for(sys.stdout, os.environ)


def prose(text: str, style: str = "") -> Text:
    """Words for people, what stands in backquotes set apart; nothing in them is taken for markup.

    No line is broken inside what is quoted, nor between a number and a unit of the electrical system or of time.
    """
    words = escaped(" ".join(text.split()), terminal())
    said = Text(_CURRENT.sub(_tied, _QUOTED.sub(_tied, words)), style=style)
    said.highlight_regex(_QUOTED, "bold")
    return said


def enumerated(text: str) -> Text:
    """Words for people that are parted by commas: no line is broken inside a short part, so that a control and its
    position stay together."""
    most = min(_TIED_PART, terminal().width * 2 // 5)
    parts = escaped(" ".join(text.split()), terminal()).split(", ")
    return Text(", ".join(part.replace(" ", _TIE) if len(part) <= most else part for part in parts))


def _tied(quoted: re.Match[str]) -> str:
    """What is quoted stays on one line, if it is short enough for that."""
    return quoted[0].replace(" ", _TIE) if len(quoted[0]) <= _TIED else quoted[0]


def dotted(left: Text, right: Text) -> Text:
    """Two texts at the ends of a line, joined by a leader."""
    dots = terminal().width - cell_len(left.plain) - cell_len(right.plain) - 2
    return Text.assemble(left, (f" {'.' * max(3, dots)} ", "dim"), right)


def labelled(rows: Iterable[tuple[str, Text]]) -> Padding:
    """Label and what it says, in two columns; rows without a text are left out."""
    return _grid(((Text(label, style="dim"), said) for label, said in rows if said.plain), 2)


def listed(rows: Iterable[tuple[str, Text, Text]]) -> Padding:
    """Name, a short word about it, and what it says, in three columns."""
    return _grid(((Text(name), word, said) for name, word, said in rows), 3)


def _grid(rows: Iterable[tuple[Text, ...]], columns: int) -> Padding:
    table = Table.grid(padding=(0, 2, 0, 0))
    for _ in range(columns - 1):
        table.add_column(no_wrap=True)
    table.add_column(ratio=1)
    for row in rows:
        table.add_row(*row)
    return indented(table)


def indented(part: RenderableType, by: int = 2) -> Padding:
    return Padding(part, (0, 0, 0, by))
