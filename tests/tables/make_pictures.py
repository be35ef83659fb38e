"""Make the pictures of the README from the examples: run `python -m tests.tables.make_pictures` at the top."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import pypdfium2
from rich.console import Console
from rich.terminal_theme import TerminalTheme
from rich.text import Text

TOP = Path(__file__).parents[2]
PICTURES = TOP / "docs" / "pictures"
FACES = {"3-3": "emergency.png", "4-8": "normal.png"}
PIXELS_PER_INCH = 110

PAPER = TerminalTheme(
    (250, 249, 245),
    (30, 30, 30),
    [
        (30, 30, 30),
        (170, 30, 30),
        (20, 110, 60),
        (140, 90, 0),
        (30, 80, 160),
        (120, 50, 130),
        (0, 110, 120),
        (90, 90, 90),
    ],
)


def faces() -> None:
    """The faces of `FACES`, by their page labels in the reading copy of the example."""
    with tempfile.TemporaryDirectory() as folder:
        handbook = TOP / "examples" / "ostrel-two" / "handbook.cards"
        command = [sys.executable, "-m", "dotleader", "print", str(handbook), "--to", folder]
        subprocess.run(command, check=True, capture_output=True, timeout=300)
        document = pypdfium2.PdfDocument(Path(folder) / "reading.pdf")
        for number in range(len(document)):
            name = FACES.get(document.get_page_label(number))
            if name:
                picture = document[number].render(scale=PIXELS_PER_INCH / 72).to_pil()
                picture.quantize(64).save(PICTURES / name, optimize=True)
        document.close()


def finding() -> None:
    """A lint of the example with mistakes, as a terminal shows it."""
    command = [sys.executable, "-m", "dotleader", "lint", "examples/with-mistakes.cards"]
    environment = {**os.environ, "FORCE_COLOR": "1", "COLUMNS": "84", "PYTHONIOENCODING": "utf-8"}
    shown = subprocess.run(command, cwd=TOP, env=environment, capture_output=True, timeout=300, check=False)
    first = "\n\n".join(shown.stdout.decode("utf-8").split("\n\n")[:2])
    console = Console(record=True, width=86, file=open(os.devnull, "w"))  # noqa: PTH123, SIM115  # drawn, not shown
    console.print(Text.from_ansi(first))
    svg = console.export_svg(title="", theme=PAPER)
    # A picture of what is said, not of anybody's window; and nothing is to be fetched to show it.
    svg = re.sub(r"@font-face \{.*?\}", "", svg, flags=re.DOTALL)
    svg = re.sub(r"<circle[^>]*/>|<!--.*?-->", "", svg)
    svg = svg.replace("Fira Code, monospace", "DejaVu Sans Mono, Menlo, Consolas, monospace")
    (PICTURES / "finding.svg").write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    PICTURES.mkdir(parents=True, exist_ok=True)
    faces()
    finding()
