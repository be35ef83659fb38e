"""What the `rules` block of a handbook sets: thresholds, rules that are off for a reason, and whether words are
looked up."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from dotleader.handbook.model import Setting
from dotleader.rules.thresholds import BY_NAME, Limits, Threshold
from dotleader.source.record import record
from dotleader.syntax.plain import folded

SPELLING, WORDS = "spelling", "words"
SWITCHES = (SPELLING, WORDS)
"""Rows that begin with no name of a rule."""

_OFF = re.compile(r"off\b(?P<rest>.*)", re.IGNORECASE)
_BECAUSE = re.compile(r"\s*[,:-]?\s*because\b\s*:?\s*(?P<reason>.*)", re.IGNORECASE)
_NUMBER = re.compile(r"(?P<number>\d{1,3}(?:,\d{3}){1,2}|\d{1,9}(?:\.\d{1,6})?)\s*(?P<unit>.*)")


@record
class Off:
    """A rule is off; `reason` is empty where none is given."""

    reason: str


@record
class Set:
    """A threshold is `number`, within its bounds and in its unit."""

    threshold: Threshold
    number: Fraction


@record
class Spelling:
    """Whether the words of the handbook are looked up (the rule `unknown-word`)."""

    on: bool


@record
class Words:
    """Words that are right in this handbook, as written. Several such rows add up."""

    words: tuple[str, ...]


@record
class Amiss:
    """A row that sets nothing; `threshold` is what it could set, None where the rule has none or there is no rule."""

    threshold: Threshold | None
    number: Fraction | None  # one in the right unit, but out of bounds


def meaning_of(setting: Setting) -> Off | Set | Spelling | Words | Amiss:
    match folded(setting.name):
        case "spelling":
            state = folded(setting.text).partition(" ")[0].rstrip(",")
            return Spelling(state == "on") if folded(setting.text) == "on" or state == "off" else Amiss(None, None)
        case "words":
            words = tuple(setting.text.replace(",", " ").split())
            return Words(words) if words else Amiss(None, None)
        case _:
            return _meaning_of_rule(setting)


def _meaning_of_rule(setting: Setting) -> Off | Set | Amiss:
    off = _OFF.fullmatch(setting.text)
    if off is not None:
        because = _BECAUSE.fullmatch(off["rest"])
        return Off(because["reason"].strip() if because else "")
    threshold = BY_NAME.get(folded(setting.name))
    found = _NUMBER.fullmatch(setting.text)
    if threshold is None or found is None or not _is_unit(found["unit"], threshold):
        return Amiss(threshold, None)
    number = Fraction(found["number"].replace(",", ""))
    if not threshold.low <= number <= threshold.high or (_is_whole(threshold) and number.denominator != 1):
        return Amiss(threshold, number)
    return Set(threshold, number)


def limits_of(settings: Iterable[Setting]) -> Limits:
    """The thresholds of a handbook; a row that sets nothing leaves the default, and is said when all is settled."""
    own: dict[str, Fraction] = {}
    for setting in settings:
        read = meaning_of(setting)
        if isinstance(read, Set):
            own[read.threshold.name] = read.number
    return Limits(own)


def rules_off(settings: Iterable[Setting]) -> Mapping[str, tuple[Setting, Off]]:
    """The rows that turn something off, by the names they give, folded."""
    read = ((setting, meaning_of(setting)) for setting in settings)
    return {folded(setting.name): (setting, what) for setting, what in read if isinstance(what, Off)}


def spelling_on(settings: Iterable[Setting]) -> bool:
    return any(meaning_of(each) == Spelling(True) for each in settings if folded(each.name) == SPELLING)


def words_allowed(settings: Iterable[Setting]) -> Iterator[str]:
    for setting in settings:
        if isinstance(read := meaning_of(setting), Words):
            yield from read.words


def _is_unit(text: str, threshold: Threshold) -> bool:
    written, unit = folded(text), folded(threshold.unit)
    return written == unit or (unit.endswith("s") and written == unit[:-1])


def _is_whole(threshold: Threshold) -> bool:
    return all(Fraction(each).denominator == 1 for each in (threshold.default, threshold.low, threshold.high)) and (
        threshold.unit not in ("%",)
    )
