"""Names become things; what does not resolve is said, once, on its place."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.cards import Branch, GoTo, Item, Memory, Notice, is_gate
from dotleader.handbook.phases import PHASES, phase_of_title
from dotleader.handbook.resolve import resolve
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText
from tests.handbook.texts import resolved, said

TOP = Path(__file__).parents[2]


def from_disk(path: Path) -> tuple[object, tuple[object, ...]]:
    def read(name: str) -> Outcome[SourceText] | str:
        file = path.parent / name
        return Outcome(SourceText(name, file.read_text(encoding="utf-8"))) if file.exists() else "no such file"

    outcome = resolve(SourceText(path.name, path.read_text(encoding="utf-8")), path.name, read)
    return outcome.value[0], outcome.findings


def test_the_language_sample_resolves() -> None:
    assert from_disk(TOP / "tests/good/sample/handbook.cards")[1] == ()


@pytest.mark.parametrize(
    "sample", re.findall(r"```\n(.*?)```", (TOP / "docs/language.md").read_text(encoding="utf-8"), re.DOTALL)
)
def test_every_sample_of_the_language_page_resolves(sample: str) -> None:
    assert said(sample) == []


VALUES = """
    sources
      kit ....... kit manual

    speeds from kit
      VS0 ....... 50 KIAS
      VS1 ....... 52 KIAS
      VREF ...... 1.1 * {VS0} rounded up to 1 KIAS
      VA ........ {VS1} * root of ({load factor}) rounded down to 1 KIAS
      VNE ....... 152 kt
      VLO (wheels moving) ... 90 KIAS

    values from kit
      load factor ... 3.8
      tank .......... 19 US gal
      usable ........ 2 * {tank} - 0.6 US gal
      oil ........... at least 5.0 US qt
      idle .......... 600 to 750 rpm
"""


def test_values_are_exact_and_keep_how_they_were_written() -> None:
    handbook, findings = resolved(VALUES)
    assert findings == ()
    shown = {value.name: value.shown for value in handbook.values.values()}
    # 1.1 * 50 is 55 and not 55.00000000000001, which would round up to 56.
    assert shown["VREF"] == "55 KIAS"
    # 52 * root of 3.8 is 101.366 (14 CFR 23.335(c) as in force before Amdt 23-64): a limit goes down.
    assert shown["VA"] == "101 KIAS"
    assert shown["usable"] == "37.4 US gal"
    assert shown["oil"] == "at least 5.0 US qt"
    assert shown["idle"] == "600 to 750 rpm"
    assert handbook.values["vlo"].meaning == "wheels moving"
    assert handbook.values["vne"].shown == "152 KIAS"


@pytest.mark.parametrize(
    ("reference", "printed"),
    [
        ("{VS0}", "50 KIAS"),
        ("{vs0}", "50 KIAS"),
        ("{VS0 in mph}", "58 mph IAS"),  # 57.539: a stalling speed goes up
        ("{VNE in mph}", "174 mph IAS"),  # 174.918: a limit goes down
        ("{Oil pressure green}", "55 to 95 psi"),
        ("{Oil pressure green low}", "55 psi"),
        ("{Oil pressure red high}", "25 psi"),
        ("{Oil pressure yellow 2}", "95 to 115 psi"),
        ("{Oil pressure green low in bar}", "3.80 bar"),  # 3.792: inwards
        ("{Oil pressure green high in bar}", "6.55 bar"),  # 6.55002: inwards
    ],
)
def test_references_print_to_the_safe_side(reference: str, printed: str) -> None:
    handbook, findings = resolved(
        VALUES
        + f"""
    gauge Oil pressure in psi from kit
      red ....... below 25
      yellow .... 25 to 55
      green ..... 55 to 95
      yellow .... 95 to 115

    normal Cruise
      when level
      note It is {reference} here.
"""
    )
    assert findings == ()
    notice = handbook.cards[0].steps[0]
    assert isinstance(notice, Notice)
    assert notice.phrase.text == f"It is {printed} here."


@pytest.mark.parametrize(
    ("row", "finding"),
    [
        ("a ... {b}", ("unknown-value", "{b}")),
        ("a ... {a} + 1", ("circular-value", "{a}")),
        ("a ... 1 lb + 1 kt from kit", ("unlike-units", "1 lb + 1 kt")),
        ("a ... 1 KIAS + 1 KCAS from kit", ("unlike-units", "1 KIAS + 1 KCAS")),
        ("a ... 1 / 0 from kit", ("division-by-zero", "1 / 0")),
        ("a ... 1 / 3 from kit", ("uneven-number", "1 / 3")),
        ("a ... root of (2) from kit", ("uneven-number", "root of (2)")),
        ("a ... 5 gal from kit", ("ambiguous-unit", "gal")),
        ("a ... 5 Gal from kit", ("ambiguous-unit", "Gal")),
        ("a ... 5 knots from kit", ("unknown-unit", "knots")),
        ("a ... 5 KIAS form kit", ("unknown-unit", "form")),
        ("a ... 5 KIAS unverifed", ("unknown-unit", "unverifed")),
        ("a ... 3.8 Unverified", ("unknown-unit", "Unverified")),
        ("a ... 5 ℃ from kit", ("unreadable-value", "℃ from kit")),
        ("a ... 3,5 mm from kit", ("decimal-comma", "3,5")),
        ("a ... 3 mm from nowhere", ("unknown-source", "nowhere")),
        ("a ... 3 mm", ("value-without-source", "a")),
        ("a ... 7 to 3 mm from kit", ("impossible-value", "7 to 3 mm from kit")),
        ("a ... soon from kit", ("unreadable-value", "soon from kit")),
    ],
)
def test_a_value_that_cannot_be_is_said_once(row: str, finding: tuple[str, str]) -> None:
    assert said(f"sources\n  kit ... kit manual\n\nvalues\n  {row}\n") == [finding]


@pytest.mark.parametrize(
    ("row", "offered"),
    [
        ("5 KIAS form kit", "`from kit`"),
        ("5 to 7 KIAS frm  kit", "`from  kit`"),
        ("5 KIAS form kit, page 3", "`from kit, page 3`"),
        ("3.8 From kit", "`from kit`"),
        ("100 KIAS unverifed", "`unverified`"),
        ("3.8 unverfied", "`unverified`"),
        ("5 ℃ from kit", "`5 degC from kit`"),
        ("at least 5 ℉ from kit", "`at least 5 degF from kit`"),
        ("5 Gal from kit", "`US gal` or `imp gal`"),
    ],
)
def test_a_slip_behind_a_number_is_answered_with_the_right_word(row: str, offered: str) -> None:
    _, (found,) = resolved(f"sources\n  kit ... kit manual\n\nvalues\n  a ... {row}\n")
    assert offered in found.help


@pytest.mark.parametrize(
    ("row", "printed"),
    [("5 °C", "5 °C"), ("5°F", "5 °F"), ("10 °", "10°"), ("10°", "10°"), ("-5 to 40 °C", "−5 to 40 °C")],
)
def test_the_signs_of_degrees_are_read(row: str, printed: str) -> None:
    handbook, findings = resolved(f"values\n  a ... {row} unverified\n")
    assert findings == ()
    assert handbook.values["a"].shown == printed


def test_a_circle_is_shown() -> None:
    _, findings = resolved("values\n  a ... {b} + 1\n  b ... 2 * {c}\n  c ... {a}\n")
    assert [finding.rule for finding in findings] == ["circular-value"]
    assert "a > b > c > a" in findings[0].message


EQUIPMENT = """
    equipment
      Master ......... OFF, ON
        parked ....... OFF
      Fuel selector .. OFF, LEFT, RIGHT
        means ........ FULLEST TANK: LEFT or RIGHT
      Fuel pump ...... OFF, ON
        needs ........ Master ON
        also called .. boost pump
      Throttle ....... CLOSED to FULL
        read on ...... Tachometer
      Mixture ........ CUT OFF to RICH, LEANED
      Flaps .......... UP, 15 deg, LANDING
      Altimeter ...... any hPa

    gauge Tachometer in rpm from unverified

    values
      takeoff flaps .. 15 deg  unverified
"""


@pytest.mark.parametrize(
    ("item", "finding"),
    [
        ("Fuel pump ... ON", None),
        ("Fuel pump ... OFF then ON", None),
        ("Fuel pump ... STAYS ON", None),
        ("Fuel pump ... ON if in cloud, otherwise OFF", None),
        ("fuel  PUMP ... on", None),
        ("Fuel pump + Master ... OFF", None),
        ("Fuel selector ... FULLEST TANK", None),
        ("Fuel selector ... LEFT or RIGHT", None),
        ("Throttle ... 1,700 rpm", None),
        ("Throttle ... 1,700 rpm, 1,000 rpm", None),
        ("Throttle ... LOWEST FOR LEVEL FLIGHT", None),
        ("Mixture ... LEANED", None),
        ("Flaps ... {takeoff flaps}", None),
        ("Flaps ... 15°", None),
        ("Altimeter ... QNH", None),
        ("Seat belts ... FASTENED", None),
        ("Fuel pump ... LEFT", ("position-of-another-control", "LEFT")),
        ("Fuel pump ... RUNNING", ("unknown-position", "RUNNING")),
        ("Mixture ... LEANEN", ("unknown-position", "LEANEN")),
        ("Fuel pump ... {nothing}", ("unknown-value", "{nothing}")),
    ],
)
def test_responses_to_controls(item: str, finding: tuple[str, str] | None) -> None:
    assert said(EQUIPMENT + f"\n    normal Cruise\n      when level\n      {item}\n") == ([finding] if finding else [])


def test_what_an_item_moves() -> None:
    handbook, _ = resolved(EQUIPMENT + "\n    normal Cruise\n      Fuel pump + Master ... OFF then ON\n")
    item = handbook.cards[0].steps[0]
    assert isinstance(item, Item)
    assert [(move.control, move.positions) for move in item.moves] == [
        ("fuel pump", ("OFF", "ON")),
        ("master", ("OFF", "ON")),
    ]


@pytest.mark.parametrize(
    ("lines", "finding"),
    [
        ("parked ... AJAR", ("unknown-position", "AJAR")),
        ("needs ... Mister ON", ("unknown-position", "Mister ON")),
        ("needs ... Master MAYBE", ("unknown-position", "MAYBE")),
        ("turned AJAR ... Master ON", ("unknown-position", "AJAR")),
        ("colour ... blue", ("unknown-property", "colour")),
        ("draws ... 4 mm", ("unreadable-value", "4 mm")),
        ("wire ... thick", ("unreadable-value", "thick")),
        ("at ... left of the door", ("unreadable-value", "left of the door")),
        ("read on ... Nothing", ("unknown-gauge", "Nothing")),
        ("springs ... ON", ("unreadable-value", "ON")),
        ("means ... EITHER", ("unreadable-value", "EITHER")),
    ],
)
def test_properties_are_checked_for_their_form(lines: str, finding: tuple[str, str]) -> None:
    assert said(f"equipment\n  Master ... OFF, ON\n  Door ... OPEN, SHUT\n    {lines}\n") == [finding]


def test_a_card_knows_its_parts() -> None:
    handbook, findings = resolved(
        """
        emergency Engine failure
          when it stops
          memory
            Airspeed ... GLIDE
          if below 1,000 ft
            go to Forced landing
          if it restarts
            Land ... SOON
            end
          otherwise
            go to forced  LANDING

        emergency Forced landing
          when no engine
          Land ... INTO WIND
          end
        """
    )
    assert findings == ()
    memory, gate, branch = handbook.cards[0].steps
    assert isinstance(memory, Memory)
    assert isinstance(gate, Branch)
    assert is_gate(gate)
    assert isinstance(branch, Branch)
    assert [arm.word for arm in branch.arms] == ["if", "otherwise"]
    step = branch.arms[1].steps[0]
    assert isinstance(step, GoTo)
    assert (step.title, step.target) == ("Forced landing", "forced landing")


@pytest.mark.parametrize(
    ("card", "finding"),
    [
        ("otherwise\n    end", ("misplaced-line", "otherwise")),
        ("group A\n    phase taxi\n    B ... C", ("misplaced-line", "phase")),
        ("group A", ("empty-block", "group")),
        ("phase dinner\n  A ... B", ("unknown-phase", "dinner")),
        ("method guess\n  A ... B", ("unknown-method", "guess")),
        ("go to Nowhere", ("unknown-card", "Nowhere")),
        ("when a\n  when b\n  A ... B", ("name-used-twice", "when")),
    ],
)
def test_lines_of_cards_that_cannot_stand_so(card: str, finding: tuple[str, str]) -> None:
    assert said(f"normal Cruise\n  {card}\n") == [finding]


def test_three_levels_of_branches_are_one_too_many() -> None:
    card = "normal Cruise\n  if a\n    if b\n      if c\n        D ... E\n"
    assert said(card) == [("branch-too-deep", "if")]


def test_includes_are_read_where_they_stand() -> None:
    handbook, findings = resolved(
        "handbook H\ninclude a.cards\nnormal Cruise\n  B ... C\n",
        a="include sub/b.cards\nnormal Climb\n  B ... C\n",
        sub__b="normal Taxi\n  B ... C\n",
    )
    assert findings == ()
    assert [card.title for card in handbook.cards] == ["Taxi", "Climb", "Cruise"]
    assert not handbook.loose


@pytest.mark.parametrize(
    ("include", "rule"),
    [
        ("nothing.cards", "missing-file"),
        ("../a.cards", "include-outside"),
        ("/etc/passwd", "include-outside"),
        ("sub/../../a.cards", "include-outside"),
        ("main.cards", "include-circle"),
        ("loop.cards", "include-circle"),
    ],
)
def test_includes_that_cannot_be(include: str, rule: str) -> None:
    assert [finding[0] for finding in said(f"include {include}\n", loop="include loop.cards\n")] == [rule]


def test_names_stand_once() -> None:
    text = """
        values
          a ... 1 mm unverified
          A ... 2 mm unverified
        equipment
          Pump ... OFF, ON
          pump ... OFF, ON
        normal Cruise
          B ... C
        abnormal cruise
          B ... C
    """
    assert [rule for rule, _ in said(text)] == ["name-used-twice"] * 3


@pytest.mark.parametrize("positions", ["OFF / ON", "OFF/ON", "OFF; ON", "OFF | ON", "OFF or ON", "UP to", "to DOWN"])
def test_positions_that_are_not_listed_with_commas(positions: str) -> None:
    text = f"equipment\n  Pump .... {positions}\n"
    assert said(text) == [("unreadable-value", positions)]


@pytest.mark.parametrize("positions", ["PULLED", "OFF, L/R, BOTH", "CUT OFF to RICH", "any hPa", "OFF, ON or so"])
def test_positions_that_are_right(positions: str) -> None:
    assert said(f"equipment\n  Pump .... {positions}\n") == []


def test_what_is_wrong_with_a_row_of_the_handbook_block_is_marked_and_not_its_name() -> None:
    text = "handbook Book\n  aircraft .... A\n  airspeed in .... knots\n  paper .... Lettre\n"
    assert said(text) == [("unknown-unit", "knots"), ("unreadable-value", "Lettre")]
    assert said("handbook Book\n  paper .... “Lettre”\n") == [("unreadable-value", "paper")]


def test_the_titles_of_faa_h_8083_3c_mean_their_phases() -> None:
    # FAA-H-8083-3C, Airplane Flying Handbook, chapter 1, "Use of Checklists": the eleven lists.
    lists = {
        "Preflight inspection": "preflight",
        "Before engine start": "before start",
        "Starting engine": "engine start",
        "Before taxiing": "taxi",
        "Before takeoff": "before takeoff",
        "After takeoff": "climb",
        "Cruise": "cruise",
        "Descent": "descent",
        "Before landing": "approach",
        "After landing": "after landing",
        "Engine shutdown and securing": "shutdown",
    }
    for title, phase in lists.items():
        assert phase_of_title(title) == phase
        assert phase_of_title(f"{title} checklist") == phase
    assert phase_of_title("Oil change") == ""
    assert next(iter(PHASES)) == "preflight"


@given(st.text(alphabet="ab{}.,:#|[]()+-*/ \n\t0123°±…", max_size=300))
def test_nothing_written_raises(text: str) -> None:
    for head in ("", "values\n  ", "equipment\n  ", "normal A\n  ", "gauge A in psi\n  ", "stock\n  ", "handbook\n  "):
        resolved(head + text)
