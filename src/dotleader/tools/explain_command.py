"""`dotleader explain`: the page of a rule, or how a value came to be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dotleader.rules.catalogue import BY_NAME, RULES
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.saying import say

if TYPE_CHECKING:  # argparse is at hand only where a command line is read
    from dotleader.tools.command_line import Options, Parser

HELP = """\
dotleader explain [NAME]    tell about a rule, or how a value came to be

  Without NAME, every rule in a line. With the name of a rule, its page: what
  is found, why, who says so, a bad and a good example, how to mend it.

  --in HANDBOOK             NAME is something that this handbook names: a
                            value (how it came to be, from which source, where
                            it is used), a gauge, a control, a source, a card,
                            a book
  -h, --help                this text

  dotleader explain
  dotleader explain vague-response
  dotleader explain VREF --in handbook.cards
  dotleader explain Fuel pump --in handbook.cards
"""

_SHORTEST_PART = 3
"""Letters of a part of a name that is looked for where no whole name is near."""

_OFFERED = 4


def arguments(parser: Parser) -> None:
    parser.add_argument("words", nargs="*", metavar="NAME")
    parser.add_argument("--in", dest="handbook", metavar="HANDBOOK")


def run(options: Options) -> int:
    name = " ".join(options.words)
    if options.handbook is None:
        _rules(name)
    elif name:
        _name(name, options.handbook)
    else:
        raise CannotRun("No name was given.", "Say what to explain: `dotleader explain VREF --in handbook.cards`.")
    return 0


def _rules(name: str) -> None:
    if name and name.lower() not in BY_NAME:
        raise CannotRun(
            f"There is no rule `{name}`.",
            _near(name, list(BY_NAME)) or f"For a name in a handbook: `dotleader explain {name} --in HANDBOOK`.",
        )
    # rich takes longer to import than many a lint takes altogether
    from dotleader.tools.showing.pages import show  # noqa: PLC0415
    from dotleader.tools.showing.rule_page import rule_list, rule_page  # noqa: PLC0415

    say(show(*(rule_page(BY_NAME[name.lower()]) if name else rule_list(RULES))).splitlines())


def _name(name: str, path: str) -> None:
    from dotleader.tools.discovery import handbook_at  # noqa: PLC0415
    from dotleader.tools.files import Files  # noqa: PLC0415
    from dotleader.tools.pipeline import lint_handbook  # noqa: PLC0415
    from dotleader.tools.showing.name_page import name_pages, names_in  # noqa: PLC0415
    from dotleader.tools.showing.pages import show  # noqa: PLC0415

    files = Files()
    handbook = lint_handbook(handbook_at(path, files).main, files).handbook
    pages = list(name_pages(name, handbook))
    if not pages:
        advice = _near(name, names_in(handbook)) or "Values, gauges, controls, sources, cards and books have a page."
        raise CannotRun(f"`{name}` is not declared in {handbook.spot.source.name}.", advice)
    say(show(*pages).splitlines())


def _near(name: str, known: list[str]) -> str:
    from difflib import get_close_matches  # only after a slip  # noqa: PLC0415

    by_folded = {each.casefold(): each for each in known}
    close = get_close_matches(name.casefold(), by_folded, 1) or [
        each for each in by_folded if len(name) >= _SHORTEST_PART and name.casefold() in each
    ]
    offered = [f"`{by_folded[each]}`" for each in close[:_OFFERED]]
    if not offered:
        return ""
    return f"Did you mean {', '.join(offered[:-1])}{' or ' if offered[:-1] else ''}{offered[-1]}?"
