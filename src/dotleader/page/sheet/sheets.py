"""Sheets: leaves on the paper, front and back, for printing on both sides.

Pages alternate front and back. Where the back of a leaf stands follows from the edge about which the sheet is turned
(`duplex`). Leaves follow one another on each sheet, or through the pile of sheets (`leaf_order`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias, assert_never

from dotleader.handbook.stocks.measures import BLEED
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.drawn import Box, Drawn, Group
from dotleader.page.extents import Rect, Turned
from dotleader.page.face.faces import Face
from dotleader.page.face.placement import Side
from dotleader.page.face.thumb_index import section_slot
from dotleader.page.imposition import Imposition, Slot, folds, imposition, on_sheet, printable, united
from dotleader.page.sheet import sheet_marks
from dotleader.page.sheet.cut_files import cut_by, cut_file
from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.page.sheet.holes import as_cut, hole_centres
from dotleader.page.sheet.leaf_order import Order, leaf_order
from dotleader.page.sheet.registration import registration_marks
from dotleader.page.sheet.rulers import rulers
from dotleader.page.sheet.setting_up import setting_up
from dotleader.page.sheet.tab_marks import tab_marks
from dotleader.page.sheet.tab_words import tabs_said
from dotleader.source.record import record, replace

_Leaf: TypeAlias = tuple[Face, Face]
"""The front and the back of one."""


@record
class LeafPlace:
    """A leaf on one side of a sheet: the label of the face that shows, its rectangle, and its turn in it.

    `tab` is the slot of its section's tab in the thumb index, whether it is cut or not.
    """

    label: str
    x: int
    y: int
    w: int
    h: int
    turn: int
    tab: int = 0

    @property
    def rect(self) -> Rect:
        return Rect(self.x, self.y, self.x + self.w, self.y + self.h)


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
    """How many sheets that many faces take, the sheet of rulers among them. A folded card takes four."""
    laid = imposition(stock)
    return -(-faces // 2 // len(laid.slots)) + (rulers(laid) is None)


def sheets(
    faces: Sequence[Face],
    stock: Stock,
    cutter_marks: bool = False,
    backs_say: Sequence[str] = (),
    order: Order = "sequence",
    turning: Turning = "long-edge",
) -> Iterator[Sheet]:
    """The sheets of a book; `faces` are all of them in order, fronts and backs in turn, four to each folded card.

    With `cutter_marks` the fronts bear marks by which a cutter finds them, where there is waste to bear them.
    The backs say the first of `backs_say` that they have room for; it should be the longest.
    """
    laid = imposition(stock)
    leaves = list(zip(faces[::2], faces[1::2], strict=True))
    behind_them = tuple(behind(laid, slot, stock, turning) for slot in laid.slots)
    on_each = _on_each(leaves, laid, order)
    arrangements = _arrangements(on_each, stock)
    if rulers(laid) is None:
        said = tuple(tabs_said(stock, (face.label.section for face in faces)))
        firsts = [str(some[0][0].label) for some in on_each]
        files = cut_by(arrangements, firsts) if leaves and _is_cut(laid, stock) else ""
        front, back = setting_up(laid, files, backs_say[:1], turning, said)
        yield Sheet(0, SheetSide(Side.FRONT, front, ()), SheetSide(Side.BACK, back, ()))
    for number, (some, arrangement) in enumerate(zip(on_each, arrangements, strict=True), start=1):
        how = f"Print at 100 %. Turn on the {edge_said(turning)}."
        fold = " Fold at the dashes." if stock.folded else ""
        words = f"Sheet {number}, front side. {how} Cut by {cut_file(arrangement)}.{fold}"
        up = [back if slot.back_up else front for slot, (front, back) in zip(laid.slots, some, strict=False)]
        front_side = _side(laid, stock, Side.FRONT, laid.slots, up, words, cutter_marks)
        words = sheet_marks.with_room(laid, f"Sheet {number}, back side. {how}", backs_say)
        down = [front if slot.back_up else back for slot, (front, back) in zip(laid.slots, some, strict=False)]
        yield Sheet(number, front_side, _side(laid, stock, Side.BACK, behind_them, down, words), arrangement)


def _on_each(leaves: Sequence[_Leaf], laid: Imposition, order: Order) -> list[list[_Leaf]]:
    """The leaves of each sheet in the order of its slots; those of one piece stay together."""
    together = laid.together
    pieces = [leaves[at : at + together] for at in range(0, len(leaves), together)]
    places = len(laid.slots) // together
    return [[leaf for piece in some for leaf in pieces[piece]] for some in leaf_order(len(pieces), places, order)]


def _is_cut(laid: Imposition, stock: Stock) -> bool:
    """Whether a machine has anything to do: not on a leaf that is its paper, with square corners and no holes."""
    if not laid.filling or len(laid.slots) > 1:
        return True
    return bool(stock.holes) or stock.corner_radius > 0 or stock.recess > 0 or stock.folded


def _arrangements(on_each: Sequence[Sequence[_Leaf]], stock: Stock) -> list[int]:
    """The arrangement of each sheet by how many leaves it has and where their tabs are cut, numbered as they come up.

    That is enough to tell them apart: where a sheet has places without a leaf, they are its last ones.
    """
    numbers: dict[tuple[int, ...], int] = {}
    tabs = (tuple(section_slot(face.label.section) if stock.recess else 0 for face, _ in some) for some in on_each)
    return [numbers.setdefault(some, len(numbers) + 1) for some in tabs]


def leaf_place(face: Face, slot: Slot) -> LeafPlace:
    tab = section_slot(face.label.section)
    return LeafPlace(str(face.label), slot.x, slot.y, slot.w, slot.h, slot.turn, tab)


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


def edges_within(groups: Sequence[Group], *areas: Rect) -> Iterator[Group]:
    """The groups of a face, what stands at its edge cut off at rectangles of the leaf's coordinates."""
    for group in groups:
        if group.role == "edge":
            yield replace(group, items=tuple(_cut_off(group.items, areas)))
        elif group.role != "links":
            yield group


def _cut_off(items: tuple[Drawn, ...], areas: Sequence[Rect]) -> Iterator[Drawn]:
    for item in items:
        if not isinstance(item, Box):
            yield item
            continue
        for area in areas:
            left, top, right, bottom = Rect(item.x, item.y, item.x + item.w, item.y + item.h).common(area)
            if left < right and top < bottom:
                yield replace(item, x=left, y=top, w=right - left, h=bottom - top)


def _side(
    laid: Imposition,
    stock: Stock,
    side: Side,
    slots: Sequence[Slot],
    shown: Sequence[Face],
    words: str,
    cutter_marks: bool = False,
) -> SheetSide:
    """One side of a sheet, whose leaves stand in the first of these slots."""
    items: list[Drawn] = []
    places = []
    for slot, face in zip(slots, shown, strict=False):
        places.append(leaf_place(face, slot))
        items.append(_leaf(stock, face, slot, _inkable(laid, slots, slot)))
    if not laid.filling:
        taken = [place.rect for place in places]
        pieces = united(taken, laid.together)
        tabs = [
            ends for place, slot in zip(places, slots, strict=False) for ends in tab_marks(stock, side, slot, place.tab)
        ]
        items.append(Group(0, 0, tuple(sheet_marks.crop_marks(pieces, tabs)), role="crop"))
        folded = folds(taken, laid.together)
        items.append(Group(0, 0, tuple(sheet_marks.fold_marks(folded, pieces)), role="fold"))
    ruled = rulers(laid)
    items.append(Group(0, 0, tuple(ruled.drawn()) if ruled else (), role="rulers"))
    items.append(Group(0, 0, tuple(sheet_marks.note(laid, words)), role="note"))
    if cutter_marks:
        items.append(Group(0, 0, tuple(registration_marks(laid)), role="registration"))
    kept = tuple(item for item in items if not isinstance(item, Group) or item.items)
    return SheetSide(side, kept, tuple(places))


def _leaf(stock: Stock, face: Face, slot: Slot, inkable: Rect) -> Group:
    """A face at its place; `inkable`, on the sheet, is as far as what stands at its edge may be printed."""
    place = on_sheet(slot)
    back = Turned(0, 0, (360 - place.turn) % 360)
    left, top, right, bottom = inkable
    area = back.rect(left - place.x, top - place.y, right - place.x, bottom - place.y)
    groups = tuple(edges_within(face.groups, area))
    centres = hole_centres(stock, face.side, as_cut(stock, slot))
    holes = Group(0, 0, tuple(sheet_marks.hole_marks(stock, centres)), role="holes")
    return Group(place.x, place.y, (*groups, *((holes,) if holes.items else ())), place.turn, "leaf")


def _inkable(laid: Imposition, slots: Sequence[Slot], slot: Slot) -> Rect:
    """A leaf and its bleed. There is none over a side that another leaf has, too, nor where leaves fill the paper."""
    here = slot.rect
    if laid.filling:
        return here.common(Rect(*printable(laid.paper, laid.margin)))
    others = [other.rect for other in slots if other != slot]
    left, top, right, bottom = here
    beside = [other for other in others if other.top < bottom and top < other.bottom]
    above = [other for other in others if other.left < right and left < other.right]
    return Rect(
        left - (0 if any(other.right == left for other in beside) else BLEED),
        top - (0 if any(other.bottom == top for other in above) else BLEED),
        right + (0 if any(other.left == right for other in beside) else BLEED),
        bottom + (0 if any(other.top == bottom for other in above) else BLEED),
    )
