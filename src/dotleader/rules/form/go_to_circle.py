"""Cards that lead back to each other."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.form.leading import circles, leads
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_RESTART = """\
emergency Engine failure in flight
  when the engine stops
  Airspeed .... 82 KIAS
  go to Engine restart

emergency Engine restart
  when the propeller still turns
  Fuel pump .... ON
  if the engine does not start
"""

BAD = Example(_RESTART + "    go to Engine failure in flight\n  end\n", (("go-to-circle", "Engine restart"),))
GOOD = Example(_RESTART + "    Landing site .... CHOOSE\n  end\n")


def check(subject: Subject) -> Iterator[Finding]:
    handbook = subject.handbook
    graph = leads(handbook)
    for circle in circles(graph):
        steps = [graph[key][circle[(at + 1) % len(circle)]] for at, key in enumerate(circle)]
        titles = [handbook.by_key[key].title for key in circle]
        around = " to ".join(f"`{title}`" for title in (*titles, titles[0]))
        yield Finding(
            RULE.name,
            steps[0].spot,
            f"The cards lead in a circle: {around}.",
            "Let one of them end, or lead to a card that brings the flight to its end.",
            tuple(Related(step.spot, "The circle goes on here.") for step in steps[1:]),
        )


RULE = Rule(
    name="go-to-circle",
    severity=Severity.WARNING,
    family="form",
    what="A card from which `go to` lines lead back to itself, straight or over other cards.",
    why="A crew that follows it turns leaves until the ground comes, and no card tells that all has been tried.",
    source=(
        "DOE-STD-1029-92 and its like on references between procedures, from memory; NTSB recommendation A-10-68 on "
        "ways out of a list that no longer fits"
    ),
    mend="Say on the last card what is done when nothing has helped, and let it `end`.",
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
