"""A run as JSON, for programs. Fields are only ever added."""

from __future__ import annotations

import json
from collections.abc import Iterable

from dotleader.cockpit.moving import Already, Astray, Change, Unmet
from dotleader.cockpit.state import Cockpit, State
from dotleader.cockpit.timeline import CardRun, LineRun, Met, Run
from dotleader.report.places import place_object


def timeline_json(done: Run, cards: Iterable[CardRun], errors: int) -> str:
    """One object; all ASCII, so that any pipe carries it. Of a card off the main line a state has only the controls
    that matter to it; a position that nobody knows is null. `errors` are those of the handbook: what is in them was
    not understood."""
    return json.dumps(
        {
            "errors": errors,
            "parked": _state(done.cockpit.parked, done.cockpit),
            "cards": [_card(ran) for ran in cards],
            "more_states_than_followed_at": [place_object(spot) for spot in dict.fromkeys(done.full)],
        },
        indent=2,
    )


def _card(ran: CardRun) -> dict[str, object]:
    return {
        "title": ran.card.title,
        "kind": ran.card.kind.value,
        "phase": ran.phase or None,
        **place_object(ran.card.spot),
        "begins": [_state(state, ran.cockpit) for state in ran.before],
        "items": [_item(line, ran.cockpit) for line in ran.lines],
        "ends": [_state(state, ran.cockpit) for state in ran.after],
        "goes_to": [
            {"card": go_to.title, "states": [_state(state, ran.cockpit) for state in states]}
            for go_to, states in ran.leaps
        ],
    }


def _item(line: LineRun, cockpit: Cockpit) -> dict[str, object]:
    item = line.item
    return {
        "challenge": item.challenge,
        "response": item.response.text if item.response is not None else "",
        **place_object(item.spot),
        "met": [_met(met, cockpit) for met in line.met],
    }


def _met(met: Met, cockpit: Cockpit) -> dict[str, object]:
    name = cockpit.controls[met.what.control].name
    match met.what:
        case Change(before=before, after=after, by=by):
            what: dict[str, object] = {"what": "moved", "control": name, "before": before or None, "after": after}
            if by:
                what["by"] = cockpit.controls[by].name
        case Already(position=position):
            what = {"what": "already", "control": name, "position": position}
        case Unmet(position=position, need=need):
            needs = [{"control": cockpit.controls[key].name, "position": wanted} for key, wanted in need.alternatives]
            what = {"what": "cannot", "control": name, "position": position, "needs_one_of": needs}
        case Astray(said=said, stands=stands):
            what = {"what": "astray", "control": name, "said": said, "stands": stands}
    return what | {"always": met.always}


def _state(state: State, cockpit: Cockpit) -> dict[str, str | None]:
    return {
        cockpit.controls[key].name: state[place] or None
        for key, place in cockpit.places.items()
        if key in cockpit.controls
    }
