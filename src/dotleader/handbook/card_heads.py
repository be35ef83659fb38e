"""Whole cards: their head lines, their steps, their amplified text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dotleader.handbook.cards import Card, Essay, Explained, Kind, Phrase, Unread
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.phases import PHASES, phase_named, phase_of_title
from dotleader.handbook.phrases import Phrases
from dotleader.handbook.steps import HEAD_KEYWORDS, Steps
from dotleader.handbook.unread import as_words, surplus, unread, unread_below
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Item as WrittenItem
from dotleader.syntax.tree import Line, Prose, Say, Words

METHODS = ("verify", "read and do")


class Cards:
    def __init__(self, steps: Steps, phrases: Phrases, ledger: Ledger) -> None:
        self.steps, self.phrases, self.ledger = steps, phrases, ledger

    def card(self, at: At) -> Card:
        """A card from its block. A head line that stands twice keeps its first text (said)."""
        head = at.block.head
        title = head.name.text if head.name is not None else f"(a {head.keyword} card without a title)"
        key = folded(title)
        self.ledger.card = key
        kind = Kind(head.keyword)
        said = self._head_lines(at)
        during = tuple(filter(None, (self._phase(part, at) for part in _split(said.get("during")))))
        phase = self._phase(said["phase"], at) if "phase" in said else ""
        if not phase and kind is Kind.NORMAL and not during:
            phase = phase_of_title(title)
        method = self._method(said.get("method"), at) or ("verify" if kind is Kind.NORMAL else "read and do")
        after = said.get("after")
        steps = (*_unread_heads(at), *self.steps.steps([line for line in at.block.lines if not _is_head(line)], at))
        card = Card(
            key=key,
            kind=kind,
            title=title,
            phase=phase,
            thumb=said["thumb"].text if "thumb" in said else "",
            during=during,
            after=self.steps.card_key(after, at) if after is not None else "",
            when=self._when(at),
            method=method,
            steps=steps,
            amplified=self._amplified(at),
            spot=at.spot(head.name.span if head.name is not None else head.span),
        )
        self.ledger.card = ""
        return card

    def _head_lines(self, at: At) -> dict[str, Words]:
        said: dict[str, Words] = {}
        first: dict[str, Spot] = {}
        for line in at.block.lines:
            body = line.body
            if not isinstance(body, Say) or body.keyword not in ("phase", "thumb", "during", "after", "when", "method"):
                continue
            spot = at.spot(body.keyword_span)
            if body.keyword in first:
                self.ledger.again("The line", body.keyword, spot, first[body.keyword])
                continue
            first[body.keyword] = spot
            if body.words is not None:
                said[body.keyword] = body.words
        return said

    def _when(self, at: At) -> Phrase | None:
        """The trigger; empty where `when` stands alone, which the parser has said."""
        for line in at.block.lines:
            if isinstance(line.body, Say) and line.body.keyword == "when":
                words = [line.body.words] if line.body.words is not None else []
                words += [child.body.words for child in line.children if isinstance(child.body, Prose)]
                return self.phrases.joined(words, at) if words else Phrase((), at.spot(line.body.keyword_span))
        return None

    def _phase(self, words: Words, at: At) -> str:
        phase = phase_named(words.text)
        if not phase:
            self.ledger.say_unknown(
                "unknown-phase",
                at.spot(words.span),
                f"`{words.text}` is no phase of a flight.",
                words.text,
                PHASES,
                "The phases are " + ", ".join(f"`{name}`" for name in PHASES) + ".",
            )
        return phase

    def _method(self, words: Words | None, at: At) -> str:
        if words is None:
            return ""
        method = folded(words.text)
        if method in METHODS:
            return method
        self.ledger.say(
            "unknown-method",
            at.spot(words.span),
            f"`{words.text}` is no way of using a card.",
            "Write `method verify` (done first, then checked by the card) or `method read and do`.",
        )
        return ""

    def _amplified(self, at: At) -> tuple[Phrase | Explained, ...]:
        parts: list[Phrase | Explained] = []
        challenges = {
            folded(words.text)
            for line in _all(at.block.lines)
            if isinstance(line.body, WrittenItem)
            for words in line.body.challenges
        }
        for line in at.block.lines:
            if isinstance(line.body, Say) and line.body.keyword == "amplified":
                parts.extend(step.phrase for step in surplus(line.body, at))
                parts.extend(self._amplified_parts(line.children, at, challenges))
        return tuple(parts)

    def _amplified_parts(self, lines: Sequence[Line], at: At, challenges: set[str]) -> list[Phrase | Explained]:
        """Prose as paragraphs; an item whose challenge is on the card with the prose below it."""
        parts: list[Phrase | Explained] = []
        waiting: list[Line] = []

        def close() -> None:
            parts.extend(self.steps.paragraphs(waiting, at))
            waiting.clear()

        for line in lines:
            body = line.body
            if isinstance(body, WrittenItem):
                if {folded(words.text) for words in body.challenges} <= challenges:
                    close()
                    bare = Line(line.span, body, (), line.allow)
                    item = self.steps.item(bare, body, at)
                    parts.append(Explained(item, self.steps.paragraphs(line.children, at)))
                else:
                    waiting.append(_as_prose(line, at))
            else:
                waiting.append(line)
        close()
        return parts

    def essay(self, at: At) -> Essay:
        head = at.block.head
        title = head.name.text if head.name is not None else "(a text without a title)"
        key = f"text: {folded(title)}"
        self.ledger.card = key
        paragraphs = self.steps.paragraphs(at.block.lines, at)
        self.ledger.card = ""
        return Essay(key, title, paragraphs, at.spot(head.name.span if head.name is not None else head.span))


def _as_prose(line: Line, at: At) -> Line:
    """A line of amplified text that looks like an item but repeats none of the card: prose with dots in it."""
    return Line(line.span, Prose(as_words(line, at)), line.children, line.allow)


def _unread_heads(at: At) -> Iterator[Unread]:
    """Head lines that stand a second time, of which the first counts, and what stands below one like nothing does."""
    seen: set[str] = set()
    for line in at.block.lines:
        if not _is_head(line) or not isinstance(line.body, Say) or line.body.keyword == "amplified":
            continue
        yield from unread(line, at) if line.body.keyword in seen else unread_below(line, at)
        seen.add(line.body.keyword)


def _is_head(line: Line) -> bool:
    return isinstance(line.body, Say) and line.body.keyword in HEAD_KEYWORDS


def _all(lines: Sequence[Line]) -> list[Line]:
    """All lines of a card but those of its amplified text."""
    out: list[Line] = []
    for line in lines:
        if isinstance(line.body, Say) and line.body.keyword == "amplified":
            continue
        out.append(line)
        out.extend(_all(line.children))
    return out


def _split(words: Words | None) -> list[Words]:
    """The parts of a list with commas, each with its own place."""
    if words is None:
        return []
    parts: list[Words] = []
    start = words.span.start
    for part in words.text.split(","):
        name = part.strip()
        if name:
            begin = start + len(part) - len(part.lstrip())
            parts.append(Words((name,), words.span._replace(start=begin, end=begin + len(name))))
        start += len(part) + 1
    return parts
