"""Text to tree. Never fails: what is not understood becomes a broken node with a finding beside it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Protocol

from dotleader.source.finding import Finding, Fix, swapped
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText, Span, Spot
from dotleader.syntax.blocks import RawLine, chunks, is_head, raw_lines
from dotleader.syntax.heads import head_line
from dotleader.syntax.line_faults import short
from dotleader.syntax.nest import ALLOW, nested
from dotleader.syntax.tree import Allow, Blank, Block, Broken, Comment, Fault, File, Head, Line, Mend, Parsed, Placed


class Known(Protocol):
    """Parsed blocks by their texts, kept from an earlier run."""

    def known(self, text: str) -> Parsed | None: ...

    def learn(self, text: str, parsed: Parsed) -> None: ...


_known: Known | None = None


@contextmanager
def knowing(known: Known | None) -> Iterator[None]:
    """Inside, blocks that are known are not parsed again, and new ones are told of."""
    global _known  # noqa: PLW0603  # blocks are parsed in many places, and what is known holds for all of them
    before, _known = _known, known
    try:
        yield
    finally:
        _known = before


def parse_block(text: str) -> Parsed:
    """One block from its text (a chunk of a file); depends on nothing else."""
    if _known is None:
        return _parsed(text)
    parsed = _known.known(text)
    if parsed is None:
        parsed = _parsed(text)
        _known.learn(text, parsed)
    return parsed


def _parsed(text: str) -> Parsed:
    lines = list(raw_lines(text))
    faults: list[Fault] = []
    first = next((n for n, line in enumerate(lines) if line.text), len(lines))
    if first == len(lines) or lines[first].text.startswith("#"):
        return _headless(lines, len(text))
    if lines[first].indent > 0 and not is_head(lines[first].text):
        return _headless(lines, len(text))
    raw = lines[first]
    found = ALLOW.search(raw.text)
    allow, shown = None, raw.text
    if found:
        allow = Allow(found[2], found[3].strip(), Span(raw.start + found.start(1), raw.start + found.end(1)))
        shown = raw.text[: found.start()].rstrip()
    if raw.indent > 0:
        faults.append(_indented_head(raw, shown))
    head = head_line(shown, raw.start, allow, faults)
    return Parsed(Block(head, nested(head, lines[first + 1 :], faults), len(text)), tuple(faults))


def _indented_head(line: RawLine, shown: str) -> Fault:
    return Fault(
        "tab-indentation" if line.tabs else "uneven-indentation",
        Span(line.start, line.start + len(shown)),
        f"`{short(shown)}` opens a block, but is indented.",
        "Begin it at the left edge, and indent what belongs to it; it is read so.",
        Mend(Span(line.start - len(line.lead), line.start), "", safe=True),
    )


def _headless(lines: list[RawLine], size: int) -> Parsed:
    """A run of comments, or what stands before any block: one finding, however many lines it is."""
    strays = [line for line in lines if line.text and not line.text.startswith("#")]
    faults: list[Fault] = []
    if strays:
        stray = strays[0]
        more = "" if len(strays) == 1 else f", and so do {len(strays) - 1} lines below it"
        if len(strays) == 2:
            more = ", and so does a line below it"
        faults.append(
            Fault(
                "stray-line",
                Span(stray.start, stray.start + len(stray.text)),
                f"`{short(stray.text)}` stands before any block{more}.",
                "Begin with an unindented line that opens a block, such as `normal Before takeoff`.",
            )
        )
    head = Head("", None, None, None, Span(0, 0))
    return Parsed(Block(head, tuple(map(_loose, lines)), size), tuple(faults))


def _loose(line: RawLine) -> Line:
    span = Span(line.start, line.start + len(line.text))
    if not line.text:
        return Line(span, Blank())
    if line.text.startswith("#"):
        found = ALLOW.match(line.text)
        allow = Allow(found[2], found[3].strip(), span) if found else None
        return Line(span, Comment(line.text), (), allow)
    return Line(span, Broken(line.text))


def _fix(source: SourceText, start: int, fault: Fault) -> Fix | None:
    mend = fault.mend
    if mend is None:
        return None
    return swapped(Spot(source, start + mend.span.start, start + mend.span.end), mend.text, safe=mend.safe)


def parse(source: SourceText) -> Outcome[File]:
    """The tree of a file, and what was wrong with its form."""
    blocks: list[Placed] = []
    findings: list[Finding] = []
    for chunk in chunks(source.text):
        parsed = parse_block(chunk.text)
        blocks.append(Placed(chunk.start, parsed.block))
        for fault in parsed.faults:
            spot = Spot(source, chunk.start + fault.span.start, chunk.start + fault.span.end)
            findings.append(Finding(fault.rule, spot, fault.message, fault.help, fix=_fix(source, chunk.start, fault)))
    return Outcome(File(source, tuple(blocks)), tuple(findings))
