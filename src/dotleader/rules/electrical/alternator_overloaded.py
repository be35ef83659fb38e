"""More switched on at once than the alternator should give for long."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Finding, Related, Severity

_BOOK = """\
electrical from unverified
  alternator .... {rating}
    needs ....... Alternator ON

equipment
  Alternator .... OFF, ON
  Fuel pump ..... OFF, ON
    draws ....... 5 A
  Pitot heat .... OFF, ON
    draws ....... 8 A
  Landing light .... OFF, ON
    draws .......... 4 A

normal Before takeoff
  when holding short
  Alternator .... ON
  Fuel pump ..... ON
  Pitot heat .... ON
  Landing light .... ON
"""

BAD = Example(_BOOK.format(rating="20 A"), (("alternator-overloaded", "20 A"),))
GOOD = Example(_BOOK.format(rating="30 A"))


def check(subject: Subject) -> Iterator[Finding]:
    electrical = subject.handbook.electrical
    if electrical is None or electrical.alternator is None:
        return
    # Only a handbook that asks for it pays for these imports.
    from dotleader.cockpit.circuits import doubtful_loads  # noqa: PLC0415
    from dotleader.cockpit.electric_words import listed_loads, load, rating, share  # noqa: PLC0415
    from dotleader.cockpit.loads import Loads  # noqa: PLC0415
    from dotleader.cockpit.peaks import most, peaks  # noqa: PLC0415

    alternator = electrical.alternator
    limit = alternator.amount * (1 if electrical.read_on else subject.limits.exact(RULE.name) / 100)
    run = subject.run()
    found = peaks(Loads(electrical, run.cockpit), run)
    peak = most(found)
    if peak is None or peak.amps <= limit:
        return
    sure = most(peaks(Loads(electrical, run.cockpit, doubtful_loads(subject.handbook)), run))
    if sure is None or sure.amps <= limit:  # it follows from a number that is said to be doubtful where it stands
        return
    controls = subject.handbook.controls
    over = [one.card.title for one in found if one.fed and one.amps > limit and one is not peak]
    also = f" More than {rating(limit)} are on at once on {_cards(over)}, too." if over else ""
    where = peak.item.spot if peak.item is not None else peak.card.spot
    yield Finding(
        RULE.name,
        alternator.spot,
        f"On `{peak.card.title}` {load(peak.amps)} are on at once, {share(peak.amps, alternator.amount)} of what the "
        f"{alternator.name} gives.{also}",
        f"Leave off what is not needed there, or see that it stays within {rating(limit)}. "
        f"Most is drawn by {listed_loads(peak.on, controls, 4)}.",
        (Related(where, f"Here {load(peak.amps)} are reached."),),
    )


def _cards(titles: list[str]) -> str:
    shown = ", ".join(f"`{title}`" for title in titles[:3])
    return shown + (f" and {len(titles) - 3} more" if len(titles) > 3 else "")


RULE = Rule(
    name="alternator-overloaded",
    severity=Severity.WARNING,
    family="electrical",
    what=(
        "More is on at once, somewhere on the way through the normal cards, than 80 per cent of what the alternator "
        "is rated for; or than all of it, where the `electrical` block names the gauge on which its load is `read "
        "on`. Asked where that block declares an alternator. What draws only while it moves is not counted."
    ),
    why="An alternator that gives all it can for long runs hot and fails, and what it lacks the battery makes up.",
    source=(
        "FAA AC 43.13-1B (CHG 1) par. 11-35a, page 11-12: a rule of thumb, where neither placard nor monitoring is used"
    ),
    mend=(
        "Switch something off earlier or on later, or fit lamps that draw less, or a larger alternator. "
        "`dotleader run --loads` shows what is on when. If the pilot watches the load on a gauge, say so: "
        "`read on .... Ammeter` below `alternator`."
    ),
    bad=(BAD,),
    good=(GOOD,),
    check=check,
)
