"""Text for the bench in columns: headings, sentences, rows of a label and what it says."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from dotleader.page.drawn import Drawn, Font, Line, pt
from dotleader.page.type.breaking import broken, length, room_of, set_line, without_orphan
from dotleader.page.type.metrics import ascent, ems, shown, width
from dotleader.page.type.words import Words, plain_words

LEADING = 1_280
"""From one line to the next in thousandths of the size: a gap of 28 per cent (CR-177605, section 6 no. 9)."""

_HEADING = 1_200
_HEADING_ABOVE = 750
_SENTENCE_ABOVE = 300
_ROW_ABOVE = 300
_RULE_BELOW = 200
_LABEL_AIR = 1_000
_RULE = pt(0.6)
_NUMBER = re.compile(r"\d+\.")


@dataclass(slots=True)
class Column:
    """What is set into it stands below what was there before. `low` is where its last line ends."""

    left: int
    width: int
    size: int
    low: int
    items: list[Drawn] = field(default_factory=list)

    @property
    def right(self) -> int:
        return self.left + self.width

    def heading(self, text: str) -> None:
        """On a rule, like a group on a card."""
        size = size_of(_HEADING, self.size)
        if self.items:
            self.space(_HEADING_ABOVE)
        for line in broken(plain_words(shown(text, Font.BOLD), Font.BOLD), room_of(self.width, size)):
            base = self.low + ascent(Font.BOLD, size)
            self.items.extend(set_line(line, self.left, base, size))
            self.low += length(LEADING, size)
        self.items.append(Line(((self.left, self.low), (self.right, self.low)), _RULE))
        self.space(_RULE_BELOW)

    def sentence(self, text: str) -> None:
        """Further lines of one that begins with a number are indented by it."""
        self.space(_SENTENCE_ABOVE)
        number, _, rest = text.partition(" ")
        hang = ems(f"{number} ", Font.REGULAR) if rest and _NUMBER.fullmatch(number) else 0
        self._lines(_words(text), self.left, self.width, hang)

    def row(self, label: str, said: str, labels: int) -> None:
        """`labels` is the width of the column of labels."""
        self.space(_ROW_ABOVE)
        top = self.low
        self._lines(plain_words(label, Font.BOLD), self.left, labels, 0)
        low, self.low = self.low, top
        self._lines(_words(said), self.left + labels, self.width - labels, 0)
        self.low = max(low, self.low)

    def labels_width(self, labels: list[str]) -> int:
        return max(width(label, Font.BOLD, self.size) for label in labels) + length(_LABEL_AIR, self.size)

    def space(self, thousandths: int) -> None:
        self.low += length(thousandths, self.size)

    def _lines(self, words: Words, left: int, wide: int, hang: int) -> None:
        for number, line in enumerate(without_orphan(words, room_of(wide, self.size) - hang)):
            base = self.low + ascent(Font.REGULAR, self.size)
            self.items.extend(set_line(line, left + (length(hang, self.size) if number else 0), base, self.size))
            self.low += length(LEADING, self.size)


def _words(text: str) -> Words:
    """A punch may be called by what no font has."""
    return plain_words(shown(text, Font.REGULAR), Font.REGULAR)


def size_of(thousandths: int, size: int) -> int:
    """A size of type in proportion to another, in whole tenths of a point."""
    return thousandths * size // 1000 // 100 * 100
