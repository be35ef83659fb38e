"""Each control and each gauge against the cards that touch it, set with rich."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import RenderableType
from rich.text import Text

from dotleader.cockpit.running import on_main_line
from dotleader.handbook.cards import Card
from dotleader.handbook.model import Handbook
from dotleader.tools.showing.pages import listed, prose


def coverage(handbook: Handbook) -> Iterator[RenderableType]:
    """The cards in the order of the source, those of the main line first; what is on none says so."""
    if not handbook.controls and not handbook.gauges:
        yield prose("No control and no gauge is declared: nothing can be covered.")
    for kind, things in _touched(handbook).items():
        if things:
            yield Text(f"{kind}s", style="bold")
            yield listed(_row(handbook, kind, key, name, cards) for key, (name, cards) in things.items())
            yield ""


def _row(handbook: Handbook, kind: str, key: str, name: str, cards: list[Card]) -> tuple[str, Text, Text]:
    line = [card.title for card in cards if on_main_line(card)]
    off = [card.title for card in cards if not on_main_line(card)]
    movers = [c.name for c in handbook.controls.values() if any(effect.control == key for effect in c.effects)]
    if line:
        said = prose(", ".join(line))
    elif kind == "control" and movers:  # an engine, say
        said = Text("moved by ", style="dim").append(prose(", ".join(movers)))
    else:
        said = Text("on no card in the course of a flight", style="dim")
    if off:
        said.append("; off it: ", style="dim").append(prose(", ".join(off)))
    return name, Text(str(len(cards)), style="dim" if cards else "bold"), said


def coverage_object(handbook: Handbook) -> dict[str, dict[str, list[str]]]:
    """For programs: name of each control and gauge, with the titles of its cards."""
    return {
        f"{kind}s": {name: [card.title for card in cards] for name, cards in things.values()}
        for kind, things in _touched(handbook).items()
    }


def _touched(handbook: Handbook) -> dict[str, dict[str, tuple[str, list[Card]]]]:
    """Controls and gauges by their keys, each with its name and the cards that name it, in the order of the source."""
    on: dict[tuple[str, str], set[str]] = {}
    for mention in handbook.mentions:
        on.setdefault((mention.kind, mention.key), set()).add(mention.on_card)
    names = {
        "control": {key: control.name for key, control in handbook.controls.items()},
        "gauge": {key: gauge.name for key, gauge in handbook.gauges.items()},
    }
    return {
        kind: {
            key: (name, [card for card in handbook.cards if card.key in on.get((kind, key), ())])
            for key, name in some.items()
        }
        for kind, some in names.items()
    }
