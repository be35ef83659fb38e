"""A branch on a card that is verified and not read line by line."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import name_of, place_of
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

BAD = Example(
    """\
normal Cruise
  when level
  Mixture .... LEANED
  if in cloud
    Pitot heat .... ON
    Alternate air .... OPEN
  if the auxiliary tank is empty
    Fuel selector .... LEFT
""",
    (("branch-in-verify-list", "if in cloud"),),
)

GOOD_1 = Example(
    """\
normal Cold start
  method read and do
  when the engine has stood in the frost
  if below -15 degC
    Preheater .... ON FOR 20 min
  Oil cooler .... COVERED
""",
)

GOOD_2 = Example(
    """\
equipment
  Pitot heat .... OFF, ON

normal Cruise
  when level
  Pitot heat .... ON if in visible moisture, otherwise OFF
  one of
    Heading .... FROM THE PLAN
    Heading .... FROM THE TOWER

abnormal Icing
  when ice is seen
  if below 5,000 ft
    Pitot heat .... ON
  end
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    said = ""
    for card, branch in subject.lines().branches:
        if card.method == "verify" and card.key != said:
            said = card.key  # the method of the card is the fault: once
            yield Finding(
                RULE.name,
                place_of(branch),
                f"`{name_of(branch)}` is a branch on `{card.title}`, which is verified after it has been done.",
                "Say `method read and do` below the title; or put a condition over one position into its response: "
                "`ON if in visible moisture, otherwise OFF`; or make a card of its own of the branch.",
            )


RULE = Rule(
    name="branch-in-verify-list",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A card with `method verify`, which is that of every normal card that says nothing else, with an `if` on it. "
        "The first one is marked. A condition inside a response is none."
    ),
    why=(
        "What is verified has been done from memory, and a memorised flow cannot carry a condition; of 194 checklist "
        "deviations seen on 60 flights 48 were verify lists that were read as they were done, the most frequent kind."
    ),
    source=(
        "NASA CR-177549 (Degani and Wiener, 1990) 3.1.4 on the two methods, and NASA/TM-2010-216396 (Dismukes and "
        "Berman) for the count (both read in a summary)"
    ),
    mend="Give the card `method read and do`, or take the branch out of it.",
    bad=(BAD,),
    good=(GOOD_1, GOOD_2),
    check=check,
)
