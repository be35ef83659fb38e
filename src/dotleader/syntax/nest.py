"""The lines of a block put below one another by their indentation; what each may be, `places` says."""

from __future__ import annotations

import re

from dotleader.source.text import Span
from dotleader.syntax.blocks import RawLine
from dotleader.syntax.line_faults import short
from dotleader.syntax.lines import LEADER, card_line, fact_line
from dotleader.syntax.open_line import OpenLine
from dotleader.syntax.places import (
    ELECTRICAL_NUMBERS,
    NUMBER_PROPERTIES,
    PROSE_PLACES,
    RAW_PLACES,
    Place,
    place_below,
    place_of_block,
)
from dotleader.syntax.slips import belongs_higher, is_neighbour, is_no_more_notice, spaces
from dotleader.syntax.tree import Allow, Blank, Body, Broken, Comment, Fault, Head, Item, Line, Mend, Prose, Row
from dotleader.syntax.words import read_words

DEEPEST = 12
"""Levels of indentation below a head that are read."""

ALLOW = re.compile(
    r"(?:^|(?<=\s\s)|(?<=\s)(?=#\s*+[aA]llow\s++[a-z0-9-]++\s*+:))(#\s*+[aA]llow\b\s*+([^\s:]*+)\s*+:?\s*+(.*))$"
)
"""Two spaces stand before it; behind one space it is read where nothing else can be meant, and not printed."""


def nested(head: Head, lines: list[RawLine], faults: list[Fault]) -> tuple[Line, ...]:
    """The lines below `head` as a tree."""
    root = OpenLine(0, place_of_block(head.keyword), head.span, Blank(), None)
    stack = [root]
    runs = _unindented(lines)
    for raw in lines:
        if not raw.text:
            stack[-1].children.append(OpenLine(raw.indent, Place.NOTHING, Span(raw.start, raw.start), Blank(), None))
            continue
        if raw.start in runs:
            faults.append(_not_indented(raw, runs[raw.start]))
        _put(raw, stack, faults)
    return tuple(child.closed() for child in _blanks_up(root).children)


def _is_unindented(raw: RawLine) -> bool:
    return raw.indent == 0 and bool(raw.text) and not raw.text.startswith("#")


def _unindented(lines: list[RawLine]) -> dict[int, int]:
    """Where the first of a run of lines without indentation stands, and how many they are: a list that was pasted."""
    runs: dict[int, int] = {}
    first = -1
    for raw in lines:
        if not raw.text:
            continue
        if not _is_unindented(raw):
            first = -1
            continue
        if first < 0:
            first = raw.start
        runs[first] = runs.get(first, 0) + 1
    return runs


def _not_indented(raw: RawLine, run: int) -> Fault:
    """One finding for a run of `run` lines."""
    if run == 1:
        more, help_ = "", "Indent it by two spaces if it belongs to the block above; it is read so."
    else:
        more = ", and neither is the line" if run == 2 else f", and neither are {run - 1} lines"
        more += " below it"
        help_ = "Indent them by two spaces if they belong to the block above; they are read so."
    message = f"`{short(raw.text)}` has a leader but is not indented{more}."
    return Fault("stray-line", Span(raw.start, raw.start + len(raw.text)), message, help_)


def _put(raw: RawLine, stack: list[OpenLine], faults: list[Fault]) -> None:
    span = Span(raw.start, raw.start + len(raw.text))
    if _is_unindented(raw):
        level = _level(stack)
        while len(stack) > 1 and level <= stack[-1].indent:
            stack.pop()
        _append(raw, level, span, stack, faults)
        return
    if raw.tabs:
        raw = raw._replace(indent=_tabbed(raw.indent, stack))
        faults.append(
            Fault(
                "tab-indentation",
                Span(raw.start - 1, raw.start),
                "This line is indented by a tab.",
                "Indent by spaces, two for each level; `dotleader format` does it.",
                Mend(Span(raw.start - len(raw.lead), raw.start), " " * raw.indent, safe=True),
            )
        )
    if raw.text.startswith("#") and not (_prose(stack) and raw.indent > _base(stack)):
        body, allow = _comment(raw.text, span)
        stack[-1].children.append(OpenLine(raw.indent, Place.NOTHING, span, body, allow))
        return
    level = _unwind(raw.indent, stack, faults, span)
    _append(raw, level, span, stack, faults)


def _tabbed(indent: int, stack: list[OpenLine]) -> int:
    """Where a line indented by tabs is read: one tab is one level, however wide the levels above are.

    In a text, whose lines may be indented in any way, it is as deep as it looks.
    """
    if stack[0].place is Place.TEXT or any(node.place is Place.AMPLIFIED and node.indent < indent for node in stack):
        return indent
    level = max(indent // 4, 1)
    return stack[level].indent if level < len(stack) else stack[-1].indent + 2


def _level(stack: list[OpenLine]) -> int:
    """Where an unindented line is read: beside the item above it, or below the line that opened this part."""
    if stack[0].place is Place.EQUIPMENT and len(stack) > 1:
        return stack[1].indent
    for node in reversed(stack[1:]):
        if isinstance(node.body, Item | Row):
            return node.indent
        if node.place is Place.CARD:
            return node.indent + 2
    return 2


def _prose(stack: list[OpenLine]) -> bool:
    return any(node.place in RAW_PLACES for node in stack)


def _base(stack: list[OpenLine]) -> int:
    """The indentation of the outermost line below which everything is prose."""
    return next(node.indent for node in stack if node.place in RAW_PLACES)


def _unwind(indent: int, stack: list[OpenLine], faults: list[Fault], span: Span) -> int:
    """Close what this line no longer stands below; the indentation as which it is read.

    A line that is uneven is read as if it were even, so that one slip is one finding.
    """
    closed = False
    while len(stack) > 1 and not stack[-1].holds(indent):
        stack.pop()
        closed = True
    # A line indented between two levels belongs to no line above it.
    above = stack[-1]
    if not closed or above.last is None or above.place in PROSE_PLACES:
        return indent
    level, help_ = above.last.indent, "Indent it by {0}, or by {1} if it belongs to the line above."
    if indent == level or indent in above.slips:  # the first of several lines with one slip says it for all
        return level
    wrong, among = indent, "the lines it stands among"
    if above.count == 1 and indent < level != above.indent + 2:  # rather the line above, which alone is deeper
        span, wrong, level, among, help_ = above.last.span, level, indent, "the line after it", "Indent it by {0}."
    faults.append(
        Fault(
            "uneven-indentation",
            span,
            f"This line is indented by {spaces(wrong)}; {among} by {level}.",
            help_.format(spaces(level), level + 2),
        )
    )
    return level


def _append(raw: RawLine, indent: int, span: Span, stack: list[OpenLine], faults: list[Fault]) -> None:
    if len(stack) > DEEPEST:
        if stack[-1].last is None:  # said once for all the lines that stand so deep together
            faults.append(
                Fault(
                    "nested-too-deep",
                    span,
                    f"This line stands {len(stack)} levels deep; {DEEPEST} are read.",
                    "A card has at most two levels of branches. Make a card of what stands so deep and `go to` it.",
                )
            )
        stack[-1].take(OpenLine(indent, Place.TEXT, span, Broken(raw.text), None), raw.indent)
        return
    above = stack[-1].place
    if (
        (above is Place.DETAIL and belongs_higher(raw, stack, faults, span))
        or (above is Place.NOTHING and len(stack) > 1 and is_neighbour(raw, stack, faults, span))
        or (above is Place.TEXT and is_no_more_notice(raw, stack, faults, span))
    ):
        while len(stack) > 1 and stack[-1].place is above:
            indent = stack.pop().indent
    place = stack[-1].place
    text, allow = _without_allow(raw.text, raw.start, place)
    span = Span(raw.start, raw.start + len(text))
    body = _body(text, raw.start, place, stack, faults)
    node = OpenLine(indent, place_below(place, body), span, body, allow)
    stack[-1].take(node, raw.indent)
    stack.append(node)


def _body(text: str, start: int, place: Place, stack: list[OpenLine], faults: list[Fault]) -> Body:
    match place:
        case Place.CARD:
            return card_line(text, start, faults)
        case Place.FACTS | Place.EQUIPMENT:
            return fact_line(text, start, False, faults)
        case Place.NUMBERS:
            return fact_line(text, start, True, faults)
        case Place.PROPERTY:
            return fact_line(text, start, text.startswith(NUMBER_PROPERTIES), faults)
        case Place.ELECTRICAL | Place.SUPPLY:
            return fact_line(text, start, text.startswith(ELECTRICAL_NUMBERS), faults)
        case Place.AMPLIFIED if LEADER.search(text):
            return _amplified_item(text, start, faults)
        case Place.TEXT | Place.AMPLIFIED | Place.DETAIL:
            return Prose(read_words(text, start, faults))
        case Place.NOTHING:
            return _misplaced(text, start, stack, faults)


def _amplified_item(text: str, start: int, faults: list[Fault]) -> Body:
    """An item repeated in amplified text; whether its challenge is on the card is asked later."""
    own: list[Fault] = []
    body = card_line(text, start, own)
    if isinstance(body, Item) and not own:
        return body
    return Prose(read_words(text, start, faults))


def _misplaced(text: str, start: int, stack: list[OpenLine], faults: list[Fault]) -> Body:
    above = stack[-1]
    rows = isinstance(above.body, Row)
    where = "below a row, which has nothing below it" if rows else "where nothing can stand below the line above"
    faults.append(
        Fault(
            "uneven-indentation" if LEADER.search(text) or rows else "stray-line",
            Span(start, start + len(text)),
            f"`{short(text)}` is indented {where}.",
            f"Indent it by {spaces(max(above.indent, 2))} if it belongs to the block, or write it on the line above.",
        )
    )
    return Broken(text)


def _comment(text: str, span: Span) -> tuple[Comment, Allow | None]:
    found = ALLOW.match(text)
    return Comment(text), Allow(found[2], found[3].strip(), span) if found else None


def _without_allow(text: str, start: int, place: Place) -> tuple[str, Allow | None]:
    """The line without a trailing `# allow`; in prose `#` is always text."""
    if "#" not in text or place in RAW_PLACES:
        return text, None
    found = ALLOW.search(text)
    if not found or found.start() == 0:
        return text, None
    span = Span(start + found.start(1), start + found.end(1))
    return text[: found.start()].rstrip(), Allow(found[2], found[3].strip(), span)


def _blanks_up(node: OpenLine) -> OpenLine:
    """Blank lines and comments at the end of what stands below a line stand after it, not in it."""
    out: list[OpenLine] = []
    for child in node.children:
        _blanks_up(child)
        trailing: list[OpenLine] = []
        while child.children and isinstance(child.children[-1].body, Blank | Comment):
            last = child.children[-1]
            if isinstance(last.body, Comment) and last.indent > child.indent:
                break
            trailing.append(child.children.pop())
        out.append(child)
        out.extend(reversed(trailing))
    node.children = out
    return node
