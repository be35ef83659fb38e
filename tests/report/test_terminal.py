"""When there is colour, how wide the lines are, and what cannot be shown."""

from __future__ import annotations

import fcntl
import io
import os
import pty
import struct
import termios

import pytest

from dotleader.report.terminal import Terminal, terminal_for


class Screen(io.StringIO):
    encoding = "utf-8"  # type: ignore[assignment]

    def isatty(self) -> bool:
        return True


class Pipe(io.StringIO):
    encoding = "ascii"  # type: ignore[assignment]


@pytest.mark.parametrize(
    ("environ", "on_screen", "in_pipe"),
    [
        ({}, True, False),
        ({"TERM": "dumb"}, False, False),
        ({"NO_COLOR": "1"}, False, False),
        ({"NO_COLOR": ""}, True, False),
        ({"NO_COLOR": "1", "FORCE_COLOR": "1"}, False, False),
        ({"FORCE_COLOR": "1"}, True, True),
        ({"FORCE_COLOR": "1", "TERM": "dumb"}, True, True),
        ({"FORCE_COLOR": "0"}, False, False),
        ({"FORCE_COLOR": ""}, True, False),
    ],
)
def test_colour(environ: dict[str, str], on_screen: bool, in_pipe: bool) -> None:
    assert terminal_for(Screen(), environ).colour is on_screen
    assert terminal_for(Pipe(), environ).colour is in_pipe


def test_width_is_eighty_where_there_is_no_terminal() -> None:
    assert terminal_for(Pipe(), {}).width == 80
    assert terminal_for(Screen(), {}).width == 80  # it has no number to ask with


@pytest.mark.parametrize(("columns", "width"), [(20, 40), (72, 72), (240, 100), (0, 80)])
def test_width_of_a_terminal(columns: int, width: int) -> None:
    main, other = pty.openpty()
    try:
        fcntl.ioctl(other, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
        with os.fdopen(os.dup(other), "w") as stream:
            assert terminal_for(stream, {}).width == width
    finally:
        os.close(main)
        os.close(other)


@pytest.mark.parametrize(
    ("columns", "width"), [("40", 40), ("7", 40), ("72", 72), ("240", 100), ("0", 80), ("wide", 80)]
)
def test_columns_that_the_user_asks_for(columns: str, width: int) -> None:
    assert terminal_for(Pipe(), {"COLUMNS": columns}).width == width
    assert terminal_for(Screen(), {"COLUMNS": columns}).width == width


def test_a_closed_stream_shows_nothing_in_colour() -> None:
    assert terminal_for(None, {"FORCE_COLOR": "1"}) == Terminal()


def test_what_an_encoding_shows() -> None:
    assert Terminal(encoding="utf-8").shows("→ 燃")
    assert Terminal(encoding="latin-1").shows("é")
    assert not Terminal(encoding="latin-1").shows("→")
    assert not Terminal(encoding="no such encoding").shows("→")
    assert Terminal(encoding="ascii").pick("…", "...") == "..."
