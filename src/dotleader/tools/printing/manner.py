"""What a print is: how it is wanted, what is ready to be drawn, and what came of it. Data only."""

from __future__ import annotations

from dotleader.handbook.punch import Punch
from dotleader.page.face.book import Book
from dotleader.page.face.selection import Wanted
from dotleader.page.sheet.cut_shapes import Cutting
from dotleader.page.sheet.duplex import Turning
from dotleader.page.sheet.leaf_order import Order
from dotleader.page.sheet.sheets import Sheet
from dotleader.source.record import record
from dotleader.tools.printing.printers import Printer


@record
class Printed:
    """`files` by name; `sheets` counts papers, the sheet of rulers, if there is one, once among them.

    `cuttings` are those that have a pair of files to cut by.
    """

    files: dict[str, bytes]
    book: Book
    sheets: int
    cuttings: tuple[Cutting, ...]


@record
class Manner:
    """How a book is printed.

    `draft` is the number of errors when it is printed in spite of them. With `cutter_marks` the sheets bear marks for a
    cutter that reads them, where leaves do not fill the paper. The backs of sheets are righted for the `printer`; what
    is cut by stays where it is. Of the book what is `wanted`, None for all. `copies` are of sheets. Without `colour`
    the ground of memory items is white. `order` is that of the leaves on the sheets, which the
    printer turns about the edge of `turning`. `one_sided` puts fronts and backs into files of their own as well.
    """

    draft: int | None = None
    cutter_marks: bool = False
    printer: Printer | None = None
    wanted: Wanted | None = None
    copies: int = 1
    colour: bool = True
    order: Order = "sequence"
    turning: Turning = "long-edge"
    one_sided: bool = False


@record
class Planned:
    """A book that is ready to be drawn: everything has its place. `papers` are of one copy.

    `punches` are those on the desk, with which its holes may be made.
    """

    book: Book
    papers: tuple[Sheet, ...]
    cuttings: tuple[Cutting, ...]
    punches: tuple[Punch, ...] = ()
