"""Laid-out cards and stocks to place and print, for the tests of this folder."""

from __future__ import annotations

from hypothesis import strategies as st

from dotleader.handbook.stocks.faults import amiss
from dotleader.handbook.stocks.read import read_stock
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Drawn, Text
from dotleader.page.extents import extents
from dotleader.page.face.faces import Face, faces_of
from dotleader.page.face.folded import place_folded
from dotleader.page.face.furniture import Imprint
from dotleader.page.face.placement import place
from dotleader.page.laid import LabelSlot, LaidCard, LaidFace
from dotleader.source.text import SourceText, Spot
from dotleader.syntax.parse import parse

SPOT = Spot(SourceText("-", ""), 0, 0)
IMPRINT = Imprint("Ostrel Two flight handbook", "N0STL")

STOCK_TEXTS = {
    "sample": (
        "stock\n  leaf .... 5.75 x 8.75 in\n  pouch .... 6 x 9 in\n  corners .... 6 mm\n"
        "  holes .... 4, 40 mm apart, 6 mm wide, 12 mm from edge\n  paper .... Letter\n"
    ),
    "A5": "stock A5\n",
    "A6": "stock A6\n",
    "A4": "stock A4\n",
    "half letter": "stock half letter\n",
    "letter": "stock letter\n",
    "bound at the top": "stock\n  leaf .... A5\n  bound at .... top\n  paper .... A4\n",
    "top, one to a sheet": "stock\n  leaf .... 140 x 200 mm\n  bound at .... top\n  paper .... A4\n",
    "large holes": "stock\n  leaf .... 130 x 190 mm\n  holes .... 2, 80 mm apart, 9 mm wide, 16 mm from edge\n",
    "no holes": "stock\n  leaf .... 120 x 180 mm\n  holes .... none\n",
    "four to a sheet": "stock\n  leaf .... 85 x 125 mm\n  holes .... none\n",
    "two across": "stock\n  leaf .... 100 x 140 mm\n  holes .... 2, 80 mm apart\n",
}


def stock_of(text: str) -> Stock:
    source = SourceText("stock.cards", text)
    (placed,) = parse(source).value.blocks
    outcome = read_stock(placed, source, "")
    assert outcome.findings == ()
    return outcome.value


STOCKS = {name: stock_of(text) for name, text in STOCK_TEXTS.items()}


def laid(
    title: str,
    faces: int = 1,
    kind: str = "normal",
    section: str = "4",
    *,
    to: str = "",
    thumb: str = "",
    says: str = "",
) -> LaidCard:
    """A card with one line on each face; `to` is the title of a card that its first face goes to."""
    made = []
    for number in range(faces):
        line = Text(0, 60_000, says or f"{title} {number + 1}", 12_000)
        slots = (LabelSlot(30_000, 70_000, 6_200, to.casefold()),) if to and number == 0 else ()
        made.append(LaidFace((line,), slots, (line.string, *((f"go to {to}",) if slots else ()))))
    return LaidCard(title.casefold(), kind, section, title, thumb, 12_000, tuple(made), 0, SPOT)


def faces(*cards: LaidCard, stock: Stock = STOCKS["sample"], imprint: Imprint = IMPRINT) -> tuple[Face, ...]:
    placement = place_folded(cards) if stock.folded else place(cards)
    return tuple(faces_of(placement, imprint, stock))


def by_title(some: tuple[Face, ...]) -> dict[str, Face]:
    """The first face of each card."""
    return {face.title: face for face in reversed(some) if not face.blank and face.part == 0}


EVERY_KIND = (
    laid("Title", 1, "control", "0"),
    laid("Foreword", 3, "text", "1"),
    laid("Airspeeds", 2, "table", "2"),
    laid("Engine failure", 1, "emergency", "3", thumb="engine", to="Forced landing"),
    laid("Fire in flight", 2, "emergency", "3", thumb="fire"),
    laid("Forced landing", 1, "emergency", "3", thumb="landing"),
    laid("Engine failure, explained", 1, "amplified", "3"),
    laid("Alternator failure", 2, "abnormal", "3A", thumb="electrical"),
    laid("Flap failure", 1, "abnormal", "3A", thumb="flaps"),
    laid("Preflight", 1, "normal", "4", thumb="preflight"),
    laid("Before takeoff", 2, "normal", "4", thumb="before takeoff"),
    laid("Cruise", 1, "normal", "4", thumb="cruise"),
)

SECTION_OF = {"emergency": "3", "abnormal": "3A", "normal": "4", "text": "1", "table": "2"}


@st.composite
def cards(draw: st.DrawFn) -> tuple[LaidCard, ...]:
    """Any cards in any order, each with a title of its own."""
    kinds = draw(st.lists(st.sampled_from([*SECTION_OF, "amplified"]), max_size=24))
    return tuple(
        laid(f"Card {number}", draw(st.integers(1, 4)), kind, SECTION_OF.get(kind, "3"))
        for number, kind in enumerate(kinds)
    )


@st.composite
def stocks(draw: st.DrawFn) -> Stock:
    """Any stock that can be made."""
    paper = draw(st.sampled_from([(210_000, 297_000), (215_900, 279_400), (297_000, 420_000)]))
    leaf = draw(
        st.sampled_from([(148_000, 210_000), (139_700, 215_900), (105_000, 148_000), paper])
        | st.tuples(st.integers(82_000, 260_000), st.integers(90_000, 380_000))
    )
    bound = draw(st.sampled_from(["left", "top"]))
    along = leaf[1] if bound == "left" else leaf[0]
    count, apart = draw(st.integers(0, 4)), draw(st.integers(12_000, 70_000))
    first = (along - max(0, count - 1) * apart) // 2
    stock = Stock(
        name="",
        leaf=leaf,
        pouch=(0, 0),
        corner_radius=3_175,
        holes=tuple(first + number * apart for number in range(count)),
        hole_diameter=draw(st.integers(4_000, 9_000)) if count else 0,
        hole_edge=draw(st.integers(7_000, 16_000)) if count else 0,
        bound_at=bound,
        paper=paper,
        paper_name="paper",
        reading_distance=600_000,
        spot=None,
    )
    return stock if not any(amiss(stock)) else STOCKS[draw(st.sampled_from(sorted(STOCKS)))]


def role(face: Face, name: str) -> tuple[Drawn, ...]:
    return tuple(group for group in face.groups if group.role == name)


def texts(items: tuple[Drawn, ...]) -> list[Text]:
    return [item for item, _ in extents(items) if isinstance(item, Text)]


def said(face: Face, name: str) -> list[str]:
    return [text.string for text in texts(role(face, name))]
