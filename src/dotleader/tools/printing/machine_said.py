"""What is said at the end of a print to those who have a machine that cuts: what it may cut, how it finds the sheet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.output.millimetres import millimetres
from dotleader.page.imposition import imposition, pieces_to_a_sheet
from dotleader.page.sheet.cut_shapes import Cutting, Layer, Outline
from dotleader.page.sheet.cut_words import colours_said
from dotleader.page.sheet.registration import MARK, QUIET, registration_places
from dotleader.source.record import replace
from dotleader.tools.printing.stock_said import of_pieces

if TYPE_CHECKING:  # a stock is at hand where one was read
    from collections.abc import Sequence

    from dotleader.handbook.stocks.stock import Stock


def of_machine(stock: Stock, cuttings: Sequence[Cutting], cutter_marks: bool) -> Iterator[str]:
    """Sentences. `cuttings` are those that have a pair of files; `cutter_marks`, whether marks were asked for."""
    colours = colours_said(cuttings)
    if colours:
        yield colours
    if cutter_marks:
        yield from _of_marks(stock, cuttings)


def _of_marks(stock: Stock, cuttings: Sequence[Cutting]) -> Iterator[str]:
    """Whether sheets bear marks for a cutter, and where; where there is no room for them, how there would be."""
    marks = [mark for cutting in cuttings for mark in cutting.on(Layer.REGISTRATION)]
    if not marks:
        yield "No cutter's marks: there is no room for them beside the leaves."
        yield _making_room(stock)
        return
    first = marks[0]
    assert isinstance(first, Outline)
    size, middle = millimetres(MARK), millimetres(first.start[0] + MARK // 2)
    yield (
        f"The front of each sheet bears three black squares of {size} mm by which a cutter finds it, their centres "
        f"{middle} mm from the paper's edges: upper left, upper right, lower left. The {millimetres(QUIET)} mm around "
        "each are free of all else that is printed."
    )


def _making_room(stock: Stock) -> str:
    """`cut lines .... separate` where that leaves room; else more paper or less leaf."""
    apart = replace(stock, cut_lines="separate")
    count = pieces_to_a_sheet(stock, "separate")
    if count and registration_places(imposition(apart)):
        takes = of_pieces(stock, count)
        return f"With `cut lines .... separate` in the stock there would be room, and a sheet would take {takes}."
    return "A larger paper or a smaller leaf would leave room."
