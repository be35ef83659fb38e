"""The declared numbers in one place: speeds, values and gauges in section 2, their sources in section 1."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from dotleader.handbook.model import Declared, From, Gauge, Handbook
from dotleader.page.drawn import mm
from dotleader.page.laid import Frame, LaidCard, LaidFace
from dotleader.page.lay.flow import flowed
from dotleader.page.lay.measures import SMALL, smallest_in
from dotleader.page.lay.tables import ROW_AIR, cells, crowded, tables
from dotleader.page.type.words import Words

UNVERIFIED = "UNVERIFIED"
NARROW = mm(90)
"""Below this, where type is 12, everything after a row's name stands in one column; so it does where words would be
parted."""

AIRS = (ROW_AIR, mm(0.5), mm(0.35), mm(0.2))
"""Rows come closer together where that saves a face."""

_SYMBOLS_OF_SUMS = str.maketrans({"*": "×", "-": "−", "{": "", "}": ""})
_SIGN = re.compile(r" ([×/+−]) ")


def lay_declared(handbook: Handbook, frame: Frame, symbols: frozenset[str]) -> tuple[LaidCard, ...]:
    """Tables of kind ``table``, only those that have rows."""
    return tuple(_laid(handbook, frame, symbols))


def _laid(handbook: Handbook, frame: Frame, symbols: frozenset[str]) -> Iterator[LaidCard]:
    def laid(name: str, section: str, heads: Sequence[str], rows: list[tuple[Words, ...]]) -> LaidCard:
        size = smallest_in(frame)
        if frame.width * SMALL < NARROW * size or crowded(heads, rows, frame.width, size):
            heads = (heads[0], ", ".join(heads[1:]).capitalize())
            rows = [(row[0], sum(row[1:], ())) for row in rows]
        faces = _faces(name, heads, rows, frame, size)
        return LaidCard(f"*{name.casefold()}", "table", section, name, "", size, faces, 0, handbook.spot)

    sources = [cells(fact.name, fact.text, bold=(0,)) for fact in handbook.sources.values()]
    if sources:
        yield laid("Sources", "1", ("Source", "Document"), sources)
    speeds = [value for value in handbook.values.values() if value.speed]
    if speeds:
        rows = [
            cells(one.name, tied(one.shown), _explained(one, handbook), symbols=symbols, bold=(0, 1)) for one in speeds
        ]
        yield laid("Airspeeds", "2", ("Speed", "Value", "Meaning and source"), rows)
    values = [value for value in handbook.values.values() if not value.speed]
    if values:
        rows = [cells(one.name, tied(one.shown), _origin(one, handbook), symbols=symbols, bold=(1,)) for one in values]
        yield laid("Values", "2", ("Name", "Value", "From"), rows)
    gauges = [row for gauge in handbook.gauges.values() for row in _gauge(gauge, handbook)]
    if gauges:
        yield laid("Instrument markings", "2", ("Instrument", "Mark", "Range", "From"), gauges)


def _faces(
    name: str, heads: Sequence[str], rows: list[tuple[Words, ...]], frame: Frame, size: int
) -> tuple[LaidFace, ...]:
    best: tuple[LaidFace, ...] = ()
    for made in tables(heads, rows, frame.width, size, AIRS):
        faces = flowed(name, made.rows, frame, (made.head,))
        if len(faces) == 1:
            return faces
        if not best or len(faces) < len(best):
            best = faces
    return best


def _gauge(gauge: Gauge, handbook: Handbook) -> Iterator[tuple[Words, ...]]:
    """A row for each mark; name and source stand on the first."""
    if not gauge.bands:
        unit = gauge.unit.shown if gauge.unit else ""
        yield cells(gauge.name, "no marks", unit, _source(gauge.origin, handbook))
    for number, band in enumerate(gauge.bands):
        first = number == 0
        name, origin = (gauge.name, _source(gauge.origin, handbook)) if first else ("", "")
        yield cells(name, band.colour, tied(band.shown), origin, bold=(2,))


def tied(value: str) -> str:
    """A value that is not parted at the end of a line as long as there is room for it."""
    return "\u00a0".join(value.split())


def _explained(speed: Declared, handbook: Handbook) -> str:
    """What a speed means, and where it is from or how it is worked out: `best glide; from glide tests`."""
    origin = _origin(speed, handbook)
    if origin and origin[0] != "=" and origin != UNVERIFIED:
        origin = f"from {origin}"
    return "; ".join(part for part in (speed.meaning, origin) if part)


def _origin(declared: Declared, handbook: Handbook) -> str:
    """Where a number is from; of a derived one how it is worked out, as it is written, and what else is said of it."""
    source = _source(declared.origin, handbook)
    if not declared.formula:
        return source
    worked = "=\u00a0" + _SIGN.sub("\u00a0\\1\u00a0", declared.formula.translate(_SYMBOLS_OF_SUMS))
    return f"{worked}; {source}" if source else worked


def _source(origin: From | None, handbook: Handbook) -> str:
    if origin is None:
        return ""
    if origin.unverified:
        return UNVERIFIED
    fact = handbook.sources.get(origin.source)
    name = fact.name if fact else origin.source
    return f"{name}, {origin.detail}" if origin.detail else name
