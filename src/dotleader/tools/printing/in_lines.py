"""Sentences in lines as wide as the terminal."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator

from dotleader.report.terminal import terminal_for
from dotleader.report.wrapping import wrapped


def in_lines(sentences: Iterable[str]) -> Iterator[str]:
    """Each sentence begins a line; what the terminal cannot show is escaped."""
    terminal = terminal_for(sys.stdout, os.environ)
    for sentence in sentences:
        yield from wrapped(sentence, terminal.width, terminal)
