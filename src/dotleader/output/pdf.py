"""Pages of drawn things to one PDF file. The only module that imports reportlab, and slow to import for that.

The file is the same, byte for byte, for equal pages and facts: no date, no name made up on the way,
and an identifier that is a digest of what the pages show. Only fonts that are embedded are used.
Boxes, page labels, destinations and viewer preferences are those of ISO 32000-1, clauses 12 and 14.11.2.
"""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from types import MappingProxyType
from typing import Any, BinaryIO, Literal

from reportlab.lib.utils import ImageReader
from reportlab.pdfbase import pdfdoc, pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from dotleader.output.operators import Content, Pen, Placed, points
from dotleader.page.drawn import Drawn, Font
from dotleader.page.sheet.alignment import Righting
from dotleader.page.type import metrics
from dotleader.page.type.metrics import Face
from dotleader.source.record import record

NO_PICTURES: Mapping[str, bytes] = MappingProxyType({})


@record
class PdfPage:
    """One page, lengths in micrometres; `trim` and `bleed` are x, y, w, h from the upper left corner, y down.

    `label` is the number that viewers show for the page, `name` what links lead to; '' for none.
    `outline` holds the entries that lead to this page, each a level from 0 and a title. `righting` moves and stretches
    what is drawn, for a printer that does the contrary; boxes and links stay where the page has them.
    """

    width: int
    height: int
    items: tuple[Drawn, ...]
    trim: tuple[int, int, int, int] | None = None
    bleed: tuple[int, int, int, int] | None = None
    label: str = ""
    outline: tuple[tuple[int, str], ...] = ()
    name: str = ""
    righting: Righting | None = None


@record
class PdfFacts:
    """What the file says of itself and asks of a print dialogue; `colour` False makes it black only.

    `duplex` is about which edge a sheet is turned, or that nothing is printed on its back; None asks for nothing.
    """

    title: str
    subject: str
    author: str
    duplex: Literal["long-edge", "short-edge", "one-sided"] | None
    scaling_none: bool
    language: str = "en"
    colour: bool = True


def write_pdf(
    pages: Iterable[PdfPage],
    facts: PdfFacts,
    to: BinaryIO,
    progress: Callable[[int], None] | None = None,
    pictures: Mapping[str, bytes] = NO_PICTURES,
) -> None:
    """Write the pages to an open file, taking them one at a time.

    `progress` is told how many are done; `pictures` holds whole image files by the names that pages use.
    A ValueError, before anything is written, names a character that no font has, a picture that was not
    handed over, a link to a name that no page has, a name given twice, or says that there are no pages.
    """
    document = _Document(facts, pictures)
    done = 0
    for done, page in enumerate(pages, start=1):
        document.add(page)
        if progress:
            progress(done)
    if not done:
        raise ValueError("a PDF needs a page")
    to.write(document.finished())


class _Information(pdfdoc.PDFInfo):  # type: ignore[misc]  # reportlab has no types
    """The information dictionary without dates: the clock is never read, and no date is made up."""

    def format(self, document: Any) -> bytes:
        entries = {"Title": self.title, "Author": self.author, "Subject": self.subject}
        entries |= {"Creator": "Dotleader", "Producer": self.producer}
        strings = {key: pdfdoc.PDFString(value) for key, value in entries.items() if value}
        formatted: bytes = pdfdoc.PDFDictionary(strings).format(document)
        return formatted


@lru_cache(maxsize=4)
def _font(face: Face) -> Any:
    """The font file of a face, read once. Text faces keep ASCII codes, so that their strings can be read."""
    path = Path(metrics.__file__).parents[1] / "fonts" / metrics.FILES[face]
    font = TTFont(f"Dotleader {face}", str(path), asciiReadable=face in ("regular", "bold"))
    pdfmetrics.registerFont(font)
    return font


class _Encoder:
    """Strings to string literals in the subset fonts of one document."""

    def __init__(self, document: Any) -> None:
        self._document = document
        self._known: dict[Font, dict[str, tuple[tuple[str, str], ...]]] = {font: {} for font in Font}

    def __call__(self, string: str, font: Font) -> tuple[tuple[str, str], ...]:
        known = self._known[font]
        if (parts := known.get(string)) is None:
            if len(known) > 1 << 14:
                known.clear()
            parts = known[string] = tuple(self._parts(string, font))
        return parts

    def _parts(self, string: str, font: Font) -> Iterable[tuple[str, str]]:
        for face, run in metrics.runs(string, font):
            embedded = _font(face)
            for subset, codes in embedded.splitString(run, self._document):
                yield embedded.getSubsetInternalName(subset, self._document), _literal(codes)


_ESCAPES = {code: f"\\{code:03o}" for code in (*range(0x20), *b"()\\", *range(0x7F, 0x100))}


def _literal(codes: bytes) -> str:
    """A PDF string, in octal where a byte is not plain ASCII: a bare line end may be read as another one."""
    return f"({codes.decode('latin-1').translate(_ESCAPES)})"


class _Document:
    """A PDF being put together: one page after another, then the whole."""

    def __init__(self, facts: PdfFacts, pictures: Mapping[str, bytes]) -> None:
        initial = _font("regular").fontName  # otherwise every page would list a font that is not embedded
        self._canvas = Canvas(
            BytesIO(),
            invariant=1,
            pdfVersion=(1, 7),
            pageCompression=1,
            initialFontName=initial,
            lang=facts.language,
        )
        self._document = self._canvas._doc
        self._document.info = _Information()
        self._document.signature = self._digest = hashlib.blake2b(digest_size=16)
        self._canvas.setTitle(facts.title)
        self._canvas.setSubject(facts.subject)
        self._canvas.setAuthor(facts.author)
        self._document.Catalog.ViewerPreferences = _preferences(facts)
        self._pen = Pen(_Encoder(self._document), facts.colour)
        self._pictures = pictures
        self._read: dict[str, Any] = {}
        self._labels: list[str] = []
        self._names: dict[str, Any] = {}
        self._wanted: dict[str, int] = {}
        self._entries = 0

    def add(self, page: PdfPage) -> None:
        canvas = self._canvas
        canvas.setPageSize((points(page.width), points(page.height)))
        canvas.setTrimBox(_box(page.trim, page.height))
        canvas.setBleedBox(_box(page.bleed, page.height))
        self._labels.append(page.label)
        if page.name:
            if page.name in self._names:
                raise ValueError(f"two pages have the name {page.name!r}")
            self._names[page.name] = canvas.bookmarkPage(f"face {page.name}")
        for level, title in page.outline:
            self._entries += 1
            canvas.bookmarkPage(f"entry {self._entries}")
            canvas.addOutlineEntry(title, f"entry {self._entries}", level)
        if page.righting is not None:
            canvas.addLiteral(_righted(page.righting, page.height))
        self._draw(self._pen.page(page.items, page.height))
        canvas.showPage()
        self._press(self._document.Pages.pages[-1])

    def _draw(self, content: Content) -> None:
        for part in content.parts:
            if isinstance(part, Placed):
                self._picture(part)
            else:
                self._canvas.addLiteral(part)
        for area in content.areas:
            self._wanted.setdefault(area.label, len(self._labels))
            box = (area.left, area.bottom, area.right, area.top)
            self._canvas.linkAbsolute(area.label, f"face {area.label}", box)

    def _picture(self, placed: Placed) -> None:
        if placed.name not in self._pictures:
            raise ValueError(f"no picture was handed over under the name {placed.name!r}")
        if placed.name not in self._read:
            self._read[placed.name] = ImageReader(BytesIO(self._pictures[placed.name]))
        self._canvas.saveState()
        self._canvas.transform(*placed.matrix)
        self._canvas.drawImage(self._read[placed.name], 0, 0, 1, 1, mask="auto")
        self._canvas.restoreState()

    def _press(self, page: Any) -> None:
        """Compress a page when it is done: reportlab keeps its text to the end and writes it in ASCII 85."""
        operators = page.stream.encode("ascii")
        self._digest.update(operators)
        stream = pdfdoc.PDFStream(content=zlib.compress(operators))
        stream.dictionary["Filter"] = pdfdoc.PDFName("FlateDecode")
        page.stream, page.Contents = None, stream

    def finished(self) -> bytes:
        for label, page in self._wanted.items():
            if label not in self._names:
                raise ValueError(f"page {page} has a link to {label!r}, which no page is named")
        if self._names:
            ordered = sorted(self._names.items(), key=lambda item: item[0].encode("utf-16-be"))
            pairs = [part for name, to in ordered for part in (pdfdoc.PDFString(name), to)]
            tree = pdfdoc.PDFDictionary({"Names": pdfdoc.PDFArray(pairs)})
            self._document.Catalog.Names = pdfdoc.PDFDictionary({"Dests": tree})
        if any(self._labels):
            for number, label in enumerate(self._labels):
                self._canvas.addPageLabel(number, prefix=label)
        if self._entries:
            self._canvas.showOutline()
        data: bytes = self._canvas.getpdfdata()
        return data


def _righted(righting: Righting, height: int) -> str:
    """The operator that changes all coordinates that follow (ISO 32000-1, 8.4.4), in points, y up."""
    up = height * (1 - righting.along) - righting.down
    shift = f"{points(righting.right):.6f} {points(up):.6f}"
    return f"{righting.across:.8f} 0 0 {righting.along:.8f} {shift} cm"


def _box(box: tuple[int, int, int, int] | None, height: int) -> tuple[float, float, float, float] | None:
    """A box of the page as left, bottom, right, top in points, y up."""
    if box is None:
        return None
    x, y, w, h = box
    return points(x), points(height - y - h), points(x + w), points(height - y)


_DUPLEX = {"long-edge": "/DuplexFlipLongEdge", "short-edge": "/DuplexFlipShortEdge", "one-sided": "/Simplex"}


def _preferences(facts: PdfFacts) -> Any:
    """What is asked of a viewer (ISO 32000-1, table 150; `Enforce` is of 32000-2). Many do not listen."""
    asked = {"DisplayDocTitle": "true"}
    if facts.duplex:
        asked["Duplex"] = _DUPLEX[facts.duplex]
    if facts.scaling_none:
        asked |= {"PrintScaling": "/None", "Enforce": "[/PrintScaling]", "PickTrayByPDFSize": "true"}
    return pdfdoc.PDFDictionary(asked)
