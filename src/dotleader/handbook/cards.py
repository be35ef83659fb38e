"""Cards as resolved: what is printed on them, and what each line refers to. Data only."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum
from typing import TypeAlias

from dotleader.source.record import record
from dotleader.source.text import Spot


class Kind(Enum):
    EMERGENCY = "emergency"
    ABNORMAL = "abnormal"
    NORMAL = "normal"


@record
class Use:
    """A reference in a text: what it prints as, and the key of what it refers to (`""` where nothing is declared)."""

    name: str
    key: str
    shown: str
    spot: Spot


@record
class Phrase:
    """Text as it is printed, with its references worked out."""

    runs: tuple[str | Use, ...]
    spot: Spot

    @property
    def text(self) -> str:
        """What is printed; runs of spaces folded."""
        return " ".join("".join(run if isinstance(run, str) else run.shown for run in self.runs).split())

    @property
    def written(self) -> str:
        """What is written, references in their braces."""
        return " ".join("".join(run if isinstance(run, str) else f"{{{run.name}}}" for run in self.runs).split())

    @property
    def uses(self) -> tuple[Use, ...]:
        return tuple(run for run in self.runs if isinstance(run, Use))


@record
class Challenge:
    """`control` and `gauge` are keys of what it names, `""` where it is free text or only nearly names something."""

    phrase: Phrase
    control: str = ""
    gauge: str = ""


@record
class Move:
    """A control and the positions an item puts it in, in turn; `conditional` where the response has alternatives."""

    control: str
    positions: tuple[str, ...]
    conditional: bool = False


@record
class Item:
    """One line to do: printed as challenge, leader, response, with its detail below.

    Several challenges are one line over several controls (`Nav lights + Strobe lights .... ON`).
    """

    challenges: tuple[Challenge, ...]
    response: Phrase | None
    detail: tuple[Phrase, ...]
    critical: bool
    only: tuple[tuple[str, str], ...]  # ("with" | "without", option name)
    moves: tuple[Move, ...]
    spot: Spot

    @property
    def challenge(self) -> str:
        """The challenge as printed."""
        return " + ".join(challenge.phrase.text for challenge in self.challenges)


@record
class Notice:
    """`word` is ``note``, ``caution`` or ``warning``."""

    word: str
    phrase: Phrase
    spot: Spot


@record
class Group:
    title: Phrase
    steps: tuple[Step, ...]
    spot: Spot


@record
class Memory:
    steps: tuple[Step, ...]
    spot: Spot


@record
class Arm:
    """One way of a branch. `word` is ``if``, ``or if`` or ``otherwise`` (then there is no condition)."""

    word: str
    condition: Phrase | None
    steps: tuple[Step, ...]
    spot: Spot


@record
class Branch:
    arms: tuple[Arm, ...]
    spot: Spot


@record
class OneOf:
    """Alternatives, of which one is done."""

    steps: tuple[Step, ...]
    spot: Spot


@record
class Repeat:
    until: Phrase
    steps: tuple[Step, ...]
    spot: Spot


@record
class GoTo:
    """Continue on another card: `title` as that card declares it; `target` its key, `""` where there is none."""

    title: str
    target: str
    spot: Spot


@record
class End:
    spot: Spot


@record
class Unread:
    """What could not be read, as typed. There is an error that says so; only a draft has it on its face."""

    phrase: Phrase
    spot: Spot


Step: TypeAlias = Item | Notice | Group | Memory | Branch | OneOf | Repeat | GoTo | End | Unread


@record
class Explained:
    """An item repeated in amplified text, and the prose that explains it."""

    item: Item
    paragraphs: tuple[Phrase, ...]


@record
class Card:
    """One procedure. `key` is its folded title; `phase` is `""` where it fits none or is off the main line."""

    key: str
    kind: Kind
    title: str
    phase: str
    thumb: str
    during: tuple[str, ...]
    after: str
    when: Phrase | None
    method: str  # "verify" | "read and do"
    steps: tuple[Step, ...]
    amplified: tuple[Phrase | Explained, ...]
    spot: Spot  # the title


@record
class Essay:
    """A `text` block: paragraphs of prose under a title."""

    key: str
    title: str
    paragraphs: tuple[Phrase, ...]
    spot: Spot


def understood(steps: Sequence[Step]) -> tuple[Step, ...]:
    """The steps without what could not be read."""
    return tuple(step for step in steps if not isinstance(step, Unread))


def is_gate(branch: Branch) -> bool:
    """Whether a branch is a gate: a single condition that holds nothing but a `go to`.

    It is printed as a gate where it stands right after the memory items.
    """
    return len(branch.arms) == 1 and len(branch.arms[0].steps) == 1 and isinstance(branch.arms[0].steps[0], GoTo)
