"""A card that two faces do not hold."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.form.card_continued import lines, roomier, titled
from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

_ROWS = [f"  Breaker {number} .... IN\n" for number in range(1, 31)]
_WHEN = "  when both are seated\n"

BAD = Example(
    f"stock A6\n\nnormal Before engine start\n{_WHEN}{''.join(_ROWS)}",
    (("card-too-long", "Before engine start"),),
)

GOOD = Example(
    f"stock A6\n\nnormal Before engine start, left panel\n{_WHEN}{''.join(_ROWS[:12])}"
    f"\nnormal Before engine start, right panel\n  when the left panel is done\n{''.join(_ROWS[12:24])}"
)

_MOST = 2


def check(subject: Subject) -> Iterator[Finding]:
    for found in subject.continued() if subject.continued is not None else ():
        laid = found.laid
        if len(laid.faces) > _MOST:
            yield Finding(
                RULE.name,
                laid.spot,
                f"{titled(found)} needs {len(laid.faces)} faces: at the smallest type size it is {lines(laid.over)} "
                "too long for one.",
                f"Divide it into cards that are each called for at their own time, or take {roomier(found)}.",
            )


RULE = Rule(
    name="card-too-long",
    severity=Severity.ERROR,
    family="form",
    what=(
        "A card that needs three faces or more, even at the smallest type size that can be read at the "
        "distance that `read at` says. The finding says by how many printed lines it is too long for one "
        "face."
    ),
    why=(
        "Two faces lie open side by side; a third one is behind a leaf that has to be turned in the middle of "
        "the procedure."
    ),
    source=(
        "DOT/FAA/AM-91/7 (Turner and Huntley, 1991) appendix A, that page-turning causes trouble (read in a "
        "summary); the smallest size is that of UK CAA CAP 676 chapter 7 and of 16 minutes of arc, NUREG-0700 "
        "1.3.1-4"
    ),
    mend=(
        "Divide the card where another cue calls for the rest, or put explanations under `amplified`. A "
        "larger leaf or a shorter reading distance in `stock` gives more room."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
