"""Every number that a rule measures by and a handbook can set: one line here, and the rule asks `subject.limits`.

    long-list ..... 12 items        in the `rules` block of a handbook
    subject.limits["long-list"]     in the rule

The name is that of the rule; a second number of a rule has a word behind it (`order-differs share`). Rules whose
findings are errors have no threshold: what cannot be printed is no matter of taste.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from dotleader.source.record import record


@record
class Threshold:
    """`unit` as it is written behind the number, in the plural; `low` and `high` are the bounds of what can be set."""

    name: str
    default: int | Fraction
    unit: str
    low: int | Fraction
    high: int | Fraction
    what: str  # what is counted or measured, after "at most" or the like
    source: str
    shared: tuple[str, ...] = ()  # further rules that ask for it

    @property
    def rule(self) -> str:
        return self.name.partition(" ")[0]


THRESHOLDS: tuple[Threshold, ...] = (
    Threshold(
        "many-memory-items", 4, "items", 1, 6, "the most items in the memory blocks of a card",
        "UK CAA CAP 676 (issue 3, 2006) chapter 7 paragraph 2.6 (read in two summaries)",
        shared=("fourth-memory-item",),
    ),
    Threshold(
        "hand-goes-back", 1, "times", 0, 50, "how often the hand may go back over the panel on a card",
        "our own measure; that the order follows the panel is NASA CR-177549, appendix A, guideline 8",
    ),
    Threshold(
        "hand-goes-back way", 2, "times", 1, 20,
        "how often the hand's way is at least as long as the controls are apart",
        "our own measure: once is a hand that goes over the panel in one sweep",
    ),
    Threshold(
        "alternator-overloaded", 80, "%", 30, 100, "the most of an alternator's rating that should be drawn for long",
        "FAA AC 43.13-1B (CHG 1) par. 11-35a, page 11-12",
    ),
    Threshold(
        "battery-too-small", 75, "%", 20, 100, "what is taken of the capacity that stands on a battery",
        "an avionics installation manual (190-02246-10 rev. 11, page 3-38)",
    ),
    Threshold(
        "long-list", 12, "items", 6, 60, "the most items on the longest way through a card without an early gate",
        "our own measure; the recommendation of gates is NTSB A-10-68 (read)",
    ),
    Threshold(
        "long-block", 10, "items", 4, 60, "the most items in a row without a heading",
        "our own measure; that a list is divided is NASA CR-177549, appendix A, guideline 7 (read)",
    ),
    Threshold(
        "very-long-block", 15, "items", 4, 60, "the most items in a row without a heading, in any case",
        "our own measure; that a list is divided is NASA CR-177549, appendix A, guideline 7 (read)",
    ),
    Threshold(
        "landing-late", 3, "items", 1, 10, "the first items after the memory items in which a landing is early",
        "our own measure; landing last on smoke lists is TSB A98H0003 (read)",
    ),
    Threshold(
        "slow-approach", Fraction(13, 10), "times", 1, 2, "the least VREF, in multiples of VS0",
        "14 CFR 23.73, as before amendment 23-64 (read in part)",
    ),
    Threshold(
        "fast-approach", Fraction(3, 2), "times", Fraction(13, 10), 4, "the most that VREF is of VS0",
        "FAA AC 90-89A page 46 (read)",
    ),
    Threshold(
        "maneuvering-speed-high", 1, "kt", 0, 20, "the most that VA may be above VS1 times the root of the load factor",
        "our own measure, for rounding; the root is 14 CFR 23.335(c), as before amendment 23-64",
    ),
    Threshold(
        "order-differs", 5, "items", 2, 60, "the fewest items that two cards share whose orders are compared",
        "our own measure; that a list is a flow is NASA CR-177549, appendix A, guideline 8 (read in a summary)",
    ),
    Threshold(
        "order-differs share", 80, "%", 50, 100, "the least of the shorter card that two cards share to be of one kind",
        "our own measure",
    ),
    Threshold(
        "long-capitals", 6, "words", 3, 60, "the most words in capitals in a row in prose, details and notices",
        "our own measure; that long text is in lower case is NASA CR-177605, recommendation 4 (read)",
    ),
)  # fmt: skip
"""The bounds are our own: what leads to no useful answer is a slip of the pen."""

BY_NAME: Mapping[str, Threshold] = MappingProxyType({each.name: each for each in THRESHOLDS})


class Limits:
    """The thresholds of one handbook: its own where it sets them, else the defaults."""

    def __init__(self, own: Mapping[str, Fraction] = MappingProxyType({})) -> None:
        self._own = own

    def __getitem__(self, name: str) -> int:
        """A whole one, such as a count."""
        return int(self.exact(name))

    def exact(self, name: str) -> Fraction:
        own = self._own.get(name)
        return own if own is not None else Fraction(BY_NAME[name].default)


def shown(number: int | Fraction) -> str:
    """A number as it is written in a `rules` block."""
    exact = Fraction(number)
    if exact.denominator == 1:
        return str(exact.numerator)
    return f"{float(exact):.6f}".rstrip("0").rstrip(".")


def written(threshold: Threshold, number: int | Fraction) -> str:
    """`12 items`, `1 item`, `80 %`."""
    unit = threshold.unit
    return f"{shown(number)} {unit[:-1] if number == 1 and unit.endswith('s') else unit}"
