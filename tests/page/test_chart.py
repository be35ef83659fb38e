"""The chart of a flight and the hand's way over a panel: what stands where, by geometry."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from dotleader.cockpit.panel import places, way_of
from dotleader.cockpit.running import run
from dotleader.output.drawing_svg import drawing_svg
from dotleader.page.chart.chart import Drawing, chart
from dotleader.page.chart.panel_path import panel_path
from dotleader.page.chart.tracks import Tracks, tracks_of
from dotleader.page.drawn import Box, Ink, Line, Picture, Text, mm, pt
from dotleader.page.type.metrics import width
from tests.handbook.texts import resolved

BOOK = """\
equipment
  Master ..... OFF, ON
    parked ... OFF
    at ....... panel 10 mm, 10 mm
  Heat ....... OFF, ON
    parked ... OFF
    at ....... panel 60 mm, 10 mm
  Cock ....... OFF, LEFT, RIGHT
    parked ... OFF
    means .... EITHER TANK: LEFT or RIGHT
    at ....... floor 0 mm, 0 mm
  Canopy ..... SHUT, OPEN
    parked ... SHUT

normal Before start
  when seated
  Seats ...... FORWARD
  Master ..... ON
  Cock ....... EITHER TANK

normal Cruise
  when level
  Heat ....... ON then OFF
  Master ..... ON

normal Shutdown
  when parked
  Master ..... OFF
  Cock ....... OFF
"""


def _tracks() -> Tracks:
    handbook, _ = resolved(BOOK)
    done = run(handbook)
    return tracks_of(done, done.main)


def test_a_track_says_where_a_control_stands_and_items_without_controls_take_no_room() -> None:
    found = _tracks()
    assert [(column.title, column.start, column.end) for column in found.columns] == [
        ("Before start", 0, 2),
        ("Cruise", 2, 4),
        ("Shutdown", 4, 6),
    ]
    told = {
        track.control: [(part.start, part.end, "/".join(part.positions), part.parked) for part in track.stretches]
        for track in found.tracks
    }
    assert told["Master"] == [(0, 4, "ON", False), (4, 6, "OFF", True)]
    assert told["Cock"] == [(0, 1, "OFF", True), (1, 5, "LEFT/RIGHT", False), (5, 6, "OFF", True)]
    assert "Canopy" not in told  # it never moves


def _inside(drawing: Drawing) -> bool:
    for item in drawing.items:
        match item:
            case Box(x, y, w, h):
                corners = [(x, y), (x + w, y + h)]
            case Line(points):
                corners = list(points)
            case Text(x, y):
                corners = [(x, y)]
            case _:
                return False
        if any(not (0 <= x <= drawing.width and 0 <= y <= drawing.height) for x, y in corners):
            return False
    return True


def test_the_bars_of_the_chart_are_as_long_as_the_stretches() -> None:
    drawing = chart(_tracks(), "A book", "N0STL")
    assert _inside(drawing)
    bars = [item for item in drawing.items if isinstance(item, Box)]
    assert [bar.fill for bar in bars] == [Ink.BLACK, Ink.WHITE]  # sure; one of two
    sure, open_ = bars
    columns = sorted(
        {
            item.points[0][0]
            for item in drawing.items
            if isinstance(item, Line) and item.points[0][0] == item.points[1][0]
        }
    )
    assert sure.x == columns[0]  # from the first item of the first card
    assert abs(sure.x + sure.w - columns[2]) < 1000  # to the first item of the third
    assert columns[0] < open_.x < columns[1]
    words = {item.string for item in drawing.items if isinstance(item, Text)}
    assert {"A book", "Master", "Cock", "ON", "Cruise"} <= words
    assert any(word.startswith("LEFT / R") for word in words)


def test_the_hand_comes_to_its_stops_in_turn() -> None:
    handbook, _ = resolved(BOOK)
    known = places(handbook.controls)
    card = next(card for card in handbook.cards if card.title == "Cruise")
    drawing = panel_path(card.title, way_of(card, handbook.controls, known), handbook.controls, known)
    assert _inside(drawing)
    (leg,) = [item for item in drawing.items if isinstance(item, Line)]
    spots = [item for item in drawing.items if isinstance(item, Box) and item.fill is Ink.BLACK]
    centres = [(spot.x + spot.w // 2, spot.y + spot.h // 2) for spot in spots]
    assert [leg.points[0], leg.points[-1]] == centres
    assert centres[0][0] > centres[1][0]  # from the heater, at 60 mm, to the master switch, at 10 mm
    numbers = [item.string for item in drawing.items if isinstance(item, Text) and item.ink is Ink.WHITE]
    assert numbers == ["1", "2"]


def test_an_svg_of_a_drawing_is_in_millimetres_and_holds_all_of_it() -> None:
    drawing = chart(_tracks(), "A <book> & more", "N0STL")
    root = ElementTree.fromstring(drawing_svg(drawing.width, drawing.height, drawing.items))
    assert root.get("viewBox") == f"0 0 {float(root.get('width', '')[:-2]):g} {float(root.get('height', '')[:-2]):g}"
    texts = [node.text for node in root if node.tag.endswith("text")]
    assert texts == [item.string for item in drawing.items if isinstance(item, Text)]
    assert float(root.get("width", "")[:-2]) * 1000 == drawing.width


def test_a_drawing_has_no_pictures() -> None:
    with pytest.raises(ValueError, match="no pictures"):
        drawing_svg(10, 10, [Picture(0, 0, 1, 1, "x")])


def _texts(drawing: Drawing) -> list[str]:
    return [item.string for item in drawing.items if isinstance(item, Text)]


def test_what_is_written_beside_a_short_flight_stands_on_the_page() -> None:
    title = (
        "A handbook whose title is far longer than the flight of two cards that is drawn below it, and then some more"
    )
    drawing = chart(_tracks(), title, "where the controls stand, from card to card")
    for item in drawing.items:
        if isinstance(item, Text) and not item.turn:
            assert item.x + width(item.string, item.font, item.size) <= drawing.width


def test_a_control_of_which_nobody_knows_has_no_line_until_it_is_moved() -> None:
    handbook, _ = resolved(BOOK.replace("  Heat ....... OFF, ON\n    parked ... OFF\n", "  Heat ....... OFF, ON\n"))
    done = run(handbook)
    drawing = chart(tracks_of(done, done.main), "Book", "")
    rows = {item.string: item.y for item in drawing.items if isinstance(item, Text)}
    lines = [item for item in drawing.items if isinstance(item, Line)]
    beside = [line for line in lines if abs(line.points[0][1] - rows["Heat"]) < mm(2) and line.width == pt(0.25)]
    assert not beside


def test_controls_at_one_place_are_one_spot_with_all_their_names_and_numbers() -> None:
    handbook, _ = resolved(BOOK.replace("panel 60 mm", "panel 10 mm"))
    known = places(handbook.controls)
    card = handbook.by_key["cruise"]
    drawing = panel_path("Cruise", way_of(card, handbook.controls, known), handbook.controls, known, "drawn twice")
    assert "0 mm from stop to stop. Drawn twice." in _texts(drawing)
    assert [text for text in _texts(drawing) if text[:4] in ("Mast", "Heat", "1, 2")] == ["Master,", "Heat", "1, 2"]


def test_names_stay_within_their_panel_however_long_they_are() -> None:
    long = "Heat of the left one of the two pitot tubes and of all static ports"
    handbook, _ = resolved(BOOK.replace("Heat ", f"{long} ").replace("panel 60 mm", "panel 12 mm"))
    known = places(handbook.controls)
    drawing = panel_path("C", way_of(handbook.by_key["cruise"], handbook.controls, known), handbook.controls, known)
    (frame,) = (item for item in drawing.items if isinstance(item, Box) and item.radius == mm(3))
    named = [item for item in drawing.items if isinstance(item, Text) and item.turn]
    assert named
    assert all(item.y < frame.y + frame.h for item in named)
