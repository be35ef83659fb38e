"""Where printers are kept: a file in the user's configuration folder.

Which folder that is: on Windows `%APPDATA%`; else `$XDG_CONFIG_HOME` where it is set to a whole path; else on macOS
`~/Library/Application Support`, elsewhere `~/.config` (XDG Base Directory Specification 0.8, which tells to ignore
a path that is not whole). It is not made before something is kept.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable

from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.files import shown_name
from dotleader.tools.lock import locked
from dotleader.tools.printing.printers import NONE, Damage, Printer, found, read, written
from dotleader.tools.writing import put_file

_FILE = "printers.txt"
_LARGEST = 1_000_000
_BUSY = ("Another command is changing the printers in", "Try again when it has ended.")


def store_path() -> str:
    """The file that printers are kept in. Raises CannotRun where the user has no folder."""
    home = os.path.expanduser("~")
    xdg = os.environ.get("XDG_CONFIG_HOME", "")
    if sys.platform == "win32":
        top = os.environ.get("APPDATA", "")
    elif os.path.isabs(xdg):
        top = xdg
    elif sys.platform == "darwin":
        top = os.path.join(home, "Library", "Application Support")
    else:
        top = os.path.join(home, ".config")
    if not os.path.isabs(top):
        raise CannotRun(
            "There is no folder to keep printers in: no home folder is known.",
            "Set APPDATA to one." if sys.platform == "win32" else "Set HOME or XDG_CONFIG_HOME to one.",
        )
    return os.path.join(top, "dotleader", _FILE)


def _elsewhere() -> str:
    variable = "APPDATA" if sys.platform == "win32" else "XDG_CONFIG_HOME"
    return f"Mend that, or set {variable} to a folder of your own."


def kept() -> tuple[Printer, ...]:
    """All printers; none where nothing was kept yet. Raises CannotRun where the file cannot be read or is damaged."""
    path = store_path()
    try:
        with open(path, "rb") as file:
            data = file.read(_LARGEST + 1)
    except FileNotFoundError:
        return ()
    except OSError as error:
        raise CannotRun(
            f"The printers in `{shown_name(path)}` cannot be read: {because(error)}.", _elsewhere()
        ) from error
    try:
        printers = read(data.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        printers = Damage(data.count(b"\n", 0, error.start) + 1, "this is not text")
    if len(data) > _LARGEST:
        printers = Damage(1, "it is larger than what printers take")
    if isinstance(printers, Damage):
        raise CannotRun(
            f"The printers in `{shown_name(path)}` cannot be read, because of line {printers.line}: {printers.what}.",
            "Mend that line, or delete the file and set the printers anew.",
        )
    return printers


def change(how: Callable[[tuple[Printer, ...]], tuple[Printer, ...]]) -> tuple[Printer, ...]:
    """Replace the printers by what `how` makes of them, one command at a time; what was made. Raises CannotRun."""
    path = store_path()
    folder = os.path.dirname(path)
    try:
        os.makedirs(folder, exist_ok=True)
    except OSError as error:
        raise CannotRun(f"`{shown_name(folder)}` cannot be made: {because(error)}.", _elsewhere()) from error
    with locked(folder, busy=_BUSY):
        printers = how(kept())
        try:
            put_file(path, written(printers).encode())
        except OSError as error:
            raise CannotRun(
                f"`{shown_name(path)}` cannot be written: {because(error)}.", "The printers are as they were."
            ) from error
    return printers


def named(name: str, printers: tuple[Printer, ...]) -> Printer:
    """The printer of that name. Raises CannotRun where there is none."""
    printer = found(name, printers)
    if printer is None:
        raise CannotRun(f"There is no printer `{name}`.", _advice(name, printers))
    return printer


def chosen(name: str | None) -> Printer | None:
    """The printer that a print is for: the one that is named, else the default one. Raises CannotRun."""
    if name is not None and name.casefold() == NONE:
        return None
    if name is not None:
        return named(name, kept())
    try:
        return next((printer for printer in kept() if printer.default), None)
    except CannotRun as error:
        raise CannotRun(error.message, f"{error.advice} `--printer none` prints without a correction.") from error


def _advice(name: str, printers: tuple[Printer, ...]) -> str:
    if not printers:
        return "None is kept yet: print the sheet of `dotleader print --calibration` and read it."
    from difflib import get_close_matches  # only after a slip  # noqa: PLC0415

    folded = {printer.name.casefold(): printer.name for printer in printers}
    near = [full for short, full in folded.items() if name and short.startswith(name.casefold())]
    near = near or [folded[close] for close in get_close_matches(name.casefold(), folded, 1)]
    if near:
        return f"Did you mean `{near[0]}`?"
    return f"There {'is' if len(folded) == 1 else 'are'} {', '.join(f'`{full}`' for full in folded.values())}."
