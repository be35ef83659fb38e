"""What of a card could not be read, as typed: a draft shows it, so that nothing is dropped silently.

What is wrong with it has been said by the parser, and nothing more is said of it.
"""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.cards import Phrase, Unread
from dotleader.handbook.gather import At
from dotleader.source.text import Span
from dotleader.syntax.lines import MARKS
from dotleader.syntax.tree import Blank, Broken, Comment, Item, Line, Say, Words
from dotleader.syntax.words import read_words

ALONE = ("memory", "one of", "otherwise", "end", "amplified")
"""Keywords that take no words of their own."""


ENDING = ("go to", "end", "phase", "thumb", "during", "after", "method")
"""Keywords below which nothing stands."""


def unread(line: Line, at: At) -> Iterator[Unread]:
    """A line and all that is indented below it, each line by itself."""
    if not isinstance(line.body, Blank | Comment):
        yield _typed(line.span, at)
    for child in line.children:
        yield from unread(child, at)


def unread_below(line: Line, at: At) -> Iterator[Unread]:
    """What stands below a line of a keyword that has nothing below it."""
    for child in line.children if isinstance(line.body, Say) and line.body.keyword in ENDING else ():
        if isinstance(child.body, Broken):
            yield from unread(child, at)


def surplus(body: Say, at: At) -> Iterator[Unread]:
    """Words behind a keyword that stands alone."""
    if body.words is not None and body.keyword in ALONE:
        yield _typed(body.words.span, at)


def unread_rest(line: Line, item: Item, at: At) -> Iterator[Unread]:
    """What follows a second leader, and marks that are none."""
    known = [mark.span.end for mark in item.marks if mark.word in MARKS]
    known += [words.span.end for words in (*item.challenges, item.response) if words is not None]
    end = max(known)
    if end < line.span.end and any(map(str.isalnum, at.spot(Span(end, line.span.end)).text)):
        lost = at.spot(Span(end, line.span.end)).text
        yield _typed(Span(end + len(lost) - len(lost.lstrip(" .…")), line.span.end), at)


def as_words(line: Line, at: At) -> Words:
    """A line read as nothing but text with references."""
    return read_words(at.spot(line.span).text, line.span.start, [])


def _typed(span: Span, at: At) -> Unread:
    spot = at.spot(span)
    return Unread(Phrase((spot.text,), spot), spot)
