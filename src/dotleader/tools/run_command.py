"""`dotleader run`: the cards worked through against the declared cockpit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dotleader.handbook.phases import ORDER, PHASES, phase_named
from dotleader.report.order import severity_of
from dotleader.source.finding import Severity
from dotleader.syntax.plain import folded
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.discovery import handbook_at
from dotleader.tools.files import Files, shown_name
from dotleader.tools.pipeline import lint_handbook
from dotleader.tools.rule_facts import FACTS
from dotleader.tools.saying import say

if TYPE_CHECKING:  # argparse, and the run itself, are at hand only where they are used
    from collections.abc import Iterable, Mapping

    from rich.console import RenderableType

    from dotleader.cockpit.timeline import CardRun, Run
    from dotleader.handbook.model import Handbook
    from dotleader.tools.command_line import Options, Parser

FORMS = ("table", "json")

HELP = """\
dotleader run HANDBOOK      work the cards through against the cockpit

  Every control begins as it is parked. The normal cards are done in the order
  of the phases: what each item moves (*), what cannot be (!), what was so
  already, and how the cockpit stands at the end of each card. Cards off this
  line are worked through from every state in which they can be called for.

  --card TITLE              this card only, of whatever kind
  --from PHASE              from this phase on
  --to FILE                 draw, into a file that ends in .svg or .pdf: where
                            each control stands in the course of the flight;
                            with --card, the hand's way over the panel
  --coverage                which cards touch each control and each gauge,
                            in the place of the timeline
  --loads                   what is on in each phase against what the alternator
                            gives, and how long the battery lasts without it
  --as table                for people (default)
  --as json                 everything, for programs
  -h, --help                this text

  What is wrong is said by `dotleader lint`. Where there are errors, the run
  says how many, and goes as far as the lines were understood. Ends with 0, or
  with 2 if something could not be read, drawn or written.

  dotleader run handbook.cards
  dotleader run handbook.cards --from descent
  dotleader run handbook.cards --card "Engine failure in flight"
"""


def arguments(parser: Parser) -> None:
    parser.add_argument("handbook", nargs="?", metavar="HANDBOOK")
    parser.add_argument("--card", metavar="TITLE")
    parser.add_argument("--from", dest="phase", metavar="PHASE")
    parser.add_argument("--to", metavar="FILE")
    parser.add_argument("--coverage", action="store_true")
    parser.add_argument("--loads", action="store_true")
    parser.choice("--as", FORMS, dest="form", default="table")


def run(options: Options) -> int:
    if options.handbook is None:
        raise CannotRun("No handbook to work through was named.", "Name its file: `dotleader run handbook.cards`.")
    _refuse_what_does_not_go_together(options)
    files = Files()
    main, _ = handbook_at(options.handbook, files)
    linted = lint_handbook(main, files)
    handbook = linted.handbook
    if not handbook.cards:
        raise CannotRun(f"There is no card in {shown_name(main)}.", "A run needs cards to work through.")
    errors = sum(severity_of(found, FACTS) is Severity.ERROR for found in linted.findings)
    if options.coverage:
        _coverage(options, handbook, errors)
    elif options.loads:
        _loads(options, handbook, errors)
    else:
        _timeline(options, handbook, errors)
    return 0


def _refuse_what_does_not_go_together(options: Options) -> None:
    """Nothing that is asked for is passed over in silence."""
    if options.coverage and options.loads:
        raise CannotRun("`--coverage` and `--loads` are two pages.", "Ask for one at a time.")
    for page, about in (
        (options.coverage and "--coverage", "all cards"),
        (options.loads and "--loads", "a whole flight"),
    ):
        if page and (options.card is not None or options.phase is not None):
            raise CannotRun(f"`{page}` is about {about}.", "Leave out `--card` and `--from`.")
        if page and options.to is not None:
            raise CannotRun(f"`{page}` is a table and not drawn.", f"Leave out `--to`, or `{page}`.")
    if options.card is not None and options.phase is not None:
        raise CannotRun("`--card` names one card, `--from` many.", "Leave out one of them.")
    if options.to is not None and options.form == "json":
        raise CannotRun("`--to` makes a drawing, and that is no JSON.", "Leave out `--to`, or `--as json`.")


def _timeline(options: Options, handbook: Handbook, errors: int) -> None:
    from dotleader.cockpit.running import run as run_through  # noqa: PLC0415

    done = run_through(handbook)
    cards = _wanted(options, done)
    if options.form == "json":
        from dotleader.report.timeline_json import timeline_json  # noqa: PLC0415

        say((timeline_json(done, cards, errors),))
        return
    from dotleader.tools.showing.pages import show  # noqa: PLC0415
    from dotleader.tools.showing.run_page import doubts, summary, timeline  # noqa: PLC0415

    unsure = list(doubts(errors, done))
    if options.to is not None:
        from dotleader.tools.showing.run_drawing import draw  # noqa: PLC0415

        drawn = draw(options.to, handbook, done, cards, hand=options.card is not None, errors=errors)
        say((drawn, *show(*unsure).splitlines()))
        return
    parts = [*unsure, *([""] if unsure else []), *timeline(done, cards)]
    if options.card is None:
        parts += ["", *summary(done, cards)]
    say(show(*parts).splitlines())


def _coverage(options: Options, handbook: Handbook, errors: int) -> None:
    from dotleader.tools.showing.coverage_page import coverage, coverage_object  # noqa: PLC0415

    if options.form == "json":
        _say_object(coverage_object(handbook), errors)
    else:
        _say_page(coverage(handbook), errors)


def _loads(options: Options, handbook: Handbook, errors: int) -> None:
    electrical = handbook.electrical
    if electrical is None:
        raise CannotRun(
            "This handbook does not describe its electrical system.",
            "Add an `electrical` block with `alternator .... 40 A  from kit manual` and the like.",
        )
    from dotleader.cockpit.running import run as run_through  # noqa: PLC0415
    from dotleader.tools.showing.loads_page import loads_object, loads_page  # noqa: PLC0415

    done = run_through(handbook)
    if options.form == "json":
        _say_object(loads_object(handbook, electrical, done), errors)
    else:
        _say_page(loads_page(handbook, electrical, done), errors, done)


def _say_object(found: Mapping[str, object], errors: int) -> None:
    import json  # noqa: PLC0415

    say((json.dumps({**found, "errors": errors}, indent=2),))


def _say_page(page: Iterable[RenderableType], errors: int, done: Run | None = None) -> None:
    from dotleader.tools.showing.pages import show  # noqa: PLC0415
    from dotleader.tools.showing.run_page import doubts  # noqa: PLC0415

    unsure = list(doubts(errors, done))
    say(show(*unsure, *([""] if unsure else []), *page).splitlines())


def _wanted(options: Options, done: Run) -> list[CardRun]:
    """The cards that are asked for. For programs these are all, for people those in the course of a flight, if any."""
    in_flight = (*done.main, *done.side)
    everything = options.form == "json" or options.card is not None or not in_flight
    cards = list(done.cards if everything else in_flight)
    if options.phase is not None:
        phase = phase_named(options.phase)
        if not phase:
            raise CannotRun(f"`{options.phase}` is no phase of a flight.", f"The phases are {', '.join(PHASES)}.")
        cards = [ran for ran in cards if ran.phase and ORDER[ran.phase] >= ORDER[phase]]
        if not cards:
            raise CannotRun(f"No card was worked through from {phase} on.", "Leave out `--from`.")
    if options.card is not None:
        cards = [ran for ran in cards if ran.card.key == folded(options.card)]
        if not cards:
            raise CannotRun(f"No card `{options.card}` was worked through.", _near(options.card, done))
    return cards


def _near(title: str, done: Run) -> str:
    from difflib import get_close_matches  # only after a slip  # noqa: PLC0415

    titles = {ran.card.key: ran.card.title for ran in done.cards}
    close = get_close_matches(folded(title), titles, 1)
    return f"Did you mean `{titles[close[0]]}`?" if close else "Write its title as it stands in the handbook."
