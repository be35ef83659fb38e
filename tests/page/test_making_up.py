"""The making-up sheet: what it says for each stock, its checklist, its thumbnails, its guides."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from dotleader.handbook.punch import Punch
from dotleader.handbook.stocks.library import LIBRARY
from dotleader.handbook.stocks.sizes import SIZES
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.bench.guide import guides
from dotleader.page.bench.nearest import punching
from dotleader.page.bench.plan import Plan
from dotleader.page.bench.punching import pattern_of
from dotleader.page.drawn import Box, Drawn, Group, Line, Text, mm
from dotleader.page.extents import HERE, Rect, Turned, extents
from dotleader.page.face.book import Book
from dotleader.page.face.placement import Placement
from dotleader.page.making_up.collating import NARROWEST, grid_for
from dotleader.page.making_up.job import Job
from dotleader.page.making_up.making_up import MadePage, making_up
from dotleader.page.making_up.needs import needs
from dotleader.page.making_up.plates import plate_for
from dotleader.page.making_up.scaled import Scale, scaled
from dotleader.page.making_up.thumbnails import thumbnail
from dotleader.page.making_up.work import work_text
from dotleader.page.sheet.cutting import cuttings
from dotleader.page.sheet.sheets import sheets
from dotleader.source.record import replace
from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from tests.page.leaves import IMPRINT, STOCKS, faces, laid, stock_of
from tests.page.punches import DESK
from tests.rules.pipeline import findings_of, said

KNOWN = {block.partition("\n")[0].removeprefix("stock "): stock_of(block + "\n") for block in LIBRARY.split("\n\n")}
ALL = STOCKS | KNOWN

PLAIN = replace(DESK, stop="plain")


def job(stock: Stock, leaves: int = 4, *punches: Punch, **more: object) -> Job:
    """A book of so many leaves at least, cards on each."""
    some = faces(*(laid(f"Card {n}") for n in range(2 * leaves)), stock=stock)
    order = more.get("order", "sequence")
    papers = tuple(sheets(some, stock, order=order))  # type: ignore[arg-type]  # one of the two
    cut = tuple(one for one in cuttings(papers, stock) if not one.is_empty)
    found = tuple(punching(pattern_of(stock), punch) for punch in punches) if stock.holes else ()
    book = Book(IMPRINT.handbook, stock, Placement(()), some)
    return replace(Job(book, "N0STL", papers, cut, found), **more)


def strings(pages: list[MadePage]) -> list[str]:
    """The sheet's own words, in the order in which they are drawn."""
    return [item.string for page in pages for item, _ in extents(own(page.items)) if isinstance(item, Text)]


def own(items: tuple[Drawn, ...]) -> Iterator[Drawn]:
    """All but thumbnails."""
    for item in items:
        if isinstance(item, Group) and item.role != "thumbnail":
            yield replace(item, items=tuple(own(item.items)))
        elif not isinstance(item, Group):
            yield item


def words(pages: list[MadePage]) -> str:
    return " ".join(strings(pages))


def groups(items: tuple[Drawn, ...], role: str, at: Turned = HERE) -> Iterator[tuple[Group, Turned]]:
    """The groups of a role, each with where what stands in it has its origin."""
    for item in items:
        if isinstance(item, Group):
            there = at.then(item)
            if item.role == role:
                yield item, there
            yield from groups(item.items, role, there)


WAYS: list[dict[str, object]] = [
    {},
    {"copies": 3, "part": True, "colour": False},
    {"one_sided": True, "order": "stack", "copies": 100, "corrected": "Office laser, second tray", "draft": True},
]


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("way", WAYS)
def test_everything_stands_inside_the_page_and_no_text_on_another(name: str, way: dict[str, object]) -> None:
    for punches in ((), (DESK,), (PLAIN, replace(DESK, holes=(0, 21_000, 91_000, 112_000)))):
        for page in making_up(job(ALL[name], 5, *punches, **way)):
            inked = list(extents(page.items))
            paper = Rect(mm(8), mm(8), page.width - mm(8), page.height - mm(8))
            assert [item for item, rect in inked if not rect.inside(paper)] == []
            texts = [rect for item, rect in extents(own(page.items)) if isinstance(item, Text) and item.string]
            assert not [(a, b) for at, a in enumerate(texts) for b in texts[:at] if a.meets(b)]


@pytest.mark.parametrize("name", ALL)
@pytest.mark.parametrize("way", WAYS)
def test_the_checklist_has_no_findings_and_is_in_form(name: str, way: dict[str, object]) -> None:
    text = work_text(job(ALL[name], 5, **way))
    assert said(findings_of(text)) == []
    assert format_text(SourceText("made.cards", text)) == text


@pytest.mark.parametrize("name", ALL)
def test_only_what_the_stock_takes_is_asked_for(name: str) -> None:
    stock = ALL[name]
    pages = list(making_up(job(stock, 3)))
    heads = strings(pages)
    assert ("Laminate" in heads) == (stock.pouch != (0, 0)) == any("CR-177605" in one for one in heads)
    assert ("Punch" in heads) == bool(stock.holes) == any("HOLES IN EACH" in one for one in heads)
    assert any(one.startswith("ROUND, ") for one in heads) == (stock.corner_radius > 0)
    assert ("Fold" in heads) == stock.folded
    assert ("Rings" in dict(needs(job(stock)))) == bool(stock.holes)


def test_a_leaf_that_is_its_paper_is_not_cut() -> None:
    bare = "stock\n  leaf .... A4\n  corners .... square\n  holes .... none\n  paper .... A4\n"
    for stock, cut in ((stock_of(bare), False), (KNOWN["A4"], True)):
        made = list(making_up(job(stock)))
        assert "Blade" not in words(made)
        assert "knife" not in words(made)
        assert ("Cut" in strings(made)) is cut  # its holes and corners


def test_the_paper_of_the_sheet_goes_with_that_of_the_leaves() -> None:
    for name, stock in ALL.items():
        plate = plate_for(stock)
        assert (plate.width, plate.height) == SIZES[plate.name], name
        assert plate.name == ("Letter" if stock.paper_name in ("Letter", "Legal") else "A4"), name


def test_needs_count_all_copies_and_the_sheet_of_rulers() -> None:
    of = dict(needs(job(STOCKS["A5"], 5, copies=3)))
    leaves = job(STOCKS["A5"], 5).leaves
    of_leaves = -(-leaves // 2)
    assert of["Paper"].startswith(
        f"{1 + 3 * of_leaves} (1 + 3 × {of_leaves}) sheets of A4, the sheet of rulers among them;"
    )
    assert of["Rings"].startswith("6 (3 × 2) rings of ")
    of = dict(needs(job(STOCKS["sample"], 5)))
    assert of["Paper"] == "5 sheets of Letter; 0.10 mm thick, about 75 g/m² (20 lb bond); some to spare"
    assert of["Pouches"] == "5 of 152.4 × 228.6 mm (6 × 9 in), matte, 0.127 mm (5 mil) on each side; some to spare"
    # Five leaves of 4 mil paper in film of 5 mil on each side: 5 x 0.356 mm = 1.78 mm (PG-10: 20 of them 7.1 mm).
    assert of["Rings"].endswith("the pile is 1.8 mm thick")


def test_rings_that_are_named_say_what_they_hold() -> None:
    stock = replace(STOCKS["sample"], rings=4, ring_width=25_000)
    assert dict(needs(job(stock, 5)))["Rings"].startswith("4 rings of 25 mm inside; they hold 17.5 mm")


def test_what_was_selected_is_said() -> None:
    text = words(list(making_up(job(STOCKS["A5"], 4, copies=2, part=True, colour=False, draft=True))))
    assert "2 copies, a part of the book, with the labels of all of it, black only." in text
    assert "A draft with errors: not for use." in text
    assert "THOSE DRAWN, NONE ELSE" in text
    assert "ALL, IN ORDER" not in text


@pytest.mark.parametrize(("name", "leaves"), [*((name, 9) for name in ALL), ("A5", 1), ("sample", 60), ("sample", 210)])
def test_every_leaf_is_drawn_once_in_order_with_its_labels(name: str, leaves: int) -> None:
    made = job(ALL[name], leaves)
    plate = plate_for(made.book.stock)
    grid = grid_for(made.leaves, made.book.stock, plate.area, plate.area.top, own_page=True)
    assert grid is not None
    assert [leaf for _, some in grid.pages for leaf in some] == list(range(made.leaves))
    assert grid.scale.part >= NARROWEST
    pages = list(making_up(made))
    places: list[tuple[int, int, int]] = []
    for number, page in enumerate(pages):
        for _, at in groups(page.items, "thumbnail"):
            places.append((number, at.y, at.x))
    assert len(places) == 2 * made.leaves
    assert places == sorted(places)
    labels = {str(face.label) for face in made.book.faces}
    assert [one for one in strings(pages) if one in labels] == [str(face.label) for face in made.book.faces]
    blanks = sum(face.blank for face in made.book.faces)
    assert strings(pages).count("blank") == blanks


def test_a_small_book_takes_one_page_and_a_large_one_says_how_many_the_order_takes() -> None:
    assert len(list(making_up(job(STOCKS["A5"], 1)))) == 1
    pages = list(making_up(job(STOCKS["A5"], 210)))
    assert len(pages) > 3
    assert f"They take {len(pages) - 1} pages." in words(pages)
    assert f"1 of {len(pages)}" in strings(pages[:1])


def test_a_thumbnail_is_the_face_to_scale() -> None:
    stock = STOCKS["sample"]
    scale = Scale(mm(14), stock.leaf[0], 70)
    emergency, *_ = [face for face in faces(laid("Fire", kind="emergency", section="3"), stock=stock) if face.kind]
    drawn = list(extents((thumbnail(emergency, stock, scale),)))
    leaf = Rect(0, 0, scale.of(stock.leaf[0]), scale.of(stock.leaf[1]))
    half = max(item.stroke for item, _ in drawn if isinstance(item, Box)) // 2 + 1
    around = Rect(-half, -half, leaf.right + half, leaf.bottom + half)
    assert all(rect.inside(around) for _, rect in drawn)
    band = max(
        (rect for item, rect in drawn if isinstance(item, Box) and not item.stroke), key=lambda rect: rect.bottom
    )
    assert abs(band.right - leaf.right) <= 1  # cut off at the leaf, without its bleed
    assert abs(band.bottom - leaf.bottom) <= 1
    assert band.top == 0
    (body,) = [group for group in emergency.groups if group.role == "body"]
    ((text, rect),) = list(extents((body,)))
    assert isinstance(text, Text)
    ((small, place),) = [(one, at) for one, at in drawn if isinstance(one, Text) and one.string == text.string]
    assert small.size == scale.of(text.size)
    assert all(abs(at - scale.of(of)) <= 20 for at, of in zip(place, rect, strict=True))


def test_of_head_and_foot_only_rules_and_label_are_drawn_small() -> None:
    stock = STOCKS["sample"]
    front, *_ = faces(laid("Fire", kind="emergency", section="3"), stock=stock)
    said = [item.string for item, _ in extents((thumbnail(front, stock, Scale(1, 10)),)) if isinstance(item, Text)]
    assert said == [str(front.label), "Fire 1"]


def test_cut_tabs_stand_out_of_the_outline_of_a_thumbnail() -> None:
    stock = stock_of("stock A5\n  tabs .... cut\n")
    front, back, *_ = faces(laid("One"), laid("Two"), stock=stock)
    scale = Scale(1, 1)
    for face, outer in ((front, stock.leaf[0]), (back, 0)):
        (outline,) = [item for item in thumbnail(face, stock, scale).items if isinstance(item, Line) and item.closed]
        xs = [x for x, _ in outline.points]
        assert outer in xs
        assert abs(outer - stock.recess) in xs


def test_scaling_keeps_what_is_drawn() -> None:
    items: tuple[Drawn, ...] = (
        Text(100, 200, "A", 12_000),
        Box(0, 0, 50, 70, stroke=10),
        Group(10, 20, (Text(1, 2, "B", 10_000),)),
    )
    half = tuple(scaled(items, Scale(1, 2)))
    assert tuple(scaled(items[1:2], Scale(1, 2, 8))) == (Box(0, 0, 25, 35, stroke=8),)
    assert half == (Text(50, 100, "A", 6_000), Box(0, 0, 25, 35, stroke=5), Group(5, 10, (Text(0, 1, "B", 5_000),)))


def test_the_strokes_of_the_punch_are_said_and_drawn() -> None:
    pages = list(making_up(job(STOCKS["sample"], 5, DESK)))
    text = words(pages)
    assert "Stroke 1: front up, head at the stop" in text
    assert "Stroke 2: back up, foot at the stop" in text
    assert len([1 for page in pages for _ in groups(page.items, "strokes")]) == 1


def test_a_pattern_that_cannot_be_made_is_said_and_not_drawn() -> None:
    stock = stock_of(
        "stock\n  leaf .... 5.75 x 8.75 in\n  pouch .... 6 x 9 in\n"
        "  holes .... 4, 50 mm apart, 6 mm wide, 12 mm from edge\n  paper .... Letter\n"
    )
    pages = list(making_up(job(stock, 5, DESK)))
    assert "cannot make" in words(pages)
    assert not [1 for page in pages for _ in groups(page.items, "strokes")]


@pytest.mark.parametrize("name", [name for name, stock in ALL.items() if len(stock.holes) in (2, 3, 4)])
def test_guides_are_as_large_as_they_are(name: str) -> None:
    stock = ALL[name]
    across = [0, *(b - a for a, b in zip(stock.holes, stock.holes[1:], strict=False))][:2]
    pattern = pattern_of(stock)
    punch = replace(PLAIN, holes=(0, sum(across)), diameter=pattern.diameter, depth=(pattern.inset, pattern.inset))
    plan = punching(pattern, punch)
    assert isinstance(plan, Plan)
    wanted = sorted((guide.length, guide.height) for guide in guides(plan))
    drawn = []
    for page in making_up(job(stock, 3, punch)):
        for group, at in groups(page.items, "guide"):
            ((_, rect),) = list(extents(group.items[:1], at))
            drawn.append(tuple(sorted((rect.right - rect.left, rect.bottom - rect.top), reverse=True)))
    pen = 2 * ((drawn[0][1] - wanted[0][1]) // 2)
    assert sorted((length - pen, height - pen) for length, height in drawn) == wanted
    assert 0 <= pen < mm(0.3)


def test_a_guide_longer_than_the_paper_is_told_of() -> None:
    stock = stock_of("stock\n  leaf .... 200 x 380 mm\n  holes .... 2, 80 mm apart\n  paper .... A3\n")
    punch = replace(PLAIN, holes=(0, 320_000), diameter=6_000)
    stock = replace(stock, holes=(30_000, 350_000))
    pages = list(making_up(job(stock, 3, punch)))
    assert "longer than this paper" in words(pages)
    assert not [1 for page in pages for _ in groups(page.items, "guide")]
