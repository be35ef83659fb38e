"""`dotleader run --loads`, as it is seen and as programs read it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.tools.running import CLEAN, run, write

EXAMPLE = Path(__file__).parents[2] / "examples" / "ostrel-two" / "handbook.cards"


def told(capsys: pytest.CaptureFixture[str], *arguments: str | Path) -> list[str]:
    ran = run(capsys, "run", "--loads", *arguments)
    assert ran.code == 0
    return [" ".join(line.split()) for line in ran.out.splitlines()]


def test_the_example_shows_what_is_on_and_how_long_the_battery_lasts(capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(capsys, EXAMPLE)
    assert lines[0].startswith("The most that is on at once ...")
    assert lines[0].endswith("alternator 40 A, of which 80 % are 32 A")
    assert "approach 30.2 A 76 % + Fuel pump 4.5 A" in lines
    assert "landing 30.2 A 76 % the same" in lines
    assert "Only while it moves, and in no sum: Flaps 6 A, Pitch trim 0.6 A." in lines
    assert "in all 40 min 30 min are wanted" in lines
    assert "Transponder OFF 7.5 min" in lines
    assert "Fuel pump OFF 6.3 min" in lines


def test_numbers_and_their_units_stay_on_a_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert not any(line.startswith(("A ", "A,", "min")) for line in told(capsys, EXAMPLE))


def test_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(capsys, "run", "--loads", "--as", "json", EXAMPLE)
    found = json.loads(ran.out)
    assert (found["alternator_amperes"], found["battery_ampere_hours"]) == (40, 10)
    by_title = {card["title"]: card for card in found["cards"]}
    before = by_title["Before takeoff"]
    assert before["amperes"] == pytest.approx(30.2)
    assert before["amperes"] == pytest.approx(sum(before["on"].values()))
    assert not by_title["Cockpit inspection"]["alternator_feeds"]
    (failed,) = found["alternator_failed"]
    assert failed["card"] == "Alternator failure"
    assert failed["minutes"] == pytest.approx(40.99, abs=0.01)


def test_a_handbook_without_an_electrical_block_is_told_of_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(tmp_path, a=CLEAN)
    ran = run(capsys, "run", "--loads", tmp_path / "a.cards")
    assert ran.code == 2
    assert "`electrical` block" in ran.err


@pytest.mark.parametrize(
    ("block", "said"),
    [
        ("  alternator ... 40 A\n", "no `battery` is declared"),
        ("  battery ... 9 Ah\n", "no `alternator` is declared"),
        ("  alternator ... 40 A\n  battery ... 9 Ah\n", "say below `alternator` which card is for it"),
    ],
)
def test_what_is_missing_for_the_battery_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], block: str, said: str
) -> None:
    write(tmp_path, a=f"{CLEAN}\nelectrical from unverified\n{block}")
    assert said in " ".join(told(capsys, tmp_path / "a.cards"))


def test_a_load_that_is_in_no_sum_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(capsys, Path(__file__).parents[1] / "bad" / "electrical.cards")
    assert "In no sum, because it is not said when or how much: Flaps 6 A." in lines
