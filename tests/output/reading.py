"""What the tests of PDF output share: a page of everything, and readers of three libraries on one file."""

from __future__ import annotations

from collections.abc import Iterable
from io import BytesIO
from itertools import pairwise
from typing import Any

import pdfplumber
import pypdf
import pypdfium2
from PIL import Image

from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf
from dotleader.page.drawn import Box, Drawn, Font, Group, Ink, Line, Link, Text, mm, pt

WIDTH, HEIGHT = mm(146.05), mm(222.25)  # 5.75 by 8.75 in
PLAIN = PdfFacts("Ostrel Two flight handbook", "Reading copy", "", None, scaling_none=False)
POINT = 72 / 25400
"""Points to the micrometre."""

EVERYTHING: tuple[Drawn, ...] = (
    Box(mm(18), mm(34), mm(114), mm(28), fill=Ink.MEMORY, stroke=pt(2.2)),
    Text(mm(27), mm(41), "Airspeed", 15_000),
    Line(((mm(52), mm(40)), (mm(64), mm(40))), mm(0.6), dots=mm(2)),
    Text(mm(66), mm(41), "82 KIAS", 15_000, Font.BOLD),
    Text(mm(27), mm(50), "Flaps (both) → 1\u00a0111 ½ ⅓ µ Ж \\ ☐", 12_000),
    Box(mm(118), mm(8), mm(14), mm(7), fill=Ink.BLACK, radius=mm(1)),
    Text(mm(120), mm(13.6), "3-12", 16_000, Font.BOLD, ink=Ink.WHITE),
    Group(
        mm(100),
        mm(160),
        (Text(mm(1), mm(6), "turned", 11_000), Link(0, 0, mm(20), mm(8), "3-12"), Box(0, 0, 9, 9, stroke=1)),
        turn=90,
    ),
    Group(mm(20), mm(200), (Text(0, 0, "DRAFT", 120_000, Font.BOLD, hollow=pt(1)),), turn=50, role="draft"),
    Text(mm(144), mm(60), "ENGINE", 11_000, turn=270),
    Line(((mm(70), mm(160)), (mm(80), mm(164)), (mm(70), mm(168))), 0, closed=True, fill=Ink.BLACK),
)


def page(*items: Drawn, width: int = WIDTH, height: int = HEIGHT) -> PdfPage:
    return PdfPage(width, height, items)


def written(pages: Iterable[PdfPage], facts: PdfFacts = PLAIN, pictures: dict[str, bytes] | None = None) -> bytes:
    to = BytesIO()
    write_pdf(pages, facts, to, pictures=pictures or {})
    return to.getvalue()


# `Any` at the border to the three libraries, whose own types are loose or absent.


def by_pypdf(data: bytes) -> Any:
    return pypdf.PdfReader(BytesIO(data), strict=True)


def by_pdfium(data: bytes) -> Any:
    return pypdfium2.PdfDocument(data)


def by_plumber(data: bytes) -> Any:
    return pdfplumber.open(BytesIO(data))


def shown(data: bytes, scale: float) -> Image.Image:
    """The first page as pdfium renders it, in grey, `scale` pixels to the millimetre."""
    return by_pdfium(data)[0].render(scale=scale * 25.4 / 72).to_pil().convert("L")


def darkness(image: Image.Image, down: bool = False) -> list[float]:
    """How dark each column of a picture is (each row, with `down`): its mean, 0 for white to 255."""
    turned = image.transpose(Image.Transpose.TRANSPOSE) if down else image
    means: Any = turned.convert("F").resize((turned.width, 1), Image.Resampling.BOX)
    return [255 - means.getpixel((x, 0)) for x in range(turned.width)]


def stretches(dark: list[float], over: float = 0.0) -> list[range]:
    """The stretches of columns that are darker than `over`."""
    edges = [i for i, (a, b) in enumerate(pairwise([0.0, *dark, 0.0])) if (a > over) != (b > over)]
    return [range(a, b) for a, b in zip(edges[::2], edges[1::2], strict=True)]
