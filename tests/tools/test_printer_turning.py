"""About which edge a sheet was turned when a printer was measured: kept, shown, and held against what is printed."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest

from dotleader.tools.printing.printers import Damage, read
from tests.tools.running import in_one_line, run, write

BOOK = "handbook Ostrel Two flight handbook\n\nnormal Taxi\n  Brakes .... CHECK, HOLD\n"
OLD = """\
printer Workshop laser
  back moved ........... 0.8 mm right, 0.3 mm up
  measured on .......... A4
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("APPDATA", str(tmp_path / "config"))
    write(tmp_path, book=BOOK)
    return tmp_path


def asked(path: Path) -> str:
    found: str = pypdf.PdfReader(path).root_object["/ViewerPreferences"]["/Duplex"]
    return found


def test_a_printer_that_was_kept_before_that_was_asked_was_measured_on_the_long_edge() -> None:
    found = read(OLD)
    assert not isinstance(found, Damage)
    assert [printer.turning for printer in found] == ["long-edge"]
    found = read(OLD + "  turned on .... short edge\n")
    assert not isinstance(found, Damage)
    assert [printer.turning for printer in found] == ["short-edge"]


def test_the_edge_is_kept_with_the_readings(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "printer", "set", "Attic", "--right", "0.8", "--turn", "short-edge")
    assert "  turned on ............ short edge\n" in run(capsys, "printer", "show", "Attic").out
    run(capsys, "printer", "set", "Attic", "--right", "0.1", "--further")
    assert "  turned on ............ short edge\n" in run(capsys, "printer", "show", "Attic").out
    run(capsys, "printer", "set", "Attic", "--right", "0.1", "--turn", "long-edge")
    assert "  turned on ............ long edge\n" in run(capsys, "printer", "show", "Attic").out


@pytest.mark.parametrize("measured", ["long-edge", "short-edge"])
def test_a_print_turns_as_the_printer_was_measured_and_says_where_it_does_not(
    here: Path, capsys: pytest.CaptureFixture[str], measured: str
) -> None:
    run(capsys, "printer", "set", "Attic", "--right", "0.8", "--turn", measured, "--default")
    names = {"long-edge": "/DuplexFlipLongEdge", "short-edge": "/DuplexFlipShortEdge"}
    for turned in (None, *names):
        ran = run(capsys, "print", "book.cards", *(("--turn", turned) if turned else ()))
        assert ran.code == 0
        said = " ".join(ran.out.split())
        assert f"turned on the {(turned or measured).replace('-', ' ')}." in said
        warned = f"That was measured on a sheet turned on the {measured.replace('-', ' ')}: look at one sheet"
        assert (warned in said) is (turned not in (None, measured))
        assert asked(here / "printed" / "sheets.pdf") == names[turned or measured]
    run(capsys, "print", "book.cards", "--printer", "none")
    assert asked(here / "printed" / "sheets.pdf") == "/DuplexFlipLongEdge"


def test_the_calibration_sheet_is_for_either_edge(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(capsys, "print", "--calibration", "--turn", "short-edge")
    assert (ran.code, ran.err) == (0, "")
    assert "turned on the short edge." in in_one_line(ran)
    assert asked(here / "calibration.pdf") == "/DuplexFlipShortEdge"
    run(capsys, "printer", "set", "Attic", "--right", "0.8", "--turn", "short-edge")
    assert "turned on the short edge." in in_one_line(run(capsys, "print", "--calibration", "--printer", "Attic"))
    assert "turned on the long edge." in in_one_line(run(capsys, "print", "--calibration"))
