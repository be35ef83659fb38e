"""How a card is built: memory items, endings, triggers, completion lines, length."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.cards import Arm, Branch, End, GoTo, Group, Item, Memory, Notice, OneOf, Phrase, Repeat, Step
from dotleader.handbook.walking import every_step
from dotleader.rules.ways import unreached, ways_through
from dotleader.source.finding import Finding
from dotleader.source.text import SourceText, Spot
from tests.rules.pipeline import findings_of, said


def _card(body: str, kind: str = "emergency", title: str = "Engine failure in flight") -> str:
    """`body` as it stands below the title and the trigger, each line indented by its own spaces and two more."""
    lines = "".join(f"  {line}\n" for line in body.strip("\n").split("\n"))
    led_to = "\nemergency Forced landing\n  when told\n  Speed .... 82 KIAS\n  end\n" if " to Forced" in body else ""
    return f"{kind} {title}\n  when the engine stops\n{lines}{led_to}"


def _found(text: str, rule: str) -> list[Finding]:
    return [finding for finding in findings_of(text) if finding.rule == rule]


# ---------------------------------------------------------------- memory items


def test_memory_on_a_normal_card_is_one_finding_wherever_it_stands() -> None:
    """FAA P-8740-29: normal lists are not to be memorised."""
    for body in ("memory\n  Nose .... DOWN", "Trim .... SET FOR CLIMB\nmemory\n  Nose .... DOWN"):
        assert said(findings_of(_card(body, "normal", "Climb"))) == [("memory-on-normal-card", "memory")]
    nested = _card("group A\n  memory\n    Nose .... DOWN", "normal", "Climb")
    assert said(findings_of(nested)) == [("memory-on-normal-card", "memory")]


@pytest.mark.parametrize(
    ("body", "messages"),
    [
        ("memory\n  Nose .... DOWN\nDoor .... OPEN\nend", []),
        ("note Fly.\nwarning Fly the aircraft.\nmemory\n  Nose .... DOWN\nend", []),
        ("Door .... OPEN\nmemory\n  Nose .... DOWN\nend", ["The memory items stand below `Door`."]),
        (
            "if low\n  Door .... OPEN\nmemory\n  Nose .... DOWN\nend",
            ["The memory items stand below `if low`."],
        ),
        (
            "memory\n  Nose .... DOWN\nDoor .... OPEN\nmemory\n  Flaps .... UP\nend",
            ["`Engine failure in flight` has a second block of memory items."],
        ),
        (
            "Door .... OPEN\nmemory\n  Nose .... DOWN\nmemory\n  Flaps .... UP\nend",
            [
                "The memory items stand below `Door`.",
                "`Engine failure in flight` has a second block of memory items.",
            ],
        ),
    ],
)
@pytest.mark.parametrize("kind", ["emergency", "abnormal"])
def test_memory_comes_first_and_once(kind: str, body: str, messages: list[str]) -> None:
    """FAA P-8740-29: immediate-action items first, then the list."""
    found = findings_of(_card(body, kind))
    assert [finding.message for finding in found] == messages
    assert {finding.rule for finding in found} <= {"memory-not-first"}


@pytest.mark.parametrize(
    ("items", "expected"),
    [
        (3, []),
        (4, [("fourth-memory-item", "Step 4 .... DO 4")]),
        (5, [("many-memory-items", "Step 5 .... DO 5")]),
        (9, [("many-memory-items", "Step 5 .... DO 5")]),
    ],
)
def test_four_memory_items_are_the_most(items: int, expected: list[tuple[str, str]]) -> None:
    """UK CAA CAP 676 (issue 3, 2006) chapter 7 paragraph 2.6: four or fewer, preferably fewer than four."""
    rows = "\n".join(f"  Step {number} .... DO {number}" for number in range(1, items + 1))
    assert said(findings_of(_card(f"memory\n{rows}\nend"))) == expected


def test_an_item_over_two_controls_is_one_and_a_notice_is_none() -> None:
    body = "memory\n  Left + Right .... OFF\n  note Fly.\n  Nose .... DOWN\n  Step .... DO\nend"
    assert said(findings_of(_card(body))) == []


# ---------------------------------------------------------------- endings


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        pytest.param("Nose .... DOWN\nend", [], id="end"),
        pytest.param("Nose .... DOWN\ngo to Forced landing", [], id="go to"),
        pytest.param(
            "Nose .... DOWN\nLand .... AT ONCE", [("Land .... AT ONCE", "The card")], id="a landing is no end"
        ),
        pytest.param("Nose .... DOWN\nnote Fly.", [("note Fly.", "The card")], id="a notice last"),
        pytest.param(
            "Nose .... DOWN\nif A\n  Door .... OPEN\n  end",
            [("if A", "Unless `A`, the card")],
            id="past a branch",
        ),
        pytest.param(
            "if A\n  Door .... OPEN\n  end\nor if B\n  Door .... SHUT\notherwise\n  end",
            [("Door .... SHUT", "If `B`, the card")],
            id="one arm",
        ),
        pytest.param(
            "if A\n  Door .... OPEN\notherwise\n  Door .... SHUT\n  end",
            [("Door .... OPEN", "If `A`, the card")],
            id="first arm",
        ),
        pytest.param(
            "if A\n  end\notherwise\n  Door .... SHUT",
            [("Door .... SHUT", "Unless `A`, the card")],
            id="otherwise",
        ),
        pytest.param(
            "if A\n  Door .... OPEN\notherwise\n  Door .... SHUT",
            [("Door .... SHUT", "The card")],
            id="both rejoin and stop",
        ),
        pytest.param("if A\n  Door .... OPEN\notherwise\n  Door .... SHUT\nend", [], id="both rejoin"),
        pytest.param(
            "if A\n  end\nLand .... AT ONCE",
            [("Land .... AT ONCE", "Unless `A`, the card")],
            id="an ended arm before it",
        ),
        pytest.param(
            "if A\n  if B\n    end\n  otherwise\n    Door .... OPEN\notherwise\n  end",
            [("Door .... OPEN", "If `A` and unless `B`, the card")],
            id="two levels",
        ),
        pytest.param("group G\n  Nose .... DOWN\n  end", [], id="end in a group"),
        pytest.param("memory\n  Nose .... DOWN", [("Nose .... DOWN", "The card")], id="memory only"),
        pytest.param("repeat until A\n  Nose .... DOWN", [("Nose .... DOWN", "The card")], id="repeat"),
        pytest.param(
            "one of\n  Nose .... DOWN\n  go to Forced landing",
            [("Nose .... DOWN", "The card")],
            id="one of",
        ),
        pytest.param("one of\n  go to Forced landing\n  end", [], id="one of, all end"),
    ],
)
def test_endings(body: str, expected: list[tuple[str, str]]) -> None:
    """Transport Canada single-crew SOP 7.4: abnormal checks have no completion line, some lead into others."""
    found = findings_of(_card(body))
    assert [(f.spot.text, f.message) for f in found] == [
        (text, f"{way} stops here with neither `end` nor `go to`.") for text, way in expected
    ]
    assert {finding.rule for finding in found} <= {"no-ending"}


def test_a_normal_card_needs_no_ending() -> None:
    assert said(findings_of(_card("Nose .... LOW", "normal", "Climb"))) == []


def test_an_unreadable_ending_is_one_finding() -> None:
    for line in ("End", "goto Forced landing", "go to Forced lnding"):
        assert len(findings_of(_card(f"Nose .... DOWN\n{line}"))) == 1


def test_an_empty_branch_is_one_finding() -> None:
    assert said(findings_of(_card("Nose .... DOWN\nif A\n  end\notherwise"))) == [("empty-block", "otherwise")]


# ---------------------------------------------------------------- ways, against all paths written out

_TEXT = SourceText("a.cards", " " * 100_000)


class _Builder:
    """Steps with places of their own, in the order in which they are built: inner steps after their head."""

    def __init__(self) -> None:
        self.at = count(1)

    def spot(self) -> Spot:
        at = next(self.at)
        return Spot(_TEXT, at, at + 1)

    def phrase(self, spot: Spot) -> Phrase:
        return Phrase((f"c{spot.start}",), spot)

    def step(self, draw: st.DrawFn, depth: int) -> Step:
        kinds = ["item", "item", "notice", "end", "go to"]
        if depth:
            kinds += ["group", "memory", "branch", "branch", "one of", "repeat"]
        spot = self.spot()
        match draw(st.sampled_from(kinds)):
            case "item":
                return Item((), None, (), False, (), (), spot)
            case "notice":
                return Notice("note", self.phrase(spot), spot)
            case "end":
                return End(spot)
            case "go to":
                return GoTo("t", "t", spot)
            case "group":
                return Group(self.phrase(spot), self.steps(draw, depth - 1), spot)
            case "memory":
                return Memory(self.steps(draw, depth - 1), spot)
            case "one of":
                return OneOf(self.steps(draw, depth - 1), spot)
            case "repeat":
                return Repeat(self.phrase(spot), self.steps(draw, depth - 1), spot)
            case _:
                return self.branch(draw, depth, spot)

    def branch(self, draw: st.DrawFn, depth: int, spot: Spot) -> Branch:
        words = ["if", *["or if"] * draw(st.integers(0, 1)), *["otherwise"] * draw(st.integers(0, 1))]
        arms = []
        for number, word in enumerate(words):
            place = spot if number == 0 else self.spot()
            condition = None if word == "otherwise" else self.phrase(place)
            arms.append(Arm(word, condition, self.steps(draw, depth - 1), place))
        return Branch(tuple(arms), spot)

    def steps(self, draw: st.DrawFn, depth: int) -> tuple[Step, ...]:
        return tuple(self.step(draw, depth) for _ in range(draw(st.integers(0, 3))))


@st.composite
def _steps(draw: st.DrawFn) -> tuple[Step, ...]:
    return _Builder().steps(draw, 3)


Path = tuple[tuple[Spot, ...], bool]
"""The places that a way passes, in turn, and whether it has ended."""


def _paths(steps: tuple[Step, ...]) -> Iterator[Path]:
    """Every way through, written out; of what is repeated one pass, for a second brings no new place."""
    if not steps:
        yield (), False
        return
    for places, ended in _paths_of(steps[0]):
        if ended:
            yield places, True
        else:
            yield from ((places + more, over) for more, over in _paths(steps[1:]))


def _paths_of(step: Step) -> Iterator[Path]:
    match step:
        case Item() | Notice():
            yield (step.spot,), False
        case End() | GoTo():
            yield (step.spot,), True
        case Group(steps=inner) | Memory(steps=inner) | Repeat(steps=inner):
            yield from (((step.spot, *places), ended) for places, ended in _paths(inner))
        case OneOf(inner):
            alternatives = [one for one in inner if not isinstance(one, Notice)]
            for one in alternatives:
                yield from (((step.spot, *places), ended) for places, ended in _paths_of(one))
            if not alternatives:
                yield (step.spot,), False
        case Branch(arms):
            for arm in arms:
                yield from (((arm.spot, *places), ended) for places, ended in _paths(arm.steps))
            if arms[-1].word != "otherwise":
                yield (arms[0].spot,), False


@given(_steps())
def test_a_way_without_an_ending_is_found_where_it_stops(steps: tuple[Step, ...]) -> None:
    start = Spot(_TEXT, 0, 1)
    stops = ways_through(steps, start).stops
    last = {places[-1] if places else start for places, ended in _paths(steps) if not ended}
    assert bool(stops) == bool(last)
    assert {stop.spot for stop in stops} <= last


@given(_steps())
def test_what_leads_to_a_stop_does_lead_there(steps: tuple[Step, ...]) -> None:
    """Each condition that is named is met on some way that stops at that place."""
    start = Spot(_TEXT, 0, 1)
    open_ways = [places for places, ended in _paths(steps) if not ended]
    for stop in ways_through(steps, start).stops:
        taken = {int(said[len("if `c") : -1]) for said in stop.conditions if said.startswith("if ")}
        there = [places for places in open_ways if (places[-1] if places else start) == stop.spot]
        assert any(taken <= {place.start for place in places} for places in there)


@given(_steps())
def test_every_step_that_no_way_passes_stands_at_or_below_one_that_is_marked(steps: tuple[Step, ...]) -> None:
    passed = {place for places, _ in _paths(steps) for place in places}
    marked = [step for step, _ in unreached(steps)]
    assert not any(step.spot in passed for step in marked)
    if not marked:
        alternatives = {one.spot for step in every_step(steps) if isinstance(step, OneOf) for one in step.steps}
        assert {step.spot for step in every_step(steps)} - alternatives <= passed


# ---------------------------------------------------------------- after the end


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ("Nose .... DOWN\nend\nDoor .... OPEN\nGate .... SHUT", ["Door .... OPEN"]),
        ("Nose .... DOWN\nend\nnote The battery lasts.", ["note The battery lasts."]),
        ("Nose .... DOWN\ngo to Forced landing\nend", ["end"]),
        ("if A\n  end\n  Door .... OPEN\nend", ["Door .... OPEN"]),
        ("if A\n  end\notherwise\n  end\nif B\n  Door .... OPEN\nend", ["if B"]),
        ("if A\n  end\nDoor .... OPEN\nend", []),
        ("group G\n  Nose .... DOWN\n  end\nDoor .... OPEN", ["Door .... OPEN"]),
        ("one of\n  go to Forced landing\n  end", []),
    ],
)
def test_after_the_end(body: str, expected: list[str]) -> None:
    found = findings_of(_card(body))
    assert [finding.spot.text for finding in found] == expected
    assert {finding.rule for finding in found} <= {"after-the-end"}


# ---------------------------------------------------------------- triggers and empty cards


@pytest.mark.parametrize("kind", ["normal", "abnormal", "emergency"])
def test_every_card_says_when(kind: str) -> None:
    """FAA AC 120-71B (2017) 5.1.5: the start of a checklist needs a clear external cue."""
    ending = "" if kind == "normal" else "  end\n"
    assert said(findings_of(f"{kind} Climb\n  Nose .... LOW\n{ending}")) == [("no-trigger", "Climb")]
    assert said(findings_of(f"{kind} Climb\n  when climbing\n  Nose .... LOW\n{ending}")) == []


def test_an_empty_card_is_one_finding() -> None:
    for body in ("note Fly.", "note Fly.\nend", "if A\n  note Fly.\nend"):
        assert said(findings_of(_card(body))) == [("empty-card", "Engine failure in flight")]
    assert said(findings_of(_card("if A\n  go to Forced landing\ngo to Forced landing"))) == []


def test_a_card_whose_lines_are_not_understood_is_not_called_empty() -> None:
    assert {rule for rule, _ in said(findings_of("normal Climb\n  when climbing\n  This is a whole sentence.\n"))} == {
        "stray-line"
    }


# ---------------------------------------------------------------- completion lines


@pytest.mark.parametrize(
    "line",
    [
        "Before takeoff checklist .... COMPLETE",
        "BEFORE TAKEOFF CHECKLIST .... COMPLETED",
        "Before takeoff .... COMPLETE",
        "Checklist .... COMPLETE",
        "Check list .... DONE",
        "Before takeoff checks .... COMPLETE",
        "Checklist complete .... CALLED",
        "note Before takeoff checklist complete.",
        "note Checks completed",
        "note The checklist is now complete",
        "note End of checklist",
        "caution End of the before takeoff checks.",
        "group Before takeoff complete",
    ],
)
def test_completion_lines(line: str) -> None:
    """NASA CR-177549 appendix A(6): the completion call is the last item; here the printer writes it."""
    found = said(findings_of(_card(f"Trim .... TAKEOFF MARK\n{line}", "normal", "Before takeoff")))
    assert found == [("typed-completion", line)]


@pytest.mark.parametrize(
    "body",
    [
        "Trim .... TAKEOFF MARK\nFlight plan .... FILED",
        "Trim .... TAKEOFF MARK\nnote When the checks are complete, the tower is called.",
        "Trim .... TAKEOFF MARK\nPassenger brief .... GIVEN",
        "Before start checklist .... READ ALOUD\nTrim .... TAKEOFF MARK",
        "Trim .... TAKEOFF MARK\nFuel check .... 18 US gal",
    ],
)
def test_other_last_lines(body: str) -> None:
    assert said(findings_of(_card(body, "normal", "Before takeoff"))) == []


def test_a_completion_line_in_the_last_group_or_before_the_end() -> None:
    body = "group A\n  Trim .... TAKEOFF MARK\n  Checklist .... COMPLETE"
    assert said(findings_of(_card(body, "normal", "Before takeoff"))) == [
        ("typed-completion", "Checklist .... COMPLETE")
    ]
    found = findings_of(_card("Nose .... DOWN\nChecklist .... COMPLETE\nend"))
    assert said(found) == [("typed-completion", "Checklist .... COMPLETE")]
    assert "`end`" in found[0].help


# ---------------------------------------------------------------- length


def _long(items: int, stock: str = "stock A6\n\n") -> str:
    rows = "".join(f"  Breaker {number} .... IN\n" for number in range(1, items + 1))
    unmeasured = "rules\n  long-block .... 60 items\n  very-long-block .... 60 items\n\n"
    return f"{stock}{unmeasured}normal Before engine start\n  when seated\n{rows}"


def test_a_card_is_said_to_be_too_long_by_the_lines_that_do_not_fit() -> None:
    """UK CAA CAP 676: keeping a drill on one page may justify the smallest type; by how much it fails is counted."""
    fits = max(items for items in range(1, 40) if not findings_of(_long(items)))
    found = findings_of(_long(fits + 1))
    assert said(found) == [("card-continued", "Before engine start")]
    assert found[0].message.endswith("it is 1 printed line too long for one.")
    more = findings_of(_long(fits + 4))
    assert [finding.rule for finding in more] == ["card-continued"]
    assert findings_of(_long(fits + 1, "stock A5\n\n")) == []


def test_three_faces_are_an_error_and_nothing_else_is_said() -> None:
    found = findings_of(_long(60))
    assert [finding.rule for finding in found] == ["card-too-long"]
    assert found[0].message.startswith("`Before engine start` needs ")


def test_on_an_impossible_stock_nothing_is_laid_out() -> None:
    assert {rule for rule, _ in said(findings_of(_long(60, "stock\n  leaf .... 20 x 20 mm\n\n")))} == {
        "impossible-stock"
    }
