"""The chart of a flight: one row for each control, the cards from left to right, a bar where it is not as parked."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from dotleader.page.chart.tracks import Column, Stretch, Track, Tracks
from dotleader.page.drawn import Box, Drawn, Font, Ink, Line, Text, mm, pt
from dotleader.page.type.metrics import cap_height, shown, width
from dotleader.source.record import record

MARGIN = mm(12)
ROW = mm(5.2)
BAR = mm(3.4)
ITEM = mm(2.6)
LEAST_CARD = mm(7)
LEAST_FLIGHT = mm(120)
"""All cards together, so that the words of a short flight have room."""

TITLE_SIZE, NAME_SIZE, WORD_SIZE = 13_000, 8_000, 6_500
LEAST_HEAD, MOST_HEAD = mm(16), mm(70)
"""Room for the titles of cards, which stand upright above their columns; longer ones are cut."""

LEAST_LETTERS = 3
"""Of a word that has to be cut; less of it says nothing."""

HAIR, RULE = pt(0.25), pt(0.75)
PAD = mm(0.8)
GAP = mm(0.25)
"""White between two bars of one row."""


@record
class Drawing:
    """A page of any size, in micrometres."""

    width: int
    height: int
    items: tuple[Drawn, ...]


def chart(tracks: Tracks, title: str, subtitle: str) -> Drawing:
    """One page, as large as it takes. A hairline is the parked position; a bar any other; open bars are not certain."""
    names = max(
        (width(shown(track.control, Font.REGULAR), Font.REGULAR, NAME_SIZE) for track in tracks.tracks), default=0
    )
    left = MARGIN + names + mm(4)
    edges = _edges(tracks, left)
    head = _head_room(tracks.columns)
    top = MARGIN + mm(14) + head
    bottom = top + ROW * len(tracks.tracks)
    right = edges[-1]
    items = (
        *_title(title, subtitle),
        *_head(tracks.columns, edges, top, bottom, head),
        *(drawn for at, track in enumerate(tracks.tracks) for drawn in _row(track, edges, top + ROW * at, left)),
        Line(((left, bottom), (right, bottom)), RULE),
        Text(MARGIN, bottom + mm(6), LEGEND, WORD_SIZE),
    )
    said = (
        width(shown(title, Font.BOLD), Font.BOLD, TITLE_SIZE),
        width(shown(subtitle, Font.REGULAR), Font.REGULAR, NAME_SIZE),
    )
    broad = max(right, MARGIN + max(*said, width(LEGEND, Font.REGULAR, WORD_SIZE)))
    return Drawing(broad + MARGIN, bottom + mm(6) + MARGIN, items)


LEGEND = (
    "Hairline: as parked. Bar: anywhere else. Open bar: one of several places, as conditions have it. "
    "Nothing: nobody knows."
)


def _head_room(columns: tuple[Column, ...]) -> int:
    longest = max((width(shown(one.title, Font.REGULAR), Font.REGULAR, NAME_SIZE) for one in columns), default=0)
    return min(max(longest + mm(6), LEAST_HEAD), MOST_HEAD)


def _edges(tracks: Tracks, left: int) -> list[int]:
    """Where each item begins, and where the last ends; cards of few items are widened evenly."""
    edges = [left]
    widths = [max(ITEM * (column.end - column.start), LEAST_CARD) for column in tracks.columns]
    whole = sum(widths)
    for column, least in zip(tracks.columns, widths, strict=True):
        count = column.end - column.start
        wide = max(least, least * LEAST_FLIGHT // whole)
        begins = edges[-1]
        edges += [begins + wide * number // count for number in range(1, count + 1)]
    return edges


def _title(title: str, subtitle: str) -> Iterator[Drawn]:
    yield Text(MARGIN, MARGIN + mm(4), shown(title, Font.BOLD), TITLE_SIZE, Font.BOLD)
    yield Text(MARGIN, MARGIN + mm(9), shown(subtitle, Font.REGULAR), NAME_SIZE)


def _head(columns: tuple[Column, ...], edges: list[int], top: int, bottom: int, head: int) -> Iterator[Drawn]:
    for _, together in groupby(columns, lambda column: column.phase):
        cards = list(together)
        x = edges[cards[0].start]
        yield Line(((x, top - head), (x, bottom)), RULE)
        for card in cards:
            here, after = edges[card.start], edges[card.end]
            if card is not cards[0]:
                yield Line(((here, top - head // 2), (here, bottom)), HAIR)
            base = (here + after + cap_height(Font.REGULAR, NAME_SIZE)) // 2
            yield Text(base, top - PAD, _cut(card.title, NAME_SIZE, head - 2 * PAD), NAME_SIZE, turn=90)
    right = edges[-1]
    yield Line(((right, top - head), (right, bottom)), RULE)
    yield Line(((edges[0], top), (right, top)), RULE)


def _row(track: Track, edges: list[int], y: int, left: int) -> Iterator[Drawn]:
    middle = y + ROW // 2
    name = shown(track.control, Font.REGULAR)
    base = middle + cap_height(Font.REGULAR, NAME_SIZE) // 2
    yield Text(left - mm(3) - width(name, Font.REGULAR, NAME_SIZE), base, name, NAME_SIZE)
    for stretch in track.stretches:
        yield from _stretch(stretch, edges[stretch.start], edges[stretch.end], middle)


def _stretch(stretch: Stretch, here: int, after: int, middle: int) -> Iterator[Drawn]:
    if stretch.positions == ("",):
        return
    if stretch.parked:
        yield Line(((here, middle), (after, middle)), HAIR)
        return
    sure = len(stretch.positions) == 1
    ink = Ink.WHITE if sure else Ink.BLACK
    yield Box(here, middle - BAR // 2, after - here - GAP, BAR, Ink.BLACK if sure else Ink.WHITE, HAIR)
    words = _cut(" / ".join(position or "?" for position in stretch.positions), WORD_SIZE, after - here - 2 * PAD)
    if words:
        base = middle + cap_height(Font.BOLD, WORD_SIZE) // 2
        yield Text(here + PAD, base, words, WORD_SIZE, Font.BOLD, ink)


def _cut(text: str, size: int, room: int) -> str:
    """A text that fits, cut where it must be; nothing where too little of it would be left."""
    text = shown(text, Font.BOLD)
    if width(text, Font.BOLD, size) <= room:
        return text
    while text and width(text + "…", Font.BOLD, size) > room:
        text = text[:-1].rstrip()
    return text + "…" if len(text) >= LEAST_LETTERS else ""
