"""`dotleader printer`: how far the backs that a printer prints are out of register."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterator
from shlex import quote
from typing import TYPE_CHECKING

from dotleader.handbook.stocks.sizes import PAPERS, SIZES
from dotleader.page.sheet.alignment import MOST_MOVED, Moved, beyond, further, said
from dotleader.page.sheet.calibration import measured
from dotleader.page.sheet.duplex import TURNINGS
from dotleader.report.glyphs import escaped
from dotleader.report.terminal import terminal_for
from dotleader.source.record import replace
from dotleader.tools.cannot_run import CannotRun
from dotleader.tools.files import shown_name
from dotleader.tools.printing.printer_store import change, kept, named, store_path
from dotleader.tools.printing.printers import LONGEST_NAME, NONE, USUAL_PAPER, Printer, block, found, printer_name
from dotleader.tools.saying import say

if TYPE_CHECKING:  # argparse is at hand only where a command line is read
    from dotleader.tools.command_line import Options, Parser

HELP = """\
dotleader printer [DO NAME] keep how far a printer's backs are out of register

  A printer moves what it prints on the back of a sheet by a millimetre or so.
  Print the calibration sheet (see `dotleader print --help`), read it as it
  says, and keep what it reads under a name for the printer. From then on
  `dotleader print` can right the backs of the sheets for that printer.

  Without words, the printers in a line each. DO is one of
    set NAME                keep what was read, or change it
    show NAME               all that is kept of a printer, and where
    delete NAME             forget a printer

  --right A [B]             with `set`: what scales A and B read, millimetres
                            to the right (left is below zero); one number
                            moves without stretching
  --down C [D]              the same of scales C and D, downwards
  --paper PAPER             what the sheet was printed on: A3, A4, A5, Letter
                            or Legal; without it, as before, or A4
  --turn EDGE               about which edge it was turned: `long-edge` or
                            `short-edge`; without it, as before, or the long
  --further                 the sheet was corrected for this printer already:
                            what was read is added
  --default                 take this printer where none is named; `set none`
                            with it: take none
  -h, --help                this text

  Ends with 0, or with 2 if a number, a name or a file is not right.

  dotleader printer set Workshop laser --right 0.8 0.7 --down -0.3 -0.25
  dotleader printer set Workshop laser --default
"""

_DO = ("set", "show", "delete")
_NUMBER = re.compile(r"([+\-−]?)(\d*)(?:\.(\d+))?", re.ASCII)
_NUMBERS = ("right", "down")


def arguments(parser: Parser) -> None:
    parser.add_argument("words", nargs="*", metavar="NAME")
    for name in _NUMBERS:
        parser.add_argument(f"--{name}", nargs="+")
    parser.choice("--paper", PAPERS, dest="paper", default=None)
    parser.choice("--turn", TURNINGS, dest="turning", default=None)
    parser.add_argument("--further", action="store_true")
    parser.add_argument("--default", action="store_true")


def run(options: Options) -> int:
    do, *rest = options.words or ("",)
    name = " ".join(rest)
    if do not in (*_DO, ""):
        raise CannotRun(
            f"`{do}` is nothing to do with a printer.", f"It is one of {', '.join(_DO)}: `dotleader printer show NAME`."
        )
    if do and not name:
        raise CannotRun("No printer was named.", f"Say which: `dotleader printer {do} NAME`.")
    numbers = options.right is not None or options.down is not None
    marks = options.further or options.default or options.paper or options.turning
    if do != "set" and (numbers or marks):
        raise CannotRun("Numbers and marks go with `set`.", "`dotleader printer set NAME --right 0.8 --down -0.3`")
    match do:
        case "set":
            say(_set(name, options, numbers))
        case "show":
            say([*map(_plain, block(named(name, kept()))), "", f"It is kept in {_plain(shown_name(store_path()))}."])
        case "delete":
            say(_delete(name))
        case _:
            say(_list(kept()))
    return 0


def _list(printers: tuple[Printer, ...]) -> Iterator[str]:
    if not printers:
        yield "No printer is kept yet. `dotleader print --calibration` prints the sheet to read one by."
    width = max((len(_plain(printer.name)) for printer in printers), default=0)
    for printer in printers:
        default = " (default)" if printer.default else ""
        yield f"{_plain(printer.name):<{width}}  {said(printer.moved)}{default}"


def _set(name: str, options: Options, numbers: bool) -> Iterator[str]:
    if name.casefold() == NONE:
        if numbers or not options.default:
            raise CannotRun(f"`{name}` stands for no printer and has no numbers.", "Take another name.")
        change(lambda printers: tuple(replace(printer, default=False) for printer in printers))
        yield "No printer is the default now: backs are righted where `--printer` names one."
        return
    if not printer_name(name):
        raise CannotRun(
            f"`{_plain(name)}` cannot be the name of a printer.",
            f"It has letters, digits and signs, {LONGEST_NAME} at most, and does not begin with a hyphen.",
        )
    if not numbers and not options.default:
        raise CannotRun("No number was given.", f"`dotleader printer set {name} --right 0.8 --down -0.3`")
    right, down = (_read(option, getattr(options, option)) for option in _NUMBERS)
    made = change(lambda printers: _with(printers, name, options, right, down))
    printer = named(name, made)
    yield f"{_plain(printer.name)}: the back is out by {said(printer.moved)}."
    if printer.default:
        yield "Sheets are corrected for it from now on; `dotleader print --printer none` prints without."
    else:
        yield f"`dotleader print --printer {_quoted(printer.name)}` corrects the backs of sheets for it."


Pair = tuple[int, int]


def _with(
    printers: tuple[Printer, ...], name: str, options: Options, right: Pair | None, down: Pair | None
) -> tuple[Printer, ...]:
    """The printers with one of them set. What is not given stays, or is nothing on a new one."""
    before = found(name, printers)
    if before is None and right is None and down is None:
        named(name, printers)
    if before is None and options.further:
        raise CannotRun(f"There is no printer `{name}` to add to.", "Leave `--further` out to keep a new one.")
    old = before.moved if before else Moved()
    paper = options.paper or (before.paper if before else USUAL_PAPER)
    moved = measured(right or (0, 0), down or (0, 0), SIZES[paper])
    if options.further:
        moved = further(old, moved)
    if right is None and not options.further:
        moved = replace(moved, right=old.right, wider=old.wider)
    if down is None and not options.further:
        moved = replace(moved, down=old.down, longer=old.longer)
    for fault in beyond(moved):
        raise CannotRun(fault, "Read the sheet again; if it is so, the printer itself has to be mended.")
    made = Printer(
        before.name if before else printer_name(name),
        moved,
        paper,
        options.default or (before is not None and before.default),
        options.turning or (before.turning if before else TURNINGS[0]),
    )
    kept_ones = tuple(replace(each, default=each.default and not made.default) for each in printers)
    if before is None:
        return (*kept_ones, made)
    return tuple(made if each.name == before.name else each for each in kept_ones)


def _delete(name: str) -> Iterator[str]:
    was = named(name, kept())
    change(lambda printers: tuple(each for each in printers if each is not named(name, printers)))
    yield f"{_plain(was.name)} was deleted."
    if was.default:
        yield "It was the default: backs are righted now where `--printer` names a printer."


def _read(option: str, words: list[str] | None) -> Pair | None:
    """One or two numbers in millimetres as two in micrometres."""
    if words is None:
        return None
    numbers = [_micrometres(option, word) for word in words]
    if len(numbers) > 2:
        raise CannotRun(f"`--{option}` takes one number or two, and here are {len(numbers)}.")
    return numbers[0], numbers[-1]


def _micrometres(option: str, word: str) -> int:
    number = _NUMBER.fullmatch(word)
    if not number or not (number[2] or number[3]):
        pointed = word.replace(",", ".")
        advice = f"Write it with a point: {pointed}." if word != pointed and _NUMBER.fullmatch(pointed) else ""
        raise CannotRun(
            f"`--{option} {_plain(word)}` is no number.",
            advice or "Write millimetres like 0.8 or -0.25, without a unit.",
        )
    whole, rest = number[2].lstrip("0"), (number[3] or "")[:3]  # nothing is read finer than a micrometre
    far = len(whole) > 4  # more digits than need be read
    value = 0 if far else int(whole + rest.ljust(3, "0"))
    if far or value > MOST_MOVED:
        raise CannotRun(
            f"`--{option} {word}` is beyond 5 mm, and more is not righted.",
            "Read the sheet again; if it is so, the printer itself has to be mended.",
        )
    return value if number[1] in ("", "+") else -value


def _quoted(name: str) -> str:
    """The name as one word of a command line: in double quotes, which all shells have, where these are enough."""
    if any(mark in name for mark in '"$`!\\'):
        return quote(_plain(name))
    return f'"{_plain(name)}"' if re.search(r"[^\w.,:+-]", name) else _plain(name)


def _plain(text: str) -> str:
    return escaped(text, terminal_for(sys.stdout, os.environ))
