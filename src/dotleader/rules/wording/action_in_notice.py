"""A step that hides in a note, a caution or a warning."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import Example, Rule
from dotleader.rules.showing import short
from dotleader.rules.subject import Subject
from dotleader.rules.wording.verbs import clauses, orders, sentences
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
emergency Engine fire in flight
  when flames come from the cowling
  Mixture .... CUT OFF
  caution The cabin fills with smoke. Close the air vents.
  Cabin heat .... CLOSED
  note When the flames are out, switch off the master switch.
  note You must always apply carburettor heat. Land at once.
  end
""",
    (
        ("action-in-notice", "Close the air vents"),
        ("action-in-notice", "When the flames are out, switch off the master switch"),
        ("action-in-notice", "You must always apply carburettor heat"),
        ("action-in-notice", "Land at once"),
    ),
)

GOOD_1 = Example(
    """\
emergency Engine fire in flight
  when flames come from the cowling
  Mixture .... CUT OFF
  caution Do not restart the engine. It burns again.
  warning Nobody may open the canopy above 75 KIAS. Never pull the release in flight.
  Cabin heat .... CLOSED
  note Restores pressure when the engine-driven pump has failed.
  note At night, use the red lamp; keep the white one for the ground.
  note Set screws in the cowling are not fireproof. Stop and start times are on the log.
  caution Open vents feed a fire. Lower airspeeds help.
  note Closing the vents early keeps the smoke out.
  note Check the manual of the engine maker for the limits. Check lists are in the pocket.
  note Pull force is 20 kg. Turn radius grows with speed. Lower power means less heat.
  note Release of the handle takes a second. Always cold at this height, oil flows slowly.
  end
""",
)

GOOD_2 = Example(
    """\
normal Ground check
  when lined up into the wind
  caution Keep the stick right back: the tail comes up at 1,700 rpm.
  Throttle .... 1,700 rpm
  warning Shout, look, wait, and look again.
  Starter .... ENGAGED
  note The pump stays on when the pressure has returned.
""",
)


def check(subject: Subject) -> Iterator[Finding]:
    for _, notice in subject.lines().notices:
        start, text = notice.phrase.spot.start, notice.phrase.spot.text
        for at, sentence in sentences(text):
            if any(map(orders, clauses(sentence))):
                yield Finding(
                    RULE.name,
                    Spot(notice.phrase.spot.source, start + at, start + at + len(sentence)),
                    f"`{short(' '.join(sentence.split()))}` is something to do, in a {notice.word}.",
                    f"Make an item of it where it is to be done, and leave in the {notice.word} why or what not to do.",
                )


RULE = Rule(
    name="action-in-notice",
    severity=Severity.WARNING,
    family="wording",
    what=(
        "A sentence of a note, caution or warning that begins with an action on the aircraft (`Close the vents`, "
        "`When it is cold, open the valve`). What is not to be done (`Do not restart`), how something is flown (`Keep "
        "the stick back`) and what a thing does (`Restores the pressure`) is no action."
    ),
    why=(
        "A notice is read for what it warns of and is neither numbered nor answered, so that a step in it is the one "
        "that is left out."
    ),
    source="NUREG-0899 and DOE-STD-1029-92, that no action stands in a note or caution (from memory)",
    mend="Make an item of it, in its place; the notice keeps the reason.",
    bad=(BAD,),
    good=(GOOD_1, GOOD_2),
    check=check,
    confidence="medium",
)
