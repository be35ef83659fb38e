"""Pages a second: drawing finished faces against bare reportlab calls, and the whole print against typst.

Both others set the same strings at the same places in the same type, and the same lines and boxes.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterable
from io import BytesIO
from pathlib import Path
from statistics import median

import typst
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from dotleader.handbook.resolve import resolve
from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf
from dotleader.page.drawn import Box, Drawn, Font, Group, Line, Text
from dotleader.page.face.book import make_book
from dotleader.page.lay.checklists import Checklists
from dotleader.page.sheet.sheets import sheets
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText
from dotleader.tools.printing.printed_book import laid_out
from tests.bench.timing import in_turn, ratios, whole_process

TOP = Path(__file__).parents[2]
HANDBOOK = TOP / "examples" / "ostrel-two" / "handbook.cards"
FONTS = TOP / "src" / "dotleader" / "page" / "fonts"
POINT = 25400 / 72
ROUNDS = 5
FACTS = PdfFacts("Bench", "", "", duplex="long-edge", scaling_none=True)


def example_pages() -> list[PdfPage]:
    """The sheets of the example, ready to be drawn."""

    def read(path: str) -> Outcome[SourceText] | str:
        return Outcome(SourceText(path, (HANDBOOK.parent / path).read_text(encoding="utf-8")))

    main_text = SourceText("handbook.cards", HANDBOOK.read_text(encoding="utf-8"))
    handbook, _ = resolve(main_text, "handbook.cards", read).value
    book = make_book(handbook, laid_out(handbook, Checklists(handbook).all()))
    width, height = book.stock.paper
    return [PdfPage(width, height, side.items) for sheet in sheets(book.faces, book.stock) for side in sheet.sides]


def flat(items: Iterable[Drawn], x: int = 0, y: int = 0) -> Iterable[Drawn]:
    """Texts, lines and boxes at their places on the page; turned groups at that of their corner."""
    for item in items:
        match item:
            case Group():
                yield from flat(item.items, x + item.x, y + item.y)
            case Text():
                yield Text(x + item.x, y + item.y, item.string, item.size, item.font)
            case Line():
                yield Line(tuple((x + a, y + b) for a, b in item.points), item.width)
            case Box():
                yield Box(x + item.x, y + item.y, item.w, item.h)
            case _:
                pass


def bare(pages: list[tuple[int, int, list[Drawn]]]) -> bytes:
    """The same by plain calls of reportlab's canvas."""
    made = BytesIO()
    canvas = Canvas(made, invariant=1, initialFontName="regular")
    for width, height, items in pages:
        canvas.setPageSize((width / POINT, height / POINT))
        for item in items:
            match item:
                case Text():
                    canvas.setFont(item.font.value, item.size / 1000)
                    canvas.drawString(item.x / POINT, (height - item.y) / POINT, item.string)
                case Line():
                    canvas.setLineWidth(item.width / POINT)
                    for (a, b), (c, d) in zip(item.points, item.points[1:], strict=False):
                        canvas.line(a / POINT, (height - b) / POINT, c / POINT, (height - d) / POINT)
                case Box():
                    canvas.rect(item.x / POINT, (height - item.y - item.h) / POINT, item.w / POINT, item.h / POINT)
                case _:
                    pass
        canvas.showPage()
    canvas.save()
    return made.getvalue()


def typst_source(pages: list[tuple[int, int, list[Drawn]]]) -> str:
    """The same as a typst document."""
    out = ['#set text(font: "Dotleader Text", top-edge: "baseline", bottom-edge: "baseline")']
    for number, (width, height, items) in enumerate(pages):
        out.append(f"#set page(width: {width / POINT}pt, height: {height / POINT}pt, margin: 0pt)")
        for item in items:
            match item:
                case Text():
                    weight = "bold" if item.font is Font.BOLD else "regular"
                    string = item.string.replace("\\", "\\\\").replace('"', '\\"')
                    body = f'text(size: {item.size / 1000}pt, weight: "{weight}", "{string}")'
                    out.append(f"#place(top + left, dx: {item.x / POINT}pt, dy: {item.y / POINT}pt, {body})")
                case Line():
                    for (a, b), (c, d) in zip(item.points, item.points[1:], strict=False):
                        ends = f"start: ({a / POINT}pt, {b / POINT}pt), end: ({c / POINT}pt, {d / POINT}pt)"
                        out.append(f"#place(top + left, line({ends}, stroke: {item.width / POINT}pt))")
                case Box():
                    size = f"width: {item.w / POINT}pt, height: {item.h / POINT}pt"
                    at = f"dx: {item.x / POINT}pt, dy: {item.y / POINT}pt"
                    out.append(f"#place(top + left, {at}, rect({size}))")
                case _:
                    pass
        if number + 1 < len(pages):
            out.append("#pagebreak()")
    return "\n".join(out)


def main() -> None:
    for font in Font:
        pdfmetrics.registerFont(TTFont(font.value, FONTS / f"DotleaderText-{font.value.capitalize()}.ttf"))
    pages = example_pages()
    plain = [(page.width, page.height, list(flat(page.items))) for page in pages]
    works = {"bare reportlab": lambda: bare(plain), "dotleader": lambda: write_pdf(pages, FACTS, BytesIO())}
    taken = in_turn(works, ROUNDS)
    rate = 1 / ratios(taken, "bare reportlab")["dotleader"]
    things = sum(len(items) for _, _, items in plain)
    print(
        f"drawing `sheets.pdf` from finished sheets: {len(pages)} pages, {things:,} things; median of {ROUNDS} rounds\n"
    )
    print("| | pages/s |\n|---|---|")
    for name, times in taken.items():
        print(f"| {name} | {len(pages) / median(times):,.0f} |")
    print(f"\ndotleader at {rate:.2f} of the page rate of bare reportlab calls\n")
    _whole(plain)


def _whole(plain: list[tuple[int, int, list[Drawn]]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder) / "same.typ"
        source.write_text(typst_source(plain), encoding="utf-8")
        typst.compile(str(source), font_paths=[str(FONTS)])
        call = f"typst.compile({str(source)!r}, output={folder + '/same.pdf'!r}, font_paths=[{str(FONTS)!r}])"
        commands = {
            "typst": [sys.executable, "-c", f"import typst; {call}"],
            "dotleader": [sys.executable, "-m", "dotleader", "print", str(HANDBOOK), "--to", f"{folder}/printed"],
        }
        taken = whole_process(commands, ROUNDS)
    rate = 1 / ratios(taken, "typst")["dotleader"]
    print(
        "whole commands: `dotleader print` (lint, layout, reading copy and sheets) against typst setting the sheets\n"
    )
    print("| | median s |\n|---|---|")
    for name, times in taken.items():
        print(f"| {name} | {median(times):.2f} |")
    print(f"\ndotleader at {rate:.2f} of the rate of typst")
