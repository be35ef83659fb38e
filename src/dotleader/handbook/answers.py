"""What a response does to the control that its challenge names."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from dotleader.handbook.amounts.numerals import NumberTrouble, read_number
from dotleader.handbook.amounts.units import Unit, find_unit, like
from dotleader.handbook.answer_help import fix_for, help_for, is_remark
from dotleader.handbook.cards import Aim, Move, Phrase
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Control, Gauge
from dotleader.handbook.names import part_of
from dotleader.handbook.positions import matched
from dotleader.handbook.trailing import without_comment
from dotleader.source.finding import Related
from dotleader.syntax.line_faults import one_apart
from dotleader.syntax.plain import folded

Way: TypeAlias = tuple[Aim, ...]

NOWHERE_KNOWN = Aim(("",))
"""Where a response that was not understood puts a control."""

STAYS = ("stays ", "stay ")  # `Magnetos .... STAY OFF`
_UNDER_A_CONDITION = ("if ", "unless ")  # `when` says at which moment, and that it will come
_NEAR_MARK = 2  # letters by which free words of a lever may miss one of its marks and are taken for a slip


class Answers:
    """Reads responses against the declared controls."""

    def __init__(self, controls: Mapping[str, Control], gauges: Mapping[str, Gauge], ledger: Ledger) -> None:
        self.controls, self.gauges, self.ledger = controls, gauges, ledger
        self.owners: dict[str, list[str]] = {}
        for control in controls.values():
            for position in control.positions:
                self.owners.setdefault(matched(position), []).append(control.name)

    def move(self, control: Control, response: Phrase) -> Move:
        """What a response does to a control; a response that names none of its positions is said."""
        if control.takes_any:
            return _anything(control, response.text)
        if any(not use.key for use in response.uses):
            return Move(control.key, ((NOWHERE_KNOWN,),))  # that is said elsewhere
        text = response.text
        if "#" in text:  # what is wrong with a comment is said elsewhere
            runs = (run if isinstance(run, str) else run.shown for run in response.runs)
            text = " ".join(without_comment("".join(runs)).split())
        start = text[: len(STAYS[0])].casefold()  # in capitals as the positions are, or not
        stays = next((word for word in STAYS if start.startswith(word)), "")
        text = text[len(stays) :]
        clauses = _clauses(text)
        ways: list[Way] = []
        for clause in clauses:
            found, unknown = self._clause(control, clause)
            if unknown:
                self._unknown(control, unknown, response)
                ways = [(NOWHERE_KNOWN,)]
                break
            ways += found
        if len(clauses) == 1 and clauses[0] != text.strip(" ,;"):
            ways.append(())  # a condition, and nothing for the case that it does not hold
        if stays:
            named = [aim.positions for way in ways for aim in way]
            return Move(control.key, (), stays=named[0][0] if len(named) == 1 == len(named[0]) else "")
        return Move(control.key, tuple(ways))

    def _clause(self, control: Control, clause: str) -> tuple[list[Way], str]:
        """The ways that a clause leaves open, and the first part of it that names nothing."""
        ways, unknown = self._parts(control, clause)
        head, comma, remark = clause.partition(",")
        if unknown and comma and is_remark(remark, control.positions, self.owners):
            before, amiss = self._parts(control, head)
            if not amiss:  # the remark itself has an `or` or a `then` in it
                return [*before, *_unless(remark)], ""
        return ways, unknown

    def _parts(self, control: Control, clause: str) -> tuple[list[Way], str]:
        ways: list[Way] = []
        unless: list[Way] = []
        unknown = ""
        for one in clause.split(" or "):
            way = []
            for part in (piece.strip(" ,;") for piece in one.split(" then ")):
                aim = self._aim(control, part)
                head, comma, remark = part.partition(",")
                if aim is None and comma and is_remark(remark, control.positions, self.owners):
                    aim = self._aim(control, head.strip())
                    unless = unless or _unless(remark)
                if aim is None and self._between(control, part):
                    aim = Aim((), words=_place(part))
                if aim is None:
                    unknown = unknown or part
                else:
                    way.append(aim)
            ways.append(tuple(way))
        return ways + unless, unknown

    def _aim(self, control: Control, text: str) -> Aim | None:
        """What a part of a response names; None for nothing."""
        wanted = matched(text)
        for position in control.positions:
            if matched(position) == wanted:
                return Aim((position,))
        for meaning in control.meanings:
            if folded(meaning.word) == folded(text):
                return Aim(meaning.positions, other=meaning.other)
        return None

    def _between(self, control: Control, text: str) -> bool:
        """Whether words put a lever somewhere between its ends, or to a value of its gauge."""
        return control.lever and (self._reads(control, text) or not self._near_mark(control, text))

    def _reads(self, control: Control, text: str) -> bool:
        """Whether every part of a text is a value in the unit of a gauge that the lever is read on."""
        units = [self.gauges[key].unit for key in control.read_on if key in self.gauges]
        return all(_value_in(part.strip(), units) for part in text.split(","))

    def _near_mark(self, control: Control, text: str) -> bool:
        return any(one_apart(folded(text), folded(mark), _NEAR_MARK) for mark in control.positions)

    def _unknown(self, control: Control, text: str, response: Phrase) -> None:
        declared = Related(control.spot, "It is declared here.")
        spot = part_of(response.spot, text)
        names = ", ".join(f"`{position}`" for position in control.positions)
        others = [name for name in self.owners.get(matched(text), ()) if name != control.name]
        if others:
            self.ledger.say(
                "position-of-another-control",
                spot,
                f"`{text}` is a position of `{others[0]}`, not of `{control.name}`.",
                f"The positions of `{control.name}` are {names}." if names else f"Give `{control.name}` positions.",
                declared,
            )
            return
        help_ = help_for(text, control.positions, self.owners)
        name = f"`{control.name}` has"
        before = self.ledger.findings[-1] if self.ledger.findings else None
        if before is not None and (before.rule, before.spot, before.help) == ("unknown-position", spot, help_):
            # Several controls stand before one response: that is one fault.
            self.ledger.findings.pop()
            earlier = [related.spot.text for related in before.related]
            name = ", ".join(f"`{each}`" for each in earlier) + f" and `{control.name}` have"
            declared_all = (*before.related, declared)
        else:
            declared_all = (declared,)
        fix = fix_for(text, spot, control.positions)
        self.ledger.say("unknown-position", spot, f"{name} no position `{text}`.", help_, *declared_all, fix=fix)


def _unless(remark: str) -> list[Way]:
    """The way that is left where a remark is a condition and it does not hold."""
    return [()] if remark.strip().startswith(_UNDER_A_CONDITION) else []


def _anything(control: Control, text: str) -> Move:
    """What free words do to a control that takes any value."""
    if text.casefold().startswith(STAYS):
        return Move(control.key, ())
    clauses = _clauses(text)
    ways: list[Way] = [(Aim((), words=_place(clause)),) for clause in clauses]
    if len(clauses) == 1 and clauses[0] != text.strip(" ,;"):
        ways.append(())
    return Move(control.key, tuple(ways))


def _place(words: str) -> str:
    """Where free words put a control: without a remark on them (`QNH, READ ALOUD`), which has no number."""
    place, _, remark = words.partition(", ")
    return words if any(mark.isdigit() for mark in remark) else place


def _clauses(text: str) -> list[str]:
    """`ON if in visible moisture, otherwise OFF` as ON and OFF; connecting words are lower case, so that a position
    may have them as a part in capitals."""
    head, otherwise, tail = text.partition("otherwise ")
    parts = [head.partition(" if ")[0].strip(" ,;")]
    if otherwise:
        parts.append(tail.partition(" if ")[0].strip(" ,;"))
    return [part for part in parts if part]


def _value_in(text: str, units: list[Unit | None]) -> bool:
    words = text.replace(" to ", " ").split()
    numbers = 0
    while words and not isinstance(read_number(words[0]), NumberTrouble):
        words.pop(0)
        numbers += 1
    if not numbers:
        return False
    unit = find_unit(" ".join(words)) if words else None
    if not words:
        return True
    return isinstance(unit, Unit) and any(own is not None and like(own, unit) for own in units)
