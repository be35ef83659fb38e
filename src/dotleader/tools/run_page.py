"""The timeline of a run, set with rich: card by card, what each item moved and how the cockpit stands after it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rich.console import RenderableType
from rich.text import Text

from dotleader.cockpit.panel import Way, places, way_of
from dotleader.cockpit.state import Cockpit, State
from dotleader.cockpit.timeline import CardRun, LineRun, Run
from dotleader.cockpit.words import ends_with, said, standing
from dotleader.handbook.cards import GoTo
from dotleader.report.summary import counted
from dotleader.tools.pages import dotted, indented, labelled, listed, prose, terminal


def timeline(done: Run, cards: Iterable[CardRun]) -> Iterator[RenderableType]:
    """Some cards of a run, in their order."""
    first = True
    for ran in cards:
        if not first:
            yield ""
        yield from _card(ran, is_main=ran in done.main)
        first = False


def summary(done: Run) -> Iterator[RenderableType]:
    """What was worked through and is not in the timeline."""
    if done.called:
        states = sum(len(ran.before) for ran in done.called)
        yield prose(
            f"{counted(len(done.called), 'card')} off this line worked through as well, from "
            f"{counted(states, 'state')} in which they can be called for: `--card TITLE` shows one."
        )
    for spot in done.full:
        line, _ = spot.source.line_and_column(spot.start)
        yield prose(f"From {spot.source.name}:{line} on there are more states than are followed.")


def _card(ran: CardRun, *, is_main: bool) -> Iterator[RenderableType]:
    kind = ran.phase or ("side line" if ran.card.after else ran.card.kind.value)
    yield dotted(Text(ran.card.title, style="bold"), Text(kind))
    if not is_main:
        yield labelled((("begins", prose(_standing(ran.before, ran.cockpit))),))
    way = way_of(ran.card, ran.cockpit.controls, places(ran.cockpit.controls))
    rows = [row for line in ran.lines for row in _rows(line, ran.cockpit)]
    if rows:
        yield listed(rows)
    ends: list[tuple[str, Text]] = []
    if way.distance:
        ends.append(("hand", prose(_hand(way))))
    if ran.after and ran.cockpit.controls:
        ends.append(("ends", prose(_standing(ran.after, ran.cockpit))))
    leaps = dict.fromkeys((_leads(go_to), _standing(states, ran.cockpit)) for go_to, states in ran.leaps)
    ends.extend((to, prose(words)) for to, words in leaps)  # two branches may lead to one card in one state
    if not ends and not ends_with(ran):
        ends.append(("ends", prose("nowhere: no state comes out of it")))
    yield indented(labelled(ends), 0)


def _hand(way: Way) -> str:
    back = dict.fromkeys(reach.control.name for reach in (*way.turns, *way.returns))
    said = f"{way.distance} mm over {counted(len({reach.place.panel for reach in way.reaches}), 'panel')}"
    return f"{said}, back to {', '.join(back)}" if back else said


def _leads(go_to: GoTo) -> str:
    return f"to {go_to.title}"


def _rows(line: LineRun, cockpit: Cockpit) -> Iterator[tuple[str, Text, Text]]:
    item = line.item
    told = list(said(line, cockpit, terminal().pick("→", "->")))
    if not told:
        response = item.response.text if item.response is not None else ""
        yield item.challenge, Text("", style="dim"), Text(response, style="dim")
        return
    for number, one in enumerate(told):
        named = one.control if len(told) > 1 or one.control.casefold() != item.challenge.casefold() else ""
        words = f"{named}: {one.words}" if named else one.words
        yield item.challenge if not number else "", Text("*" if one.moved else ""), _weighed(words, one.moved)


def _weighed(words: str, moved: bool) -> Text:
    text = prose(words)
    text.stylize("bold" if moved else "dim")
    return text


def _standing(states: tuple[State, ...], cockpit: Cockpit) -> str:
    """How the cockpit stands: what is not as it is parked."""
    told = [f"{name} {where}" for name, where in standing(states, cockpit)]
    return ", ".join(told) or "everything as it is parked"
