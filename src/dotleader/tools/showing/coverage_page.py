"""Each control and each gauge against the cards that touch it, set with rich."""

from __future__ import annotations

from collections.abc import Iterator

from rich.console import RenderableType
from rich.text import Text

from dotleader.cockpit.running import on_main_line
from dotleader.handbook.model import Handbook
from dotleader.tools.showing.pages import listed, prose


def coverage(handbook: Handbook) -> Iterator[RenderableType]:
    """The cards in the order of the source, those of the main line first; what is on none says so."""
    if not handbook.controls and not handbook.gauges:
        yield prose("No control and no gauge is declared: nothing can be covered.")
    for title, kind, names in (
        ("controls", "control", {key: control.name for key, control in handbook.controls.items()}),
        ("gauges", "gauge", {key: gauge.name for key, gauge in handbook.gauges.items()}),
    ):
        if names:
            yield Text(title, style="bold")
            yield listed(_row(handbook, kind, key, name) for key, name in names.items())
            yield ""


def _row(handbook: Handbook, kind: str, key: str, name: str) -> tuple[str, Text, Text]:
    there = {mention.on_card for mention in handbook.mentions if (mention.kind, mention.key) == (kind, key)}
    cards = [card for card in handbook.cards if card.key in there]
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
    cards: dict[tuple[str, str], set[str]] = {}
    for mention in handbook.mentions:
        cards.setdefault((mention.kind, mention.key), set()).add(mention.on_card)
    titles = {card.key: card.title for card in handbook.cards}
    return {
        "controls": {c.name: _titles(cards.get(("control", key)), titles) for key, c in handbook.controls.items()},
        "gauges": {g.name: _titles(cards.get(("gauge", key)), titles) for key, g in handbook.gauges.items()},
    }


def _titles(keys: set[str] | None, titles: dict[str, str]) -> list[str]:
    return [title for key, title in titles.items() if keys is not None and key in keys]
