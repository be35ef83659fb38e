"""What a run meets by kind is all that its cards met, and what moved a control last is found without going through."""

from __future__ import annotations

from dotleader.cockpit.moving import Already, Astray, Change, Unmet
from dotleader.cockpit.running import run
from dotleader.cockpit.timeline import Occasion, Run
from dotleader.rules.cockpit.tracing import last_moved
from tests.handbook.texts import resolved

BOOK = """\
equipment
  Master ....... OFF, ON
    parked ..... OFF
  Pump ......... OFF, ON
    parked ..... OFF
    needs ...... Master ON
  Lights ....... OFF, ON
    parked ..... OFF

normal Before start
  when seated
  Pump ..... ON
  Lights ... OFF then ON
  Master ... ON
  Pump ..... OFF then ON

normal Taxi
  when clear
  Lights ... STAYS OFF
  Pump ..... OFF

normal Shutdown
  when parked
  Lights ... OFF
  Master ... OFF
  Pump ..... ON

emergency Fire
  during taxi
  when it burns
  Master ... OFF
  Pump ..... ON
  Lights ... STAYS OFF
  end
"""


def _run(text: str) -> Run:
    return run(resolved(text)[0])


def test_every_kind_is_complete_and_in_the_order_of_the_cards() -> None:
    done = _run(BOOK)
    every = [(ran, line, met) for ran in done.cards for line in ran.lines for met in line.met]
    for kind, found in ((Unmet, done.occasions.unmet), (Astray, done.occasions.astray)):
        wanted = [(ran, line, met) for ran, line, met in every if isinstance(met.what, kind)]
        assert len(wanted) > 1
        assert [(one.ran, one.line, one.met) for one in found] == wanted
    firsts = [met for _, _, met in every if isinstance(met.what, Already) and met.what.first]
    assert firsts
    assert [one.met for one in done.occasions.first] == firsts


def test_an_occasion_knows_the_place_of_its_card() -> None:
    done = _run(BOOK)
    assert {one.called for one in done.occasions.unmet} == {True, False}
    for one in (*done.occasions.unmet, *done.occasions.astray):
        assert one.called == any(one.ran is ran for ran in done.called)
        assert (one.place >= 0) == any(one.ran is ran for ran in done.main)
        assert one.place < 0 or done.main[one.place] is one.ran


def _gone_through(done: Run, occasion: Occasion, control: str) -> object:
    """The last item that moved a control before a line, by going through all lines before it."""
    found = None
    before = done.main[: occasion.place] if occasion.place >= 0 else ()
    for ran in (*before, occasion.ran):
        for line in ran.lines:
            if line is occasion.line:
                return found
            if any(isinstance(met.what, Change) and met.what.control == control for met in line.met):
                found = line.item
    return found


def test_what_moved_a_control_last() -> None:
    done = _run(BOOK)
    moved = 0
    for occasion in (*done.occasions.unmet, *done.occasions.astray, *done.occasions.first):
        for control in done.cockpit.controls:
            mover = last_moved(done, occasion, control)
            assert (mover.item if mover is not None else None) is _gone_through(done, occasion, control)
            moved += mover is not None
    assert moved > 5
