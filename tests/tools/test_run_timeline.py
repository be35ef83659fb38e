"""`dotleader run`, as it is seen."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.tools.running import run

GOOD = Path(__file__).parents[1] / "good"


def test_where_nothing_is_declared_nothing_is_said_of_how_it_stands(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "run", GOOD / "one-page" / "pennant.cards").out
    assert "Ignition" in out
    assert "parked" not in out


def test_two_branches_that_lead_to_one_card_in_one_state_are_one_way_on(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "run", "--card", "Electrical fire", GOOD / "retractable" / "tessel.cards").out
    assert out.count("to Gear by hand") == 1


def test_what_only_others_move_is_on_no_card_and_says_by_what(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "run", "--coverage", GOOD / "aerobatic" / "kite.cards").out
    assert "moved by Mags, Start, Fuel, Mixture" in out
    assert "on no card" not in out
