"""A line of a block whose children are still coming."""

from __future__ import annotations

from dotleader.source.text import Span
from dotleader.syntax.places import Place
from dotleader.syntax.tree import Allow, Body, Line


class OpenLine:
    """A line whose children are still coming."""

    __slots__ = ("allow", "body", "children", "count", "indent", "last", "place", "slips", "span", "written")

    def __init__(self, indent: int, place: Place, span: Span, body: Body, allow: Allow | None) -> None:
        self.indent = indent  # as it is read
        self.written = indent  # which is another where there is a finding about it
        self.place = place  # of what stands below it
        self.span = span
        self.body = body
        self.allow = allow
        self.children: list[OpenLine] = []
        self.last: OpenLine | None = None  # the last line below it that is no comment and not blank
        self.count = 0  # of such lines
        self.slips: set[int] = set()  # indentations of these that are read as another, which has been said

    def take(self, child: OpenLine, written: int) -> None:
        child.written = written
        self.children.append(child)
        self.last = child
        self.count += 1
        if written != child.indent:
            self.slips.add(written)

    def holds(self, indent: int) -> bool:
        """Whether a line indented so far stands below this one.

        An uneven heading holds what is deeper than it should be, any other uneven line what is deeper than it is.
        """
        heads = self.place in (Place.CARD, Place.AMPLIFIED)
        return indent > (self.indent if heads else max(self.indent, self.written))

    def closed(self) -> Line:
        return Line(self.span, self.body, tuple(child.closed() for child in self.children), self.allow)
