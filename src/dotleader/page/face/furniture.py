"""What every face has around its text: head, label, foot; and what a blank or a draft has across it.

Nothing here depends on the width of the face's own label, so that a face that is only relabelled looks the same but
for that label: kind and registration stand at the inner end of the head, the label at its outer end.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Font, Line, Text, mm, pt
from dotleader.page.face.margins import Margins
from dotleader.page.frames import (
    CAUTION_SIZE,
    FOOT_LINE,
    FOOT_SIZE,
    caution_lines,
    foot_rule,
    frame_of,
    head_rule,
    larger,
    narrow,
    own_label_height,
    own_label_size,
)
from dotleader.page.labels import SECTIONS, WIDEST
from dotleader.page.tabs import tab, tab_width
from dotleader.page.type.breaking import broken, line_width, room_of, set_line
from dotleader.page.type.metrics import cap_height, width
from dotleader.page.type.words import plain_words
from dotleader.source.record import record

NOT_ISSUED = "not issued"
BLANK = "This face is intentionally left blank."
OPEN_FLAT = "OPEN FLAT"

HEAD_TEXT = 9_500
LARGEST_HEAD_TEXT = 12_500
"""Where type is large: as much as stands below the upper line of the head."""

OVER_RULE = mm(2.6)
UPPER_LINE = mm(4)
HEAD_AIR = mm(4)
NARROW_HEAD = mm(95)
"""Below this, OPEN FLAT may stand above kind and registration, and the mark of a draft makes way for it."""

FRAMED_PAD = mm(1.4)
FRAMED_HEIGHT = mm(4.4)
FIRST_FOOT_LINE = mm(3.7)
BLANK_SIZE = 12_000
HAIRLINE = pt(0.6)

DRAFT_SIZE = 120_000
DRAFT_OUTLINE = pt(0.6)
DRAFT_PITCH = 1_600
"""From one line of the mark to the next, in thousandths of its capitals' height."""

HEAD_RULES: MappingProxyType[str, int] = MappingProxyType(
    {"emergency": pt(2.4), "abnormal": pt(1.2), "normal": pt(0.6)}
)
_SHORT = {"3": "EMERGENCY", "3A": "ABNORMAL", "4": "NORMAL", "8": "HANDLING"}


@record
class Imprint:
    """What stands on every face of a book. `issue` and `date` are those of the face's own last change."""

    handbook: str
    registration: str
    issue: str = NOT_ISSUED
    date: str = ""


def head_word(kind: str, section: str) -> str:
    """What the head calls a face."""
    if kind in HEAD_RULES:
        return kind.upper()
    name = _SHORT.get(section, SECTIONS[section].upper())
    return f"{name}, AMPLIFIED" if kind == "amplified" else name


def head(stock: Stock, margins: Margins, kind: str, section: str, imprint: Imprint, flat: bool) -> Iterator[Drawn]:
    """Kind and registration at the binding, on the rule; whether the book is to be opened flat here."""
    frame, rule = frame_of(stock), head_rule(stock) + margins.down
    stroke = HEAD_RULES.get(kind, HAIRLINE)
    yield Line(((margins.left, rule), (margins.left + frame.width, rule)), stroke)
    word = head_word(kind, section)
    widest = frame.width - tab_width(str(WIDEST), own_label_size(stock))
    text_size = HEAD_TEXT if flat else min(HEAD_TEXT + larger(stock), LARGEST_HEAD_TEXT)
    word_size = _size_for(word, Font.BOLD, text_size, widest)
    word_width = width(word, Font.BOLD, word_size)
    shown = "" if narrow(stock) else imprint.registration
    registration, size = _cut(shown, max(0, widest - word_width - HEAD_AIR), text_size)
    long = word_width + (HEAD_AIR + width(registration, Font.REGULAR, size) if registration else 0)
    base = rule - OVER_RULE
    left = margins.left if margins.outer_right else margins.left + frame.width - long
    yield Text(left, base, word, word_size, Font.BOLD)
    if registration:
        yield Text(left + word_width + HEAD_AIR, base, registration, size)
    if flat:
        beside = HEAD_AIR + long if _flat_beside(widest, long) else None
        yield from _open_flat(margins, frame.width, beside, base)


def _flat_beside(widest: int, taken: int) -> bool:
    """Whether OPEN FLAT finds room beside kind and registration; else it stands above them."""
    return taken + HEAD_AIR + width(OPEN_FLAT, Font.BOLD, HEAD_TEXT) + 2 * FRAMED_PAD <= widest


def _open_flat(margins: Margins, across: int, beside: int | None, base: int) -> Iterator[Drawn]:
    """A framed word `beside` so far from the inner end of the head, or a bare one above."""
    long = width(OPEN_FLAT, Font.BOLD, HEAD_TEXT)
    if beside is None:
        left = margins.left if margins.outer_right else margins.left + across - long
        yield Text(left, base - UPPER_LINE, OPEN_FLAT, HEAD_TEXT, Font.BOLD)
        return
    framed = long + 2 * FRAMED_PAD
    left = margins.left + beside if margins.outer_right else margins.left + across - beside - framed
    middle = base - cap_height(Font.BOLD, HEAD_TEXT) // 2
    yield Box(left, middle - FRAMED_HEIGHT // 2, framed, FRAMED_HEIGHT, stroke=pt(1))
    yield Text(left + FRAMED_PAD, base, OPEN_FLAT, HEAD_TEXT, Font.BOLD)


def own_label(stock: Stock, margins: Margins, label: str) -> tuple[Drawn, ...]:
    """The label of the face itself, white on black in the outer corner of the head."""
    rule = head_rule(stock) + margins.down
    left = margins.left
    if margins.outer_right:
        left += frame_of(stock).width - tab_width(label, own_label_size(stock))
    height = own_label_height(stock)
    return tab(left, rule - height, height, label, own_label_size(stock))


def foot(stock: Stock, margins: Margins, imprint: Imprint) -> Iterator[Drawn]:
    """The handbook and the line of caution below a rule; the issue stands apart (`issue_mark`).

    On a narrow leaf the registration stands here and not in the head.
    """
    frame, rule = frame_of(stock), foot_rule(stock) + margins.down
    yield Line(((margins.left, rule), (margins.left + frame.width, rule)), HAIRLINE)
    room = frame.width - _issue_room() - HEAD_AIR
    base = rule + FIRST_FOOT_LINE
    if narrow(stock):
        title, size = _cut(imprint.handbook, frame.width, FOOT_SIZE)
        yield Text(margins.left, base, title, size)
        base += FOOT_LINE
        title, size = _cut(imprint.registration, room, FOOT_SIZE)
    else:
        title, size = _cut(imprint.handbook, room, FOOT_SIZE)
    if title:
        yield Text(margins.left, base, title, size)
    for number, line in enumerate(caution_lines(stock), start=1):
        yield Text(margins.left, base + number * FOOT_LINE, line, CAUTION_SIZE)


def issue_mark(stock: Stock, margins: Margins, imprint: Imprint) -> Iterator[Drawn]:
    """Issue and date of the face, at the right end of the foot."""
    base = foot_rule(stock) + margins.down + FIRST_FOOT_LINE + (FOOT_LINE if narrow(stock) else 0)
    shown = f"{imprint.issue}  {imprint.date}".rstrip()
    right = margins.left + frame_of(stock).width
    yield Text(right - width(shown, Font.REGULAR, FOOT_SIZE), base, shown, FOOT_SIZE)


def blank(stock: Stock, margins: Margins) -> Iterator[Drawn]:
    frame = frame_of(stock)
    lines = broken(plain_words(BLANK, Font.REGULAR), room_of(frame.width, BLANK_SIZE))
    base = (frame.top + frame.bottom) // 2 + margins.down
    for number, line in enumerate(lines):
        long = line_width(line) * BLANK_SIZE * 127 // 360_000
        left = margins.left + (frame.width - long) // 2
        yield from set_line(line, left, base + number * mm(6), BLANK_SIZE)


def draft(stock: Stock, margins: Margins, errors: int, flat: bool) -> Iterator[Drawn]:
    """DRAFT across the face in hollow letters, as large as the frame allows, and the number of errors in the head."""
    frame = frame_of(stock)
    said = f"DRAFT: {errors} ERROR{'' if errors == 1 else 'S'}" if errors else "DRAFT"
    above = flat and frame.width < NARROW_HEAD + (tab_width(str(WIDEST), larger(stock)) if larger(stock) else 0)
    taken = width(OPEN_FLAT, Font.BOLD, HEAD_TEXT) + HEAD_AIR if above else 0
    beside = frame.width - tab_width(str(WIDEST), own_label_size(stock)) - taken
    said_size = _size_for(said, Font.BOLD, HEAD_TEXT, beside)
    long = width(said, Font.BOLD, said_size)
    base = head_rule(stock) + margins.down - OVER_RULE - UPPER_LINE
    left = margins.left + taken if margins.outer_right else margins.left + frame.width - long - taken
    yield Text(left, base, said, said_size, Font.BOLD)
    room_across = frame.width - 2 * DRAFT_OUTLINE
    size = DRAFT_SIZE * min(1000, room_across * 1000 // width("DRAFT", Font.BOLD, DRAFT_SIZE)) // 1000
    high = cap_height(Font.BOLD, size)
    room = frame.bottom - frame.top
    count = max(1, (room + high * (DRAFT_PITCH - 1000) // 1000) // (high * DRAFT_PITCH // 1000))
    across = margins.left + (frame.width - width("DRAFT", Font.BOLD, size)) // 2
    for number in range(count):
        lower = frame.top + margins.down + (room * (2 * number + 1) // count + high) // 2
        yield Text(across, lower, "DRAFT", size, Font.BOLD, hollow=DRAFT_OUTLINE)


def _issue_room() -> int:
    """Room that is kept for issue and date whatever they are, so that the foot beside them stays as it is."""
    return width("issue 88.88  8888-88-88", Font.REGULAR, FOOT_SIZE)


def _size_for(text: str, font: Font, size: int, room: int) -> int:
    """The size, or the smaller one at which a text fits a room."""
    long = width(text, font, size)
    return size if long <= room else size * max(0, room) // long // 100 * 100


def _cut(text: str, room: int, size: int = HEAD_TEXT) -> tuple[str, int]:
    """A text a little smaller, then cut, until it fits; the title face has it whole."""
    least = size * 3 // 4 // 500 * 500
    while size > least and width(text, Font.REGULAR, size) > room:
        size -= 500
    if width(text, Font.REGULAR, size) <= room:
        return text, size
    while text and width(f"{text}…", Font.REGULAR, size) > room:
        text = text[:-1]
    return (f"{text.rstrip()}…" if text else ""), size
