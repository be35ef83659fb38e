"""The hand's way over each panel for one card: numbered stops, the way between them, and all else that stands there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import combinations, pairwise

from dotleader.cockpit.panel import Reach, Way
from dotleader.handbook.model import Control
from dotleader.handbook.panel_place import Place
from dotleader.page.chart.chart import MARGIN, NAME_SIZE, TITLE_SIZE, WORD_SIZE, Drawing
from dotleader.page.drawn import Box, Drawn, Font, Ink, Line, Text, mm, pt
from dotleader.page.type.metrics import cap_height, shown, width

WIDE = mm(240)
"""A panel is drawn to fill this width, or as high as `HIGH`."""

HIGH = mm(110)
SIDE, ABOVE, BELOW = mm(14), mm(25), mm(24)
SPOT = mm(1.4)
STOP = mm(2.7)
HAIR, WAY = pt(0.25), pt(0.8)
BOW, STEP = mm(4.5), mm(0.8)
"""How far the way from stop to stop bends up where it goes to the right; twice as far where it goes to the left."""

SAME_ROW = mm(8)
PIECES = 16


def panel_path(
    title: str, way: Way, controls: Mapping[str, Control], known: Mapping[str, Place], besides: str = ""
) -> Drawing:
    """One page with a drawing of each panel that the card touches, seen from the seat; `besides` is said below."""
    items: list[Drawn] = [Text(MARGIN, MARGIN + mm(4), shown(title, Font.BOLD), TITLE_SIZE, Font.BOLD)]
    ring = "A ring where the hand goes back." if way.turns or way.returns else ""
    also = besides and f"{besides[0].upper()}{besides[1:]}."
    said = " ".join(filter(None, (f"{way.distance} mm from stop to stop.", ring, also)))
    items.append(Text(MARGIN, MARGIN + mm(9), said, NAME_SIZE))
    y = MARGIN + mm(15)
    for name in dict.fromkeys(reach.place.panel for reach in way.reaches):
        here = {controls[key].name: place for key, place in known.items() if place.panel == name}
        panel = _Panel(name, y, here)
        items += panel.drawn(way)
        y += panel.height + mm(11)
    return Drawing(WIDE + 2 * MARGIN, y - mm(11) + mm(6) + MARGIN, tuple(items))


class _Panel:
    """One panel, laid out: how large it is drawn, and where its controls come to stand."""

    def __init__(self, name: str, top: int, here: Mapping[str, Place]) -> None:
        self.name, self.top = name, top
        names: dict[Place, list[str]] = {}  # two controls may be declared at one place
        for control, place in here.items():
            names.setdefault(place, []).append(control)
        self.words = {place: shown(", ".join(some), Font.REGULAR).split() for place, some in names.items()}
        self.left = min(place.right for place in names)
        self.low = min(place.up for place in names)
        wide = max(place.right for place in names) - self.left
        high = max(place.up for place in names) - self.low
        self.scale = Fraction(mm(3))
        if wide:
            self.scale = min(self.scale, (WIDE - 2 * SIDE) / wide)
        if high:
            self.scale = min(self.scale, HIGH / high)
        self.side = (WIDE - int(wide * self.scale)) // 2
        self.below = BELOW
        self.height = int(high * self.scale) + ABOVE + BELOW
        broad = max(width(word, Font.REGULAR, WORD_SIZE) for some in self.words.values() for word in some)
        self.upright = broad > self._nearest() - mm(1)
        self.below = max(BELOW, self._room_for_names())
        self.height += self.below - BELOW

    def _room_for_names(self) -> int:
        """How far the names reach below the controls, and a little more."""
        if self.upright:
            longest = max(width(" ".join(some), Font.REGULAR, WORD_SIZE) for some in self.words.values())
            return STOP + mm(1.5) + longest + mm(2)
        return STOP + mm(3.2) + mm(2.7) * max(map(len, self.words.values()))

    def point(self, place: Place) -> tuple[int, int]:
        x = MARGIN + self.side + int((place.right - self.left) * self.scale)
        return x, self.top + self.height - self.below - int((place.up - self.low) * self.scale)

    def drawn(self, way: Way) -> Iterator[Drawn]:
        yield Box(MARGIN, self.top, WIDE, self.height, stroke=HAIR, radius=mm(3))
        yield Text(MARGIN, self.top + self.height + mm(4), shown(self.name, Font.REGULAR), NAME_SIZE)
        stops = [(number, reach) for number, reach in enumerate(way.reaches, 1) if reach.place.panel == self.name]
        for step, ((number, before), (after, now)) in enumerate(pairwise(stops)):
            if after == number + 1 and before.place != now.place:
                yield self._leg(before.place, now.place, step)
        yield from self._names()
        touched = {reach.place for _, reach in stops}
        for place in self.words:
            if place not in touched:
                x, y = self.point(place)
                yield Box(x - SPOT, y - SPOT, 2 * SPOT, 2 * SPOT, Ink.WHITE, HAIR, SPOT)
        yield from self._numbers(stops, way)

    def _leg(self, before: Place, now: Place, step: int) -> Line:
        """From a stop to the next, bent up and clear of the names, so that ways to and fro do not cover each other."""
        (x1, y1), (x2, y2) = self.point(before), self.point(now)
        bow = min(BOW + STEP * (step % 6), abs(x2 - x1) // 2)
        bow = -bow if x2 > x1 else -2 * bow
        points = []
        for piece in range(PIECES + 1):
            up = bow * 4 * piece * (PIECES - piece) // PIECES**2
            points.append((x1 + (x2 - x1) * piece // PIECES, y1 + (y2 - y1) * piece // PIECES + up))
        return Line(tuple(points), WAY)

    def _names(self) -> Iterator[Drawn]:
        """Names below their controls, word under word; upright where they would run into each other."""
        for place, some in self.words.items():
            x, y = self.point(place)
            if self.upright:
                name = " ".join(some)
                base = x + cap_height(Font.REGULAR, WORD_SIZE) // 2
                yield Text(base, y + STOP + mm(1.5) + width(name, Font.REGULAR, WORD_SIZE), name, WORD_SIZE, turn=90)
                continue
            for row, word in enumerate(some):
                half = width(word, Font.REGULAR, WORD_SIZE) // 2
                yield Text(x - half, y + STOP + mm(3.2) + row * mm(2.7), word, WORD_SIZE)

    def _nearest(self) -> int:
        """How near the centres of two controls in one row come to each other."""
        points = sorted(self.point(place) for place in self.words)
        gaps = [b[0] - a[0] for a, b in combinations(points, 2) if abs(a[1] - b[1]) < SAME_ROW]
        return min(gaps, default=WIDE)

    def _numbers(self, stops: list[tuple[int, Reach]], way: Way) -> Iterator[Drawn]:
        """Which stop a place is; of one that is come to several times, all numbers."""
        back = {id(reach) for reach in (*way.turns, *way.returns)}
        by_place: dict[Place, list[tuple[int, Reach]]] = {}
        for number, reach in stops:
            by_place.setdefault(reach.place, []).append((number, reach))
        for place, some in by_place.items():
            x, y = self.point(place)
            words = ", ".join(str(number) for number, _ in some)
            half = max(STOP, width(words, Font.BOLD, NAME_SIZE) // 2 + mm(1))
            if any(id(reach) in back for _, reach in some):
                ring = mm(0.9)
                yield Box(
                    x - half - ring, y - STOP - ring, 2 * (half + ring), 2 * (STOP + ring), Ink.WHITE, WAY, STOP + ring
                )
            yield Box(x - half, y - STOP, 2 * half, 2 * STOP, Ink.BLACK, radius=STOP)
            base = y + cap_height(Font.BOLD, NAME_SIZE) // 2
            yield Text(x - width(words, Font.BOLD, NAME_SIZE) // 2, base, words, NAME_SIZE, Font.BOLD, Ink.WHITE)
