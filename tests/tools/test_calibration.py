"""From a printer that is out of register to leaves that are not: printed, read by eye, kept, printed again.

The printer is simulated on what is read back from the PDF: the ink of every back is stretched about the middle of the
paper, turned a little, and shifted, then seen through the paper, (x, y) at (W - x, y). The eye is simulated, too: it
looks for the line of the front that a line of the back goes on in, and reads the figures that are printed there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from tests.tools.running import run, write

MM = 72 / 25.4
HANDBOOK = """\
handbook Ostrel Two flight handbook
  registration .... N0STL

stock
  leaf .... 148 x 210 mm
  holes .... 2, 80 mm apart, 6 mm wide, 12 mm from edge
  paper .... {paper}

normal Taxi
  Brakes .... CHECK, HOLD
"""
SMALL = HANDBOOK.replace("148 x 210", "100 x 140")

Line = tuple[float, float, float, float]
"""Left, top, right, bottom in millimetres, y down."""


@dataclass(frozen=True)
class Machine:
    """What a printer does to backs, as seen from the front: millimetres, parts of one, radians."""

    right: float = 0.0
    down: float = 0.0
    wider: float = 0.0
    longer: float = 0.0
    askew: float = 0.0

    def lands(self, x: float, y: float, width: float, height: float) -> tuple[float, float]:
        """Where a point of the back's page is seen from the front."""
        x, y = (width / 2 - x) * (1 + self.wider), (y - height / 2) * (1 + self.longer)
        cos, sin = math.cos(self.askew), math.sin(self.askew)
        return width / 2 + x * cos - y * sin + self.right, height / 2 + x * sin + y * cos + self.down

    def lines(self, page: Any, edge: str = "long-edge") -> list[Line]:
        """The paper goes the same way for both edges; for the short one the picture is turned by 180 degrees."""
        size = width, height = page.width / MM, page.height / MM
        drawn = lines(page)
        if edge == "short-edge":
            drawn = [(width - x, height - y, width - p, height - q) for x, y, p, q in drawn]
        ends = [(self.lands(x, y, *size), self.lands(p, q, *size)) for x, y, p, q in drawn]
        return [(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])) for a, b in ends]


def lines(page: Any) -> list[Line]:
    """`Any` at the border to pdfplumber."""
    return [(line["x0"] / MM, line["top"] / MM, line["x1"] / MM, line["bottom"] / MM) for line in page.lines]


@dataclass(frozen=True)
class Seen:
    """The calibration sheet held against the light: lines of both sides, words of the front."""

    width: float
    height: float
    front: list[Line]
    back: list[Line]
    words: list[tuple[str, float, float]]


def held_up(path: Path, machine: Machine) -> Seen:
    with pdfplumber.open(path) as pdf:
        front, back = pdf.pages
        words = [
            (w["text"], (w["x0"] + w["x1"]) / 2 / MM, (w["top"] + w["bottom"]) / 2 / MM)
            for w in front.extract_words(x_tolerance=1)
        ]
        return Seen(front.width / MM, front.height / MM, lines(front), machine.lines(back), words)


def middle(seen: Seen, down: bool) -> float:
    """What the thick cross shows in the middle: where its long line crosses the millimetres, to half of one."""
    along = 1 if down else 0
    crossing = [
        line
        for line in seen.back
        if abs((line[2] - line[0] if down else line[3] - line[1]) - 20) < 0.5
        and math.dist(((line[0] + line[2]) / 2, (line[1] + line[3]) / 2), (seen.width / 2, seen.height / 2)) < 10
    ]
    (line,) = crossing
    off = (line[along] + line[along + 2]) / 2 - (seen.height if down else seen.width) / 2
    return round(2 * off) / 2


def zero(seen: Seen, side: list[Line], centre: float, down: bool) -> float:
    """Where the longest line of a side stands near the middle of a scale."""
    along, across = (1, 0) if down else (0, 1)
    near = [
        (line[across + 2] - line[across], line[along])
        for line in side
        if abs(line[along] - centre) < 8
        and abs((line[across] + line[across + 2] - (seen.width if down else seen.height)) / 2) < 8
        and line[along + 2] - line[along] < 0.1
    ]
    return max(near)[1]


def reading(seen: Seen, letter: str) -> float:
    """A scale read by eye: near where the line with a wedge stands, the line that goes on in one of the other side."""
    down = letter in "CD"
    ((x, y),) = [(x, y) for text, x, y in seen.words if text == letter and _is_letter(seen, x, y)]
    along, across = (1, 0) if down else (0, 1)
    centre = (x, y)[along]
    axis = (seen.width if down else seen.height) / 2

    def of(side: list[Line], front: bool) -> list[float]:
        """Places along the arm, of lines that stand across it on that side."""
        found = []
        for line in side:
            long = line[across + 2] - line[across]
            place = (line[along] + line[along + 2]) / 2
            meets = abs(line[across + 2] - axis) < 0.1 if front else line[across] < axis < line[across + 2]
            if 5.5 < long < 12 and meets and abs(place - centre) < 45 and line[along + 2] - line[along] < 0.1:
                found.append(place)
        return sorted(found)

    figures = {}
    for text, at_x, at_y in seen.words:
        at, off = ((at_x, at_y)[along] - centre, (at_x, at_y)[across] - axis)
        if -14 < off < -7 and abs(at) < 45 and text.lstrip("−").replace(".", "").isdigit():
            figures[round(at + centre)] = float(text.replace("−", "-"))
    fronts, backs = of(seen.front, front=True), of(seen.back, front=False)
    values = [_value(place, figures) for place in fronts]
    shown = round(2 * (zero(seen, seen.back, centre, down) - zero(seen, seen.front, centre, down))) / 2
    best = min(
        (min(abs(place - back) for back in backs), abs(value), value)
        for place, value in zip(fronts, values, strict=True)
        if abs(value - shown) < 0.95
    )
    return best[2]


def _is_letter(seen: Seen, x: float, y: float) -> bool:
    """Whether it names a scale: those stand near the middle lines of the sheet, fields to write into do not."""
    return abs(x - seen.width / 2) < 25 or abs(y - seen.height / 2) < 25


def _value(place: float, figures: dict[int, float]) -> float:
    """The figure of a line: its own, or counted from the two nearest that have one."""
    near = sorted(figures, key=lambda at: abs(at - place))[:2]
    (a, b) = sorted(near)
    return round(figures[a] + (figures[b] - figures[a]) * (place - a) / (b - a), 1)


def out_of_register(path: Path, machine: Machine, edge: str = "long-edge") -> list[float]:
    """For each crop mark and cross of a hole, how far its back lands from its front, in millimetres."""
    off = []
    with pdfplumber.open(path) as pdf:
        for front, back in zip(pdf.pages[::2], pdf.pages[1::2], strict=True):
            marks, behind = [_marks(side) for side in (lines(front), machine.lines(back, edge))]
            assert len(marks) == len(behind)
            for mark in marks:
                off.append(min(max(math.dist(mark[:2], b[:2]), math.dist(mark[2:], b[2:])) for b in behind))
    assert len(off) >= 8  # the crosses of two holes on each of two leaves; a setting-up sheet has none
    return off


def _marks(side: list[Line]) -> list[Line]:
    """Crop marks are 5 mm long, the crosses of holes 3.6 mm."""
    long = [(line, math.dist(line[:2], line[2:])) for line in side]
    return [line for line, length in long if any(abs(length - wanted) < 0.06 for wanted in (5, 3.6))]


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path


def keep(capsys: pytest.CaptureFixture[str], seen: Seen, paper: str, *more: str) -> None:
    a, b, c, d = (str(reading(seen, letter)) for letter in "ABCD")
    ran = run(capsys, "printer", "set", "Desk", "--right", a, b, "--down", c, d, "--paper", paper, *more)
    assert (ran.code, ran.err) == (0, "")


@pytest.mark.parametrize(
    ("machine", "paper"),
    [
        (Machine(), "A4"),
        (Machine(0.8, -0.3), "A4"),
        (Machine(-1.74, 1.63, -0.002, 0.0015), "Letter"),
        (Machine(0.43, 0.88, 0.008, -0.006), "A4"),
        (Machine(-0.55, -1.2, 0.001, 0.001, askew=0.0008), "A4"),
    ],
)
def test_what_is_read_puts_backs_where_they_belong(
    here: Path, capsys: pytest.CaptureFixture[str], machine: Machine, paper: str
) -> None:
    assert run(capsys, "print", "--calibration", "--paper", paper).code == 0
    keep(capsys, held_up(here / "calibration.pdf", machine), paper)
    for name, handbook in (("book", HANDBOOK), ("small", SMALL)):
        write(here, **{name: handbook.format(paper=paper)})
        assert run(capsys, "print", f"{name}.cards", "--to", "before").code == 0
        assert run(capsys, "print", f"{name}.cards", "--to", "after", "--printer", "desk").code == 0
        before = max(out_of_register(here / "before" / "sheets.pdf", machine))
        after = max(out_of_register(here / "after" / "sheets.pdf", machine))
        askew = machine.askew * 180  # millimetres at the corner of the paper, which nothing here rights
        assert after < 0.15 + askew
        assert before == pytest.approx(0, abs=0.01) if machine == Machine() else before > 3 * (after - askew)


def test_what_was_read_puts_backs_turned_on_the_short_edge_where_they_belong(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    machine = Machine(0.8, -0.6, 0.002, -0.001)
    run(capsys, "print", "--calibration")
    keep(capsys, held_up(here / "calibration.pdf", machine), "A4")
    for name, handbook in (("book", HANDBOOK), ("small", SMALL)):
        write(here, **{name: handbook.format(paper="A4")})
        turned = ("print", f"{name}.cards", "--turn", "short-edge")
        assert run(capsys, *turned, "--to", "before").code == 0
        ran = run(capsys, *turned, "--to", "after", "--printer", "desk", "--one-sided")
        assert "measured on a sheet turned on the long edge" in ran.out
        assert max(out_of_register(here / "after" / "sheets.pdf", machine, "short-edge")) < 0.15
        assert max(out_of_register(here / "before" / "sheets.pdf", machine, "short-edge")) > 0.6
        with (
            pdfplumber.open(here / "after" / "sheets.pdf") as both,
            pdfplumber.open(here / "after" / "backs.pdf") as one,
        ):
            assert [lines(page) for page in one.pages] == [lines(page) for page in both.pages[1::2]]
        assert max(out_of_register(here / "before" / "sheets.pdf", Machine(), "short-edge")) < 0.01


def test_a_shift_beyond_the_scales_takes_two_sheets(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    machine = Machine(-4.3, 3.6, 0.003, -0.002)
    run(capsys, "print", "--calibration")
    seen = held_up(here / "calibration.pdf", machine)
    right, down = str(middle(seen, down=False)), str(middle(seen, down=True))
    assert (right, down) == ("-4.5", "3.5")
    assert run(capsys, "printer", "set", "Desk", "--right", right, "--down", down).code == 0
    ran = run(capsys, "print", "--calibration", "--printer", "Desk")
    assert "corrected for Desk (4.5 mm left, 3.5 mm down)" in ran.out
    keep(capsys, held_up(here / "calibration.pdf", machine), "A4", "--further")
    run(capsys, "print", "--calibration", "--printer", "Desk")
    last = held_up(here / "calibration.pdf", machine)
    assert {reading(last, letter) for letter in "ABCD"} <= {0.0, 0.1, -0.1}
    write(here, book=HANDBOOK.format(paper="A4"))
    run(capsys, "print", "book.cards", "--printer", "Desk")
    assert max(out_of_register(here / "printed" / "sheets.pdf", machine)) < 0.15


@pytest.mark.parametrize("paper", ["A3", "A4", "A5", "Letter", "Legal"])
def test_a_pin_reads_the_same(here: Path, capsys: pytest.CaptureFixture[str], paper: str) -> None:
    """The hole of a pin on the back: on its scale stands the figure of the shift, with the same sign."""
    machine = Machine(1.5, -2.0)
    run(capsys, "print", "--calibration", "--paper", paper)
    with pdfplumber.open(here / "calibration.pdf") as pdf:
        front, back = pdf.pages
        width, height = front.width / MM, front.height / MM
        rings = [
            ((c["x0"] + c["x1"]) / 2 / MM, (c["top"] + c["bottom"]) / 2 / MM)
            for c in front.curves
            if 2.5 < (c["x1"] - c["x0"]) / MM < 3.5
        ]
        figures = [
            (w["text"].replace("−", "-"), machine.lands((w["x0"] + w["x1"]) / 2 / MM, w["top"] / MM + 1, width, height))
            for w in back.extract_words(x_tolerance=1)
        ]
    assert len(rings) == 4
    for x, y in rings:
        down = abs(x - width / 2) > 14 and abs(x - width / 2) < 16
        near = {float(t): at for t, at in figures if t in ("-5", "0", "5") and math.dist(at, (x, y)) < 13}
        assert len(near) == 3
        at = {value: place[1 if down else 0] for value, place in near.items()}
        hole = y if down else x
        read = -5 + 10 * (hole - at[-5.0]) / (at[5.0] - at[-5.0])
        assert read == pytest.approx(machine.down if down else machine.right, abs=0.3)
