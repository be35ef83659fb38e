"""What is to be made up, and how it was printed. Data only."""

from __future__ import annotations

from dotleader.handbook.stocks.measures import leaves_together
from dotleader.page.bench.plan import Punching
from dotleader.page.face.book import Book
from dotleader.page.imposition import imposition
from dotleader.page.sheet.copies import sheets_of_copies
from dotleader.page.sheet.cut_shapes import Cutting
from dotleader.page.sheet.duplex import Turning
from dotleader.page.sheet.leaf_order import Order
from dotleader.page.sheet.rulers import ruler_length
from dotleader.page.sheet.sheets import Sheet
from dotleader.source.record import record


@record
class Job:
    """A printed book on its way to the bench.

    `papers` are the sheets of one copy, `cuttings` those that have a pair of files, `punchings` one for each punch
    that the handbook describes. `corrected` names the printer for which backs are righted, `""` for none. `part`: only
    some leaves of the book were asked for.
    """

    book: Book
    registration: str
    papers: tuple[Sheet, ...]
    cuttings: tuple[Cutting, ...]
    punchings: tuple[Punching, ...] = ()
    copies: int = 1
    order: Order = "sequence"
    turning: Turning = "long-edge"
    one_sided: bool = False
    corrected: str = ""
    colour: bool = True
    draft: bool = False
    part: bool = False

    @property
    def leaves(self) -> int:
        """Of one copy; a folded card has two."""
        return len(self.book.faces) // 2

    @property
    def pieces(self) -> int:
        """What is cut out of one copy: leaves, or folded cards."""
        return self.leaves // leaves_together(self.book.stock)

    @property
    def sheets(self) -> int:
        """How many are printed, for all copies."""
        return sheets_of_copies(self.papers, self.copies)

    @property
    def ruler(self) -> int:
        """How long the rulers on the sheets are, in micrometres."""
        return ruler_length(imposition(self.book.stock))

    @property
    def set_up(self) -> bool:
        """Whether the first sheet is the one with the rulers, and no leaf on it."""
        return self.papers[0].number == 0

    @property
    def trimmed(self) -> bool:
        """Whether it takes a knife: not where a leaf is as large as its paper, and has no tab."""
        laid = imposition(self.book.stock)
        return not laid.filling or len(laid.slots) > leaves_together(self.book.stock) or self.book.stock.recess > 0

    @property
    def filmed(self) -> bool:
        return self.book.stock.pouch != (0, 0)
