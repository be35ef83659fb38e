"""A way through an emergency or abnormal card that ends nowhere."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import GoTo, Item, Kind
from dotleader.handbook.walking import every_step
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.rules.ways import Stop, ways_through
from dotleader.source.finding import Finding, Severity

BAD_1 = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  Airspeed .... BEST GLIDE
  if the engine runs again
    Land .... NEAREST AIRFIELD
    end
  Landing site .... CHOOSE
""",
    (("no-ending", "Landing site .... CHOOSE"),),
)

BAD_2 = Example(
    """\
abnormal Rough engine
  when the engine shakes
  if it runs smoothly on one magneto
    Land .... NEAREST AIRFIELD
  otherwise
    Land .... AT ONCE
    end
""",
    (("no-ending", "Land .... NEAREST AIRFIELD"),),
)

BAD_3 = Example(
    """\
abnormal Low fuel pressure
  when the fuel pressure is below the green
  Fuel pump .... ON
  if the pressure returns
    Land .... NEAREST AIRFIELD
    end
""",
    (("no-ending", "if the pressure returns"),),
)

GOOD = Example(
    """\
emergency Engine failure in flight
  when the engine stops
  Airspeed .... BEST GLIDE
  if the engine runs again
    Land .... NEAREST AIRFIELD
    end
  Landing site .... CHOOSE
  go to Forced landing

emergency Forced landing
  when no power is left
  if there is time
    Radio call .... MAYDAY, POSITION
  Seat belts .... TIGHT
  end
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for card in subject.handbook.cards:
        if card.kind is Kind.NORMAL or not any(isinstance(step, Item | GoTo) for step in every_step(card.steps)):
            continue
        stops = {stop.spot: stop for stop in ways_through(card.steps, card.spot).stops}
        for stop in stops.values():
            yield Finding(
                RULE.name,
                stop.spot,
                _message(stop),
                "Write `end` where the procedure is over, or `go to` and the title of the card that continues it. "
                "A landing alone does not say that it is over.",
            )


def _message(stop: Stop) -> str:
    said = "he card stops here with neither `end` nor `go to`."
    if not stop.conditions:
        return f"T{said}"
    way = " and ".join(stop.conditions)
    return f"{way[0].upper()}{way[1:]}, t{said}"


RULE = Rule(
    name="no-ending",
    severity=Severity.ERROR,
    family="form",
    what=(
        "A way through an emergency or abnormal card that reaches neither `end` nor `go to`. A branch without "
        "either rejoins what follows it; one without `otherwise` can also be passed by. The last line on that "
        "way is marked."
    ),
    why=(
        "Where the print just stops, nobody can tell whether the procedure is over or goes on elsewhere, and "
        "somebody may wait for a line that never comes."
    ),
    source=(
        "Transport Canada single-crew SOP 7.4, that abnormal checks have no completion line because some lead "
        "into others; the mark in its place is ours"
    ),
    mend=(
        "Write `end` where the procedure is over and `go to` where another card continues it, at the end of "
        "each branch or once below all of them. A landing alone does not say that the procedure is over."
    ),
    bad=(BAD_1, BAD_2, BAD_3),
    good=(GOOD,),
    check=check,
)
