"""Whatever can be written is worked through, and what a flight can come to one way is among what the run says."""

from __future__ import annotations

from random import Random
from typing import TypeVar

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from dotleader.cockpit.moving import Unmet
from dotleader.cockpit.running import run
from dotleader.cockpit.timeline import CardRun
from tests.cockpit.flown import Block, Book, Do, Flier, Fork, Leave, State, Step, Switch
from tests.handbook.texts import resolved

NAMES = ("Alpha", "Bravo", "Delta", "Echo")
MAIN = ("Preflight", "Taxi", "Cruise", "Descent", "Shutdown")
OFF = ("Fire", "Smoke")
FLIGHTS = 6

names = st.sampled_from(NAMES)
positions = st.sampled_from("PQ")


T = TypeVar("T")


def some(one: st.SearchStrategy[T], most: int, least: int = 0) -> st.SearchStrategy[tuple[T, ...]]:
    return st.lists(one, min_size=least, max_size=most).map(tuple)


def switches(name: str) -> st.SearchStrategy[Switch]:
    others = st.sampled_from([other for other in NAMES if other != name])
    return st.builds(
        Switch,
        st.just(name),
        st.sampled_from((("P", "Q"), ("P", "Q", "R"))),
        st.sampled_from(("P", "P", "Q", "")),
        some(st.tuples(st.sampled_from(("", "P", "Q")), some(st.tuples(others, positions), 2, 1)), 1),
        some(st.tuples(positions, others, positions), 2),
        st.sampled_from(((), (), (("P", "Q"),), (("Q", "P"),))),
    )


words = st.sampled_from(("P", "Q", "P", "Q", "EITHER", "OTHER"))
row = some(words, 2, 1)
items = st.builds(
    lambda on, ways, stays, option: Do(on, () if stays else ways, stays, option),
    st.lists(names, min_size=1, max_size=2, unique=True).map(tuple),
    st.one_of(st.tuples(row), st.tuples(st.tuples(words), st.tuples(words)), st.tuples(st.tuples(words), st.just(()))),
    st.sampled_from(("", "", "", "", "P")),
    st.sampled_from(("", "", "", "with", "without")),
)
conditions = st.one_of(st.none(), st.tuples(names, positions, st.booleans()))


def steps(depth: int, leaves: tuple[str, ...]) -> st.SearchStrategy[tuple[Step, ...]]:
    one: st.SearchStrategy[Step] = items
    if depth:
        inner = steps(depth - 1, leaves)
        one = st.one_of(
            items,
            items,
            st.builds(Fork, some(st.tuples(conditions, inner), 2, 1), st.one_of(st.just(()), inner)),
            st.builds(Block, st.sampled_from(("group Some", "one of", "repeat until done")), inner),
            st.sampled_from(leaves).map(Leave),
        )
    return some(one, 3, 1)


books = st.builds(
    Book,
    st.tuples(*(switches(name) for name in NAMES)),
    st.fixed_dictionaries({title: steps(2, ("", *MAIN, *OFF)) for title in MAIN}),
    st.fixed_dictionaries({title: steps(2, ("", *OFF, "Taxi")) for title in OFF}),
)


class Flight:
    """One flight, held against the run card by card."""

    def __init__(self, book: Book, dice: Random) -> None:
        text = book.text()
        handbook, findings = resolved(text)
        assert not findings, (text, [(finding.rule, finding.message) for finding in findings])
        self.book, self.dice, self.done = book, dice, run(handbook)
        assert not self.done.full
        self.switches = {switch.name: switch for switch in book.switches}
        self.moments: list[State] = []

    def fly(self) -> None:
        state = {switch.name: switch.parked for switch in self.book.switches} | {"[ice]": ""}
        self.moments = []
        waiting = ""
        lost = False
        for title in MAIN:  # the order of the phases, and not of the text
            if waiting not in ("", title):
                continue
            if title == "Cruise":
                self.moments.append(dict(state))
            flier = Flier(self.switches, self.dice, state, self.note if title == "Cruise" else lambda _: None)
            waiting = flier.card(self.book.main[title])
            self.hold(self.of(title, self.done.main), flier, waiting)
            if waiting and (waiting in OFF or MAIN.index(waiting) <= MAIN.index(title)):
                lost = True
                break
        if lost:
            self.off(waiting, state)
        for moment in self.moments:
            self.off(self.dice.choice(OFF), dict(moment))

    def note(self, state: State) -> None:
        self.moments.append(dict(state))

    def off(self, title: str, state: State) -> None:
        """A card off the main line, and where it leads, for a while."""
        for _ in range(5):
            flier = Flier(self.switches, self.dice, state)
            leads = flier.card({**self.book.main, **self.book.off}[title])
            self.hold(self.of(title, self.done.called), flier, leads)
            if not leads:
                return
            title = leads

    @staticmethod
    def of(title: str, cards: tuple[CardRun, ...]) -> CardRun:
        (found,) = (ran for ran in cards if ran.card.title == title)
        return found

    @staticmethod
    def hold(ran: CardRun, flier: Flier, leads: str) -> None:
        state = tuple(flier.state[key if key.startswith("[") else key.capitalize()] for key in ran.cockpit.places)
        ends = ran.after if not leads else [one for to, states in ran.leaps if to.title == leads for one in states]
        assert state in ends, (ran.card.title, leads, state, ends)
        told = {
            (met.what.control.capitalize(), met.what.position)
            for line in ran.lines
            for met in line.met
            if isinstance(met.what, Unmet)
        }
        assert flier.refused <= told, (ran.card.title, flier.refused, told)


@settings(max_examples=40, phases=(Phase.explicit, Phase.generate))
@given(books, st.integers(0, 2**32))
def test_what_a_flight_comes_to_is_among_what_the_run_says(book: Book, seed: int) -> None:
    flight = Flight(book, Random(seed))
    for _ in range(FLIGHTS):
        flight.fly()
