"""A load of which it is not said when, or how much, it draws."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
electrical from unverified
  alternator .... 40 A

equipment
  Flaps ......... UP, HALF, FULL
    {draws}

normal Before landing
  when on downwind
  Flaps ......... HALF
"""

BAD = Example(_BOOK.format(draws="draws ....... 6 A"), (("unclear-draw", "6 A"),))
WATTS = Example(
    _BOOK.format(draws="draws while moving .... 80 W"),
    (("unclear-draw", "80 W"),),
)
GOOD = Example(_BOOK.format(draws="draws while moving .... 6 A"))


def check(subject: Subject) -> Iterator[Finding]:
    electrical = subject.handbook.electrical
    if electrical is None:
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.loads import amps_of, is_unclear  # noqa: PLC0415

    for control in subject.handbook.controls.values():
        for draw in control.wiring.draws:
            if is_unclear(draw, control):
                example = next(iter(control.positions), "ON")
                message = f"`{control.name}` has no position OFF, and does not say when it draws {draw.spot.text}."
                help_ = (
                    "Write `draws while moving` for what a motor draws while it runs, or "
                    f"`draws in {example}` for each position in which it draws."
                )
            elif amps_of(draw, electrical) is None:
                message = f"What `{control.name}` draws is in watts, and the volts of the system are not declared."
                help_ = "Write `system .... 14 V` in the `electrical` block, or amperes here."
            else:
                continue
            related = Related(control.spot, "It is declared here.")
            yield Finding(RULE.name, draw.spot, message, help_, (related,))


RULE = Rule(
    name="unclear-draw",
    severity=Severity.WARNING,
    family="electrical",
    what=(
        "In a handbook with an `electrical` block, a plain `draws` of a control that has no position OFF, so that "
        "nobody can tell when it draws; or one in watts without the volts of the `system`. It is in no sum."
    ),
    why="A load that is in no sum is missed only when the alternator gives no more or the battery is flat.",
    source=THE_LANGUAGE,
    mend=(
        "Say `draws while moving` (flaps, trim, landing gear), or `draws in POSITION` for each position in which it "
        "draws; for watts declare `system .... 14 V`."
    ),
    bad=(BAD, WATTS),
    good=(GOOD,),
    check=check,
)
