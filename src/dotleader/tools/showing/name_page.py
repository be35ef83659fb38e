"""How a value came to be, from which source, and where it is used; the same for whatever else a handbook names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from rich.console import RenderableType
from rich.text import Text
from rich.tree import Tree

from dotleader.handbook.book import LARGE_TYPE, USUAL_TYPE, DeclaredBook
from dotleader.handbook.cards import Card
from dotleader.handbook.contents import contents
from dotleader.handbook.model import Control, Declared, Fact, From, Gauge, Handbook
from dotleader.handbook.sections import SECTIONS
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.tools.showing.pages import dotted, indented, labelled, prose


def name_pages(name: str, handbook: Handbook) -> Iterator[RenderableType]:
    """A page for each thing of that name; nothing where there is none."""
    key = folded(name)
    pages: list[Iterator[RenderableType]] = []
    if key in handbook.values:
        pages.append(_value(handbook.values[key], handbook))
    if key in handbook.gauges:
        pages.append(_gauge(handbook.gauges[key], handbook))
    if key in handbook.controls:
        pages.append(_control(handbook.controls[key], handbook))
    if key in handbook.sources:
        pages.append(_source(key, handbook.sources[key], handbook))
    if key in handbook.by_key:
        pages.append(_card(handbook.by_key[key], handbook))
    pages += [_book(book, handbook) for book in handbook.books if folded(book.name) == key]
    for number, page in enumerate(pages):
        if number:
            yield ""
        yield from page


def names_in(handbook: Handbook) -> list[str]:
    """Everything that has a page."""
    return [
        *(value.name for value in handbook.values.values()),
        *(gauge.name for gauge in handbook.gauges.values()),
        *(control.name for control in handbook.controls.values()),
        *(source.name for source in handbook.sources.values()),
        *(card.title for card in handbook.cards),
        *(book.name for book in handbook.books),
    ]


def _value(value: Declared, handbook: Handbook) -> Iterator[RenderableType]:
    yield dotted(Text(value.name, style="bold"), Text(_result(value)))
    yield labelled(
        (
            ("meaning", prose(value.meaning)),
            ("worked out", prose(value.formula)),
            ("from", prose(_origin(value.origin, handbook))),
            ("declared", prose(_where(value.spot))),
        )
    )
    if value.parts:
        tree = Tree(prose(f"{value.name}: {_result(value)}"), guide_style="dim")
        _grow(tree, value, handbook, (value.key,))
        yield indented(tree)
    yield from _used("value", value.key, handbook)
    after = [other.name for other in handbook.values.values() if value.key in other.parts]
    if after:
        yield indented(prose(f"{', '.join(after)} {'is' if len(after) == 1 else 'are'} worked out with it."))


def _result(value: Declared) -> str:
    return value.shown if value.shape is not None else "could not be worked out"


def _grow(tree: Tree, value: Declared, handbook: Handbook, above: tuple[str, ...]) -> None:
    """What a value is made of, down to what came from a source. A circle is shown once."""
    for key in value.parts:
        part = handbook.values.get(key)
        if part is None:
            gauge = handbook.gauges.get(key)
            tree.add(prose(f"{gauge.name}: {_origin(gauge.origin, handbook)}" if gauge else f"{key}: not declared"))
        elif key in above:
            tree.add(prose(f"{part.name}: the circle closes here"))
        else:
            how = part.formula or _origin(part.origin, handbook)
            branch = tree.add(prose(f"{part.name}: {_result(part)}" + (f" ({how})" if how else "")))
            _grow(branch, part, handbook, (*above, key))


def _origin(origin: From | None, handbook: Handbook) -> str:
    if origin is None:
        return ""
    if origin.unverified:
        return "unverified: nobody has confirmed it for this aircraft"
    declared = handbook.sources.get(origin.source)
    parts = [declared.name if declared else origin.source, declared.text if declared else "", origin.detail]
    return ", ".join(part for part in parts if part)


def _gauge(gauge: Gauge, handbook: Handbook) -> Iterator[RenderableType]:
    yield dotted(Text(gauge.name, style="bold"), Text(f"gauge in {gauge.unit.symbol}" if gauge.unit else "gauge"))
    yield labelled(
        (
            *((band.colour, prose(band.shown)) for band in gauge.bands),
            ("from", prose(_origin(gauge.origin, handbook))),
            ("declared", prose(_where(gauge.spot))),
        )
    )
    yield from _used("gauge", gauge.key, handbook)


def _control(control: Control, handbook: Handbook) -> Iterator[RenderableType]:
    yield dotted(Text(control.name, style="bold"), Text("lever" if control.lever else "control"))
    joined = " to ".join(control.positions[:2]) if control.lever else ", ".join(control.positions)
    marks = control.positions[2:] if control.lever else ()
    yield labelled(
        (
            ("positions", prose(", ".join((joined, *marks)) if joined else "any value")),
            ("parked", prose(control.parked)),
            ("also called", prose(", ".join(control.also_called))),
            ("does", prose(control.does.text if control.does else "")),
            ("declared", prose(_where(control.spot))),
        )
    )
    yield from _used("control", control.key, handbook)


def _source(key: str, source: Fact, handbook: Handbook) -> Iterator[RenderableType]:
    yield dotted(Text(source.name, style="bold"), Text("source"))
    yield labelled((("which is", prose(source.text)), ("declared", prose(_where(source.spot)))))
    values = [value for value in handbook.values.values() if value.origin and value.origin.source == key]
    gauges = [gauge for gauge in handbook.gauges.values() if gauge.origin and gauge.origin.source == key]
    rows = [(value.name, prose(_result(value))) for value in values] + [
        (gauge.name, prose("gauge")) for gauge in gauges
    ]
    if rows:
        yield indented(Text("gives", style="dim"))
        yield indented(labelled(rows))
    else:
        yield indented(prose("Nothing is taken from it."))


def _card(card: Card, handbook: Handbook) -> Iterator[RenderableType]:
    yield dotted(Text(card.title, style="bold"), Text(f"{card.kind.value} card"))
    yield labelled(
        (
            ("phase", prose(card.phase)),
            ("when", prose(card.when.text if card.when else "")),
            ("declared", prose(_where(card.spot))),
        )
    )
    yield from _used("card", card.key, handbook)


def _book(book: DeclaredBook, handbook: Handbook) -> Iterator[RenderableType]:
    cards = contents(handbook, book).cards
    percent = book.stock.type_percent
    named = {USUAL_TYPE: "usual", LARGE_TYPE: "large"}.get(percent, f"{percent} %")
    sections = ", ".join(SECTIONS[section] for section in book.sections)
    yield dotted(Text(book.name, style="bold"), Text("book"))
    yield labelled(
        (
            ("stock", prose(book.stock.name or "that of the handbook")),
            ("type", prose(named)),
            ("sections", prose("all" if book.whole else sections)),
            ("cards", prose(_counted_cards(cards, handbook))),
            ("printed", prose("without `--book`" if book == handbook.books[0] else f'with `--book "{book.name}"`')),
            ("declared", prose(_where(book.spot))),
        )
    )


def _counted_cards(cards: Sequence[Card], handbook: Handbook) -> str:
    """How many, and which where they are not all."""
    if len(cards) == len(handbook.cards):
        return f"all {len(cards)}"
    return f"{len(cards)} of {len(handbook.cards)}: {', '.join(card.title for card in cards)}"


def _used(kind: str, key: str, handbook: Handbook) -> Iterator[RenderableType]:
    """Where it is named, card by card in the order of the handbook."""
    places: dict[str, list[Spot]] = {}
    for mention in handbook.mentions:
        if mention.kind == kind and mention.key == key:
            places.setdefault(mention.on_card, []).append(mention.spot)
    titles = {essay.key: essay.title for essay in handbook.essays} | {card.key: card.title for card in handbook.cards}
    rows = [(titles.get(on, on) if on else "in a declaration", prose(_lines(spots))) for on, spots in places.items()]
    yield ""
    if rows:
        yield indented(Text("used", style="dim"))
        yield indented(labelled(rows))
    else:
        yield indented(prose("It is used nowhere."))


def _where(spot: Spot) -> str:
    line, column = spot.source.line_and_column(spot.start)
    return f"{spot.source.name}:{line}:{column}"


def _lines(spots: Iterable[Spot]) -> str:
    """File by file the lines on which something is named."""
    by_file: dict[str, dict[int, None]] = {}
    for spot in spots:
        by_file.setdefault(spot.source.name, {})[spot.source.line_and_column(spot.start)[0]] = None
    return "; ".join(f"{name}:{', '.join(map(str, sorted(lines)))}" for name, lines in by_file.items())
