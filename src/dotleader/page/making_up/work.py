"""The checklist for the work itself, in the language: what of it there is depends on the stock and on the print."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.handbook.resolve import resolve
from dotleader.handbook.stocks.fault import millimetres
from dotleader.page.laid import Frame, LaidCard
from dotleader.page.lay.lay_card import lay_card
from dotleader.page.making_up.job import Job
from dotleader.page.sheet.duplex import edge_said
from dotleader.source.text import SourceText

NAME = "making-up.cards"

_COLUMN = 26
"""Where responses begin, as the formatter has it."""

_HEAD = """\
# allow no-phase: work at a bench, before any flight
normal Making up the book
  when everything that is needed lies on the bench
"""

_PAPER = """\

# A sheet of paper for the bench, not the leaf that is made there.
stock letter
"""

_BLADES = "  warning Blades cut hands: rule and mat, fingers behind its edge, blade covered at once."
_HEAT = "  warning The laminator, and film that has just left it, burn."


def work_text(job: Job) -> str:
    """One card, as somebody would write it in the canonical form."""
    return _HEAD + "".join(f"  {line}\n" for line in _lines(job)) + _PAPER


def work_card(job: Job, frame: Frame) -> LaidCard:
    """The checklist laid out like any other card."""
    source = SourceText(NAME, work_text(job))
    resolved = resolve(source, NAME, lambda path: f"`{path}` is no file")  # it includes nothing
    (card,) = resolved.value[0].cards
    return lay_card(card, frame, frozenset())


def _lines(job: Job) -> Iterator[str]:
    stock = job.book.stock
    yield "group Print"
    sides = "ONE SIDE" if job.one_sided else f"BOTH SIDES, {edge_said(job.turning).upper()}"
    yield _item("Print dialogue", f"100 %, {sides}")
    yield _item("Sheet of rulers" if job.set_up else "First sheet", "PRINTED ALONE")
    yield _item("Rulers", f"{job.ruler // 1000} mm, BOTH")
    yield _item("Front and back", "WITHIN 1 mm, AGAINST THE LIGHT")
    yield _item("Sheets", f"{job.sheets} PRINTED")
    yield from _cut(job)
    if stock.folded:
        yield "group Fold"
        yield _item("Folds", "SCORED")
        yield _item("Cards", "FOLDED, FRONT OUTSIDE")
    if job.filmed:
        yield "group Laminate"
        yield _HEAT
        yield _item("Film", "MATTE")
        yield _item("Spoilt leaf", "LAMINATED FIRST")
        yield _item("Each leaf", "IN THE MIDDLE OF ITS POUCH")
        yield _item("Each pouch", "COOLED FLAT")
        yield _item("Seals", "CLEAR ALL ROUND")
    if stock.holes:
        count = len(stock.holes)
        yield "group Punch"
        yield _item("Punch", "TRIED ON PAPER")
        yield _item("Trial", "HOLES MEASURED")
        yield _item("Leaves", f"{count} {'HOLE' if count == 1 else 'HOLES'} IN EACH")
    yield "group Bind"
    yield _item("Cards" if stock.folded else "Leaves", "IN THE ORDER DRAWN")
    yield _item("Labels", "THOSE DRAWN, NONE ELSE" if job.part else "ALL, IN ORDER")
    if stock.holes:
        yield _item("Rings", "CLOSED, LEAVES TURN")
    yield _item("Book", "READ AGAINST THE AIRCRAFT")


def _cut(job: Job) -> Iterator[str]:
    stock = job.book.stock
    if job.trimmed or stock.corner_radius:
        yield "group Cut"
    if job.trimmed:
        yield _BLADES
        yield _item("Blade", "NEW")
        yield _item("Cards" if stock.folded else "Leaves", f"{job.pieces * job.copies} CUT")
    if stock.recess:
        yield _item("Tabs", "ALL STANDING")
    if stock.corner_radius:
        yield _item("Corners", f"ROUND, {millimetres(stock.corner_radius)}")


def _item(challenge: str, response: str) -> str:
    """A line two levels below the head, which stands two spaces further in when it is in the card."""
    return f"{f'  {challenge} ':.<{_COLUMN - 3}} {response}"
