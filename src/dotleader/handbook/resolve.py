"""From the text of a handbook to the handbook: names become things, and what does not resolve is said.

Works around whatever the parser could not read and never raises on what a user wrote.
"""

from __future__ import annotations

from dotleader.handbook.answers import Answers
from dotleader.handbook.card_heads import Cards
from dotleader.handbook.cards import Card, Essay
from dotleader.handbook.controls import Outline, Reading, outlines
from dotleader.handbook.facts import HANDBOOK_FACTS, airspeed_basis, check_head_source, read_facts, value_spot
from dotleader.handbook.gather import At, Gathered, Read, gather
from dotleader.handbook.gauges import read_gauge
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Control, Electrical, Fact, Gauge, Handbook, Setting
from dotleader.handbook.numbers import Entry, Numbers
from dotleader.handbook.phrases import Phrases
from dotleader.handbook.punch import Punch
from dotleader.handbook.steps import Steps
from dotleader.handbook.stocks.read import read_stock
from dotleader.source.finding import Related
from dotleader.source.outcome import Outcome
from dotleader.source.record import replace
from dotleader.source.text import SourceText, Spot
from dotleader.syntax.heads import CARD_KINDS
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import File, Placed, Row


def resolve(main: SourceText, main_path: str, read: Read) -> Outcome[tuple[Handbook, tuple[File, ...]]]:
    """The handbook that `main` holds, with the trees of its files.

    `main_path` is its path from the handbook's folder (its file name); `read` reads what it includes.
    """
    gathered = gather(main, main_path, read)
    ledger = Ledger()
    work = _Resolving(main, gathered.value, ledger)
    handbook = work.handbook()
    return Outcome((handbook, gathered.value.files), (*gathered.findings, *ledger.findings))


class _Resolving:
    def __init__(self, main: SourceText, gathered: Gathered, ledger: Ledger) -> None:
        self.main, self.gathered, self.ledger = main, gathered, ledger
        self.blocks: dict[str, list[At]] = {}
        for at in gathered.blocks:
            self.blocks.setdefault(at.block.head.keyword, []).append(at)

    def handbook(self) -> Handbook:
        heads = self.blocks.get("handbook", [])
        facts = self._once("handbook", HANDBOOK_FACTS)
        sources: dict[str, Fact] = {}
        for at in self.blocks.get("sources", []):
            for key, fact in read_facts(at, self.ledger, None).items():
                if key in sources:
                    self.ledger.twice("The source", fact.name, fact.spot, sources[key].spot)
                else:
                    sources[key] = fact
        gauges: dict[str, Gauge] = {}
        numbers = Numbers(self._entries(), gauges, sources, airspeed_basis(facts, self.ledger), self.ledger)
        for keyword in ("speeds", "values"):
            for at in self.blocks.get(keyword, []):
                check_head_source(at, sources, self.ledger)
        self._gauges(gauges, numbers, sources)
        phrases = Phrases(numbers, self.ledger)
        values = numbers.declared()
        reading = self._control_reading(gauges, numbers, phrases)
        controls = {key: reading.control(outline) for key, outline in reading.known.items()}
        cards, essays = self._cards(phrases, controls, gauges)
        electrical = self._electrical(reading, numbers, cards)
        paper = facts.get("paper")
        title = heads[0].block.head.name if heads else None
        stock_blocks = self.blocks.get("stock", [])
        chosen = stock_blocks[0] if stock_blocks else None
        stock = read_stock(
            Placed(chosen.start, chosen.block) if chosen else None,
            chosen.source if chosen else self.main,
            paper.text if paper else "",
            value_spot(paper) if paper else None,
        )
        self.ledger.findings.extend(stock.findings)
        handbook = Handbook(
            title=title.text if title else facts["aircraft"].text if "aircraft" in facts else _stem(self.main.name),
            loose=not heads,
            files=tuple(file.source for file in self.gathered.files),
            facts=facts,
            sources=sources,
            values=values,
            gauges=gauges,
            controls=controls,
            cards=cards,
            essays=essays,
            stock=stock.value,
            mentions=tuple(self.ledger.mentions),
            spot=heads[0].spot(heads[0].block.head.span) if heads else Spot(self.main, 0, 0),
            punches=self._punches(),
            by_key={card.key: card for card in reversed(cards)},
            electrical=electrical,
            settings=self._settings(),
        )
        return self._with_books(handbook, paper.text if paper else "")

    def _once(self, keyword: str, known: tuple[str, ...]) -> dict[str, Fact]:
        """The facts of a block that stands once; a second one is said and not read."""
        blocks = self.blocks.get(keyword, [])
        for at in blocks[1:]:
            first = blocks[0]
            self.ledger.again("The block", keyword, at.spot(at.block.head.span), first.spot(first.block.head.span))
        return read_facts(blocks[0], self.ledger, known) if blocks else {}

    def _entries(self) -> dict[str, Entry]:
        entries: dict[str, Entry] = {}
        for at in self.gathered.blocks:
            keyword = at.block.head.keyword
            if keyword not in ("speeds", "values"):
                continue
            for line in at.block.lines:
                if not isinstance(line.body, Row):
                    continue
                name = line.body.left.text
                speed = keyword == "speeds"
                key = folded(name.partition("(")[0] if speed and name.endswith(")") else name)
                if key in entries:
                    first = entries[key]
                    self._value_twice(name, at.spot(line.body.left.span), first)
                else:
                    entries[key] = Entry(name, at, line.body, speed)
        return entries

    def _value_twice(self, name: str, spot: Spot, first: Entry) -> None:
        place = first.at.spot(first.row.left.span)
        plain, bracket, meaning = name.partition("(")
        if not bracket or folded(name) == folded(first.name):
            self.ledger.twice("The value", name, spot, place)
            return
        self.ledger.say(
            "name-used-twice",
            spot,
            f"The value `{plain.strip()}` is declared twice: what stands in round brackets is its meaning.",
            f"Write what tells them apart without brackets: `{plain.strip()} {meaning.rstrip(')')}`.",
            Related(place, "It is declared here first."),
        )

    def _gauges(self, gauges: dict[str, Gauge], numbers: Numbers, sources: dict[str, Fact]) -> None:
        for at in self.blocks.get("gauge", []):
            gauge = read_gauge(at, numbers, sources, self.ledger)
            if gauge is None:
                continue
            if gauge.key in gauges:
                self.ledger.twice("The gauge", gauge.name, gauge.spot, gauges[gauge.key].spot)
            else:
                gauges[gauge.key] = gauge

    def _control_reading(self, gauges: dict[str, Gauge], numbers: Numbers, phrases: Phrases) -> Reading:
        known: dict[str, Outline] = {}
        for at in self.blocks.get("equipment", []):
            outlines(at, numbers, self.ledger, known)
        for key, outline in known.items():
            if key in gauges:
                self.ledger.twice("The control", outline.name, outline.spot, gauges[key].spot)
        return Reading(known, gauges, numbers, phrases, self.ledger)

    def _electrical(self, reading: Reading, numbers: Numbers, cards: tuple[Card, ...]) -> Electrical | None:
        blocks = self.blocks.get("electrical", [])
        if not blocks:
            return None
        first = blocks[0].spot(blocks[0].block.head.span)
        for at in blocks[1:]:
            self.ledger.again("The block", "electrical", at.spot(at.block.head.span), first)
        # Only a handbook that describes its electrical system pays for this import.
        from dotleader.handbook.electrical import read_electrical  # noqa: PLC0415

        return read_electrical(blocks[0], reading, numbers, reading.gauges, {card.key: card.title for card in cards})

    def _with_books(self, handbook: Handbook, paper: str) -> Handbook:
        books, stocks = self.blocks.get("book", ()), self.blocks.get("stock", ())
        if not books and len(stocks) < 2:
            return handbook
        # Only a handbook that has books, or stocks for them, pays for this import.
        from dotleader.handbook.books import read_books  # noqa: PLC0415

        made = read_books(books, stocks, handbook, paper, self.ledger)
        return replace(handbook, books=made, mentions=tuple(self.ledger.mentions))

    def _punches(self) -> tuple[Punch, ...]:
        blocks = self.blocks.get("punch", [])
        if not blocks:
            return ()
        # Only a handbook that describes a punch pays for this import.
        from dotleader.handbook.punches import read_punches  # noqa: PLC0415

        return read_punches(blocks, self.ledger)

    def _settings(self) -> tuple[Setting, ...]:
        blocks = self.blocks.get("rules", [])
        if not blocks:
            return ()
        # Only a handbook that sets something pays for this import.
        from dotleader.handbook.rule_settings import read_settings  # noqa: PLC0415

        return read_settings(blocks, self.ledger)

    def _cards(
        self, phrases: Phrases, controls: dict[str, Control], gauges: dict[str, Gauge]
    ) -> tuple[tuple[Card, ...], tuple[Essay, ...]]:
        titles: dict[str, str] = {}
        first: dict[str, Spot] = {}
        for at in self.gathered.blocks:
            name = at.block.head.name
            if at.block.head.keyword not in CARD_KINDS or name is None:
                continue
            key, spot = folded(name.text), at.spot(name.span)
            if key in titles:
                self.ledger.twice("The card", name.text, spot, first[key])
            else:
                titles[key], first[key] = name.text, spot
        aliases = {folded(alias): key for key, control in controls.items() for alias in control.also_called}
        answers = Answers(controls, gauges, self.ledger)
        reading = Cards(Steps(phrases, answers, aliases, titles, self.ledger), phrases, self.ledger)
        cards = [reading.card(at) for at in self.gathered.blocks if at.block.head.keyword in CARD_KINDS]
        essays = [reading.essay(at) for at in self.blocks.get("text", [])]
        return _apart(cards), tuple(essays)


def _apart(cards: list[Card]) -> tuple[Card, ...]:
    """Cards with keys of their own: one whose title stands already (said) gets a number, so that it is not lost."""
    seen: dict[str, int] = {}
    out: list[Card] = []
    for card in cards:
        count = seen[card.key] = seen.get(card.key, 0) + 1
        out.append(card if count == 1 else replace(card, key=f"{card.key} ({count})"))
    return tuple(out)


def _stem(name: str) -> str:
    stem = name.rsplit("/", 1)[-1]
    return stem[: -len(".cards")] if stem.endswith(".cards") else stem
