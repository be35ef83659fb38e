"""The command line: which command, with which options. Only the module of the command that is asked for is imported."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterable, Sequence
from types import ModuleType
from typing import Any, NoReturn

from dotleader import __version__
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.saying import say

Options = argparse.Namespace

SUMMARIES = {
    "lint": "say what is wrong, and what to do about it",
    "format": "bring sources into their canonical form",
    "print": "lay out cards as pages to read and sheets to cut",
    "baseline": "accept what is found in an old book today",
    "run": "work the cards through against the cockpit",
    "explain": "tell about a rule, or how a value came to be",
    "printer": "keep how far a printer's backs are out of register",
}

_NAME = "dotleader"
_NEGATIVE = re.compile(r"-[\d.,].*")  # also with a slip in it, which the command finds: it is no option
_HELP = f"""\
dotleader {__version__}: checklists in plain text, linted and printed as cards

{{commands}}

  dotleader COMMAND --help  how a command is used
  dotleader --version       which version this is

  dotleader lint .
  dotleader format .
  dotleader print handbook.cards

Nothing here makes an aircraft safe. Who builds and who flies is responsible:
values come from the makers' current documents and the aircraft's own tests,
its operating limitations and local rules go first.
"""


def run(arguments: Sequence[str]) -> int:
    """Run one command; the exit code. Raises CannotRun for what stops it."""
    first, rest = (arguments[0], arguments[1:]) if arguments else ("--help", ())
    if first == "help" and rest and rest[0] in SUMMARIES:
        first, rest = rest[0], ("--help",)
    if first in ("-h", "--help", "help"):
        say(_help().splitlines())
        return 0
    if first in ("-V", "--version"):
        say((f"{_NAME} {__version__}",))
        return 0
    if first not in SUMMARIES:
        raise CannotRun(f"There is no command `{first}`.", _unknown_command(first))
    command = _module(first)
    if "-h" in rest or "--help" in rest:
        say(command.HELP.splitlines())
        return 0
    parser = Parser(first)
    command.arguments(parser)
    code: int = command.run(parser.read(rest))
    return code


def _module(name: str) -> ModuleType:
    from importlib import import_module  # noqa: PLC0415

    return import_module(f"dotleader.tools.{name}_command")


def _help() -> str:
    lines = (f"  dotleader {name:<16}{about}" for name, about in SUMMARIES.items())
    return _HELP.format(commands="\n".join(lines))


def _unknown_command(name: str) -> str:
    if name.startswith("-"):
        return "Options stand after the command: `dotleader lint --strict .`"
    return _meant(name, SUMMARIES) or f"The commands are {', '.join(SUMMARIES)}; `dotleader --help` tells more."


def _meant(name: str, known: Iterable[str]) -> str:
    from difflib import get_close_matches  # only after a slip  # noqa: PLC0415

    close = get_close_matches(name, list(known), 1, 0.65)
    return f"Did you mean `{close[0]}`?" if close else ""


class Parser(argparse.ArgumentParser):
    """Reads the options of one command; what is wrong with them is said in our own words."""

    def __init__(self, command: str) -> None:
        super().__init__(
            prog=f"{_NAME} {command}",
            add_help=False,
            allow_abbrev=False,
            formatter_class=_NoFormatter,
        )
        self.command = command
        self._negative_number_matcher = _NEGATIVE

    def choice(self, option: str, choices: Sequence[str], *, dest: str, default: str | None) -> None:
        """An option that takes one of a few words, in capitals or small letters."""
        known = {choice.casefold(): choice for choice in choices}

        def one_of(word: str) -> str:
            if word.casefold() in known:
                return known[word.casefold()]
            advice = _meant(word, choices) or f"Take one of {', '.join(choices)}."
            raise CannotRun(f"`{option} {word}` is not known.", advice)

        self.add_argument(option, dest=dest, default=default, type=one_of, metavar=option.strip("-").upper())

    def choices(self, option: str, choices: Sequence[str], *, dest: str) -> None:
        """An option that takes one of a few words, may send it to a file (`WORD=FILE`), and may stand several times."""

        def one_of(text: str) -> tuple[str, str]:
            word, to, path = text.partition("=")
            if word not in choices:
                advice = _meant(word, choices) or f"Take one of {', '.join(choices)}."
                raise CannotRun(f"`{option} {word}` is not known.", advice)
            if to and not path:
                raise CannotRun(f"`{option} {text}` names no file.", f"Write `{option} {word}=FILE`.")
            return word, path

        self.add_argument(
            option, dest=dest, default=[], action="append", type=one_of, metavar=option.strip("-").upper()
        )

    def read(self, arguments: Sequence[str]) -> Options:
        """The options; raises CannotRun. Paths may stand before, between and after options."""
        options, extra = self.parse_known_args(arguments)
        for word in extra:
            if word.startswith("-") and word != "-":
                name = word.partition("=")[0]
                advice = _meant(name, self._option_string_actions) or f"See `{self.prog} --help`."
                raise CannotRun(f"`{self.prog}` has no option `{name}`.", advice)
        if extra and not hasattr(options, "paths"):
            raise CannotRun(f"`{extra[0]}` is one name too many.", f"See `{self.prog} --help`.")
        if extra:
            options.paths = [*options.paths, *extra]
        return options

    def error(self, message: str) -> NoReturn:
        """What argparse found wrong, in our words."""
        option = re.match(r"argument (?P<option>\S+): (?P<what>.*)", message)
        advice = f"See `{self.prog} --help`."
        if option and option["what"].startswith("expected"):
            raise CannotRun(f"`{option['option']}` needs a word after it.", advice)
        if option and option["what"].startswith("ignored explicit argument"):
            raise CannotRun(f"`{option['option']}` takes no value.", advice)
        raise CannotRun(f"The command line could not be read: {message}.", advice)


class _NoFormatter(argparse.HelpFormatter):
    """The help texts are written by hand; argparse asks for a formatter whenever an option is added."""

    def __init__(self, prog: str, **_: Any) -> None:
        super().__init__(prog, width=80)
