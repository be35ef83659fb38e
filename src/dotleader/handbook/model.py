"""The handbook as resolved. Data only; keys are names folded by `syntax.plain.folded`."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from dotleader.handbook.amounts.quantity import Shape
from dotleader.handbook.amounts.units import Unit
from dotleader.handbook.book import DeclaredBook
from dotleader.handbook.cards import Card, Essay, Phrase
from dotleader.handbook.panel_place import Place
from dotleader.handbook.punch import Punch
from dotleader.handbook.stocks.stock import Stock
from dotleader.handbook.wiring import Wiring
from dotleader.source.record import record
from dotleader.source.text import SourceText, Spot


@record
class Fact:
    """A line of the `handbook` or `sources` block."""

    name: str
    text: str
    spot: Spot


@record
class From:
    """Where a number comes from: the key of a source and a detail, or `unverified`."""

    source: str
    detail: str
    unverified: bool
    spot: Spot


@record
class Declared:
    """A row of `speeds` or `values`, worked out. `shape` is None where it could not be (there is a finding).

    `shown` is what `{NAME}` prints; `formula` the expression as written where it is derived, with `parts` the keys
    of what it refers to.
    """

    key: str
    name: str
    speed: bool
    meaning: str
    shape: Shape | None
    shown: str
    formula: str
    parts: tuple[str, ...]
    origin: From | None
    spot: Spot


@record
class Band:
    """A coloured range of a gauge; an open end is None; a single line has low == high."""

    colour: str
    low: Fraction | None
    high: Fraction | None
    shown: str
    spot: Spot


@record
class Gauge:
    key: str
    name: str
    unit: Unit | None
    bands: tuple[Band, ...]
    origin: From | None
    spot: Spot


@record
class Need:
    """`needs` / `needs for X`: one of the alternatives (control key, position) must hold. `moved_to` "" is any."""

    moved_to: str
    alternatives: tuple[tuple[str, str], ...]
    spot: Spot


@record
class Effect:
    """`turned X .... CONTROL POSITION`: moving to `position` also puts `control` into `to`."""

    position: str
    control: str
    to: str
    spot: Spot


@record
class Meaning:
    """`means .... WORD: LEFT or RIGHT`; `other` where it is `the other of`."""

    word: str
    positions: tuple[str, ...]
    other: bool
    spot: Spot


@record
class Control:
    """Something with positions. `lever` where it is a range (`positions` then are its ends and marks).

    `unit` is that of `any UNIT`. Positions are compared folded and shown as declared.
    """

    key: str
    name: str
    positions: tuple[str, ...]
    lever: bool
    takes_any: bool
    unit: Unit | None
    parked: str
    needs: tuple[Need, ...]
    effects: tuple[Effect, ...]
    springs: tuple[tuple[str, str], ...]
    meanings: tuple[Meaning, ...]
    read_on: tuple[str, ...]
    also_called: tuple[str, ...]
    properties: tuple[Fact, ...]  # draws, breaker, fuse, wire, at: as written
    does: Phrase | None
    spot: Spot
    wiring: Wiring = Wiring()
    place: Place | None = None


@record
class Supply:
    """An alternator (`amount` in A), also called a generator, or a battery (in Ah). It feeds while all that it needs
    holds."""

    name: str
    amount: Fraction
    needs: tuple[Need, ...]
    spot: Spot


@record
class Electrical:
    """The `electrical` block. `volts`, `wires_rated` (degrees Celsius) and the supplies are None where not said.

    `always_on` are the amperes of what has no switch; `read_on` the key of the gauge that shows the alternator's
    load; `when_it_fails` the keys of the cards for that. The times are in minutes: from the failure to the last
    switch of such a card, from there to the end of the landing, and how long the battery must last in all.
    """

    spot: Spot
    volts: Fraction | None = None
    alternator: Supply | None = None
    battery: Supply | None = None
    always_on: Fraction = Fraction(0)
    wires_rated: Fraction | None = None
    read_on: str = ""
    when_it_fails: tuple[str, ...] = ()
    shed_after: Fraction = Fraction(5)
    landing_takes: Fraction = Fraction(10)
    must_last: Fraction = Fraction(30)


@record
class Setting:
    """A row of a `rules` block as written: `spot` is that of its name, `value_spot` of what is said of it."""

    name: str
    text: str
    spot: Spot
    value_spot: Spot


@record
class Mention:
    """A place that names something: a value, gauge, control, source or card by its key."""

    kind: str  # "value" | "gauge" | "control" | "source" | "card"
    key: str
    spot: Spot
    on_card: str  # key of the card or text it stands on, "" elsewhere


@record
class Handbook:
    """`facts` by folded name: aircraft, registration, serial, ... `loose` where no file has a `handbook` block.

    `stock` is what is printed on where no book says otherwise. `books` are those that are declared, in their order.
    """

    title: str
    loose: bool
    files: tuple[SourceText, ...]
    facts: dict[str, Fact]
    sources: dict[str, Fact]
    values: dict[str, Declared]
    gauges: dict[str, Gauge]
    controls: dict[str, Control]
    cards: tuple[Card, ...]
    essays: tuple[Essay, ...]
    stock: Stock
    mentions: tuple[Mention, ...]
    spot: Spot
    punches: tuple[Punch, ...] = ()
    books: tuple[DeclaredBook, ...] = ()
    by_key: Mapping[str, Card] = MappingProxyType({})
    settings: tuple[Setting, ...] = ()
    electrical: Electrical | None = None

    def fact(self, name: str) -> str:
        found = self.facts.get(name)
        return found.text if found else ""
