"""Cards and frames of every kind, shared by the property tests of layout and print."""

from __future__ import annotations

from hypothesis import strategies as st

from dotleader.handbook.cards import (
    Arm,
    Branch,
    Card,
    Challenge,
    End,
    Essay,
    Explained,
    GoTo,
    Group,
    Item,
    Kind,
    Memory,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
    Unread,
    Use,
)
from dotleader.page.drawn import mm
from dotleader.page.laid import Frame
from dotleader.source.record import replace

from .building import FRAME, SPOT, card

_LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_PLAIN = st.text(_LETTERS + "0123456789,.;:()+-/'°é", min_size=1, max_size=9)
_LONG = st.text(_LETTERS + "-/", min_size=20, max_size=300)
_FIXED = st.sampled_from(["VNE", "VS0.", "250", "m", "ft", "-2", "A", "the", "+", "Ω", "→", "½", "…"])
words = st.one_of(*[_PLAIN] * 8, _FIXED, *[_FIXED], _LONG)
"""Mostly short words, numbers with units and symbols among them, now and then one of up to 300 characters."""

uses = st.builds(
    Use, st.just("a value"), st.just("a value"), st.sampled_from(["82 KIAS", "55 to 95 psi", "10°", "7"]), st.just(SPOT)
)


@st.composite
def phrases(draw: st.DrawFn, most: int = 8) -> Phrase:
    runs: list[str | Use] = [" ".join(draw(st.lists(words, max_size=most)))]
    if draw(st.integers(0, 4)) == 0:
        runs += [" ", draw(uses), draw(st.sampled_from(["", ".", " and more"]))]
    return Phrase(tuple(run for run in runs if run), SPOT)


@st.composite
def items(draw: st.DrawFn) -> Item:
    only = draw(st.sampled_from([(), (), (), (("with", "night lights"),), (("without", "floats"), ("with", "skis"))]))
    return Item(
        challenges=tuple(Challenge(one) for one in draw(st.lists(phrases(4), min_size=1, max_size=3))),
        response=draw(st.one_of(phrases(5), phrases(2), st.none())),
        detail=tuple(draw(st.lists(phrases(25), max_size=2))),
        critical=draw(st.booleans()),
        only=only,
        moves=(),
        spot=SPOT,
    )


notices = st.builds(Notice, st.sampled_from(["note", "caution", "warning"]), phrases(25), st.just(SPOT))
titles = st.lists(words, max_size=8).map(" ".join)
unread = st.builds(Unread, phrases(25), st.just(SPOT))
go_tos = st.builds(GoTo, titles, st.just("a card"), st.just(SPOT))
_LEAVES: st.SearchStrategy[Step] = st.one_of(*[items()] * 6, notices, unread, go_tos, st.just(End(SPOT)))


def _nested(inner: st.SearchStrategy[Step]) -> st.SearchStrategy[Step]:
    body = st.lists(inner, max_size=6).map(tuple)
    arm = st.tuples(phrases(8), body)

    def branch(arms: list[tuple[Phrase, tuple[Step, ...]]], otherwise: tuple[Step, ...] | None) -> Branch:
        made = [Arm("or if" if at else "if", condition, steps, SPOT) for at, (condition, steps) in enumerate(arms)]
        if otherwise is not None:
            made.append(Arm("otherwise", None, otherwise, SPOT))
        return Branch(tuple(made), SPOT)

    return st.one_of(
        st.builds(branch, st.lists(arm, min_size=1, max_size=3), st.none() | body),
        st.builds(Group, phrases(4), body, st.just(SPOT)),
        st.builds(OneOf, body, st.just(SPOT)),
        st.builds(Repeat, phrases(6), body, st.just(SPOT)),
        st.builds(Memory, body, st.just(SPOT)),
    )


steps: st.SearchStrategy[Step] = st.recursive(_LEAVES, _nested, max_leaves=25)
"""Any step, nested however deep, also as the language would not have it."""


@st.composite
def cards(draw: st.DrawFn) -> Card:
    made = card(
        *draw(st.lists(steps, max_size=30)),
        title=draw(titles),
        kind=draw(st.sampled_from(Kind)),
    )
    return replace(made, when=draw(st.none() | phrases(12)), amplified=tuple(draw(amplified)))


amplified = st.lists(
    st.one_of(phrases(60), st.builds(Explained, items(), st.lists(phrases(40), max_size=3).map(tuple))), max_size=8
)
essays = st.builds(Essay, st.just("text: a text"), titles, st.lists(phrases(80), max_size=12).map(tuple), st.just(SPOT))


@st.composite
def frames(draw: st.DrawFn) -> Frame:
    """From a small leaf at arm's length to a large one with large type."""
    return draw(
        st.sampled_from(
            [
                FRAME,
                replace(FRAME, width=mm(116), height=mm(210), bottom=mm(192)),
                replace(FRAME, width=mm(70), height=mm(148), top=mm(15), bottom=mm(130)),
                replace(FRAME, smallest=17_000, label_width=mm(20), label_height=mm(8.4), label_size=19_000),
                replace(FRAME, smallest=10_500),
            ]
        )
    )


SYMBOLS = frozenset({"VNE", "VS0", "VREF"})
