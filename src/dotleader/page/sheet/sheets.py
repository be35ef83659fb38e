"""Sheets: leaves on the paper, front and back, for printing on both sides.

Pages alternate front and back. Where the back of a leaf stands follows from the edge about which the sheet is turned
(`duplex`). Leaves follow one another on each sheet, or through the pile of sheets (`leaf_order`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from dotleader.handbook.stocks.measures import BLEED
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Group
from dotleader.page.extents import Rect, Turned
from dotleader.page.face.faces import Face
from dotleader.page.face.placement import Side
from dotleader.page.imposition import Imposition, Slot, imposition, printable
from dotleader.page.sheet import sheet_marks
from dotleader.page.sheet.cut_files import cut_file
from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.page.sheet.leaf_order import Order, leaf_order
from dotleader.page.sheet.registration import registration_marks
from dotleader.page.sheet.setting_up import setting_up
from dotleader.source.record import record, replace


@record
class LeafPlace:
    """A leaf on one side of a sheet: the label of the face that shows, its rectangle, and its turn in it."""

    label: str
    x: int
    y: int
    w: int
    h: int
    turn: int


@record
class SheetSide:
    side: Side
    items: tuple[Drawn, ...]
    leaves: tuple[LeafPlace, ...]


@record
class Sheet:
    """One paper. `number` counts from 1; 0 is the sheet of rulers, which comes before them where there is no waste.

    Sheets of the same `arrangement`, which counts from 1 too, have their leaves in the same places and are cut alike.
    """

    number: int
    front: SheetSide
    back: SheetSide
    arrangement: int = 0

    @property
    def sides(self) -> tuple[SheetSide, SheetSide]:
        return self.front, self.back


def sheet_count(faces: int, stock: Stock) -> int:
    """How many sheets that many faces take, the sheet of rulers among them."""
    laid = imposition(stock)
    return -(-faces // 2 // len(laid.slots)) + (not sheet_marks.has_rulers(laid))


def sheets(
    faces: Sequence[Face],
    stock: Stock,
    cutter_marks: bool = False,
    backs_say: Sequence[str] = (),
    order: Order = "sequence",
    turning: Turning = "long-edge",
) -> Iterator[Sheet]:
    """The sheets of a book; `faces` are all of them in order, fronts and backs in turn.

    With `cutter_marks` the fronts bear marks by which a cutter finds them, where there is waste to bear them.
    The backs say the first of `backs_say` that they have room for; it should be the longest.
    """
    laid = imposition(stock)
    pairs = list(zip(faces[::2], faces[1::2], strict=True))
    behind_them = [behind(laid, slot, stock, turning) for slot in laid.slots]
    on_each = [[pairs[leaf] for leaf in some] for some in leaf_order(len(pairs), len(laid.slots), order)]
    arrangements = _arrangements([len(some) for some in on_each])
    if not sheet_marks.has_rulers(laid):
        front, back = setting_up(laid, arrangements if _is_cut(laid, stock) else (), backs_say[:1], turning)
        yield Sheet(0, SheetSide(Side.FRONT, front, ()), SheetSide(Side.BACK, back, ()))
    for number, (some, arrangement) in enumerate(zip(on_each, arrangements, strict=True), start=1):
        how = f"Print at 100 %. Turn on the {edge_said(turning)}."
        words = f"Sheet {number}, front side. {how} Cut by {cut_file(arrangement)}."
        fronts = list(zip(laid.slots, (front for front, _ in some), strict=False))
        front_side = _side(laid, stock, Side.FRONT, fronts, words, cutter_marks)
        words = sheet_marks.with_room(laid, f"Sheet {number}, back side. {how}", backs_say)
        backs = list(zip(behind_them, (back for _, back in some), strict=False))
        yield Sheet(number, front_side, _side(laid, stock, Side.BACK, backs, words), arrangement)


def _is_cut(laid: Imposition, stock: Stock) -> bool:
    """Whether a machine has anything to cut: not on a leaf that is its paper, with square corners and no holes."""
    return not laid.filling or len(laid.slots) > 1 or bool(stock.holes) or stock.corner_radius > 0


def _arrangements(counts: Sequence[int]) -> list[int]:
    """The arrangement of each sheet by how many leaves it has, numbered as they come up.

    That is enough to tell them apart: where a sheet has places without a leaf, they are its last ones.
    """
    numbers: dict[int, int] = {}
    return [numbers.setdefault(count, len(numbers) + 1) for count in counts]


def behind(laid: Imposition, slot: Slot, stock: Stock, turning: Turning = "long-edge") -> Slot:
    """Where the back of a leaf stands on the back of its sheet, and its turn there.

    A leaf that is bound at the top has its back head to foot.
    """
    turn = -slot.turn if stock.bound_at == "left" else 180 - slot.turn
    match turning:
        case "long-edge":
            return Slot(laid.paper[0] - slot.x - slot.w, slot.y, slot.w, slot.h, turn % 360)
        case "short-edge":
            return Slot(slot.x, laid.paper[1] - slot.y - slot.h, slot.w, slot.h, (turn + 180) % 360)
        case _:
            assert_never(turning)


def on_sheet(slot: Slot) -> Turned:
    """From the coordinates of a face to those of the sheet."""
    match slot.turn:
        case 0:
            return Turned(slot.x, slot.y, 0)
        case 90:
            return Turned(slot.x, slot.y + slot.h, 90)
        case 180:
            return Turned(slot.x + slot.w, slot.y + slot.h, 180)
        case _:
            return Turned(slot.x + slot.w, slot.y, 270)


def edges_within(groups: Sequence[Group], area: Rect) -> Iterator[Group]:
    """The groups of a face, what stands at its edge cut off at a rectangle of the leaf's coordinates."""
    for group in groups:
        if group.role == "edge":
            yield replace(group, items=tuple(_cut_off(group.items, area)))
        elif group.role != "links":
            yield group


def _cut_off(items: tuple[Drawn, ...], area: Rect) -> Iterator[Drawn]:
    for item in items:
        if not isinstance(item, Box):
            yield item
            continue
        left, top, right, bottom = Rect(item.x, item.y, item.x + item.w, item.y + item.h).common(area)
        if left < right and top < bottom:
            yield replace(item, x=left, y=top, w=right - left, h=bottom - top)


def _side(
    laid: Imposition,
    stock: Stock,
    side: Side,
    standing: Sequence[tuple[Slot, Face]],
    words: str,
    cutter_marks: bool = False,
) -> SheetSide:
    items: list[Drawn] = []
    places = []
    for here, face in standing:
        places.append(LeafPlace(str(face.label), here.x, here.y, here.w, here.h, here.turn))
        items.append(_leaf(laid, stock, face, here))
    if not laid.filling:
        items.append(Group(0, 0, tuple(sheet_marks.crop_marks(tuple(slot for slot, _ in standing))), role="crop"))
    places_of_rulers = sheet_marks.ruler_places(laid)
    if places_of_rulers is not None:
        upright, level = places_of_rulers
        rulers = (*sheet_marks.upright_ruler(*upright), *sheet_marks.level_ruler(*level))
        items.append(Group(0, 0, rulers, role="rulers"))
    items.append(Group(0, 0, tuple(sheet_marks.note(laid, words)), role="note"))
    if cutter_marks:
        items.append(Group(0, 0, tuple(registration_marks(laid)), role="registration"))
    kept = tuple(item for item in items if not isinstance(item, Group) or item.items)
    return SheetSide(side, kept, tuple(places))


def _leaf(laid: Imposition, stock: Stock, face: Face, slot: Slot) -> Group:
    place = on_sheet(slot)
    groups = tuple(edges_within(face.groups, _inkable(laid, stock, slot, place)))
    holes = Group(0, 0, tuple(sheet_marks.hole_marks(stock, face.side)), role="holes")
    return Group(place.x, place.y, (*groups, *((holes,) if holes.items else ())), place.turn, "leaf")


def _inkable(laid: Imposition, stock: Stock, slot: Slot, place: Turned) -> Rect:
    """How far what stands at a leaf's edge may be printed, in the leaf's coordinates."""
    width, height = stock.leaf
    if not laid.filling:
        return Rect(-BLEED, -BLEED, width + BLEED, height + BLEED)
    left, top, right, bottom = Rect(slot.x, slot.y, slot.x + slot.w, slot.y + slot.h).common(
        Rect(*printable(laid.paper, laid.margin))
    )
    back = Turned(0, 0, (360 - place.turn) % 360)
    return back.rect(left - place.x, top - place.y, right - place.x, bottom - place.y)
