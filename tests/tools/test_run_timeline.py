"""`dotleader run`, as it is seen."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.tools.running import CLEAN, in_one_line, run, write

GOOD = Path(__file__).parents[1] / "good"


def test_where_nothing_is_declared_nothing_is_said_of_how_it_stands(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "run", GOOD / "one-page" / "pennant.cards").out
    assert "Ignition" in out
    assert "parked" not in out


def test_two_branches_that_lead_to_one_card_in_one_state_are_one_way_on(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "run", "--card", "Electrical fire", GOOD / "retractable" / "tessel.cards").out
    assert out.count("to Gear by hand") == 1


SWITCHES = "equipment\n  Pump .... OFF, ON\n    parked .... OFF\n    at .... panel 10 mm, 10 mm\n\n"
TAXI = "normal Taxi\n  when clear\n  Pump .... ON\n"


@pytest.mark.parametrize(
    ("options", "message"),
    [
        (("--coverage", "--loads"), "`--coverage` and `--loads` are two pages."),
        (("--coverage", "--card", "Taxi"), "`--coverage` is about all cards."),
        (("--coverage", "--to", "a.svg"), "`--coverage` is a table and not drawn."),
        (("--loads", "--from", "taxi"), "`--loads` is about a whole flight."),
        (("--loads", "--to", "a.svg"), "`--loads` is a table and not drawn."),
        (("--card", "Taxi", "--from", "taxi"), "`--card` names one card, `--from` many."),
        (("--to", "a.svg", "--as", "json"), "`--to` makes a drawing, and that is no JSON."),
        (("--from", "soon"), "`soon` is no phase of a flight."),
        (("--from", "cruise"), "No card was worked through from cruise on."),
        (("--card", "Tax"), "No card `Tax` was worked through."),
        (("--to", "a.png"), "`a.png` does not say what to draw."),
        (("--to", "none/a.svg"), "`none/a.svg` cannot be written: no such file or directory."),
    ],
)
def test_what_makes_no_sense_is_refused_in_a_sentence(
    options: tuple[str, ...],
    message: str,
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, a=SWITCHES + TAXI)
    done = run(capsys, "run", "a.cards", *options)
    assert (done.code, done.out) == (2, "")
    assert done.err.startswith(f"dotleader: {message}\n  ")
    assert not list(tmp_path.glob("*.svg"))


def test_a_run_of_a_handbook_with_errors_says_that_there_are_some(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, a=SWITCHES + TAXI + "  Pump .... OM\n")
    said = "There is 1 error in this handbook"
    for options in ((), ("--card", "Taxi"), ("--coverage",)):
        assert run(capsys, "run", "a.cards", *options).out.startswith(said)
    for options in ((), ("--coverage",)):
        assert json.loads(run(capsys, "run", "a.cards", "--as", "json", *options).out)["errors"] == 1
    for options in ((), ("--card", "Taxi")):
        assert said in run(capsys, "run", "a.cards", "--to", "a.svg", *options).out
        assert "in spite of 1 error" in (tmp_path / "a.svg").read_text()


def test_where_not_all_states_are_followed_every_run_says_so(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    many = "".join(f"  C{at} .... A, B\n    parked .... A\n" for at in range(14))
    items = "".join(f"  C{at} .... B if damp\n" for at in range(14))
    write(tmp_path, a=f"equipment\n{many}\nnormal Preflight\n  when cold\n{items}")
    for options in ((), ("--card", "Preflight"), ("--to", "a.svg")):
        assert "From a.cards:46 on there are more than 10,000 states" in in_one_line(
            run(capsys, "run", "a.cards", *options)
        )


def test_cards_without_a_flight_are_shown_themselves(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, a=f"{SWITCHES}emergency Fire\n  when it burns\n  Pump .... OFF\n  end\n")
    out = in_one_line(run(capsys, "run", "a.cards"))
    assert "Pump * anywhere → OFF" in out
    assert "begins nobody knows how anything stands" in out
    assert "No normal card belongs to a phase of a flight" in out


def test_what_only_others_move_is_on_no_card_and_says_by_what(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "run", "--coverage", GOOD / "aerobatic" / "kite.cards").out
    assert "moved by Mags, Start, Fuel, Mixture" in out
    assert "on no card" not in out


def test_a_line_that_no_state_comes_to_is_shown_as_such(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, a=f"{SWITCHES}{TAXI}  if Pump OFF\n    Heat .... ON\n  Brakes .... HOLD\n")
    assert "Pump * anywhere → ON Heat not come to in any state Brakes HOLD" in in_one_line(
        run(capsys, "run", "a.cards")
    )


def test_places_that_lead_to_the_same_place_are_named_together(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    cock = "equipment\n  Cock .... OFF, LEFT, RIGHT\n    parked .... OFF\n    means .... EITHER: LEFT or RIGHT\n\n"
    cards = "normal Engine start\n  when clear\n  Cock .... EITHER\n\nnormal Shutdown\n  when parked\n  Cock .... OFF\n"
    write(tmp_path, a=cock + cards)
    assert "Cock * LEFT or RIGHT → OFF" in in_one_line(run(capsys, "run", "a.cards"))


def test_what_cannot_be_is_marked_and_a_book_without_anything_declared_says_so(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    panel = SWITCHES + "  Master .... OFF, ON\n    parked .... OFF\n"
    write(
        tmp_path,
        a=panel.replace("    at", "    needs .... Master ON\n    at") + "\nnormal Before start\n  Pump .... ON\n",
    )
    assert "Pump * Pump: OFF → ON ! Pump: ON needs Master ON, which is not so" in in_one_line(
        run(capsys, "run", "a.cards")
    )
    write(tmp_path, b=CLEAN)
    assert (
        run(capsys, "run", "b.cards", "--coverage").out
        == "No control and no gauge is declared: nothing can be covered.\n"
    )


def test_a_control_and_its_position_stand_on_one_line(capsys: pytest.CaptureFixture[str]) -> None:
    example = Path(__file__).parents[2] / "examples" / "ostrel-two" / "handbook.cards"
    lines = run(capsys, "run", example, "--card", "Engine start").out.splitlines()
    names = ("Fuel selector LEFT or RIGHT", "Wheel chocks STOWED", "Pitch trim NOSE UP", "Control lock REMOVED")
    assert all(any(name in line for line in lines) for name in names)
