"""The lines of a card as steps."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dotleader.handbook.answers import Answers
from dotleader.handbook.cards import (
    Arm,
    Branch,
    Challenge,
    End,
    GoTo,
    Group,
    Item,
    Memory,
    Move,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
)
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Gauge
from dotleader.handbook.phrases import Phrases
from dotleader.handbook.readings import Readings
from dotleader.handbook.standings import standing
from dotleader.handbook.unread import as_words, surplus, unread, unread_below, unread_rest
from dotleader.source.text import Span, Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Blank, Broken, Comment, Line, Prose, Say, Words
from dotleader.syntax.tree import Item as WrittenItem

DEEPEST_BRANCH = 2
HEAD_KEYWORDS = ("phase", "thumb", "during", "after", "when", "method", "amplified")


class Steps:
    """Makes the steps of cards. `titles` maps folded titles to titles as declared."""

    def __init__(
        self, phrases: Phrases, answers: Answers, aliases: Mapping[str, str], titles: Mapping[str, str], ledger: Ledger
    ) -> None:
        self.phrases, self.answers, self.ledger = phrases, answers, ledger
        self.aliases, self.titles = aliases, titles
        self.readings = Readings(answers.gauges, phrases.unit_of, ledger)

    def steps(self, lines: Sequence[Line], at: At, depth: int = 0, inside: str = "") -> tuple[Step, ...]:
        """Steps from lines at one level. `depth` counts branches above, `inside` the keyword directly above."""
        steps: list[Step] = []
        arms: list[Arm] = []
        for line in lines:
            body = line.body
            word = body.keyword if isinstance(body, Say) else ""
            if arms and word not in ("or if", "otherwise") and not isinstance(body, Blank | Comment):
                steps.append(_branch(arms))
                arms = []
            match body:
                case WrittenItem():
                    steps.append(self.item(line, body, at))
                    steps.extend(unread_rest(line, body, at))
                case Say() if word in ("if", "or if", "otherwise"):
                    self._arm(line, body, at, depth, arms)
                case Say():
                    steps.extend((*surplus(body, at), *unread_below(line, at)))
                    self._say(line, body, at, depth, inside, steps)
                case Broken():
                    steps.extend(unread(line, at))
                case Blank() | Comment() | Prose():
                    pass
                case _:
                    pass
        if arms:
            steps.append(_branch(arms))
        return tuple(steps)

    def item(self, line: Line, written: WrittenItem, at: At) -> Item:
        challenges = tuple(self._challenge(words, at) for words in written.challenges)
        response = self.phrases.phrase(written.response, at) if written.response is not None else None
        moves: tuple[Move, ...] = ()
        if response is not None:
            moves = tuple(
                self.answers.move(self.answers.controls[challenge.control], response)
                for challenge in challenges
                if challenge.control
            )
            self.readings.check(self._read_on(challenges), response)
        return Item(
            challenges=challenges,
            response=response,
            detail=self.paragraphs(line.children, at),
            critical=any(mark.word == "critical" for mark in written.marks),
            only=tuple((mark.word, mark.name) for mark in written.marks if mark.word in ("with", "without")),
            moves=moves,
            spot=at.spot(line.span),
        )

    def _challenge(self, words: Words, at: At) -> Challenge:
        phrase = self.phrases.phrase(words, at)
        key = folded(words.text)
        control = key if key in self.answers.controls else self.aliases.get(key, "")
        gauge = key if key in self.answers.gauges else ""
        if control:
            self.ledger.mention("control", control, phrase.spot)
            for read_on in self.answers.controls[control].read_on:
                self.ledger.mention("gauge", read_on, phrase.spot)
        if gauge:
            self.ledger.mention("gauge", gauge, phrase.spot)
        return Challenge(phrase, control, gauge)

    def _read_on(self, challenges: Sequence[Challenge]) -> list[Gauge]:
        """The instruments that a response is read on."""
        keys = [challenge.gauge for challenge in challenges if challenge.gauge]
        for challenge in challenges:
            keys += self.answers.controls[challenge.control].read_on if challenge.control else ()
        return [self.answers.gauges[key] for key in keys]

    def paragraphs(self, lines: Sequence[Line], at: At) -> tuple[Phrase, ...]:
        """Lines of prose, joined; a blank line or a dash at the head of a line begins a new paragraph."""
        out: list[Phrase] = []
        open_lines: list[Words] = []

        def close() -> None:
            if open_lines:
                out.append(self.phrases.joined(open_lines, at))
                open_lines.clear()

        for line in _flat(lines):
            if isinstance(line.body, Blank):
                close()
            elif (words := _words(line, at)) is not None:
                if words.text.startswith(("- ", "• ")):
                    close()
                open_lines.append(words)
        close()
        return tuple(out)

    def _phrase(self, line: Line, body: Say, at: At) -> Phrase:
        """The text of a keyword line with the lines it continues on."""
        words = [body.words] if body.words is not None else []
        words += [below for child in _flat(line.children) if (below := _words(child, at)) is not None]
        if not words:
            return Phrase((), at.spot(body.keyword_span))
        return self.phrases.joined(words, at)

    def _arm(self, line: Line, body: Say, at: At, depth: int, arms: list[Arm]) -> None:
        spot = at.spot(body.keyword_span)
        if body.keyword != "if" and (not arms or arms[-1].word == "otherwise"):
            self.ledger.say(
                "misplaced-line",
                spot,
                f"`{body.keyword}` follows no `if`.",
                f"`{body.keyword}` stands right after the block of an `if`, indented like it.",
            )
        if depth == DEEPEST_BRANCH:  # said once, however deep it goes on
            self.ledger.say(
                "branch-too-deep",
                spot,
                f"This branch stands inside {depth} others.",
                f"A card has at most {DEEPEST_BRANCH} levels of branches; make a card of this one and `go to` it.",
            )
        condition = None
        if body.keyword != "otherwise" and body.words is not None:
            condition = self.phrases.phrase(body.words, at)
        steps = self.steps(line.children, at, depth + 1, body.keyword)
        if not steps:
            self._empty(body.keyword, spot)
        steps = (*surplus(body, at), *steps)
        over = standing(condition, self.answers.controls) if condition is not None else None
        arms.append(Arm(body.keyword, condition, steps, at.spot(Span(line.span.start, line.span.end)), over))

    def _say(self, line: Line, body: Say, at: At, depth: int, inside: str, steps: list[Step]) -> None:
        spot = at.spot(line.span)
        match body.keyword:
            case "note" | "caution" | "warning":
                steps.append(Notice(body.keyword, self._phrase(line, body, at), spot))
            case "group":
                title = self._phrase_of(body, at)
                steps.append(Group(title, self._block(line, body, at, depth), spot))
            case "memory":
                if inside:
                    self._misplaced(body, at, "`memory` stands at the first level of a card, after `when`.")
                steps.append(Memory(self._block(line, body, at, depth), spot))
            case "one of":
                steps.append(OneOf(self._block(line, body, at, depth), spot))
            case "repeat until":
                steps.append(Repeat(self._phrase_of(body, at), self._block(line, body, at, depth), spot))
            case "go to":
                # Without a title (said) it still is where the card leads away.
                steps.append(self._go_to(body.words, at) if body.words is not None else GoTo("", "", spot))
            case "end":
                steps.append(End(spot))
            case _:
                if inside:
                    self._misplaced(body, at, f"`{body.keyword}` speaks of the whole card: indent it by two spaces.")
                    steps.extend(unread(line, at))

    def _phrase_of(self, body: Say, at: At) -> Phrase:
        if body.words is None:
            return Phrase((), at.spot(body.keyword_span))
        return self.phrases.phrase(body.words, at)

    def _block(self, line: Line, body: Say, at: At, depth: int) -> tuple[Step, ...]:
        steps = self.steps(line.children, at, depth, body.keyword)
        if not steps:
            self._empty(body.keyword, at.spot(body.keyword_span))
        return steps

    def _empty(self, keyword: str, spot: Spot) -> None:
        self.ledger.say(
            "empty-block",
            spot,
            f"Nothing stands below `{keyword}`.",
            f"What belongs to `{keyword}` is indented two spaces deeper than it.",
        )

    def _misplaced(self, body: Say, at: At, help_: str) -> None:
        message = f"`{body.keyword}` cannot stand here."
        self.ledger.say("misplaced-line", at.spot(body.keyword_span), message, help_)

    def _go_to(self, words: Words, at: At) -> GoTo:
        spot = at.spot(words.span)
        return GoTo(self.titles.get(folded(words.text), words.text), self.card_key(words, at), spot)

    def card_key(self, words: Words, at: At) -> str:
        """The key of the card of that title; said and empty where there is none."""
        key, spot = folded(words.text), at.spot(words.span)
        if key in self.titles:
            self.ledger.mention("card", key, spot)
            return key
        self.ledger.say_unknown(
            "unknown-card",
            spot,
            f"There is no card `{words.text}`.",
            words.text,
            self.titles.values(),
            "Write its title as it stands after `emergency`, `abnormal` or `normal`.",
        )
        return ""


def _branch(arms: list[Arm]) -> Branch:
    first, last = arms[0].spot, arms[-1].spot
    return Branch(tuple(arms), Spot(first.source, first.start, last.end))


def _words(line: Line, at: At) -> Words | None:
    """A line of prose, also one that looks like an item or stands too deep to be read; None for what is no text."""
    if isinstance(line.body, Prose):
        return line.body.words
    return None if isinstance(line.body, Blank | Comment) else as_words(line, at)


def _flat(lines: Sequence[Line]) -> list[Line]:
    """Lines with what is indented below them, in reading order."""
    out: list[Line] = []
    for line in lines:
        out.append(line)
        out.extend(_flat(line.children))
    return out
