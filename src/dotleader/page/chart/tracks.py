"""Where each control stands at each item of the main line: the run as tracks, without lengths."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.cockpit.moving import Already, Change
from dotleader.cockpit.timeline import CardRun, LineRun, Run
from dotleader.cockpit.words import ends_with
from dotleader.source.record import record


@record
class Column:
    """A card of the main line: its items from `start` to before `end`, counted over the whole flight."""

    title: str
    phase: str
    start: int
    end: int


@record
class Stretch:
    """A control from one item to before another in the same place or places; `parked` where that is the parked one."""

    start: int
    end: int
    positions: tuple[str, ...]
    parked: bool


@record
class Track:
    control: str
    stretches: tuple[Stretch, ...]


@record
class Tracks:
    """Columns in the order of a flight, and a track for each control that moves in it."""

    columns: tuple[Column, ...]
    tracks: tuple[Track, ...]
    items: int


def tracks_of(done: Run, cards: Iterable[CardRun]) -> Tracks:
    """Some cards of a run that follow one another. Items that move or look at no control take no room."""
    columns: list[Column] = []
    kept: list[tuple[CardRun, list[LineRun]]] = []
    count = 0
    for ran in cards:
        lines = [line for line in ran.lines if line.met]
        kept.append((ran, lines))
        room = max(1, len(lines))
        columns.append(Column(ran.card.title, ran.phase, count, count + room))
        count += room
    tracks = []
    for key, place in done.cockpit.places.items():
        control = done.cockpit.controls.get(key)
        if control is None:
            continue
        stands = list(_stands(kept, columns, key, place))
        stretches = tuple(_stretches(stands, count, control.parked))
        if any(not stretch.parked for stretch in stretches) and stretches:
            tracks.append(Track(control.name, stretches))
    return Tracks(tuple(columns), tuple(tracks), count)


def _stands(
    kept: list[tuple[CardRun, list[LineRun]]], columns: list[Column], key: str, place: int
) -> Iterator[tuple[int, tuple[str, ...]]]:
    """From which item on a control stands where; exact at the beginning of each card."""
    for (ran, lines), column in zip(kept, columns, strict=True):
        now = dict.fromkeys(state[place] for state in ran.before)
        yield column.start, tuple(now)
        for at, line in enumerate(lines, column.start):
            mine = [met for met in line.met if met.what.control == key and isinstance(met.what, Change | Already)]
            if not mine:
                continue
            last = mine[-1]
            if last.always:
                now = dict.fromkeys((_where(last.what),))
            else:
                left = [met.what.before for met in mine if isinstance(met.what, Change)]
                stay = [position for position in now if len(mine) == 1 or position not in left]
                now = dict.fromkeys((*(_where(met.what) for met in mine), *stay))
            yield at, tuple(now)
        if lines:
            yield column.end - 1, tuple(dict.fromkeys(state[place] for state in ends_with(ran)))


def _where(what: object) -> str:
    match what:
        case Change(after=position) | Already(position=position):
            return position
        case _:
            return ""


def _stretches(stands: list[tuple[int, tuple[str, ...]]], count: int, parked: str) -> Iterator[Stretch]:
    """Stretches of the same positions joined; of several for one item the last holds."""
    by_item = dict(stands)
    open_at = -1
    open_in: tuple[str, ...] = ()
    for at in sorted(by_item):
        positions = tuple(sorted(by_item[at]))
        if positions != open_in:
            if open_at >= 0:
                yield Stretch(open_at, at, open_in, open_in == (parked,))
            open_at, open_in = at, positions
    if open_at >= 0:
        yield Stretch(open_at, count, open_in, open_in == (parked,))
