"""The files of a handbook: the main one and what it includes, in reading order."""

from __future__ import annotations

import posixpath
from collections.abc import Callable
from typing import TypeAlias

from dotleader.source.finding import Finding
from dotleader.source.outcome import Outcome
from dotleader.source.record import record
from dotleader.source.text import SourceText, Span, Spot
from dotleader.syntax.parse import parse
from dotleader.syntax.tree import Block, File

Read: TypeAlias = Callable[[str], Outcome[SourceText] | str]
"""Reads a file by its path from the handbook's folder, forward slashes; or says in words why it cannot be read."""

MOST_FILES = 500


@record
class At:
    """A block in its file; turns the block's spans into places."""

    source: SourceText
    start: int
    block: Block

    def spot(self, span: Span) -> Spot:
        return Spot(self.source, self.start + span.start, self.start + span.end)


@record
class Gathered:
    """`blocks` in reading order, included ones where they are included."""

    files: tuple[File, ...]
    blocks: tuple[At, ...]


def gather(main: SourceText, main_path: str, read: Read) -> Outcome[Gathered]:
    """Parse the main file and, at their places, what it includes. `main_path` is counted from the handbook's folder."""
    work = _Gathering(read)
    work.take(main, main_path, ())
    return Outcome(Gathered(tuple(work.files), tuple(work.blocks)), tuple(work.findings))


class _Gathering:
    def __init__(self, read: Read) -> None:
        self.read = read
        self.files: list[File] = []
        self.blocks: list[At] = []
        self.findings: list[Finding] = []
        self.taken: dict[str, Spot] = {}

    def take(self, source: SourceText, path: str, above: tuple[str, ...]) -> None:
        parsed = parse(source)
        self.files.append(parsed.value)
        self.findings.extend(parsed.findings)
        for placed in parsed.value.blocks:
            at = At(source, placed.start, placed.block)
            self.blocks.append(at)
            if placed.block.head.keyword == "include" and placed.block.head.name is not None:
                self._include(at, path, (*above, path))

    def _include(self, at: At, path: str, above: tuple[str, ...]) -> None:
        name = at.block.head.name
        assert name is not None
        spot = at.spot(name.span)
        written = spot.text.strip()
        target = posixpath.normpath(posixpath.join(posixpath.dirname(path), written.replace("\\", "/")))
        trouble = self._refused(written, target, spot, above)
        if trouble is not None:
            self.findings.append(trouble)
            return
        self.taken[target] = spot
        result = self.read(target)
        if isinstance(result, str):
            help_ = "Write the path from the folder of this file, with forward slashes: `include emergency.cards`."
            self._say("missing-file", spot, f"`{written}` cannot be read: {result}.", help_)
            return
        self.findings.extend(result.findings)
        self.take(result.value, target, above)

    def _say(self, rule: str, spot: Spot, message: str, help_: str) -> None:
        self.findings.append(Finding(rule, spot, message, help_))

    def _refused(self, written: str, target: str, spot: Spot, above: tuple[str, ...]) -> Finding | None:
        if posixpath.isabs(target) or target == ".." or target.startswith("../") or written[1:2] == ":":
            return Finding(
                "include-outside",
                spot,
                f"`{written}` lies outside the handbook's folder.",
                "A handbook is made of files in its own folder and the folders in it. Copy the file there.",
            )
        if target in above:
            circle = " > ".join((*above[above.index(target) :], target))
            return Finding(
                "include-circle",
                spot,
                f"`{written}` includes itself: {circle}.",
                "Take out the `include` line that leads back.",
            )
        if target in self.taken:
            return Finding(
                "name-used-twice",
                spot,
                f"`{written}` is included twice.",
                "Include each file once.",
            )
        if len(self.files) >= MOST_FILES:
            return Finding(
                "missing-file",
                spot,
                f"`{written}` is not read: the handbook already has {MOST_FILES} files.",
                "Put several cards into one file.",
            )
        return None
