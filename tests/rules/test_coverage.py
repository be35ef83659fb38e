"""Coverage: the phases of a flight and the emergencies that a handbook has to have a card for."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from dotleader.handbook.cards import Card, Kind, Phrase
from dotleader.handbook.phases import phase_of_title
from dotleader.rules.coverage.missing_phase import LISTS
from dotleader.rules.coverage.phase_titles import phases_in_title
from dotleader.rules.coverage.topics import Topic, topics_of
from dotleader.source.text import SourceText, Spot
from tests.rules.pipeline import findings_of

EXAMPLE = Path(__file__).parents[2] / "examples" / "ostrel-two"
BLOCK = re.compile(r"^(?=\S)", re.MULTILINE)


def _messages(text: str, rule: str, included: dict[str, str] | None = None) -> list[str]:
    return [finding.message for finding in findings_of(text, included, laid=False) if finding.rule == rule]


def _cards(*heads: str) -> str:
    return "".join(f"{head}\n  when called for\n  Lamp .... OUT\n  end\n\n" for head in heads)


# ---------------------------------------------------------------- phases

USUAL = (
    "Preflight inspection",
    "Before engine start",
    "Engine start",
    "Before taxi",
    "Before takeoff",
    "After takeoff",
    "Cruise",
    "Descent",
    "Before landing",
    "After landing",
    "Shutdown",
)


def test_the_lists_are_those_of_the_handbook_in_their_order() -> None:
    """FAA-H-8083-3C, Airplane Flying Handbook, chapter 1, "Use of Checklists": the minimum set of prepared lists."""
    assert list(LISTS) == [
        "preflight inspection",
        "before engine start",
        "engine starting",
        "before taxiing",
        "before takeoff",
        "after takeoff",
        "cruise",
        "descent",
        "before landing",
        "after landing",
        "engine shutdown and securing",
    ]


@pytest.mark.parametrize(("name", "title"), list(zip(LISTS, USUAL, strict=True)))
def test_each_missing_list_is_said_once_at_the_head(name: str, title: str) -> None:
    rest = (f"normal {other}" for other in USUAL if other != title)
    found = [f for f in findings_of("handbook A\n\n" + _cards(*rest)) if f.rule == "missing-phase"]
    assert [finding.message for finding in found] == [f"This handbook has no normal card for {name}."]
    assert found[0].spot.text == "handbook A"


def test_what_is_missing_is_said_in_the_order_of_a_flight_after_what_is_wrong_there() -> None:
    found = findings_of("handbook A  # allow no-such-rule: x\n\n" + _cards("normal Cruise"))
    at_the_head = [finding for finding in found if finding.spot.text == "handbook A"]
    lists = [name for name in LISTS if name != "cruise"]
    wanted = [f"This handbook has no normal card for {name}." for name in lists]
    topics = [topic for topic in Topic if topic is not Topic.ELECTRICAL_FAILURE]
    wanted += [f"This handbook has no card for {topic.value}." for topic in topics]
    assert [finding.message for finding in at_the_head] == wanted


@pytest.mark.parametrize("title", ["emergency Descent", "abnormal Descent"])
def test_other_kinds_of_cards_do_not_serve(title: str) -> None:
    text = "handbook A\n\n" + _cards(*(f"normal {other}" for other in USUAL if other != "Descent"), title)
    assert _messages(text, "missing-phase") == ["This handbook has no normal card for descent."]


def test_a_phase_line_serves_and_goes_before_the_title() -> None:
    text = "handbook A\n\n" + _cards(*(f"normal {other}" for other in USUAL if other not in ("Descent", "Cruise")))
    assert len(_messages(text, "missing-phase")) == 2
    text += "normal Going down\n  phase descent\n  when called for\n  Lamp .... OUT\n\n"
    assert _messages(text, "missing-phase") == ["This handbook has no normal card for cruise."]
    text += "normal Before landing away\n  phase cruise\n  when called for\n  Lamp .... OUT\n"
    assert _messages(text, "missing-phase") == []


@pytest.mark.parametrize("title", USUAL)
def test_a_card_under_a_title_that_fits_no_phase_is_said_once(title: str) -> None:
    """It stands where the missing one is looked for, so that it is the one: one fault, one finding."""
    text = "handbook A\n\n" + _cards(*(f"normal {other if other != title else 'Odd job'}" for other in USUAL))
    found = [finding for finding in findings_of(text) if finding.rule in ("missing-phase", "no-phase")]
    assert [(finding.rule, finding.spot.text) for finding in found] == [("no-phase", "Odd job")]
    assert f"`phase {LISTS[dict(zip(USUAL, LISTS, strict=True))[title]][0][0]}`" in found[0].help


def test_a_card_that_fits_no_phase_stands_for_one_list_at_most() -> None:
    text = "handbook A\n\n" + _cards("normal Cruise", "normal Odd job", "normal Landing")
    assert len(_messages(text, "missing-phase")) == len(LISTS) - 1


def test_a_loose_file_is_asked_for_nothing() -> None:
    text = _cards("normal Cruise", "emergency Canopy open in flight")
    assert {finding.rule for finding in findings_of(text)} == set()


def test_a_missing_file_may_hold_what_is_missing() -> None:
    assert {f.rule for f in findings_of("handbook A\n\ninclude normal.cards\n")} == {"missing-file"}


def test_a_reason_at_the_head_allows_it() -> None:
    text = "# allow missing-phase: a cockpit set\nhandbook A  # allow missing-emergency: a glider\n\n"
    assert findings_of(text + _cards("normal Cruise")) == []


@pytest.mark.parametrize(
    ("title", "phases"),
    [
        ("Preflight", "preflight"),
        ("Pre-flight inspection", "preflight"),
        ("Walk-around", "preflight"),
        ("Daily inspection", "preflight"),
        ("Exterior checks", "preflight"),
        ("The cockpit check", "preflight"),
        ("Before starting engine", "before start"),
        ("Before engine start", "before start"),
        ("Pre-start", "before start"),
        ("Engine start", "engine start"),
        ("Starting the engine", "engine start"),
        ("Start-up", "engine start"),
        ("Taxi", "taxi"),
        ("After engine start", "taxi"),
        ("Before taxiing checklist", "taxi"),
        ("Before take-off", "before takeoff"),
        ("Pre-take-off checks", "before takeoff"),
        ("Line up", "before takeoff"),
        ("Climb", "climb"),
        ("After take off", "climb"),
        ("Cruise", "cruise"),
        ("Normal cruise", "cruise"),
        ("En route", "cruise"),
        ("Descent", "descent"),
        ("Top of descent", "descent"),
        ("Approach", "approach"),
        ("Downwind", "approach"),
        ("Pre-landing", "approach"),
        ("Before landing", "approach"),
        ("After landing", "after landing"),
        ("Shutdown", "shutdown"),
        ("Engine shut-down", "shutdown"),
        ("Parking", "parking"),
        ("Securing the aircraft", "parking"),
        ("Post-flight", "parking"),
        ("Descent and approach", "descent, approach"),
        ("Takeoff and climb", "takeoff, climb"),
        ("Climb/cruise", "climb, cruise"),
        ("Cruise, descent", "cruise, descent"),
        ("Engine shutdown & securing", "shutdown, parking"),
        ("After landing + shutdown", "after landing, shutdown"),
        ("Before taxi (run-up)", "taxi, run-up"),
        ("Mountain flying", ""),
        ("Refuelling", ""),
        ("Go-around", ""),
    ],
)
def test_titles_of_normal_cards(title: str, phases: str) -> None:
    """Titles in common use, no source; the phases are those of FAA-H-8083-3C chapter 1 and of docs/language.md."""
    assert phases_in_title(title) == set(filter(None, phases.split(", ")))


@pytest.mark.parametrize(
    ("title", "phase"),
    [
        *(("Before take-off", "before takeoff"), ("Before take off", "before takeoff"), ("Runup", "run-up")),
        *(("Pre-flight inspection", "preflight"), ("Shut-down", "shutdown"), ("Line up", "before takeoff")),
        *(("Descent/approach", "descent"), ("Climb, cruise", "climb"), ("Before landing (glide)", "approach")),
        *(("Outside check", "preflight"), ("Taxying", "taxi"), ("Pre-landing", "approach"), ("Let-down", "descent")),
        *(("Post-landing", "after landing"), ("Putting away", "parking"), ("Climb-out", "climb")),
        *(("Takeoffs", ""), ("Climbing", ""), ("Landing gear", "landing"), ("Hot start", "")),
    ],
)
def test_a_phase_is_known_however_the_words_of_its_title_are_joined(title: str, phase: str) -> None:
    """The titles of docs/language.md."""
    assert phase_of_title(title) == phase


# ---------------------------------------------------------------- emergencies

_LETTERS = {
    "T": Topic.FAILURE_AFTER_TAKEOFF,
    "I": Topic.FAILURE_IN_FLIGHT,
    "L": Topic.FORCED_LANDING,
    "F": Topic.FIRE_IN_FLIGHT,
    "G": Topic.FIRE_ON_GROUND,
    "E": Topic.ELECTRICAL_FAILURE,
}
_TITLES = """
Engine failure after takeoff|T
Engine failure after take-off|T
Engine failure immediately after takeoff|T
Engine failure after takeoff below 500 ft|T
Engine failure after takeoff, below 700 ft above ground|T
Engine failure below 500 ft above the ground|T
Engine failure below 1,000 ft AGL|T
Engine out on climb-out|T
Engine out after lift-off|T
Power loss after takeoff|T
Loss of power after takeoff|T
EFATO|T
Engine failure at low altitude|T
Engine failure in the climb|T
Engine failure during initial climb|T
Engine failure on takeoff|T
Engine failure during takeoff|T
Engine failure during takeoff roll|
Engine failure on takeoff roll|
Engine failure during takeoff run|
Engine failure before lift-off|
Engine failure on the ground|
Rejected takeoff|
Aborted takeoff|
Engine failure on takeoff, no runway remaining|T
Engine failure in flight|I
Engine failure|I
Engine failure in cruise|I
Engine failure during flight|I
Engine failure at altitude|I
Engine failure above 1,500 ft|I
Power loss in flight|I
Loss of engine power in flight|I
Total power loss|I
Complete loss of power|I
Engine out|I
Engine stops in flight|I
Engine stoppage in flight|I
Flame-out|I
Engine flameout in flight|I
Motor failure in flight|I
In-flight engine failure|I
Engine failure (in flight)|I
Engine failure and restart|I
Engine failure in climb, cruise or descent|I
Engine restart|
Engine restart in flight|
Air start|
Rough engine|
Engine roughness|
Partial power loss|
Loss of oil pressure|
Engine oil pressure loss|
Fuel pump failure|
Engine-driven pump failure|
Engine instrument failure|
Engine overheating|
Loss of electrical power|E
Total electrical failure|E
Electrical failure|E
Electrical power failure|E
Electrical system malfunction|E
Alternator failure|E
Battery flat|E
Alternator inoperative|E
Alternator warning light|E
Generator failure|E
Charging failure|E
Loss of charging|E
Charge light on|E
Low voltage|E
Battery discharge|E
Main bus failure|E
High voltage|
Overvoltage|
Radio failure|
Avionics failure|
Battery overheating|
Forced landing|L
Forced landing without power|L
Forced landing with power|L
Precautionary landing|
Precautionary/forced landing|L
Forced or precautionary landing|L
Off-field landing|L
Off-airport landing|L
Off-aerodrome landing|L
Outlanding|L
Out-landing|L
Emergency landing|L
Emergency landing without engine power|L
Power-off landing|L
Dead-stick landing|L
Engine-out landing|L
Landing without power|L
Landing out|L
Landing as a glider|L
Landing with engine failed|L
Ditching|
Landing without flaps|
Landing with a flat tyre|
Emergency landing gear extension|
Forced landing on water|L
Engine fire in flight|F
Engine fire|F
Fire in flight|F
Smoke in the cabin|F
Smoke or fire in the cabin|F
Smoke or fire in the cabin (in flight)|F
Cabin fire|F
Cabin fire in flight|F
Electrical fire|F
Electrical fire in flight|F
Electrical smoke or fire|F
Electrical fire on the ground|G
Wing fire|F
Fire|F
Engine fire on the ground|G
Engine fire on ground|G
Fire on the ground|G
Ground fire|G
Fire during start|G
Engine fire during start|G
Engine fire while starting|G
Engine fire at start-up|G
Fire while taxiing|G
Fire during refuelling|G
Brake fire|G
Engine fire on the ground or in flight|FG
Engine fire after takeoff|F
Engine failure or fire in flight|FI
Engine failure/forced landing|IL
Engine failure and forced landing|IL
Engine failure / forced landing|IL
Engine failure in flight - forced landing|IL
Spin recovery|
Carbon monoxide|
Evacuation|
Canopy open in flight|
Propeller overspeed|
Loss of coolant|
Flap failure|
Trim runaway|
Engine failure on approach|
Engine failure on final|
Low fuel pressure|
Electrical failure, engine running|E
Loss of engine thrust|I
Fuel exhaustion|
Engine failure - turn back possible|I
Engine quits after takeoff|T
Dead engine|I
Simulated engine failure|I
Throttle cable failure|
Engine control failure|
Airspeed unreliable|
Loss of power on takeoff|T
Alternator failure and electrical fire|EF
Electrical failure or fire|EF
Electrical failure/electrical smoke|EF
Engine failure just after becoming airborne|T
Engine failure shortly after takeoff|T
Engine failure, low level|T
Engine failure at height|I
Engine failure with height|I
Engine failure over water|I
Fire in the engine compartment on the ground|G
Smoke from panel|F
Burning smell|F
Smoke and fumes|F
Landing after engine failure|L
Electric trim failure|
Electric flap motor failure|
Electric motor failure|I
Starter motor failure|
Electric fuel pump failure|
"""
_PLACE = Spot(SourceText("a.cards", ""), 0, 0)


def _topics(title: str, when: str = "", during: str = "", kind: Kind = Kind.EMERGENCY) -> set[Topic]:
    phases = tuple(filter(None, during.split(", ")))
    trigger = Phrase((when,), _PLACE) if when else None
    card = Card("", kind, title, "", "", phases, "", trigger, "", (), (), _PLACE)
    return set(topics_of(card))


@pytest.mark.parametrize("line", _TITLES.strip().split("\n"))
def test_titles_of_emergency_cards(line: str) -> None:
    """Titles in common use, no source. After the bar: what the card serves for, by the letters above."""
    title, _, letters = line.partition("|")
    expected = {_LETTERS[letter] for letter in letters.strip()}
    assert _topics(title.strip()) == expected
    assert _topics(title.strip().upper(), kind=Kind.ABNORMAL) == expected
    assert _topics(title.strip(), kind=Kind.NORMAL) == set()


@pytest.mark.parametrize(
    ("title", "when", "during", "letters"),
    [
        ("Engine failure", "", "takeoff, climb, cruise", "TI"),
        ("Engine failure", "", "takeoff, climb", "T"),
        ("Engine failure", "", "takeoff", "T"),
        ("Engine failure", "", "cruise, descent", "I"),
        ("Engine failure", "when power is lost below 700 ft above the ground", "", "T"),
        ("Engine failure", "when power is lost after takeoff", "", "T"),
        ("Engine failure", "when the engine stops on the takeoff roll", "", ""),
        ("Engine failure in flight", "when the engine stops", "takeoff, climb, cruise", "I"),
        ("Engine fire", "when flames come from the cowling on the ground", "", "G"),
        ("Engine fire", "when flames are seen while starting", "", "G"),
        ("Engine fire", "", "engine start, taxi", "G"),
        ("Engine fire", "", "engine start, taxi, cruise", "GF"),
        ("Engine fire", "when smoke is seen", "takeoff, landing", "F"),
    ],
)
def test_a_bare_title_is_read_with_its_trigger_and_phases(title: str, when: str, during: str, letters: str) -> None:
    assert _topics(title, when, during) == {_LETTERS[letter] for letter in letters}


_ENGINE = {topic.value for topic in Topic} - {Topic.ELECTRICAL_FAILURE.value}


def _missing(text: str) -> set[str]:
    text = "# allow missing-phase: only emergencies are asked for here\nhandbook A\n" + text
    said = _messages(text, "missing-emergency")
    return {message.removeprefix("This handbook has no card for ").removesuffix(".") for message in said}


def _equipment(*names: str) -> str:
    return "\nequipment\n" + "".join(f"  {name} .... OFF, ON\n" for name in names)


@pytest.mark.parametrize(
    ("text", "engine", "electrics"),
    [
        pytest.param("", True, False, id="nothing declared: an engine is taken for granted"),
        pytest.param(_equipment("Airbrakes"), False, False, id="a glider"),
        pytest.param(_equipment("Airbrakes") + "\n" + _cards("normal Throttle friction"), False, False, id="a title"),
        pytest.param(_equipment("Throttle"), True, False, id="throttle"),
        pytest.param(_equipment("Left magneto"), True, False, id="magneto"),
        pytest.param(_equipment("Fuel selector"), True, False, id="fuel"),
        pytest.param("\ngauge Cylinder temperature in degC from unverified\n", True, False, id="gauge"),
        pytest.param(
            _equipment("Airbrakes") + "\nnormal Climb\n  when high\n  Mixture .... LEANED\n",
            True,
            False,
            id="challenge",
        ),
        pytest.param("  engine .... none\n" + _equipment("Towing hook"), False, False, id="it says that it has none"),
        pytest.param("  engine .... electric, 60 kW\n" + _equipment("Hook"), True, False, id="it says which"),
        pytest.param(_equipment("Airbrakes", "Battery 1"), False, True, id="battery in a glider"),
        pytest.param(_equipment("Airbrakes", "Master switch"), False, True, id="master"),
        pytest.param(_equipment("Airbrakes", "Business card"), False, False, id="no bus in business"),
        pytest.param(_equipment("Airbrakes", "Radio"), False, False, id="a radio of its own"),
        pytest.param(_equipment("Airbrakes", "Radio") + "    draws .... 1 A\n", False, True, id="something that draws"),
        pytest.param(_equipment("Airbrakes", "Radio") + "    breaker .... 5 A\n", False, True, id="a breaker"),
        pytest.param(_equipment("Throttle", "Generator"), True, True, id="both"),
    ],
)
def test_the_equipment_calls_for_it(text: str, engine: bool, electrics: bool) -> None:
    """14 CFR 91.503(c): emergencies of the systems that there are."""
    assert _missing(text) == (_ENGINE if engine else set()) | ({"electrical failure"} if electrics else set())


# ---------------------------------------------------------------- a whole book, one card short


def _example() -> dict[str, str]:
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(EXAMPLE.glob("*.cards"))}


def _without(files: dict[str, str], title: str) -> dict[str, str]:
    """The files without a card, and without what leads to it."""
    out = {}
    for name, text in files.items():
        blocks = [b for b in BLOCK.split(text) if b.partition("\n")[0].partition(" ")[2] != title]
        out[name] = re.sub(rf"(?m)^( +)(?:go to|after) {re.escape(title)}$", r"\1end", "".join(blocks))
    assert out != files
    return out


@pytest.mark.parametrize(
    ("title", "message"),
    [
        ("Engine failure after takeoff", "This handbook has no card for engine failure after takeoff."),
        ("Engine failure in flight", "This handbook has no card for engine failure in flight."),
        ("Forced landing", "This handbook has no card for a forced landing."),
        ("Engine fire on the ground", "This handbook has no card for fire on the ground."),
        ("Alternator failure", "This handbook has no card for electrical failure."),
        ("Before engine start", "This handbook has no normal card for before engine start."),
        ("Before taxi", "This handbook has no normal card for before taxiing."),
        ("Before takeoff", "This handbook has no normal card for before takeoff."),
        ("Climb", "This handbook has no normal card for after takeoff."),
        ("Cruise", "This handbook has no normal card for cruise."),
        ("Descent", "This handbook has no normal card for descent."),
        ("Before landing", "This handbook has no normal card for before landing."),
        ("After landing", "This handbook has no normal card for after landing."),
        ("Engine start", "This handbook has no normal card for engine starting."),
        # These have another card that serves.
        ("Engine fire in flight", None),
        ("Cabin fire in flight", None),
        ("Preflight inspection", None),
        ("Shutdown", None),
        ("Spin recovery", None),
    ],
)
def test_a_card_taken_out_of_the_example_is_missed(title: str, message: str | None) -> None:
    files = _without(_example(), title)
    main = files.pop("handbook.cards")
    said = findings_of(main, files, laid=False)
    found = [finding.message for finding in said if finding.rule in ("missing-phase", "missing-emergency")]
    assert found == ([message] if message else [])


def test_the_example_lacks_nothing() -> None:
    files = _example()
    assert findings_of(files.pop("handbook.cards"), files) == []
