"""How a branch ends, so that a reader sees it before reading it."""

from __future__ import annotations

from collections.abc import Sequence

from dotleader.handbook.cards import Branch, End, GoTo, Group, Memory, Step, understood
from dotleader.page.lay.outline import Ending


def ending_of(steps: Sequence[Step]) -> Ending:
    """How the rule beside these steps ends (a repeated block's turns back, whatever its steps)."""
    match _last(steps):
        case End():
            return Ending.END
        case GoTo():
            return Ending.LEAVE
        case Group(_, inner) | Memory(inner):
            return ending_of(inner)
        case Branch() as branch if ends_for_good((branch,)):
            return Ending.CLOSED
        case _:
            return Ending.OPEN


def ends_for_good(steps: Sequence[Step]) -> bool:
    """Whether no way through the last step reaches what follows it."""
    match _last(steps):
        case End() | GoTo():
            return True
        case Branch(arms):
            return arms[-1].word == "otherwise" and all(ends_for_good(arm.steps) for arm in arms)
        case Group(_, inner) | Memory(inner):
            return ends_for_good(inner)
        case _:
            return False


def _last(steps: Sequence[Step]) -> Step | None:
    read = understood(steps)
    return read[-1] if read else None
