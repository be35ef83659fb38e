"""A card that continues on a second face."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Severity

if TYPE_CHECKING:
    from dotleader.page.lay.laid_books import Continued

_CARD = """\
normal Before engine start
  when both are seated
  Fuel selector .... FULLEST TANK
  Canopy .... LATCHED
  Seat belts .... FASTENED, BOTH
  Flight controls .... FREE AND CORRECT
  Parking brake .... ON
  Cabin heat .... CLOSED
  Air vents .... OPEN
  Alternate air .... CLOSED
  Throttle .... CLOSED
  Propeller .... HIGH RPM
  Mixture .... CUT OFF
  Avionics switch .... OFF
  Alternator .... OFF
  Breakers .... IN, ALL
  Altimeter .... FIELD ELEVATION
  Trim .... TAKEOFF MARK
"""

BAD = Example(f"stock A6\n\n{_CARD}", (("card-continued", "Before engine start"),))

GOOD = Example(f"stock A5\n\n{_CARD}")


def check(subject: Subject) -> Iterator[Finding]:
    for found in subject.continued() if subject.continued is not None else ():
        laid = found.laid
        if len(laid.faces) == 2:
            yield Finding(
                RULE.name,
                laid.spot,
                f"{titled(found)} continues on a second face: at the smallest type size it is {lines(laid.over)} too "
                "long for one.",
                f"Shorten it by so much, divide it, or take {roomier(found)}. As it is it fills two faces that "
                "lie open side by side, and the book cannot be folded round there.",
            )


def titled(found: Continued) -> str:
    """The card and, where books are declared, those in which it is too long."""
    title = f"`{found.laid.title}`"
    if not found.books:
        return title
    *others, last = (f"`{name}`" for name in found.books)
    return f"In the books {', '.join(others)} and {last}, {title}" if others else f"In the book {last}, {title}"


def roomier(found: Continued) -> str:
    """On what it would have more room."""
    return "a larger leaf or smaller type in the `book`" if found.large else "a larger leaf in `stock`"


def lines(count: int) -> str:
    return f"{count} printed line" if count == 1 else f"{count} printed lines"


RULE = Rule(
    name="card-continued",
    severity=Severity.WARNING,
    family="form",
    what=(
        "A card that does not stay on one face at the smallest type size that can be read at the distance "
        "that `read at` says, or in the size that a `book` asks for. The finding says by how many printed lines it is "
        "too long, and in which book where books are declared."
    ),
    why=("A procedure on one face is seen whole, and nobody loses the place while going from one face to the next."),
    source=(
        "UK CAA CAP 676 (issue 3, 2006), that keeping one drill on one page may justify the smallest type "
        "(read in a summary)"
    ),
    mend=(
        "Shorten the card: put explanations under `amplified`, leave details away that the pilot knows, "
        "divide it where another cue calls for the rest. An item marked `[critical]` is never the one to go."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
