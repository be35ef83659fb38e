"""Wording: vague responses, other names, and the same thing said in two ways."""

from __future__ import annotations

import subprocess
import sys
from itertools import permutations
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.rules.wording.spellings import SHORTEST, Forms, singular, words_of
from dotleader.rules.wording.vague_response import is_vague
from dotleader.source.finding import Finding
from dotleader.source.text import SourceText, Spot
from tests.rules.pipeline import findings_of, said

EXAMPLE = Path(__file__).parents[2] / "examples" / "ostrel-two" / "handbook.cards"
EQUIPMENT = """\
gauge Oil pressure in psi from unverified
  red .... below 25
  green .... 55 to 95

gauge Voltmeter in V from unverified

equipment
  Fuel pump .... OFF, ON
    also called .... boost pump, aux pump
  Static source .... NORMAL, ALTERNATE
  Mixture .... CUT OFF to RICH, LEANED
    read on .... Voltmeter
  Altimeter .... any hPa
  Canopy .... LATCHED, OPEN

normal Taxi
  when moving
  Fuel pump .... ON
  Static source .... NORMAL
  Mixture .... RICH
  Altimeter .... QNH
  Canopy .... LATCHED
  Oil pressure .... {Oil pressure green}

"""


def _card(*lines: str) -> str:
    return "normal Climb\n  when climbing\n" + "".join(f"  {line}\n" for line in lines)


def _found(text: str, rule: str) -> list[Finding]:
    return [finding for finding in findings_of(text) if finding.rule == rule]


# ---------------------------------------------------------------- vague responses


@pytest.mark.parametrize(
    "response",
    [
        *("CHECKED", "checked", "CHECK", "SET", "AS REQUIRED", "AS REQ'D", "AS REQD", "AS NECESSARY", "COMPLETE"),
        *("COMPLETED", "DONE", "OK", "O.K.", "OKAY", "NORMAL", "VERIFIED", "VERIFY", "ADJUST", "ADJUSTED"),
        *("AS DESIRED", "AS APPROPRIATE", "IN ORDER", "CHECKED.", "CHECKED AND SET", "SET/CHECKED", "CHECKED, BOTH"),
        "As required",
    ],
)
def test_vague_responses(response: str) -> None:
    """NASA CR-177549 (Degani and Wiener, 1990) appendix A(4) names checked and set; the others are of their kind."""
    assert is_vague(response)
    assert [f.spot.text for f in _found(_card(f"Doors .... {response}"), "vague-response")] == [response]


@pytest.mark.parametrize(
    "response",
    [
        *("ON", "BOTH", "SET 1013", "CHECKED, 55 psi", "FREE AND CORRECT", "LATCHED", "AS FOR LEVEL FLIGHT", "RESET"),
        *("ALL", "SET FOR TAKEOFF", "NORMAL CLIMB", "18 US gal", "AS SOON AS PRACTICAL", "TAKEOFF MARK", "OUT", "—"),
    ],
)
def test_responses_that_say_something(response: str) -> None:
    """`ON`, `BOTH`, a number: what CR-177549 appendix A(4) asks for in the place of a vague word."""
    assert not is_vague(response)


def test_a_mark_after_it_does_not_hide_it() -> None:
    assert [f.spot.text for f in _found(_card("Doors .... CHECKED [critical]"), "vague-response")] == ["CHECKED"]


def test_a_declared_position_is_not_vague() -> None:
    assert said(findings_of(EQUIPMENT + _card("Static source .... NORMAL", "Static source .... STAYS NORMAL"))) == []


def test_a_position_of_another_control_is_a_mix_up_and_nothing_else() -> None:
    found = said(findings_of(EQUIPMENT + _card("Fuel pump .... NORMAL")))
    assert found == [("position-of-another-control", "NORMAL")]


@pytest.mark.parametrize(
    ("item", "offered"),
    [
        ("Fuel pump .... CHECKED", "`OFF` or `ON`."),
        ("Fuel pump + Canopy .... SET", "`OFF` or `ON`."),
        ("Mixture .... SET", "`CUT OFF`, `RICH` or `LEANED`, or between them."),
        ("Altimeter .... SET", "Say the value in hPa"),
        ("Oil pressure .... NORMAL", "`{Oil pressure green}` prints as `55 to 95 psi`."),
        ("Voltmeter .... CHECKED", "Say what it has to read in V"),
        ("Doors .... CHECKED", "`FREE AND CORRECT`"),
    ],
)
def test_what_could_be_said_is_offered_and_the_fault_is_one_finding(item: str, offered: str) -> None:
    found = findings_of(EQUIPMENT + _card(item))
    assert [finding.rule for finding in found] == ["vague-response"]
    assert offered in found[0].help


# ---------------------------------------------------------------- other names


def test_an_other_name_is_said_once_with_the_place_of_the_declaration() -> None:
    found = findings_of(EQUIPMENT + _card("Aux  pump .... OFF", "FUEL PUMP .... ON", "Boost pump + Canopy .... OPEN"))
    assert said(found)[:1] == [("alias-used", "Aux  pump")]
    assert [f.spot.text for f in found if f.rule == "alias-used"] == ["Aux  pump", "Boost pump"]
    assert found[0].message == "`Aux pump` is another name of `Fuel pump`."
    assert found[0].related[0].spot.text == "Fuel pump"


def test_an_item_that_amplified_text_repeats_is_read_too() -> None:
    text = EQUIPMENT + _card("Boost pump .... OFF", "Doors .... LATCHED", "amplified")
    text += "    Boost pump .... OFF\n      It hums.\n    Doors .... CHECKED\n      Both.\n"
    assert said(findings_of(text)) == [
        ("alias-used", "Boost pump"),
        ("alias-used", "Boost pump"),
        ("vague-response", "CHECKED"),
    ]


# ---------------------------------------------------------------- the same thing in two ways

ALIKE = [
    ("Seat belts", "Seat belt"),
    ("Seat belts", "Seat Belts"),
    ("Seat belts", "Seatbelts"),
    ("Seat belts", "Seat-belts"),
    ("Seat belts", "Seat blets"),
    ("Seat belts", "Seat beltts"),
    ("Seat belts", "Saet belts", False),  # four letters
    ("Walk-round", "Walk round"),
    ("Batteries", "Battery"),
    ("Switches", "Switch"),
    ("Windscreen", "Windsreen"),
    ("Carburettor heat", "Carburetter heat"),
    ("Tyre pressure", "Tire pressure", False),  # four letters
    ("Gear lever lamp 1", "Gear lever lamp 2", False),
    ("Battery 1", "Battery 2", False),
    ("Battery 1", "Batteries 2", False),
    ("Left fuel cap", "Right fuel cap", False),
    ("Bus A", "Bus B", False),
    ("Flap", "Flaps", False),  # under five letters
    ("Trim", "TRIM"),
    ("Fuel level", "Fuel lever", False),
    ("Baggage weight", "Baggage height", False),
    ("Prime", "Primer", False),
    ("Heading", "Reading", False),
    ("Tank 1.5", "Tank 15", False),
    ("Door locks", "Door cocks", False),
    ("Static ports", "Static vents", False),
    ("Passenger's belt", "Passengers belt"),
]


@pytest.mark.parametrize("pair", ALIKE, ids=lambda pair: " / ".join(pair[:2]))
def test_challenges(pair: tuple[str, str] | tuple[str, str, bool]) -> None:
    one, other, alike = pair if len(pair) == 3 else (*pair, True)
    text = _card(f"{one} .... LOOKED AT", f"{one} .... FELT", f"{other} .... FELT")
    assert [f.spot.text for f in _found(text, "uneven-wording")] == [other] * alike
    text = _card(f"{other} .... FELT", f"{one} .... FELT", f"{one} .... HEARD")
    assert [f.spot.text for f in _found(text, "uneven-wording")] == [other] * alike


def test_one_of_several_things_is_answered_otherwise() -> None:
    text = _card("Fields .... ONE WITHIN REACH", "Field .... CHOSEN", "Seat belts .... FASTENED")
    assert _found(text, "uneven-wording") == []


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("FASTENED, BOTH", "FASTENED BOTH", True),
        ("FASTENED, BOTH", "FASTENED, both", True),
        ("AS SOON AS PRACTICAL", "AS SOON AS PRACTCAL", True),
        ("AT LEAST {VG}", "AT LESAT {VG}", True),
        ("AT LEAST {VG}", "AT LEAST {VY}", False),
        ("NEAREST AIRFIELD", "NEAREST AIRFEILD", True),
        ("CLEAR", "CLEAN", False),
        ("LOCKED", "ROCKED", False),
        ("LOCKED", "LOKED", True),
        ("TIGHT", "RIGHT", False),
        ("CLOSE", "CLOSED", False),  # an order and a state
        ("REMOVE", "REMOVED", False),
        ("1,800 rpm", "1,900 rpm", False),
        ("OUT", "OFF", False),
        ("COARSE", "COURSE", False),
        ("LOWEST", "SLOWEST", False),
        ("{VG}", "{VY}", False),
    ],
)
def test_responses(one: str, other: str, alike: bool) -> None:
    speeds = "speeds\n  VG .... 82 KIAS  unverified\n  VY .... 80 KIAS  unverified\n\n"
    text = speeds + _card(f"Alpha .... {one}", f"Bravo .... {one}", f"Delta .... {other}")
    assert [f.spot.text for f in _found(text, "uneven-wording")] == [other] * alike


def test_a_response_may_follow_the_number_of_its_challenge() -> None:
    assert said(findings_of(_card("Rudder .... MOVES FREELY", "Ailerons .... MOVE FREELY"))) == []
    assert len(_found(_card("Left tyre .... NO CRACKS", "Nose tyre .... NO CRACK"), "uneven-wording")) == 1


def test_the_rarer_is_marked_wherever_it_stands_and_of_equals_the_later() -> None:
    text = _card(
        "Door hinge pin .... IN", "Door hinges pin .... IN", "Door hinge pin .... IN", "Door hinges pin .... IN"
    )
    found = _found(text + "  Door hinge pin .... IN\n", "uneven-wording")
    assert [f.spot.text for f in found] == ["Door hinges pin"] * 2
    assert {f.message for f in found} == {"`Door hinges pin` is written `Door hinge pin` in 3 other places."}
    first = text.index("Door hinge pin")
    assert {f.related[0].spot.start for f in found} == {first}
    found = _found(_card("Cowling pins .... FLUSH", "Cowling pin .... FLUSH"), "uneven-wording")
    assert [(f.spot.text, f.message) for f in found] == [
        ("Cowling pin", "`Cowling pin` is written `Cowling pins` elsewhere.")
    ]


def test_across_files() -> None:
    found = findings_of(
        "handbook A  # allow missing-phase: x\ninclude one.cards\ninclude two.cards\n",
        {
            "one.cards": _card("Cowling pins .... FLUSH"),
            "two.cards": _card("Cowling pin .... FLUSH").replace("mb", "n"),
        },
    )
    uneven = [finding for finding in found if finding.rule == "uneven-wording"]
    assert [(f.spot.source.name, f.spot.text) for f in uneven] == [("two.cards", "Cowling pin")]
    assert uneven[0].related[0].spot.source.name == "one.cards"


def test_declared_names_and_positions_are_their_own_measure() -> None:
    equipment = "equipment\n  Battery one .... OFF, ON\n  Battery ones .... OFF, ON\n  Door .... LATCHED, LATCHEDS\n\n"
    items = _card("Battery one .... ON", "Battery ones .... ON", "Door .... LATCHED", "Door .... LATCHEDS")
    assert said(findings_of(equipment + items)) == []
    found = _found(EQUIPMENT + _card("Hatch .... LACHED", "Bay door .... Latched"), "uneven-wording")
    assert [f.message for f in found] == [
        "`LACHED` is written `LATCHED` as a position.",
        "`Latched` is written `LATCHED` as a position.",
    ]


def test_one_fault_gives_one_finding_near_a_declared_name() -> None:
    found = said(findings_of(EQUIPMENT + _card("Fuel pumps .... ON", "Fuel pmup .... ON", "Canopys .... OPEN")))
    assert {rule for rule, _ in found} == {"near-name"}
    assert len(found) == 3


def test_vague_responses_are_not_compared() -> None:
    text = _card("Alpha .... CHECKED", "Bravo .... CHECKED", "Delta .... Checked")
    assert {rule for rule, _ in said(findings_of(text))} == {"vague-response"}


def test_a_word_that_stands_in_many_texts_is_no_slip() -> None:
    text = _card("Lamda gate .... IN", "Lamba gate .... IN", "Lamba door .... IN", "Lamba port .... IN")
    assert _found(text, "uneven-wording") == []


def _spot(at: int) -> Spot:
    return Spot(SourceText("a.cards", " " * 1000), at, at)


@given(
    st.lists(st.text("abcde", min_size=SHORTEST, max_size=SHORTEST + 2), min_size=2, max_size=12),
)
def test_the_index_finds_what_comparing_all_with_all_finds(words: list[str]) -> None:
    """Against a plain count of single edits (Damerau 1964: add, drop, change, swap neighbours), all pairs."""
    forms = Forms()
    for at, word in enumerate(words):
        forms.add(word, _spot(at))
    found = {lesser.text for lesser, _ in forms.uneven()}
    rank = {word: (words.count(word), -words.index(word)) for word in words}

    def spread_enough(word: str) -> bool:
        return sum(word in words_of(text) for text in rank) < 3

    expected = set()
    for a, b in permutations(rank, 2):
        inflected = {a + "d", b + "d"} & {a, b} and min(a, b, key=len).endswith("e")
        if rank[a] < rank[b] and b in _single_edits(a) and not inflected and spread_enough(a):
            expected.add(a)
    assert found == expected


def _single_edits(word: str) -> set[str]:
    cuts = [(word[:at], word[at:]) for at in range(len(word) + 1)]
    dropped = {a + b[1:] for a, b in cuts if b}
    swapped = {a + b[1] + b[0] + b[2:] for a, b in cuts if len(b) > 1}
    changed = {a + letter + b[1:] for a, b in cuts if b for letter in "abcde"}
    added = {a + letter + b for a, b in cuts for letter in "abcde"}
    return (dropped | swapped | changed | added) - {word}


@pytest.mark.parametrize(
    ("plural", "one"),
    [
        *(("belts", "belt"), ("batteries", "battery"), ("switches", "switch"), ("boxes", "box"), ("passes", "pass")),
        *(("press", "press"), ("status", "status"), ("axis", "axis"), ("gas", "gas"), ("ties", "tie"), ("off", "off")),
    ],
)
def test_singular(plural: str, one: str) -> None:
    assert singular(plural) == one


def test_a_clean_book_does_not_pay_for_comparing() -> None:
    code = (
        "import sys; from dotleader.tools.files import Files; from dotleader.tools.pipeline import lint_handbook\n"
        f"assert not lint_handbook({str(EXAMPLE)!r}, Files()).findings\n"
        "assert not any(name.startswith('rapidfuzz') for name in sys.modules)"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


# ---------------------------------------------------------------- comments behind a text

LISTED = "normal Cruise\n  when level\n  Radio .... ON\n    Volume low\n  note Doors open.\n"


def _comments(text: str) -> list[str]:
    return [marked for name, marked in said(findings_of(text)) if name == "trailing-comment"]


@pytest.mark.parametrize("line", ["normal Cruise", "when level", "Radio .... ON", "Volume low", "note Doors open."])
@pytest.mark.parametrize("comment", ["  # ask Bob", " # ask Bob", "  #ask", "  #", "  # 2 of them"])
def test_a_comment_behind_any_text_of_a_card_is_one_finding(line: str, comment: str) -> None:
    phase = "" if line != "normal Cruise" else "\n  phase cruise"
    found = findings_of(LISTED.replace(line, line + comment + phase))
    assert said(found) == [("trailing-comment", comment.strip())]
    assert found[0].help == "Put the comment on a line of its own above."


@pytest.mark.parametrize("text", ["Tank # 2", "Tank #2", "Tank  #2", "#2 tank", "Tank#two", "Press #"])
def test_a_number_or_a_sign_is_no_comment(text: str) -> None:
    assert _comments(f"normal Cruise\n  when level\n  {text} .... ON\n  Radio .... {text}\n") == []


def test_prose_may_have_any_mark() -> None:
    prose = "\n  amplified\n    Ask Bob  # he knows\n\ntext Foreword\n  All  # of it.\n"
    assert _comments(LISTED + prose) == []


@pytest.mark.parametrize(
    "text",
    [
        "handbook Ostrel  # mine\n",
        "handbook Ostrel Two\n  builder .... Somebody  # mine\n",
        "sources\n  kit manual .... issue 4  # mine\n",
        "text Foreword  # mine\n  Words.\n",
        "normal Taxi\n  when moving\n  thumb TAXI  # mine\n  Brakes .... HELD\n",
        "normal Taxi\n  when moving\n  if wet  # mine\n    Brakes .... HELD\n",
        "normal Taxi\n  when moving\n  group Brakes  # mine\n    Brakes .... HELD\n",
        "normal Taxi\n  when moving\n  repeat until dry  # mine\n    Brakes .... HELD\n",
    ],
)
def test_a_comment_is_found_wherever_it_would_be_printed(text: str) -> None:
    assert _comments(text) == ["# mine"]


@pytest.mark.parametrize(
    ("response", "expected"),
    [
        ("ON  # ask Bob", [("trailing-comment", "# ask Bob")]),
        ("OFF then ON  # ask Bob", [("trailing-comment", "# ask Bob")]),
        ("UP  # ask Bob", [("unknown-position", "UP"), ("trailing-comment", "# ask Bob")]),
        ("ON # 2", [("unknown-position", "ON # 2")]),
    ],
)
def test_what_stands_before_a_comment_is_a_position_or_none(response: str, expected: list[tuple[str, str]]) -> None:
    text = f"equipment\n  Radio .... OFF, ON\n\nnormal Cruise\n  when level\n  Radio .... {response}\n"
    assert said(findings_of(text)) == expected


def test_a_comment_can_be_allowed_and_an_allowance_is_none() -> None:
    allowed = LISTED.replace(
        "  Radio .... ON", "  # allow trailing-comment: a sign of ours\n  Radio .... ON  # ask Bob"
    )
    assert said(findings_of(allowed)) == []
    assert _comments(LISTED.replace("ON", "SET  # allow vague-response: ours")) == []
