"""From a printer that is out of register to leaves that are not: printed, read by eye, kept, printed again."""

from __future__ import annotations

import math
from pathlib import Path

import pdfplumber
import pytest

from dotleader.page.sheet.duplex import TURNINGS, Turning
from tests.tools.out_of_register import MM, Machine, Seen, held_up, lines, middle, out_of_register, reading
from tests.tools.running import run, write

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


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path


def keep(capsys: pytest.CaptureFixture[str], seen: Seen, paper: str, *more: str) -> None:
    a, b, c, d = (str(reading(seen, letter)) for letter in "ABCD")
    ran = run(capsys, "printer", "set", "Desk", "--right", a, b, "--down", c, d, "--paper", paper, *more)
    assert (ran.code, ran.err) == (0, "")


def residual(here: Path, handbook: str, machine: Machine, turning: str) -> float:
    """The most by which a back is still out when it is printed for the printer that was read, in millimetres."""
    return max(out_of_register(here / handbook / "sheets.pdf", machine, turning))


@pytest.mark.parametrize("turning", TURNINGS)
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
    here: Path, capsys: pytest.CaptureFixture[str], machine: Machine, paper: str, turning: Turning
) -> None:
    assert run(capsys, "print", "--calibration", "--paper", paper, "--turn", turning).code == 0
    keep(capsys, held_up(here / "calibration.pdf", machine, turning), paper, "--turn", turning)
    for name, handbook in (("book", HANDBOOK), ("small", SMALL)):
        write(here, **{name: handbook.format(paper=paper)})
        assert run(capsys, "print", f"{name}.cards", "--to", "before", "--turn", turning).code == 0
        ran = run(capsys, "print", f"{name}.cards", "--to", "after", "--printer", "desk", "--turn", turning)
        assert ran.code == 0
        assert "look at one sheet against the light" not in ran.out
        before, after = (residual(here, folder, machine, turning) for folder in ("before", "after"))
        askew = machine.askew * 180  # millimetres at the corner of the paper, which nothing here rights
        assert after < 0.15 + askew
        assert before == pytest.approx(0, abs=0.01) if machine == Machine() else before > 3 * (after - askew)


@pytest.mark.parametrize(("measured", "turned"), [TURNINGS, TURNINGS[::-1]])
def test_what_was_read_with_one_turning_rights_the_other_where_the_paper_goes_the_same_way(
    here: Path, capsys: pytest.CaptureFixture[str], measured: Turning, turned: Turning
) -> None:
    machine = Machine(0.8, -0.6, 0.002, -0.001)
    run(capsys, "print", "--calibration", "--turn", measured)
    keep(capsys, held_up(here / "calibration.pdf", machine, measured), "A4", "--turn", measured)
    for name, handbook in (("book", HANDBOOK), ("small", SMALL)):
        write(here, **{name: handbook.format(paper="A4")})
        printing = ("print", f"{name}.cards", "--turn", turned)
        assert run(capsys, *printing, "--to", "before").code == 0
        ran = run(capsys, *printing, "--to", "after", "--printer", "desk", "--one-sided")
        assert f"measured on a sheet turned on the {measured.replace('-', ' ')}: look at one" in ran.out
        assert residual(here, "after", machine, turned) < 0.15
        assert residual(here, "before", machine, turned) > 0.6
        with (
            pdfplumber.open(here / "after" / "sheets.pdf") as both,
            pdfplumber.open(here / "after" / "backs.pdf") as one,
        ):
            assert [lines(page) for page in one.pages] == [lines(page) for page in both.pages[1::2]]
        assert residual(here, "before", Machine(), turned) < 0.01


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


@pytest.mark.parametrize("turning", TURNINGS)
@pytest.mark.parametrize("paper", ["A3", "A4", "A5", "Letter", "Legal"])
def test_a_pin_reads_the_same(here: Path, capsys: pytest.CaptureFixture[str], paper: str, turning: Turning) -> None:
    """The hole of a pin on the back: on its scale stands the figure of the shift, with the same sign."""
    machine = Machine(1.5, -2.0)
    run(capsys, "print", "--calibration", "--paper", paper, "--turn", turning)
    with pdfplumber.open(here / "calibration.pdf") as pdf:
        front, back = pdf.pages
        width, height = front.width / MM, front.height / MM
        rings = [
            ((c["x0"] + c["x1"]) / 2 / MM, (c["top"] + c["bottom"]) / 2 / MM)
            for c in front.curves
            if 2.5 < (c["x1"] - c["x0"]) / MM < 3.5
        ]
        figures = [
            (
                w["text"].replace("−", "-"),
                machine.lands((w["x0"] + w["x1"]) / 2 / MM, w["top"] / MM + 1, width, height, turning),
            )
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
