"""What is said to fit for certain fits; and most of what fits is known to."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from dotleader.handbook.cards import Arm, Branch, Card, End, GoTo, Group, Item, Memory, Notice, OneOf, Repeat, Step
from dotleader.page.laid import Frame
from dotleader.page.lay.lay_card import lay_card
from dotleader.page.lay.roominess import needed, surely_fits
from dotleader.source.record import replace
from tests.page.building import FRAME, SPOT, card, item, phrase
from tests.page.strategies import cards, frames

# Short texts, so that what stands around them counts most.
_ITEMS = st.sampled_from([item("Trim", "SET"), item("Fuel pump", "ON"), item("A", "B")])
_LEAVES: st.SearchStrategy[Step] = st.one_of(
    _ITEMS,
    _ITEMS,
    st.sampled_from([Notice("note", phrase("x"), SPOT), Notice("warning", phrase("y z"), SPOT)]),
    st.sampled_from([GoTo("A", "a", SPOT), End(SPOT)]),
)


def _blocks(inner: st.SearchStrategy[Step]) -> st.SearchStrategy[Step]:
    bodies = st.lists(inner, min_size=1, max_size=4).map(tuple)
    return st.one_of(
        bodies.map(lambda steps: Group(phrase("G"), steps, SPOT)),
        bodies.map(lambda steps: OneOf(steps, SPOT)),
        bodies.map(lambda steps: Repeat(phrase("c"), steps, SPOT)),
        st.lists(bodies, min_size=1, max_size=3).map(
            lambda arms: Branch(tuple(Arm("if", phrase("c"), steps, SPOT) for steps in arms), SPOT)
        ),
    )


_SHORT_STEPS = st.one_of(_LEAVES, _LEAVES, _blocks(st.one_of(_LEAVES, _blocks(_LEAVES))))
_MEMORY = st.lists(_ITEMS, max_size=4).map(lambda steps: (Memory(tuple(steps), SPOT),) if steps else ())
short_cards = st.builds(
    lambda memory, steps: card(*memory, *steps), _MEMORY, st.lists(_SHORT_STEPS, min_size=1, max_size=40)
)


@settings(max_examples=100, deadline=None)
@given(st.one_of(cards(), short_cards), frames())
def test_what_surely_fits_stays_on_one_face(card: Card, frame: Frame) -> None:
    if surely_fits(card, frame):
        laid = lay_card(card, frame, frozenset())
        assert (laid.over, len(laid.faces)) == (0, 1)


@settings(max_examples=200, deadline=None)
@given(st.one_of(cards(), short_cards))
def test_a_frame_that_is_just_high_enough_for_the_estimate_is_high_enough(card: Card) -> None:
    """The estimate itself, on a frame made to measure: most drawn cards are too long for a usual one."""
    size = max(12_000, FRAME.smallest)
    pitch = 1400 * size * 254 // 720_000
    frame = replace(FRAME, bottom=FRAME.top + int(needed(card, FRAME, size) * pitch) + 1)
    assert surely_fits(card, frame)
    laid = lay_card(card, frame, frozenset())
    assert (laid.over, len(laid.faces)) == (0, 1)


def test_a_row_of_plain_items_is_never_underrated() -> None:
    for count in range(1, 41):
        steps: list[Item] = [item(f"Breaker {number}", "IN") for number in range(count)]
        made = card(*steps)
        if surely_fits(made, FRAME):
            assert lay_card(made, FRAME, frozenset()).over == 0
