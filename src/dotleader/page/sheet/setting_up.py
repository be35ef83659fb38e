"""The sheet that is printed first where leaves fill their paper: rulers, and where to cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from dotleader.page.drawn import Drawn, Font, mm
from dotleader.page.imposition import Imposition, folds
from dotleader.page.sheet import sheet_marks
from dotleader.page.sheet.duplex import Turning, edge_said
from dotleader.page.sheet.rulers import RULER, level_ruler, upright_ruler
from dotleader.page.type.breaking import broken, room_of, set_line
from dotleader.page.type.words import plain_words

_LEFT = mm(25)
_FIRST = mm(24)
_LINE = mm(5.4)
_PARAGRAPH = mm(2.6)
_SIZE = 11_000
_TITLE = 16_000
_CROSS = mm(10)


def setting_up(
    laid: Imposition,
    cut_by: str,
    back_says: Sequence[str] = (),
    turning: Turning = "long-edge",
    tabs: Sequence[str] = (),
) -> tuple[tuple[Drawn, ...], tuple[Drawn, ...]]:
    """Front and back of the sheet; its back ends with what `back_says`.

    `cut_by` says by which files the sheets that follow are cut, '' if there is nothing to cut by a file: where leaves
    fill the paper, no sheet has room to say it. `tabs` says where tabs are cut.
    """
    front = ("Setting-up sheet", *_said(laid, cut_by, turning, tabs))
    back = (
        "Setting-up sheet, back",
        "Held against the light, the cross on this side falls on the cross of the other side within 1 mm. If it "
        "does not, the printer shifts the backs by so much, and the cuts can only be right for one side. "
        "The sheet of dotleader print --calibration tells how far, so that the backs can be righted.",
        *back_says,
    )
    return tuple(_drawn(laid, front)), tuple(_drawn(laid, back))


def _said(laid: Imposition, cut_by: str, turning: Turning, tabs: Sequence[str]) -> Iterator[str]:
    yield f"Print this file at 100 % (actual size), on both sides, turned on the {edge_said(turning)}."
    yield (
        "Both rulers are 100 mm long. Lay a ruler of your own beside each of them. If one is longer or shorter, "
        "the printer changes the size: mend that first."
    )
    if not laid.filling:
        return
    cuts = _cuts(laid)
    if not cuts:
        if laid.together == 1:
            but = (" but holes, corners and tabs" if tabs else " but holes and corners") if cut_by else ""
            yield f"A leaf is as large as the paper, and nothing is cut{but}."
        else:
            yield "The open card is as large as the paper: nothing is cut but its corners, where they are to be round."
    else:
        what = "leaves" if laid.together == 1 else "open cards"
        yield f"The {what} fill the paper, so that no mark can stand beside them. Cut each sheet {' and '.join(cuts)}."
    yield from _folds(laid)
    if len({slot.turn for slot in laid.slots}) > 1:
        yield "The leaves stand head to foot, so that their edge bands meet at the cut."
    yield from tabs
    if cut_by:
        yield cut_by
    yield (
        "This sheet is printed once and is not counted: sheet 1 is the one after it. In the file, each page says in "
        "its label which sheet it is."
    )


def _cuts(laid: Imposition) -> list[str]:
    """In words, where the cuts are: halfway between neighbouring leaves."""
    cuts = []
    for along, word in ((1, "across, "), (0, "upright, ")):
        ends = sorted({(piece.bottom, piece.top) if along else (piece.right, piece.left) for piece in laid.pieces})
        middles = [(before[0] + after[1]) // 2 for before, after in pairwise(ends)]
        if middles:
            edge = "upper" if along else "left"
            cuts.append(f"{word}{' and '.join(map(_millimetres, middles))} from its {edge} edge")
    return cuts


def _folds(laid: Imposition) -> Iterator[str]:
    """In words, where a card is folded; no dashes can say so where there is no waste."""
    found = folds([slot.rect for slot in laid.slots], laid.together)
    for upright in (True, False):
        places = sorted({line.left if upright else line.top for line in found if (line.left == line.right) is upright})
        if places:
            way, edge = ("upright", "left") if upright else ("across", "upper")
            at = " and ".join(map(_millimetres, places))
            yield f"Fold {way}, {at} from the sheet's {edge} edge, the side that is printed first outside."


def _millimetres(length: int) -> str:
    tenths = (length + 50) // 100
    return f"{tenths // 10}.{tenths % 10} mm".replace(".0 mm", " mm")


def _drawn(laid: Imposition, texts: tuple[str, ...]) -> Iterator[Drawn]:
    title, *paragraphs = texts
    """Text from the head of the sheet, going on below the cross where it does not end above it."""
    width, height = laid.paper
    base, upper, lower = _FIRST, height // 2 - _CROSS - _LINE, height // 2 + _CROSS + _LINE
    settings = [(plain_words(title, Font.BOLD), _TITLE)]
    settings += [(plain_words(paragraph, Font.REGULAR), _SIZE) for paragraph in paragraphs]
    for words, size in settings:
        for line in broken(words, room_of(width - 2 * _LEFT, size)):
            if upper < base < lower:
                base = lower
            yield from set_line(line, _LEFT, base, size)
            base += _LINE
        base += _PARAGRAPH
    x, y = (width - RULER) // 2, height - mm(40)
    yield from level_ruler(x, y)
    yield from upright_ruler(mm(18), (height - RULER) // 2)
    yield from sheet_marks.cross(width // 2, height // 2, _CROSS)
