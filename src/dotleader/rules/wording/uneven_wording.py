"""The same thing said in two ways."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Item
from dotleader.handbook.mending import is_plain
from dotleader.handbook.model import Handbook
from dotleader.handbook.positions import matched
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.wording.spellings import Form, Forms, is_plural
from dotleader.rules.wording.vague_response import is_vague
from dotleader.source.finding import Finding, Related, Severity, swapped
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded

BAD = Example(
    """\
normal Before start
  when seated
  Seat belts .... FASTENED, BOTH
  Canopy .... LATCHED

normal Before takeoff
  when holding short of the runway
  Seat belts .... FASTENED, BOTH
  Canopy .... LATCHED

normal Before landing
  when joining the circuit
  Seat belt .... FASTENED, BOTH
  Canopy .... LACHED
""",
    (("uneven-wording", "Seat belt"), ("uneven-wording", "LACHED")),
)

GOOD = Example(
    """\
normal Before start
  when seated
  Left seat belt .... FASTENED
  Battery 1 .... ON
  Windscreen .... CLEAN
  Propeller area .... CLEAR
  Doors .... LATCHED

normal Before takeoff
  when holding short of the runway
  Right seat belt .... FASTENED
  Battery 2 .... ON

abnormal Door open in flight
  when a door has come off its latch
  Door .... HELD BY THE PASSENGER
  Land .... NEAREST AIRFIELD
  end
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for forms in _challenges_and_responses(subject):
        for lesser, greater in forms.uneven():
            for place in lesser.places:
                yield _finding(lesser, greater, place)


def _challenges_and_responses(subject: Subject) -> tuple[Forms, Forms]:
    """What is free text. A declared name is its own measure, and what is near one is said elsewhere."""
    handbook = subject.handbook
    challenges, responses = Forms(), Forms()
    for control in handbook.controls.values():
        for position in control.positions:
            responses.add(position, control.spot, declared=True)
    for _, item in subject.lines().printed:
        for challenge in item.challenges:
            if not challenge.control and not challenge.gauge:
                answer = folded(item.response.written) if item.response is not None else ""
                challenges.add(challenge.phrase.written, challenge.phrase.spot, answer=answer)
        _add_response(item, handbook, responses)
    return challenges, responses


def _add_response(item: Item, handbook: Handbook, responses: Forms) -> None:
    """The response, where it is in words of its own: not a position, and nothing that is found vague."""
    if item.response is None or is_vague(item.response.text):
        return
    for challenge in item.challenges:
        control = handbook.controls.get(challenge.control)
        if control is None or control.takes_any:
            continue
        if not control.lever or matched(item.response.text) in {matched(name) for name in control.positions}:
            return
    several = len(item.challenges) > 1 or is_plural(item.challenge)
    responses.add(item.response.written, item.response.spot, several=several)


def _finding(lesser: Form, greater: Form, place: Spot) -> Finding:
    count = len(greater.places)
    if greater.declared:
        where, said = "as a position", "It is declared here."
    else:
        where = "elsewhere" if count == 1 else f"in {count} other places"
        said = "It stands here." if count == 1 else "It stands here first."
    return Finding(
        RULE.name,
        place,
        f"`{lesser.text}` is written `{greater.text}` {where}.",
        "Write both the same way. If two things are meant, let their names differ by more.",
        (Related(greater.places[0], said),),
        fix=swapped(place, greater.text, safe=False) if place.text == lesser.text and is_plain(greater.text) else None,
    )


RULE = Rule(
    name="uneven-wording",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A challenge, or a response in words of its own, that differs from another one only in plural (of a "
        "challenge that is answered alike), case, "
        "hyphens, spaces or one letter, on any card of the handbook. The rarer way of writing is marked; of "
        "two that are as frequent, the later. Words under five letters do not count as near, nor do texts "
        "whose numbers differ."
    ),
    why="A reader who meets two names looks for two things, and a misspelling hides what is meant.",
    source=(
        "MIL-STD-1472E 5.5, one form for each word; UK procedure audit aid after HSG 48, that equipment is "
        "named as it is labelled"
    ),
    mend=(
        "Write it the same way everywhere. If two things are meant, let their names differ by more: `Left "
        "fuel cap`, `Right fuel cap`. What stands on the panel is best declared in `equipment`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
    confidence="medium",
    fix="unsafe",
)
