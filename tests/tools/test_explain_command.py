"""What `explain` tells of rules and of what a handbook names."""

from __future__ import annotations

from pathlib import Path

import pytest

from dotleader.rules.catalogue import RULES
from tests.tools.running import process, run, write

HANDBOOK = """\
handbook Ostrel Two flight handbook
  airspeed in .... KIAS

sources
  stall tests .... flight test card 12
  kit manual .... builder's manual, issue 4

speeds
  VS0 .... 46 KIAS  from stall tests
  VREF .... 1.3 * {VS0} rounded up to 1 KIAS
  VX .... 60 KIAS  unverified
  VLO .... 2 * {VLOF}
  VLOF .... {VLO} / 2

gauge Oil pressure in psi from kit manual
  red .... below 25
  green .... 55 to 95

equipment
  Fuel pump .... OFF, ON
    parked .... OFF
    also called .... boost pump
  Throttle .... CLOSED to FULL, IDLE

normal Before landing
  Airspeed .... {VREF}
  Oil pressure .... {Oil pressure green}
  Fuel pump .... ON

emergency Fire
  when smoke is seen
  Fuel pump .... OFF
  Airspeed .... {VREF}
  go to Before landing
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    write(tmp_path, book=HANDBOOK)
    return tmp_path


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_every_rule_has_a_page(capsys: pytest.CaptureFixture[str], rule: object) -> None:
    name = getattr(rule, "name", "")
    ran = run(capsys, "explain", name)
    assert (ran.code, ran.err) == (0, "")
    lines = ran.out.splitlines()
    assert lines[0].startswith(f"{name} ...")
    for label in ("  why ", "  source ", "  mend ", "  not so", "  but so"):
        assert any(line.startswith(label) for line in lines), label
    assert all(len(line) <= 80 for line in lines)


def test_the_list_names_every_rule(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "explain").out
    for rule in RULES:
        assert f"\n  {rule.name} " in out
    assert all(len(line) <= 80 for line in out.splitlines())


def test_marks_stand_below_what_a_bad_example_does_wrong(capsys: pytest.CaptureFixture[str]) -> None:
    lines = run(capsys, "explain", "unknown-value").out.splitlines()
    marked = [n for n, line in enumerate(lines) if "▔" in line]
    assert marked
    for n in marked:
        assert lines[n - 1][lines[n].index("▔") :].startswith("{")


def test_a_value_and_where_it_comes_from(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert (
        run(capsys, "explain", "vref", "--in", "book.cards").out
        == """\
VREF ................................................................... 60 KIAS
  meaning     landing reference speed
  worked out  1.3 * {VS0} rounded up to 1 KIAS
  declared    book.cards:10:3
  VREF: 60 KIAS
  └── VS0: 46 KIAS (stall tests, flight test card 12)

  used
    Before landing  book.cards:26
    Fire            book.cards:33
"""
    )


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        (
            "VS0",
            ["46 KIAS", "from      stall tests, flight test card 12", "in a declaration  book.cards:10", "VREF is"],
        ),
        ("VX", ["unverified: nobody has confirmed it", "It is used nowhere."]),
        ("VLO", ["could not be worked out", "VLOF: could not be worked out ({VLO} / 2)"]),
        ("oil pressure", ["gauge in psi", "red       below 25", "green     55 to 95", "Before landing  book.cards:27"]),
        ("Fuel pump", ["control", "OFF, ON", "parked       OFF", "boost pump", "Fire            book.cards:32"]),
        ("Throttle", ["lever", "CLOSED to FULL, IDLE", "It is used nowhere."]),
        ("stall tests", ["source", "VS0  46 KIAS"]),
        ("Before landing", ["normal card", "Fire  book.cards:34"]),
        ("fire", ["emergency card", "smoke is seen"]),
    ],
)
def test_what_a_handbook_names(here: Path, capsys: pytest.CaptureFixture[str], name: str, parts: list[str]) -> None:
    ran = run(capsys, "explain", *name.split(), "--in", ".")
    assert (ran.code, ran.err) == (0, "")
    for part in parts:
        assert part in ran.out


def test_slips(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(capsys, "explain", "VRFE", "--in", "book.cards")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == "dotleader: `VRFE` is not declared in book.cards.\n  Did you mean `VREF`?\n"
    ran = run(capsys, "explain", "unknwon-value")
    assert ran.err == "dotleader: There is no rule `unknwon-value`.\n  Did you mean `unknown-value`?\n"
    ran = run(capsys, "explain", "Fuel", "pump")
    assert ran.err.endswith("For a name in a handbook: `dotleader explain Fuel pump --in HANDBOOK`.\n")
    assert run(capsys, "explain", "VREF", "--in", "missing.cards").code == 2


def test_colour_and_plain_terminals(here: Path) -> None:
    plain = process("explain", "unknown-value", cwd=here).out
    assert "\x1b" not in plain
    assert "\x1b" in process("explain", "unknown-value", cwd=here, FORCE_COLOR="1").out
    assert "\x1b" not in process("explain", "unknown-value", cwd=here, FORCE_COLOR="1", NO_COLOR="1").out
    assert process("explain", "VREF", "--in", ".", cwd=here, PYTHONIOENCODING="ascii").out.isascii()


def test_a_part_of_a_name_leads_to_the_rules_that_have_it(capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(capsys, "explain", "vague")
    assert ran.err == "dotleader: There is no rule `vague`.\n  Did you mean `vague-response`?\n"
    assert "`many-memory-items` or `fourth-memory-item`?" in run(capsys, "explain", "memory").err
    assert "Did you mean" not in run(capsys, "explain", "xq").err
