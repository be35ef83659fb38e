"""How sheets are printed, fed again and piled, in lines as wide as the terminal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from dotleader.handbook.stocks.measures import leaves_together
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.imposition import imposition
from dotleader.page.making_up.feeding import fed_again, measured, piled, setting
from dotleader.page.sheet.duplex import Turning
from dotleader.page.sheet.rulers import ruler_length
from dotleader.tools.printing.in_lines import in_lines

if TYPE_CHECKING:  # reportlab takes longer to import than a lint takes altogether
    from dotleader.tools.printing.manner import Planned


def how(turning: Turning, one_sided: bool, stock: Stock) -> Iterator[str]:
    """What is to be set in the print dialogue, and for a printer of one side how the paper goes back in."""
    yield ""
    ruled = measured(ruler_length(imposition(stock)))
    yield from in_lines((setting(turning, one_sided), ruled, *(fed_again(turning) if one_sided else ())))


def stacked(plan: Planned) -> Iterator[str]:
    """How the cut pile becomes the book."""
    yield from in_lines(piled(plan.papers, leaves_together(plan.book.stock)))
