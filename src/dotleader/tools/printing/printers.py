"""Printers and how far their backs are out: as data, and as the text that is kept of them.

The text is in the form of the language, so that it can be read, and mended by hand.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from dotleader.handbook.stocks.sizes import paper_named
from dotleader.page.sheet.alignment import Moved, beyond, said_moved, said_stretched
from dotleader.page.sheet.duplex import TURNINGS, Turning, edge_said
from dotleader.source.record import record, replace

NONE = "none"
"""The name that stands for no printer."""

USUAL_PAPER = "A4"
"""What a printer is measured on where nothing is said."""

LONGEST_NAME = 60

_ABOUT = "# How far the backs of printers are out of register, seen from the front. Kept by `dotleader printer`.\n"
_COLUMN = 24
_NOT_READ = "this line is not understood"
_HEAD = re.compile(r"printer\s+(\S.*)")
_ROW = re.compile(r"\s+(\S.*?)\s+\.{2,}\s+(\S.*)")
_NUMBER = r"(\d{1,2}(?:\.\d{1,4})?)"
_MOVED = re.compile(rf"{_NUMBER} mm (right|left), {_NUMBER} mm (down|up)")
_STRETCHED = re.compile(rf"(?:{_NUMBER} % (wider|narrower))?(?:, )?(?:{_NUMBER} % (longer|shorter))?")


@record
class Printer:
    """`paper` is what it was measured on, turned on the edge of `turning`.

    The default one is taken where none is named.
    """

    name: str
    moved: Moved
    paper: str
    default: bool = False
    turning: Turning = "long-edge"


@record
class Damage:
    """A line that cannot be read, counted from 1, and what is the matter."""

    line: int
    what: str


def printer_name(text: str) -> str:
    """A name with single spaces; '' where it cannot be one."""
    name = " ".join(text.split())
    return name if name.isprintable() and len(name) <= LONGEST_NAME and not name.startswith("-") else ""


def found(name: str, printers: Sequence[Printer]) -> Printer | None:
    """The printer of that name, whatever its capitals."""
    wanted = " ".join(name.split()).casefold()
    return next((printer for printer in printers if printer.name.casefold() == wanted), None)


def written(printers: Sequence[Printer]) -> str:
    """The text that is kept."""
    return "\n".join([_ABOUT, *("".join(f"{line}\n" for line in block(printer)) for printer in printers)])


def block(printer: Printer) -> Iterator[str]:
    """One printer's lines."""
    yield f"printer {printer.name}"
    rows = {
        "back moved": said_moved(printer.moved),
        "back stretched": said_stretched(printer.moved),
        "measured on": printer.paper,
        "turned on": edge_said(printer.turning),
        "default": "yes" if printer.default else "",
    }
    for left, right in rows.items():
        if right:
            yield f"  {left} {'.' * (_COLUMN - len(left) - 3)} {right}"


def read(text: str) -> tuple[Printer, ...] | Damage:
    """The printers of a text that is kept, or the first line of it that cannot be read."""
    blocks: list[_Block] = []
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.startswith("#"):
            continue
        if head := _HEAD.fullmatch(line.rstrip()):
            blocks.append(_Block(number, head[1], []))
        elif (row := _ROW.fullmatch(line.rstrip())) and blocks:
            blocks[-1].rows.append((number, row[1], row[2]))
        else:
            return Damage(number, _NOT_READ)
    printers: list[Printer] = []
    for each in blocks:
        printer = _printer(each, printers)
        if isinstance(printer, Damage):
            return printer
        printers.append(printer)
    return tuple(printers)


@record
class _Block:
    line: int
    name: str
    rows: list[tuple[int, str, str]]


def _printer(of: _Block, others: Sequence[Printer]) -> Printer | Damage:
    name = printer_name(of.name)
    if not name or name.casefold() == NONE:
        return Damage(of.line, "no printer can have this name")
    if found(name, others):
        return Damage(of.line, "this printer is there twice")
    printer = Printer(name, Moved(), "")
    for place, (number, left, right) in enumerate(of.rows):
        changed = _changed(printer, left, right)
        if isinstance(changed, str):
            return Damage(number, changed)
        if left in (other for _, other, _ in of.rows[:place]):
            return Damage(number, "this is said twice")
        if changed.default and any(other.default for other in others):
            return Damage(number, "more than one printer is the default")
        printer = changed
    missing = {"back moved", "measured on"} - {left for _, left, _ in of.rows}
    return Damage(of.line, f"`{min(missing)}` is missing below this line") if missing else printer


def _changed(printer: Printer, left: str, right: str) -> Printer | str:
    """The printer with what a line says of it, or what is the matter with the line."""
    moved = printer.moved
    if left == "back moved" and (told := _MOVED.fullmatch(right)):
        moved = replace(moved, right=_of(told[1], told[2] == "left", 3), down=_of(told[3], told[4] == "up", 3))
    elif left == "back stretched" and (told := _STRETCHED.fullmatch(right)):
        wider = _of(told[1] or "0", told[2] == "narrower", 4)
        moved = replace(moved, wider=wider, longer=_of(told[3] or "0", told[4] == "shorter", 4))
    elif left == "measured on" and (paper := paper_named(right)):
        return replace(printer, paper=paper)
    elif left == "turned on" and (turning := next((each for each in TURNINGS if edge_said(each) == right), None)):
        return replace(printer, turning=turning)
    elif left == "default" and right == "yes":
        return replace(printer, default=True)
    else:
        return _NOT_READ
    too_far = next(beyond(moved), "")
    return "that is more than is righted" if too_far else replace(printer, moved=moved)


def _of(number: str, minus: bool, places: int) -> int:
    """A decimal number in units of its last place but so many; more figures than that are cut off."""
    whole, _, rest = number.partition(".")
    value = int(whole + rest[:places].ljust(places, "0"))
    return -value if minus else value
