"""The right parts of a `punch` block: holes as in a stock, a depth, a stop."""

from __future__ import annotations

from dotleader.handbook.punch import Stop
from dotleader.handbook.stocks.hole_rows import holes_of
from dotleader.handbook.stocks.reading import Unread, length_of, unit_of
from dotleader.handbook.stocks.sizes import micrometres
from dotleader.source.record import record
from dotleader.syntax.plain import folded

_STOPS: dict[str, Stop] = {"scale": "scale", "plain": "plain", "none": "none"}


@record
class Pins:
    """Centres from the leftmost, how wide, and how far from the edge of what is punched."""

    centres: tuple[int, ...]
    diameter: int
    edge: int


@record
class Stopped:
    stop: Stop
    on_right: bool = True
    from_middle: bool = True
    reach: tuple[int, int] | None = None


def pins_of(text: str) -> Pins | Unread:
    """`2, 80 mm apart, 6 mm wide, 12 mm from edge`, in all the forms that holes have in a stock."""
    row = holes_of(text)
    if isinstance(row, Unread):
        spans = [folded(part) for part in text.split(",") if " to " in part and folded(part).endswith("edge")]
        if spans:
            return Unread(f"`{spans[0]}` is not one distance.", "What can be set stands in a row of its own, `depth`.")
        return row
    if not row.count:
        return Unread("A punch that makes no hole is none.")
    if row.at:
        return Pins(tuple(at - row.at[0] for at in row.at), row.diameter, row.edge)
    centres = tuple(micrometres(sum(row.gaps[:n])) for n in range(row.count))  # type: ignore[arg-type]  # 0 + Fraction
    return Pins(centres, row.diameter, row.edge)


def span_of(text: str) -> tuple[int, int] | Unread:
    """`12 mm`, or `8 to 14 mm`: the least and the greatest of what can be set."""
    first, to, last = " ".join(text.split()).partition(" to ")
    if not to:
        length = length_of(first)
        return length if isinstance(length, Unread) else (length, length)
    low, high = length_of(first, unit_of(last)), length_of(last)
    if isinstance(high, Unread):
        return high
    if isinstance(low, Unread):
        return low
    return (low, high) if low <= high else Unread(f"`{text}` begins with the greater of the two.")


def stop_of(text: str) -> Stopped | Unread:
    """`scale`, `plain` or `none`; for the first two also where it is, what it counts from, and how far it goes."""
    first, *rest = (folded(part) for part in text.split(","))
    if first not in _STOPS:
        return Unread(f"`{first}` is no stop.", "It is `scale`, `plain` (a stop without a scale) or `none`.")
    stop = _STOPS[first]
    if stop == "none" and rest:
        return Unread(f"Where there is no stop, `{rest[0]}` says nothing.")
    on_right, from_middle, reach = True, True, None
    for part in rest:
        match part.replace(" the ", " "):
            case "on right" | "on left":
                on_right = part.endswith("right")
            case "from middle" | "from nearest hole":
                from_middle = part.endswith("middle")
            case _:
                span = span_of(part) if " to " in part else Unread(f"`{part}` says nothing of a stop.")
                if isinstance(span, Unread):
                    return span
                reach = span
    return Stopped(stop, on_right, from_middle, reach)
