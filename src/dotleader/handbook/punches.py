"""The `punch` blocks: what is written, as punches that can be."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.punch import Punch
from dotleader.handbook.punch_reading import Pins, Stopped, pins_of, span_of, stop_of
from dotleader.handbook.stocks.fault import millimetres
from dotleader.handbook.stocks.reading import Unread
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Row, Words

SAMPLES = {
    "holes": "holes .... 2, 80 mm apart, 6 mm wide, 12 mm from edge",
    "depth": "depth .... 8 to 14 mm",
    "stop": "stop .... scale, 45 to 160 mm",
}
"""Each property of a punch with a line that is right."""

NARROWEST, WIDEST = 1_000, 20_000
"""Of what a desk punch can be (our own figures, to find a slip of the pen)."""


def read_punches(blocks: Iterable[At], ledger: Ledger) -> tuple[Punch, ...]:
    """The punches that can be, in the order of the source; what is wrong with them and the others is said."""
    punches: dict[str, Punch] = {}
    first: dict[str, Spot] = {}
    for at in blocks:
        head = at.block.head
        spot = at.spot(head.name.span if head.name is not None else head.span)
        name = head.name.text if head.name is not None else ""
        key = folded(name)
        if key in first:
            ledger.twice("The punch", name, spot, first[key])
            continue
        first[key] = spot
        punch = _Reading(at, ledger, name, spot).punch()
        if punch is not None:
            punches[key] = punch
    return tuple(punches.values())


class _Reading:
    """One block being read."""

    def __init__(self, at: At, ledger: Ledger, name: str, spot: Spot) -> None:
        self.at, self.ledger, self.name, self.spot = at, ledger, name, spot
        self.unread = False
        self.unknown = False  # a row that may have been meant to be `holes`

    def punch(self) -> Punch | None:
        rows = self._rows()
        holes = self._read(rows, "holes")
        depth = self._read(rows, "depth")
        stop = self._read(rows, "stop")
        if "holes" not in rows and not self.unknown:
            shown = f"The punch `{self.name}`" if self.name else "The punch"
            help_ = f"Measure one of its strokes on paper, and write it like `{SAMPLES['holes']}`."
            self.ledger.say("impossible-punch", self.spot, f"{shown} does not say what holes it makes.", help_)
        if self.unread or not isinstance(holes, Pins):
            return None
        stopped = stop if isinstance(stop, Stopped) else Stopped("none")
        punch = Punch(
            name=self.name,
            holes=holes.centres,
            diameter=holes.diameter,
            depth=depth if isinstance(depth, tuple) else (holes.edge, holes.edge),
            stop=stopped.stop,
            stop_on_right=stopped.on_right,
            from_middle=stopped.from_middle,
            reach=stopped.reach,
            spot=self.spot,
        )
        faults = list(_amiss(punch))
        for of, message, help_ in faults:
            self.ledger.say(
                "impossible-punch", self.at.spot(rows[of].span) if of in rows else self.spot, message, help_
            )
        return None if faults else punch

    def _rows(self) -> dict[str, Words]:
        rows: dict[str, Words] = {}
        first: dict[str, Spot] = {}
        for line in self.at.block.lines:
            row = line.body
            if not isinstance(row, Row) or row.right is None:
                continue
            key, spot = folded(row.left.text), self.at.spot(row.left.span)
            if key not in SAMPLES:
                self.unknown = True
                known = ", ".join(f"`{name}`" for name in SAMPLES)
                message = f"`{row.left.text}` is no property of a punch."
                self.ledger.say_unknown(
                    "unknown-property", spot, message, row.left.text, SAMPLES, f"A punch has {known}."
                )
            elif key in rows:
                self.ledger.again("The row", row.left.text, spot, first[key])
            else:
                rows[key], first[key] = row.right, spot
        return rows

    def _read(self, rows: dict[str, Words], key: str) -> object:
        """A row's right part; None where there is none or it cannot be read, which is said."""
        words = rows.get(key)
        if words is None:
            return None
        read: object
        if words.refs:
            read = Unread(f"`{words.text}` refers to a value, and a punch is written out.")
        elif key == "holes":
            read = pins_of(words.text)
        else:
            read = span_of(words.text) if key == "depth" else stop_of(words.text)
        if not isinstance(read, Unread):
            return read
        self.unread = True
        help_ = f"{read.help} Write it like `{SAMPLES[key]}`.".strip()
        self.ledger.say("unreadable-value", self.at.spot(words.span), read.message, help_)
        return None


def _amiss(punch: Punch) -> Iterator[tuple[str, str, str]]:
    """What keeps a punch from being: the row that is at fault, what is, and what to do."""
    width = millimetres(punch.diameter)
    if not NARROWEST <= punch.diameter <= WIDEST:
        yield (
            "holes",
            f"Holes of {width} are punched by no punch that stands on a desk.",
            f"They are {millimetres(NARROWEST)} to {millimetres(WIDEST)} wide; check the number and its unit.",
        )
        return
    closest = min((after - before for before, after in pairwise(punch.holes)), default=None)
    if closest is not None and closest <= punch.diameter:
        yield (
            "holes",
            f"The holes run into one another: they are {millimetres(closest)} apart and {width} wide.",
            "Measure from centre to centre.",
        )
    short = punch.diameter - 2 * punch.depth[0]
    if short > 0:
        yield (
            "depth" if punch.depth[0] != punch.depth[1] else "holes",
            f"The holes reach {millimetres(-(-short // 2), up=True)} beyond the edge of the leaf.",
            "Measure from the edge to the centre of a hole.",
        )
    if punch.stop != "none" and punch.reach is not None:
        within = (punch.holes[-1] // 2 if punch.from_middle else 0) + punch.diameter // 2 - punch.reach[1]
        if within > 0:
            yield (
                "stop",
                f"At its farthest the stop still stands {millimetres(within, up=True)} inside the outer hole.",
                "Its settings count from the middle of the punch; or write `from the nearest hole`, if they do.",
            )
