"""What is drawn, where, and in which ink: glyphs, dots, boxes and pictures read back from the PDF."""

from __future__ import annotations

import math
from io import BytesIO
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from dotleader.output.operators import MEMORY_RGB, Content, Pen
from dotleader.page.drawn import Box, Drawn, Font, Group, Ink, Line, Picture, Text, mm, pt
from dotleader.page.type import metrics, widths
from dotleader.source.record import replace
from tests.output.reading import (
    EVERYTHING,
    HEIGHT,
    PLAIN,
    POINT,
    by_pdfium,
    by_plumber,
    by_pypdf,
    darkness,
    page,
    shown,
    stretches,
    written,
)

HUNDREDTH = 0.01 * 1000 * POINT
"""A hundredth of a millimetre in points."""


def read(*items: Drawn, height: int = HEIGHT) -> Any:
    with by_plumber(written([page(*items, height=height)])) as plumbed:
        return plumbed.pages[0].objects


@pytest.mark.parametrize("font", Font)
@pytest.mark.parametrize(
    "string", ["82 KIAS", "110 11 1", "Flaps → ½ ⅓", "Κινητήρας 1", "(a\\b)", "To\u00a0do, VAT", "ž☐Ж→✓ 9"]
)
def test_each_glyph_stands_where_the_metrics_say(string: str, font: Font) -> None:
    glyphs = read(Text(mm(20), mm(30), string, 13_500, font))["char"]
    assert "".join(glyph["text"] for glyph in glyphs) == string.replace("\u00a0", " ")
    for i, glyph in enumerate(glyphs):
        left = (mm(20) + metrics.width(string[:i], font, 13_500)) * POINT
        right = (mm(20) + metrics.width(string[: i + 1], font, 13_500)) * POINT
        assert glyph["x0"] == pytest.approx(left, abs=HUNDREDTH)
        assert glyph["x1"] == pytest.approx(right, abs=HUNDREDTH)
        assert glyph["matrix"][5] == pytest.approx((HEIGHT - mm(30)) * POINT, abs=HUNDREDTH)
        assert glyph["size"] == pytest.approx(13.5)


def test_ink_of_digits_stands_in_their_cells() -> None:
    """Rendered by pdfium: in a column of numbers, each digit's ink stays within its own cell."""
    numbers = ["1111", "8080", "4711", "9365", "0024"]
    rows = (Text(0, mm(10 * (i + 1)), number, 36_000, Font.BOLD) for i, number in enumerate(numbers))
    inked = stretches(darkness(shown(written([page(*rows, width=mm(40), height=mm(60))]), 20)))
    cell = metrics.width("0", Font.BOLD, 36_000) / 1000
    assert len(inked) == 4
    for i, columns in enumerate(inked):
        assert columns.start / 20 > i * cell
        assert columns.stop / 20 < (i + 1) * cell


@pytest.mark.parametrize("string", ["82 KIAS", "11 KIAS", "118.115 MHz", "1111 ft", "3-11", "At 10° → 20°, then ½"])
@pytest.mark.parametrize("size", [9_500, 20_000])
def test_text_comes_out_as_one_string(string: str, size: int) -> None:
    data = written([page(Text(mm(20), mm(30), string, size, Font.BOLD))])
    assert by_pdfium(data)[0].get_textpage().get_text_range() == string
    assert by_pypdf(data).pages[0].extract_text() == string
    with by_plumber(data) as plumbed:
        assert plumbed.pages[0].extract_text() == string


@pytest.mark.parametrize("font", Font)
def test_every_character_of_every_font_file_comes_out_as_itself(font: Font) -> None:
    every = widths.TEXT + widths.SIGNS
    lines = [every[i : i + 20] for i in range(0, len(every), 20)]
    glyphs = read(*(Text(mm(5), mm(4 * i + 4), line, 8_000, font) for i, line in enumerate(lines)))["char"]
    found = "".join(glyph["text"] for glyph in glyphs)
    assert found == every.replace("\u00a0", " ")


def test_dots_stand_on_their_grid() -> None:
    """Rendered by pdfium: dots 0.6 wide every 2 mm, the first on the first point, the last on the last."""
    line = Line(((mm(6), mm(5)), (mm(46), mm(5))), mm(0.6), dots=mm(2))
    across = 20
    image = shown(written([page(line, width=mm(60), height=mm(10))]), across)
    dark = darkness(image)
    dots = stretches(dark)
    centres = [sum(dark[x] * (x + 0.5) for x in dot) / sum(dark[x] for x in dot) / across for dot in dots]
    assert centres == pytest.approx([6 + 2 * i for i in range(21)], abs=0.02)
    assert max(map(len, dots)) <= 0.6 * across + 2
    (band,) = stretches(darkness(image, down=True))
    assert (band.start + band.stop) / 2 / across == pytest.approx(5, abs=0.05)


@pytest.mark.parametrize(("length", "dots"), [(0, 1), (1999, 1), (2000, 2), (3999, 2), (38_000, 20)])
def test_a_line_has_the_dots_that_it_has_room_for(length: int, dots: int) -> None:
    line = Line(((mm(6), mm(5)), (mm(6) + length, mm(5))), mm(0.6), dots=mm(2))
    assert len(stretches(darkness(shown(written([page(line, width=mm(60), height=mm(10))]), 20)))) == dots


def test_boxes_and_lines() -> None:
    drawn = read(
        Box(mm(18), mm(34), mm(114), mm(28), fill=Ink.MEMORY, stroke=pt(2.2)),
        Box(mm(40), mm(80), mm(8), mm(8), stroke=pt(1), radius=mm(4)),
        Line(((mm(18), mm(16)), (mm(132), mm(16))), pt(0.6)),
        Line(((mm(70), mm(160)), (mm(80), mm(164)), (mm(70), mm(168))), 0, closed=True, fill=Ink.BLACK),
        Line(((0, 0), (mm(9), 0)), 0),
        Box(0, 0, mm(9), mm(9)),
    )
    (rectangle,) = drawn["rect"]
    edges = [rectangle[side] for side in ("x0", "top", "x1", "bottom")]
    assert edges == pytest.approx([part * POINT for part in (mm(18), mm(34), mm(132), mm(62))], abs=0.01)
    assert rectangle["linewidth"] == pytest.approx(2.2, abs=0.01)
    assert rectangle["non_stroking_color"] == pytest.approx([part / 255 for part in MEMORY_RGB], abs=0.002)
    (rule,) = drawn["line"]
    assert [rule[side] for side in ("x0", "top", "x1")] == pytest.approx(
        [part * POINT for part in (mm(18), mm(16), mm(132))], abs=0.01
    )
    assert rule["linewidth"] == pytest.approx(0.6, abs=0.01)
    circle, arrow = drawn["curve"]
    assert [circle[side] for side in ("x0", "top", "x1", "bottom")] == pytest.approx(
        [part * POINT for part in (mm(40), mm(80), mm(48), mm(88))], abs=0.01
    )
    assert circle["stroke"]
    assert not circle["fill"]
    assert arrow["fill"]
    assert not arrow["stroke"]


def test_a_circle_is_round() -> None:
    disc = Box(mm(5), mm(5), mm(20), mm(20), fill=Ink.BLACK, radius=mm(10))
    image = shown(written([page(disc, width=mm(30), height=mm(30))]), 20)
    area = sum(darkness(image)) / 255 * image.height / 20**2
    assert area == pytest.approx(math.pi * 10**2, rel=0.002)
    for angle in range(0, 360, 15):
        x, y = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        assert image.getpixel((round(300 + 198 * x), round(300 + 198 * y))) == 0
        assert image.getpixel((round(300 + 202.5 * x), round(300 + 202.5 * y))) == 255


def test_only_the_memory_ground_has_a_colour() -> None:
    def colours(colour: bool) -> set[tuple[float, ...]]:
        image = by_pdfium(written([page(*EVERYTHING[:6])], replace(PLAIN, colour=colour)))[0].render().to_pil()
        return {rgb for _, rgb in image.convert("RGB").getcolors(1 << 16) or () if len(set(rgb)) > 1}

    assert MEMORY_RGB in colours(True)
    assert not colours(False)


def test_the_memory_ground_hardly_lowers_contrast() -> None:
    """Contrast by the relative luminance of WCAG 2.2 (W3C Recommendation)."""
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in (c / 255 for c in MEMORY_RGB)
    )
    assert (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05) / 0.05 > 15


def test_hollow_letters_are_hollow_and_those_after_them_are_not() -> None:
    hollow = Text(mm(5), mm(60), "I", 120_000, Font.BOLD, hollow=pt(1))
    solid = replace(hollow, x=mm(45), hollow=0)
    image = shown(written([page(hollow, solid, width=mm(80), height=mm(80))]), 10)
    first, second = (sum(darkness(image.crop((x, 0, x + 400, 800)))) for x in (0, 400))
    assert 0 < first < second / 4


MARK = Image.new("RGB", (2, 2), "white")
MARK.putpixel((0, 0), (0, 0, 255))


@pytest.mark.parametrize(("turn", "corner"), [(0, (0, 0)), (90, (0, 1)), (180, (1, 1)), (270, (1, 0))])
def test_a_picture_turns_with_its_group(turn: int, corner: tuple[int, int]) -> None:
    kept = BytesIO()
    MARK.save(kept, "PNG")
    placed = {0: (mm(10), mm(10)), 90: (mm(10), mm(30)), 180: (mm(30), mm(30)), 270: (mm(30), mm(10))}
    group = Group(*placed[turn], (Picture(0, 0, mm(20), mm(20), "mark"),), turn=turn)
    data = written([page(group, width=mm(40), height=mm(40))], pictures={"mark": kept.getvalue()})
    image = by_pdfium(data)[0].render(scale=72 / 25.4).to_pil().convert("RGB")
    blue = {
        (i, j)
        for i in (0, 1)
        for j in (0, 1)
        if image.getpixel((round((13 + 14 * i) * 8), round((13 + 14 * j) * 8))) == (0, 0, 255)
    }
    assert blue == {corner}


TURNS = st.sampled_from([0, 90, 180, 270])
PLACES = st.tuples(st.integers(-50_000, 50_000), st.integers(-50_000, 50_000), TURNS)


@given(st.lists(PLACES, max_size=4), st.tuples(st.integers(0, 50_000), st.integers(0, 50_000)), TURNS)
def test_nested_groups_end_where_turning_says(
    places: list[tuple[int, int, int]], point: tuple[int, int], turn: int
) -> None:
    """Checked by complex numbers: a turn by 90 degrees is a product with i, y up."""
    item: Drawn = Text(*point, "x", 10_000, turn=turn)
    end, direction = complex(point[0], -point[1]), 1j ** (turn // 90)
    for x, y, angle in reversed(places):
        item = Group(x, y, (item,), turn=angle)
        end, direction = complex(x, -y) + end * 1j ** (angle // 90), direction * 1j ** (angle // 90)
    pen = Pen(lambda string, font: (("/F", f"({string})"),), colour=True)
    (operators,) = pen.page([item], HEIGHT).parts
    assert isinstance(operators, str)
    *_, a, b, c, d, e, f, _, _, _ = operators.split()
    assert complex(float(a), float(b)) == direction
    assert complex(float(c), float(d)) == direction * 1j
    expected = (end + complex(0, HEIGHT)) * POINT
    assert float(e) == pytest.approx(expected.real, abs=0.0006)
    assert float(f) == pytest.approx(expected.imag, abs=0.0006)


INKS = st.sampled_from(list(Ink))
LENGTHS = st.integers(0, 200_000)
ITEMS = st.one_of(
    st.builds(Text, LENGTHS, LENGTHS, st.text("aZ9 (\\→"), st.integers(500, 120_000), ink=INKS, hollow=LENGTHS),
    st.builds(
        Line,
        st.lists(st.tuples(LENGTHS, LENGTHS), max_size=4).map(tuple),
        LENGTHS,
        closed=st.booleans(),
        fill=INKS,
        ink=INKS,
        dots=st.integers(0, 5000),
    ),
    st.builds(Box, LENGTHS, LENGTHS, LENGTHS, LENGTHS, fill=INKS, stroke=LENGTHS, radius=LENGTHS),
)


@settings(max_examples=40, deadline=None)
@given(st.lists(ITEMS, max_size=8), st.integers(0, 359))
def test_whatever_is_drawn_can_be_read(items: list[Drawn], turn: int) -> None:
    data = written([page(Group(mm(30), mm(30), tuple(items), turn=turn))])
    assert len(by_pdfium(data)) == 1
    text = by_pypdf(data).pages[0].get_contents()
    if text is not None:
        assert b"nan" not in text.get_data()
        assert b"e-" not in text.get_data()  # PDF has no exponents (ISO 32000-1, 7.3.3)
    with by_plumber(data) as plumbed:
        glyphs = plumbed.pages[0].chars
    shown = [item for item in items if isinstance(item, Text) and item.ink is not Ink.NONE]
    assert "".join(glyph["text"] for glyph in glyphs) == "".join(item.string for item in shown)


def test_nothing_drawn_is_no_content() -> None:
    pen = Pen(lambda string, font: (), colour=True)
    nothing = (Text(0, 0, "", 12_000), Text(0, 0, "a", 12_000, ink=Ink.NONE), Line((), 5), Box(0, 0, 5, 5))
    assert pen.page(nothing, HEIGHT) == Content()
