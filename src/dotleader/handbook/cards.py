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


@record(uncompared=("flat",))
class Phrase:
    """Text as it is printed, with its references worked out.

    `flat` may hold it where there are none, runs of spaces folded: nearly always, and every rule asks for it.
    """

    runs: tuple[str | Use, ...]
    spot: Spot
    flat: str = ""

    @property
    def text(self) -> str:
        """What is printed; runs of spaces folded."""
        if self.flat:
            return self.flat
        return " ".join("".join(run if isinstance(run, str) else run.shown for run in self.runs).split())

    @property
    def written(self) -> str:
        """What is written, references in their braces."""
        if self.flat:
            return self.flat
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
class Aim:
    """Where one part of a response puts a control: into one of `positions`.

    With `other` into one of them in which it does not stand. `positions` is empty where a lever comes to stand between
    its ends, or an `any UNIT` control takes a value; `words` then says where, as printed but for a remark. `""` is a
    position that nobody knows, because a response was not understood.
    """

    positions: tuple[str, ...]
    other: bool = False
    words: str = ""


@record
class Move:
    """What an item does to a control: one of several `ways`, each of which goes through its aims in turn.

    A way without aims leaves the control where it is (`ON if in visible moisture`). No ways: nothing is moved, and
    `stays` is the position in which the control is said to stay.
    """

    control: str
    ways: tuple[tuple[Aim, ...], ...]
    stays: str = ""

    @property
    def positions(self) -> tuple[str, ...]:
        """Every position that it names."""
        return tuple(position for way in self.ways for aim in way for position in aim.positions)

    @property
    def conditional(self) -> bool:
        """Whether there is a choice."""
        return len(self.ways) > 1 or any(len(aim.positions) > 1 for way in self.ways for aim in way)


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
        if len(self.challenges) == 1:
            return self.challenges[0].phrase.text
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
class Standing:
    """That a control stands in a position, or with `negated` that it does not."""

    control: str
    position: str
    negated: bool = False


@record
class Arm:
    """One way of a branch. `word` is ``if``, ``or if`` or ``otherwise`` (then there is no condition).

    `over` is what the condition says of a control, where it does.
    """

    word: str
    condition: Phrase | None
    steps: tuple[Step, ...]
    spot: Spot
    over: Standing | None = None


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
