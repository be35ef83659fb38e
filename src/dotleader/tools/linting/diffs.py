"""What would change in files: for people escaped and in colour, for programs exactly as it is."""

from __future__ import annotations

import codecs
import io
import os
import sys
from collections.abc import Iterable

from dotleader.report.glyphs import escaped
from dotleader.report.paint import painted
from dotleader.report.terminal import terminal_for
from dotleader.source.record import record
from dotleader.tools.files import shown_name
from dotleader.tools.saying import say, say_bytes


@record
class Changed:
    """A file before and after, as text and as bytes."""

    path: str
    before: str
    after: str
    old: bytes
    new: bytes

    @property
    def name(self) -> str:
        return shown_name(self.path)

    @property
    def changed(self) -> bool:
        return self.old != self.new


def changed(path: str, old: bytes, before: str, after: str) -> Changed:
    """A file with another text. Its byte-order mark and its kind of line end stay."""
    if b"\r" in old and b"\n" not in old:  # read as line feeds
        before, after = before.replace("\n", "\r"), after.replace("\n", "\r")
    mark = codecs.BOM_UTF8 if old.startswith(codecs.BOM_UTF8) else b""
    return Changed(path, before, after, old, mark + after.encode())


def show_diffs(changed: Iterable[Changed]) -> None:
    from difflib import unified_diff  # only where a difference is shown  # noqa: PLC0415

    terminal = terminal_for(sys.stdout, os.environ)
    for each in changed:
        lines = list(
            unified_diff(
                list(io.StringIO(each.before, newline="\n")),
                list(io.StringIO(each.after, newline="\n")),
                each.name,
                each.name,
            )
        )
        if sys.stdout is not None and sys.stdout.isatty():
            paint = {"+": "32", "-": "31", "@": "36"}
            say(painted(escaped(line.rstrip("\r\n"), terminal), paint.get(line[0], ""), terminal) for line in lines)
        else:
            ended = (line if line.endswith("\n") else line + "\n\\ No newline at end of file\n" for line in lines)
            say_bytes("".join(ended).encode("utf-8", "surrogateescape"))
