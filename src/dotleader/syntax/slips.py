"""Lines that cannot stand below the line that they are indented below, and are read as its neighbours.

Each is a finding; what is wrong with the form of the line itself is not asked here.
"""

from __future__ import annotations

import re

from dotleader.source.text import Span
from dotleader.syntax.blocks import RawLine
from dotleader.syntax.line_faults import CARD_KEYWORDS, short
from dotleader.syntax.lines import LEADER
from dotleader.syntax.open_line import OpenLine
from dotleader.syntax.places import Place
from dotleader.syntax.tree import Fault, Item, Mend, Row, Say

_NOTICE = re.compile(r"(note|caution|warning)(?=\s)")
_KEYWORD = re.compile(rf"(?:{'|'.join(CARD_KEYWORDS)})(?=\s|$)")
_LIKE_ITEM = re.compile(r"\S\s(?:\.{2,}|…|\.\s\.\s\.[\s.]*)\s|\S\s\.{4,}|\S\.{4,}\s?\S")
"""In a detail, `Wait... then` is text, and so is a last `Really....`; dots with spaces around them, or four of them
before something, are a leader."""


def belongs_higher(raw: RawLine, stack: list[OpenLine], faults: list[Fault], span: Span) -> bool:
    """Whether a line below an item cannot be its detail; then it is read as the item's neighbour."""
    notice = _NOTICE.match(raw.text)
    if not (notice or _LIKE_ITEM.search(raw.text)) or any(node.place is Place.AMPLIFIED for node in stack):
        return False
    item = next(node for node in reversed(stack) if isinstance(node.body, Item))
    level = item.indent
    if isinstance(item.body, Item) and item.body.response is None:
        pass  # probably the heading of these lines; that it has no response is said
    elif notice:
        faults.append(
            Fault(
                "notice-below-item",
                span,
                f"`{notice[1]}` stands below an item, where only the item's details do.",
                f"Put it before the item it warns of, indented by {spaces(level)}; "
                "for a remark on the item itself leave the keyword out.",
            )
        )
    else:
        faults.append(
            Fault(
                "uneven-indentation",
                span,
                f"`{short(raw.text)}` has a leader but is indented below an item, where only details stand.",
                f"Indent it by {spaces(level)} like the item above; it is read so.",
                _moved(raw, level),
            )
        )
    return True


def is_neighbour(raw: RawLine, stack: list[OpenLine], faults: list[Fault], span: Span) -> bool:
    """Whether a line below one that has nothing below it can be read as its neighbour."""
    above = stack[-1]
    if not LEADER.search(raw.text) and (isinstance(above.body, Row) or not _KEYWORD.match(raw.text)):
        return False
    faults.append(
        Fault(
            "uneven-indentation",
            span,
            f"`{short(raw.text)}` is indented below a line that has nothing below it.",
            f"Indent it by {spaces(above.indent)} like the line above; it is read so.",
            _moved(raw, above.indent),
        )
    )
    return True


def is_no_more_notice(raw: RawLine, stack: list[OpenLine], faults: list[Fault], span: Span) -> bool:
    """Whether a line that would go on with a notice is an item; then it is read as the notice's neighbour."""
    notice = next((node for node in reversed(stack) if isinstance(node.body, Say)), None)
    if notice is None or not isinstance(notice.body, Say) or not _LIKE_ITEM.search(raw.text):
        return False
    faults.append(
        Fault(
            "uneven-indentation",
            span,
            f"`{short(raw.text)}` has a leader but is indented below `{notice.body.keyword}`, where only text stands.",
            f"Indent it by {spaces(notice.indent)} like the line above; it is read so.",
            _moved(raw, notice.indent),
        )
    )
    return True


def _moved(raw: RawLine, indent: int) -> Mend:
    """Which line belongs to which is for the writer to say, and so the fix is not safe."""
    return Mend(Span(raw.start - len(raw.lead), raw.start), " " * indent)


def spaces(count: int) -> str:
    return f"{count} space" if count == 1 else f"{count} spaces"
