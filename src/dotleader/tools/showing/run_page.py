"""The timeline of a run, set with rich: card by card, what each item moved and how the cockpit stands after it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rich.console import RenderableType
from rich.text import Text

from dotleader.cockpit.panel import Way, places, way_of
from dotleader.cockpit.state import MOST_STATES, Cockpit, State
from dotleader.cockpit.timeline import CardRun, LineRun, Run
from dotleader.cockpit.words import Said, ends_with, said, standing, unknown
from dotleader.handbook.cards import Item
from dotleader.handbook.panel_place import Place
from dotleader.handbook.walking import every_step
from dotleader.report.summary import counted
from dotleader.source.finding import Severity
from dotleader.tools.showing.pages import WEIGHT, dotted, enumerated, indented, labelled, listed, prose, terminal


def timeline(done: Run, cards: Iterable[CardRun]) -> Iterator[RenderableType]:
    """Some cards of a run, in their order."""
    known = places(done.cockpit.controls)
    for number, ran in enumerate(cards):
        if number:
            yield ""
        yield from _card(ran, known, is_main=ran in done.main)


def summary(done: Run, shown: Iterable[CardRun]) -> Iterator[RenderableType]:
    """What was worked through and is not in the timeline, or why all of it is."""
    shown = tuple(shown)
    if not done.cockpit.controls:
        yield prose("Nothing can move: no control is declared in an `equipment` block.")
    if not done.main:
        yield prose("No normal card belongs to a phase of a flight: nobody knows in which state a card begins.")
    hidden = [ran for ran in done.called if ran not in shown]
    if hidden:
        states = sum(len(ran.before) for ran in hidden)
        yield prose(
            f"{counted(len(hidden), 'card')} off this line worked through as well, from "
            f"{counted(states, 'state')} in which they can be called for: `--card TITLE` shows one."
        )


def doubts(errors: int, done: Run | None) -> Iterator[RenderableType]:
    """What makes a run less than it seems: errors in the handbook, more states than were followed."""
    if errors:
        are = "is" if errors == 1 else "are"
        yield prose(
            f"There {are} {counted(errors, 'error')} in this handbook: what follows is only what was understood. "
            "`dotleader lint` says more."
        )
    for spot in dict.fromkeys(done.full if done is not None else ()):
        line, _ = spot.source.line_and_column(spot.start)
        yield prose(
            f"From {spot.source.name}:{line} on there are more than {MOST_STATES:,} states, and not all are followed."
        )


def _card(ran: CardRun, known: dict[str, Place], *, is_main: bool) -> Iterator[RenderableType]:
    kind = ran.phase or ("side line" if ran.card.after else ran.card.kind.value)
    yield dotted(Text(ran.card.title, style="bold"), Text(kind))
    moving = any(key in ran.cockpit.controls for key in ran.cockpit.places)
    if not is_main and moving:
        yield labelled((("begins", enumerated(_standing(ran.before, ran.cockpit))),))
    way = way_of(ran.card, ran.cockpit.controls, known)
    by_item = {id(line.item): line for line in ran.lines}
    items = [step for step in every_step(ran.card.steps) if isinstance(step, Item)]
    rows = [row for item in items for row in _rows(item, by_item.get(id(item)), ran.cockpit)]
    if rows:
        yield listed(rows)
    ends: list[tuple[str, Text]] = []
    if way.distance:
        ends.append(("hand", prose(_hand(way))))
    if ran.after and moving:
        ends.append(("ends", enumerated(_standing(ran.after, ran.cockpit))))
    # two branches may lead to one card in one state
    leaps = dict.fromkeys(
        (f"to {go_to.title}", _standing(states, ran.cockpit) if moving else "nothing has moved")
        for go_to, states in ran.leaps
    )
    ends.extend((to, enumerated(words)) for to, words in leaps)
    if not ends_with(ran):
        ends.append(("ends", prose("nowhere: no state comes out of it")))
    if ends:
        yield indented(labelled(ends), 0)


def _hand(way: Way) -> str:
    back = dict.fromkeys(reach.control.name for reach in (*way.turns, *way.returns))
    said = f"{way.distance} mm over {counted(len({reach.place.panel for reach in way.reaches}), 'panel')}"
    return f"{said}, back to {', '.join(back)}" if back else said


AMISS = WEIGHT[Severity.WARNING]
_MARKS = {(True, False): Text("*"), (False, False): Text(""), (False, True): Text("!", style=AMISS)}


def _rows(item: Item, line: LineRun | None, cockpit: Cockpit) -> Iterator[tuple[str, Text, Text]]:
    if line is None:
        yield item.challenge, Text(""), Text("not come to in any state", style="dim italic")
        return
    told = list(said(line, cockpit, terminal().pick("→", "->")))
    if not told:
        response = item.response.text if item.response is not None else ""
        yield item.challenge, Text("", style="dim"), Text(response, style="dim")
        return
    for number, one in enumerate(told):
        named = one.control if len(told) > 1 or one.control.casefold() != item.challenge.casefold() else ""
        words = f"{named}: {one.words}" if named else one.words
        yield item.challenge if not number else "", _MARKS[one.moved, one.amiss].copy(), _weighed(words, one)


def _weighed(words: str, one: Said) -> Text:
    text = prose(words)
    text.stylize(AMISS if one.amiss else "bold" if one.moved else "dim")
    return text


def _standing(states: tuple[State, ...], cockpit: Cockpit) -> str:
    """How the cockpit stands: what is not as it is parked, and what is not known though it is said where it parks."""
    nobody_knows = list(unknown(states, cockpit))
    told = [f"{name} {where}" for name, where in standing(states, cockpit)]
    if not told and len(nobody_knows) == sum(key in cockpit.controls for key in cockpit.places):
        return "nobody knows how anything stands"
    names = [name for name, is_parked in nobody_knows if is_parked]
    if names:
        told.append(f"nobody knows of {', '.join(names)}")
    return ", ".join(told) or "everything as it is parked"
