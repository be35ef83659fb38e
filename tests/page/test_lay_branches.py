"""Memory items, gates, notices, branches and go-tos on a laid-out card."""

from __future__ import annotations

from dotleader.page.drawn import Box, Font, Ink, Line, mm, pt
from dotleader.page.laid import LaidCard
from dotleader.page.lay.lay_card import lay_card
from dotleader.page.type.metrics import cap_height, width
from dotleader.source.record import replace

from .building import (
    END,
    FIRE,
    FRAME,
    NO_SYMBOLS,
    branch,
    card,
    go_to,
    item,
    items,
    laid,
    lines,
    memory,
    notice,
    one_of,
    repeat,
    text,
    texts,
)


def test_memory_items_stand_in_a_box_whose_top_their_name_breaks() -> None:
    one = lay_card(FIRE, FRAME, NO_SYMBOLS)
    (ground,) = (found for found in one.faces[0].items if isinstance(found, Box) and found.fill is Ink.MEMORY)
    (rule,) = (line for line in lines(one) if line.width == pt(2.2))
    name = text(one, "MEMORY ITEMS")
    (start, top), *_, (end, level) = rule.points
    assert top == level == ground.y == name.y - cap_height(Font.BOLD, name.size) // 2
    assert start < name.x
    assert name.x + width(name.string, Font.BOLD, name.size) < end
    inside = [found for found in texts(one) if ground.y < found.y < ground.y + ground.h]
    assert {"Cabin heat", "Descent", "OFF", "START", "1", "2"} <= {found.string for found in inside}


def test_a_gate_after_the_memory_items_stands_on_one_line_with_its_label() -> None:
    one = laid(memory(*items(2)), branch(("below 300 m", (go_to("Forced landing"),))), item("Last", "ON"), END)
    condition, target = text(one, "Below 300 m"), text(one, "Forced landing")
    (slot,) = one.faces[0].slots
    assert (condition.x, condition.y) == (0, target.y)
    assert slot.target == "forced landing"
    assert slot.x >= target.x + width(target.string, Font.BOLD, target.size) + mm(2)
    assert slot.y < target.y < slot.y + slot.height


def test_a_gate_that_is_no_place_keeps_its_if() -> None:
    one = laid(memory(*items(2)), branch(("the fire is out", (go_to("Landing"),))), END)
    assert text(one, "If the fire is out").x == 0


def test_elsewhere_the_same_branch_is_an_ordinary_one() -> None:
    one = laid(item("First"), branch(("below 300 m", (go_to("Forced landing"),))), END)
    assert text(one, "If below 300 m").x == mm(9)


def test_a_long_go_to_breaks_and_keeps_room_for_its_label() -> None:
    title = "Landing with the engine stopped, the flaps up and one wheel locked by its brake"
    one = laid(item("First"), go_to(title))
    (slot,) = one.faces[0].slots
    assert title not in [found.string for found in texts(one)]
    words = [found for found in texts(one) if found.font is Font.BOLD and found.x == texts(one)[-1].x]
    assert " ".join(found.string for found in words) == title
    assert slot.x + FRAME.label_width <= FRAME.width


def test_notices_have_three_looks_in_black_and_white() -> None:
    looks = []
    for word in ("warning", "caution", "note"):
        one = laid(notice(word, "Something to know."), item("Last"), END)
        boxes = [found for found in one.faces[0].items if isinstance(found, Box)]
        looks.append(tuple((box.fill, box.stroke) for box in boxes))
    assert looks == [((Ink.BLACK, 0), (Ink.NONE, pt(2.2))), ((Ink.NONE, pt(1)),), ()]
    assert text(laid(notice("warning", "Hot."), item("Last"), END), "WARNING").ink is Ink.WHITE


def test_a_note_in_a_narrow_frame_has_its_label_above() -> None:
    one = lay_card(
        card(notice("caution", "Do not hurry."), item("Last"), END), replace(FRAME, width=mm(60)), NO_SYMBOLS
    )
    assert text(one, "CAUTION").y < text(one, "Do not hurry.").y


def rails(one: LaidCard) -> list[Line]:
    """The rules beside branches: lines of 1.4 pt that begin downwards."""
    return [line for line in lines(one) if line.width == pt(1.4) and line.points[0][0] == line.points[1][0]]


def test_each_level_has_a_rule_6_mm_further_in() -> None:
    one = lay_card(FIRE, FRAME, NO_SYMBOLS)
    assert sorted({rail.points[0][0] for rail in rails(one)}) == [mm(10.5), mm(16.5)]
    assert text(one, "Fuel selector").x == mm(15)
    assert text(one, "Airspeed").x == mm(21)


def test_a_rule_turns_into_a_foot_under_end() -> None:
    one = laid(branch(("it runs", (item("Land"), END))), item("Else"), END)
    (rail,) = rails(one)
    end = next(found for found in texts(one) if found.string == "END")
    assert rail.points[1][1] == rail.points[2][1] > end.y
    assert rail.points[2][0] > end.x + width("END", Font.BOLD, end.size)


def test_a_rule_ends_in_the_middle_of_the_line_it_leaves_by() -> None:
    one = laid(branch(("it stops", (item("Land"), go_to("Ditching")))), item("Else"), END)
    (rail,) = rails(one)
    (head,) = (line for line in lines(one) if line.fill is Ink.BLACK)
    assert rail.points[-1][1] - pt(1.4) // 2 == head.points[0][1]


def test_a_branch_that_rejoins_stays_open() -> None:
    (rail,) = rails(laid(branch(("its breaker is out", (item("Breaker", "IN ONCE"),))), item("Else"), END))
    assert len(rail.points) == 2


def test_a_branch_that_has_ended_in_branches_of_its_own_is_closed() -> None:
    inner = branch(("it burns", (go_to("Fire"),)), ("", (item("Land"), END)))
    one = laid(branch(("it is hot", (inner,))), item("Else"), END)
    outer = next(rail for rail in rails(one) if rail.points[0][0] == mm(10.5))
    assert len(outer.points) == 3


def test_a_repeated_block_says_until_when_and_its_rule_turns_back_up() -> None:
    one = laid(item("First"), repeat("it restarts", item("Mixture"), item("Magnetos")), END)
    until, again = text(one, "Until it restarts"), text(one, "REPEAT from 2")
    (rail,) = rails(one)
    down, corner, back, up = rail.points
    assert until.y < text(one, "Mixture").y < again.y
    assert down[0] == corner[0] > back[0] == up[0]
    assert up[1] < back[1]
    head = next(line for line in lines(one) if line.fill is Ink.BLACK)
    assert head.points[0][1] == down[1]


def test_an_otherwise_after_a_nested_branch_says_to_which_condition_it_belongs() -> None:
    assert text(lay_card(FIRE, FRAME, NO_SYMBOLS), "Otherwise (NOT if the engine burns)")
    assert text(laid(branch(("it burns", (item("A"), END)), ("", (item("B"), END)))), "Otherwise")


def test_alternatives_are_marked_and_counted_as_one_step() -> None:
    one = laid(one_of(item("Flaps", "UP"), item("Flaps", "DOWN")), item("Land"), END)
    assert [found.string for found in texts(one) if found.string.isdigit()] == ["1", "2"]
    marks = [line for line in lines(one) if line.closed and line.fill is Ink.NONE]
    assert len(marks) == 2
    assert text(one, "One of these").y < text(one, "UP").y
