"""What was met in a run sorted by kind, so that nobody who looks for one kind goes through all cards for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.cockpit.moving import Already, Astray, Change, Unmet
from dotleader.cockpit.timeline import CardRun, Mover, Occasion, Occasions


def occasions_of(main: Sequence[CardRun], side: Sequence[CardRun], called: Sequence[CardRun]) -> Occasions:
    """The occasions of some cards, in the order in which these are given."""
    unmet: list[Occasion] = []
    astray: list[Occasion] = []
    first: list[Occasion] = []
    movers: dict[str, list[Mover]] = {}
    for ran, place, is_called in _placed(main, side, called):
        for line in ran.lines:
            for met in line.met:
                match met.what:
                    case Change(control=control):
                        if place >= 0:
                            movers.setdefault(control, []).append(Mover(place, ran.card, line.item))
                    case Already(first=is_first):
                        if is_first:
                            first.append(Occasion(ran, line, met, place, is_called))
                    case Unmet():
                        unmet.append(Occasion(ran, line, met, place, is_called))
                    case Astray():
                        astray.append(Occasion(ran, line, met, place, is_called))
    return Occasions(tuple(unmet), tuple(astray), tuple(first), movers)


def _placed(
    main: Sequence[CardRun], side: Sequence[CardRun], called: Sequence[CardRun]
) -> Iterator[tuple[CardRun, int, bool]]:
    yield from ((ran, place, False) for place, ran in enumerate(main))
    yield from ((ran, -1, False) for ran in side)
    yield from ((ran, -1, True) for ran in called)
