"""PDF files read back: bytes, boxes, fonts, links, labels, what is asked of a viewer (ISO 32000-1)."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest

from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf
from dotleader.page.drawn import Box, Group, Ink, Link, Picture, Text, mm
from dotleader.page.sheet.alignment import Righting
from dotleader.source.record import replace
from tests.output.reading import (
    EVERYTHING,
    HEIGHT,
    PLAIN,
    POINT,
    WIDTH,
    by_pdfium,
    by_plumber,
    by_pypdf,
    written,
)

PAGE = PdfPage(WIDTH, HEIGHT, EVERYTHING, label="3-12", name="3-12")
IPP_SIDES = ("one-sided", "two-sided-long-edge", "two-sided-short-edge")
PRINTED = PdfFacts("Ostrel Two", "Sheets", "A builder", "long-edge", scaling_none=True)


def test_equal_pages_give_equal_bytes_in_every_process() -> None:
    code = (
        "import hashlib; from tests.output.test_pdf import PAGE; from tests.output.reading import written;"
        "print(hashlib.sha256(written([PAGE])).hexdigest())"
    )
    found = {hashlib.sha256(written([PAGE])).hexdigest() for _ in range(2)}
    for hashing, epoch in (("1", "0"), ("4242", "1700000000")):
        surroundings = os.environ | {"PYTHONHASHSEED": hashing, "SOURCE_DATE_EPOCH": epoch}
        ran = subprocess.run([sys.executable, "-c", code], env=surroundings, capture_output=True, text=True, check=True)
        found.add(ran.stdout.strip())
    assert len(found) == 1


def test_the_identifier_is_that_of_what_is_shown() -> None:
    def identifier(*pages: PdfPage, facts: PdfFacts = PLAIN) -> Any:
        return by_pypdf(written(pages, facts)).trailer["/ID"][0]

    one = identifier(PAGE)
    assert identifier(PAGE, replace(PAGE, name="", items=())) != one
    assert identifier(replace(PAGE, items=EVERYTHING[1:])) != one
    assert identifier(PAGE, facts=replace(PLAIN, title="Another")) != one


def test_no_date_stands_in_the_file() -> None:
    data = written([PAGE], PRINTED)
    facts = by_pypdf(data).metadata
    assert facts is not None
    assert (facts.title, facts.subject, facts.author) == ("Ostrel Two", "Sheets", "A builder")
    assert facts.creation_date is None
    assert facts.modification_date is None
    assert b"D:20" not in data
    assert by_pypdf(written([PAGE], replace(PRINTED, language="fr"))).root_object["/Lang"] == "fr"


def test_boxes_are_where_they_were_asked_for() -> None:
    """ISO 32000-1, 14.11.2: media, trim and bleed box, read by three libraries, to 0.01 pt."""
    trim, bleed = (mm(20), mm(30), mm(146.05), mm(222.25)), (mm(17), mm(27), mm(152.05), mm(228.25))
    sheet = PdfPage(mm(210), mm(297), EVERYTHING, trim=trim, bleed=bleed)
    data = written([replace(sheet, name="3-12"), replace(PAGE, name="")])

    def expected(box: tuple[int, int, int, int], height: int) -> list[float]:
        x, y, w, h = box
        return [part * POINT for part in (x, height - y - h, x + w, height - y)]

    media = expected((0, 0, mm(210), mm(297)), mm(297))
    leaf = expected((0, 0, WIDTH, HEIGHT), HEIGHT)
    first, second = by_pypdf(data).pages
    assert [float(part) for part in first.mediabox] == pytest.approx(media, abs=0.01)
    assert [float(part) for part in first.trimbox] == pytest.approx(expected(trim, mm(297)), abs=0.01)
    assert [float(part) for part in first.bleedbox] == pytest.approx(expected(bleed, mm(297)), abs=0.01)
    assert [float(part) for part in second.mediabox] == pytest.approx(leaf, abs=0.01)
    assert "/TrimBox" not in second
    assert "/BleedBox" not in second
    one, two = by_pdfium(data)
    assert one.get_mediabox() == pytest.approx(media, abs=0.01)
    assert one.get_trimbox() == pytest.approx(expected(trim, mm(297)), abs=0.01)
    assert one.get_bleedbox() == pytest.approx(expected(bleed, mm(297)), abs=0.01)
    assert two.get_size() == pytest.approx(leaf[2:], abs=0.01)
    with by_plumber(data) as plumbed:
        assert plumbed.pages[0].trimbox is not None
        assert (plumbed.pages[0].width, plumbed.pages[0].height) == pytest.approx(media[2:], abs=0.01)


def test_every_font_is_embedded_and_maps_to_unicode() -> None:
    reader = by_pypdf(written([PAGE, PdfPage(WIDTH, HEIGHT, ())]))
    names = set()
    for sheet in reader.pages:
        for reference in sheet["/Resources"]["/Font"].values():
            font = reference.get_object()
            names.add(font["/BaseFont"].partition("+")[2])
            assert font["/FontDescriptor"]["/FontFile2"].get_object().get_data()
            assert "/ToUnicode" in font
    assert names == {"DotleaderText-Regular", "DotleaderText-Bold", "DotleaderSigns-Regular"}


@pytest.mark.parametrize(
    ("duplex", "name"),
    [
        ("one-sided", "/Simplex"),
        ("long-edge", "/DuplexFlipLongEdge"),
        ("short-edge", "/DuplexFlipShortEdge"),
        (None, None),
    ],
)
def test_what_is_asked_of_a_print_dialogue(duplex: Any, name: str | None) -> None:
    """ISO 32000-1, table 150. Ours are the words of IPP's `sides` without its `two-sided-` (RFC 8011, from memory)."""
    asked = by_pypdf(written([PAGE], replace(PRINTED, duplex=duplex))).root_object["/ViewerPreferences"]
    assert asked.get("/Duplex") == name
    assert duplex is None or f"two-sided-{duplex}".replace("two-sided-one-sided", "one-sided") in IPP_SIDES
    assert asked["/PrintScaling"] == "/None"
    assert asked["/PickTrayByPDFSize"]
    assert "/PrintScaling" not in by_pypdf(written([PAGE])).root_object["/ViewerPreferences"]


def test_links_lead_to_the_page_of_that_name() -> None:
    link = Link(mm(18), mm(20), mm(60), mm(7), "3A-1")
    turned = Group(mm(100), mm(150), (Link(0, 0, mm(20), mm(8), "3-12"),), turn=90)
    data = written([PdfPage(WIDTH, HEIGHT, (link, turned)), PAGE, PdfPage(WIDTH, HEIGHT, (), name="3A-1")])
    reader = by_pypdf(data)
    first = [annotation.get_object() for annotation in reader.pages[0]["/Annots"]]
    ends = [reader.get_page_number(entry["/Dest"][0].get_object()) for entry in first]
    assert ends == [2, 1]
    box = [mm(18), HEIGHT - mm(27), mm(78), HEIGHT - mm(20)]
    assert [float(part) for part in first[0]["/Rect"]] == pytest.approx([part * POINT for part in box], abs=0.01)
    # Turned counter-clockwise about its upper left corner, its width goes up and its height to the right.
    box = [mm(100), HEIGHT - mm(150), mm(108), HEIGHT - mm(130)]
    assert [float(part) for part in first[1]["/Rect"]] == pytest.approx([part * POINT for part in box], abs=0.01)
    named = {name: reader.get_destination_page_number(to) for name, to in reader.named_destinations.items()}
    assert named == {"3-12": 1, "3A-1": 2}


def test_labels_and_outline() -> None:
    pages = [
        replace(PAGE, label="3-11", name="", outline=((0, "Emergency"), (1, "Engine failure → flight"))),
        replace(PAGE, label="3-12", outline=((1, "Fire"),)),
        replace(PAGE, label="", name="", outline=((0, "Abnormal"),)),
    ]
    reader = by_pypdf(written(pages))
    assert reader.page_labels == ["3-11", "3-12", ""]
    shape = [[entry.title for entry in part] if isinstance(part, list) else part.title for part in reader.outline]
    assert shape == ["Emergency", ["Engine failure → flight", "Fire"], "Abnormal"]
    flat = [entry for part in reader.outline for entry in (part if isinstance(part, list) else [part])]
    assert [reader.get_destination_page_number(entry) for entry in flat] == [0, 0, 1, 2]
    assert "/PageLabels" not in by_pypdf(written([replace(PAGE, label="")])).root_object


@pytest.mark.parametrize(
    ("page", "words"),
    [
        (PdfPage(WIDTH, HEIGHT, (Text(0, 0, "Fuel 漢", 12_000),)), "U\\+6F22"),
        (PdfPage(WIDTH, HEIGHT, (Link(0, 0, 9, 9, "9-9"),)), "'9-9'"),
        (PdfPage(WIDTH, HEIGHT, (Picture(0, 0, 9, 9, "arc"),)), "'arc'"),
    ],
)
def test_what_cannot_be_written_is_named_and_nothing_is_written(page: PdfPage, words: str) -> None:
    to = BytesIO()
    with pytest.raises(ValueError, match=words):
        write_pdf([PAGE, page], PLAIN, to)
    assert to.getvalue() == b""


def test_no_pages_and_a_name_given_twice() -> None:
    with pytest.raises(ValueError, match="needs a page"):
        written([])
    with pytest.raises(ValueError, match="two pages have the name '3-12'"):
        written([PAGE, PAGE])


def test_progress_is_told_after_each_page() -> None:
    told: list[int] = []
    write_pdf([PAGE, replace(PAGE, name="")], PLAIN, BytesIO(), told.append)
    assert told == [1, 2]


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="what a process took is not told here")
def test_a_thousand_pages_stay_in_little_memory() -> None:
    # VmHWM is this process's own; the figure of `getrusage` is at least what its parent took before it started.
    code = (
        "import io; from dotleader.output.pdf import *; from dotleader.page.drawn import *\n"
        "def items(p):\n"
        " yield from (Text(27000, 9000 + 2500 * i, f'Item {p}.{i} to check', 12000) for i in range(80))\n"
        " yield from (Line(((0, 2500 * i), (9000, 2500 * i)), 212) for i in range(40))\n"
        "def page(p): return PdfPage(146050, 222250, tuple(items(p)))\n"
        "write_pdf(map(page, range(1000)), PdfFacts('t', '', '', None, True), io.BytesIO())\n"
        "print(next(line.split()[1] for line in open('/proc/self/status') if line.startswith('VmHWM')))"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert int(ran.stdout) < 200_000  # kilobytes: 500 leaves


def test_reportlab_is_loaded_by_one_module_only() -> None:
    code = "import sys, dotleader.output, dotleader.output.operators; print('reportlab' in sys.modules)"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "False"


def test_a_righted_page_is_drawn_elsewhere_in_the_same_boxes() -> None:
    """Read back by two libraries: x and y times a factor, then a shift, y down; boxes stay."""
    box = Box(mm(20), mm(30), mm(50), mm(60), fill=Ink.BLACK)
    trim = (mm(1), mm(1), WIDTH - mm(2), HEIGHT - mm(2))
    plain = PdfPage(WIDTH, HEIGHT, (box,), trim=trim)
    data = written([plain, replace(plain, righting=Righting(0.99, 1.01, 800.0, -300.0))])
    before, after = by_pypdf(data).pages
    assert (before.trimbox, before.mediabox) == (after.trimbox, after.mediabox)
    wanted = [mm(20) * 0.99 + 800, mm(30) * 1.01 - 300, mm(70) * 0.99 + 800, mm(90) * 1.01 - 300]
    (rect,) = by_plumber(data).pages[1].rects
    assert [rect[side] for side in ("x0", "top", "x1", "bottom")] == pytest.approx(
        [x * POINT for x in wanted], abs=2e-4
    )
    (drawn,) = by_pdfium(data)[1].get_objects()
    left, bottom, right, top = drawn.get_bounds()
    upside = [left, HEIGHT * POINT - top, right, HEIGHT * POINT - bottom]
    assert upside == pytest.approx([x * POINT for x in wanted], abs=2e-4)
