"""The checks of sheets as pictures find what is wrong: a fault is planted, and its sentence is heard."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import lru_cache
from typing import TypeAlias

import pytest

from dotleader.output.pdf import PdfPage
from dotleader.page.drawn import Box, Drawn, Group, Ink, mm
from dotleader.source.record import replace
from dotleader.tools.printing.manner import Manner, Planned
from tests.output.cut_reading import Layers, Path
from tests.output.looking import Looked, faults, looked_at, plan_of
from tests.output.pixels import Seen, Side
from tests.output.reading import by_pdfium, written
from tests.output.sheet_faults import sheet_faults

Items: TypeAlias = Callable[[Iterable[Drawn]], list[Drawn]]
"""What is drawn on a side, with a fault planted in it."""

POUCH = "6 x 9 in pouch"


@lru_cache
def plain(name: str) -> tuple[Planned, Looked, int]:
    """A stock, its sheet with the emergency leaf, and which one that is among the papers."""
    manner = Manner()
    plan = plan_of(name, manner)
    sheets, rulers = looked_at(plan, manner)
    at = next(at for at, sheet in enumerate(sheets) if sheet.front.bands)
    return plan, sheets[at], at + len(rulers)


def planted(name: str, *, front: Items | None = None, back: Items | None = None) -> list[str]:
    """What is found where the drawn things of a side are changed."""
    plan, looked, at = plain(name)
    changed_front = seen(plan, front, at, "front") if front else looked.front
    changed_back = seen(plan, back, at, "long-edge") if back else looked.back
    return faults(Looked(changed_front, changed_back, looked.svg, looked.dxf), plan.book.stock)


def seen(plan: Planned, how: Items, at: int, side: Seen) -> Side:
    sheet, paper = plan.papers[at], plan.book.stock.paper
    items = tuple(how((sheet.front if side == "front" else sheet.back).items))
    (page,) = by_pdfium(written([PdfPage(*paper, items)]))
    return Side(page, (paper[0] / 1000, paper[1] / 1000), side)


def moved(right: float, down: float, role: str = "") -> Items:
    """Everything moved, or the groups of a role."""

    def items(drawn: Iterable[Drawn]) -> list[Drawn]:
        return [
            Group(mm(right), mm(down), (item,)) if not role or (isinstance(item, Group) and item.role == role) else item
            for item in drawn
        ]

    return items


def with_boxes(*boxes: tuple[float, float, float, float], ink: Ink = Ink.BLACK) -> Items:
    """Left, top, width and height of each, in millimetres of the page."""
    return lambda drawn: [*drawn, *(Box(*map(mm, box), fill=ink) for box in boxes)]


def without(role: str, at: int) -> Items:
    """One thing less in a group of the sheet, or of a leaf."""

    def items(drawn: Iterable[Drawn]) -> list[Drawn]:
        return [_without(item, role, at) for item in drawn]

    return items


def _without(item: Drawn, role: str, at: int) -> Drawn:
    if not isinstance(item, Group):
        return item
    if item.role == role:
        return replace(item, items=item.items[:at] + item.items[at + 1 :])
    return replace(item, items=tuple(_without(each, role, at) for each in item.items))


EVERY_WAY = pytest.mark.parametrize(
    "name", [POUCH, "A5", "A5, bound at top", "half letter, no holes", "folded card, A6"]
)
"""With marks and without, with holes and without; across, head to foot, folded."""


@EVERY_WAY
def test_nothing_is_found_where_a_back_is_out_by_a_twentieth_of_a_millimetre(name: str) -> None:
    assert planted(name) == []
    assert planted(name, back=moved(0.05, -0.05)) == []


@EVERY_WAY
@pytest.mark.parametrize(("right", "down"), [(0.2, 0), (0, -0.2)])
def test_a_back_that_is_out_by_a_fifth_of_a_millimetre_is_found(name: str, right: float, down: float) -> None:
    told = [float(word) for fault in planted(name, back=moved(right, down)) for word in fault.split() if "0." in word]
    assert told
    assert all(abs(each - 0.2) < 0.06 for each in told)


def test_a_leaf_that_is_out_between_its_marks_is_found() -> None:
    for side in ("front", "back"):
        found = planted(POUCH, **{side: moved(0.2, 0, "leaf")})
        assert any(fault.startswith("the columns of a leaf are 0.2") for fault in found)
        assert any(fault.startswith("a hole is 0.2") for fault in found)
        assert any(fault.startswith("a band is 0.2") for fault in found)
    found = planted(POUCH, back=moved(0, 0.2, "leaf"))
    assert any(fault.startswith("the rules at the foot of a leaf are 0.2") for fault in found)


def test_a_back_that_was_turned_on_the_other_edge_is_found() -> None:
    for name in (POUCH, "A5", "A4", "folded card, A6"):
        plan, looked, at = plain(name)
        wrong = seen(plan, list, at, "short-edge")
        assert faults(Looked(looked.front, wrong, looked.svg, looked.dxf), plan.book.stock)


@pytest.mark.parametrize("side", ["front", "back"])
def test_ink_in_a_hole_is_found(side: str) -> None:
    looked = plain(POUCH)[1]
    spots = ((1.2, 1.2), (-2.2, 0.5), (0.4, -0.6), (0, 2.4))
    boxes = []
    for (x, y), (right, down) in zip(looked.front.crosses, spots, strict=True):
        across = x if side == "front" else looked.front.paper[0] - x
        boxes.append((across + right - 0.15, y + down - 0.15, 0.3, 0.3))
    found = planted(POUCH, **{side: with_boxes(*boxes)})
    assert all(f"there is ink in the hole at {x:.1f}, {y:.1f}" in found for x, y in looked.front.crosses)


def test_a_mark_that_is_missing_is_found() -> None:
    assert "there are 8 times a crop mark on the front and 7 on the back" in planted(POUCH, back=without("crop", 0))
    assert "a hole has no circle around it" in planted(POUCH, back=without("holes", 0))
    assert "there are 3 times a hole on the front and 4 on the paths" in planted(POUCH, front=without("holes", 1))


def test_ink_in_the_seal_is_found_and_a_band_that_does_not_bleed() -> None:
    left, top, right, bottom = plain(POUCH)[1].front.leaves[0]
    spots = [(left - 1, 100), (90, top - 2), (90, bottom + 1.5), (left - 1, top - 1), (right + 3.1, 100)]
    found = planted(POUCH, front=with_boxes(*((x, y, 0.3, 0.3) for x, y in spots)))
    for name in ("on the left", "on the top", "on the bottom", "at a corner"):
        assert f"there is ink in the seal {name}" in found
    assert "there is ink between bleed and crop marks on the right" in found
    short = planted(POUCH, front=with_boxes((right + 1.5, 100, 3, 5), ink=Ink.WHITE))
    assert "a band ends within the bleed on the right" in short


def cut_elsewhere(cut: Layers, right: float, down: float) -> Layers:
    return Layers(
        {layer: [(x + right, y + down, r) for x, y, r in circles] for layer, circles in cut.circles.items()},
        {
            layer: [Path(path.closed, [(x + right, y + down) for x, y in path.points], path.middles) for path in paths]
            for layer, paths in cut.paths.items()
        },
    )


@pytest.mark.parametrize(("right", "down"), [(0.2, 0), (0, 0.2), (-0.15, 0), (0, -0.15)])
def test_cuts_that_are_elsewhere_are_found(right: float, down: float) -> None:
    plan, looked, _ = plain(POUCH)
    astray = cut_elsewhere(looked.svg, right, down)
    found = list(sheet_faults(looked.front, looked.back, astray, plan.book.stock))
    off = f"{max(abs(right), abs(down)):.1f}"
    assert any(fault.startswith(f"a cut is {off}") and fault.endswith("where the leaf ends") for fault in found)
    assert any(fault.startswith(f"a hole is {off}") and fault.endswith("on the paths") for fault in found)
    plan, looked, _ = plain("A5, no holes")
    astray = cut_elsewhere(looked.dxf, 0, right + down)
    found = list(sheet_faults(looked.front, looked.back, astray, plan.book.stock))
    assert any(fault.startswith(f"a cut is {off}") and fault.endswith("the band that ends there") for fault in found)


def test_a_side_that_is_not_cut_and_holes_that_are_not_the_stocks_are_found() -> None:
    plan, looked, _ = plain(POUCH)
    stock = plan.book.stock
    (path,) = looked.svg.paths["outlines"]
    half = Layers(looked.svg.circles, {"outlines": [Path(False, path.points[:5], path.middles[:4])]})
    assert "a side is not cut" in list(sheet_faults(looked.front, looked.back, half, stock))
    plan_of_a5, looked_at_a5, _ = plain("A5")
    bare = Layers(looked_at_a5.svg.circles, {})
    found = list(sheet_faults(looked_at_a5.front, looked_at_a5.back, bare, plan_of_a5.book.stock))
    assert found == ["a side is not cut"] * 2  # that of each leaf in the middle of the paper
    other = replace(stock, holes=tuple(at + 200 for at in stock.holes))
    found = list(sheet_faults(looked.front, looked.back, looked.svg, other))
    assert found == ["the holes of a leaf are not where its stock has them"]
