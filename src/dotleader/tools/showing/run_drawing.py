"""The drawings of a run, written into a file: the chart of the flight, the hand's way on one card."""

from __future__ import annotations

import os
from collections.abc import Sequence
from io import BytesIO

from dotleader.cockpit.panel import places, way_of
from dotleader.cockpit.timeline import CardRun, Run
from dotleader.handbook.model import Handbook
from dotleader.output.drawing_svg import drawing_svg
from dotleader.page.chart.chart import Drawing, chart
from dotleader.page.chart.panel_path import panel_path
from dotleader.page.chart.tracks import tracks_of
from dotleader.report.summary import counted
from dotleader.tools.cannot_run import CannotRun, because
from dotleader.tools.files import shown_name
from dotleader.tools.writing import put_file


def draw(path: str, handbook: Handbook, done: Run, cards: Sequence[CardRun], *, hand: bool, errors: int) -> str:
    """Draw a run into a file; the sentence that says so. With `hand` the way over the panels on the one card.
    A drawing of a handbook with errors says so itself, because it goes further than what is said here.

    Raises CannotRun where the file cannot be written, or there is nothing to draw.
    """
    ending = os.path.splitext(path)[1].lower()
    if ending not in (".svg", ".pdf"):
        raise CannotRun(f"`{shown_name(path)}` does not say what to draw.", "Its name ends in `.svg` or in `.pdf`.")
    drawing = _hand(handbook, cards[0], errors) if hand else _flight(handbook, done, cards, errors)
    title = cards[0].card.title if hand else handbook.title
    data = _pdf(drawing, title) if ending == ".pdf" else drawing_svg(drawing.width, drawing.height, drawing.items)
    try:
        put_file(path, data)
    except OSError as error:
        raise CannotRun(
            f"`{shown_name(path)}` cannot be written: {because(error)}.",
            "Name a file in a folder that can be written to.",
        ) from error
    return f"{shown_name(path)}  " + (
        f"the hand's way on {title}" if hand else "where the controls stand in the course of the flight"
    )


def _flight(handbook: Handbook, done: Run, cards: Sequence[CardRun], errors: int) -> Drawing:
    tracks = tracks_of(done, [ran for ran in cards if ran in done.main])
    if not tracks.tracks:
        raise CannotRun(
            "There is nothing to draw: no control moves on these cards.",
            "Controls are declared in an `equipment` block; cards follow one another by their phases.",
        )
    about = [handbook.fact("registration"), "where the controls stand, from card to card", _faulty(errors)]
    return chart(tracks, handbook.title or "Cards", ", ".join(filter(None, about)))


def _hand(handbook: Handbook, ran: CardRun, errors: int) -> Drawing:
    known = places(handbook.controls)
    way = way_of(ran.card, handbook.controls, known)
    if not way.reaches:
        raise CannotRun(
            f"There is nothing to draw: no control on `{ran.card.title}` says where it stands.",
            "Say it in the `equipment` block: `at .... panel 42 mm, 110 mm`, right and up from the lower left corner.",
        )
    return panel_path(ran.card.title, way, handbook.controls, known, _faulty(errors))


def _faulty(errors: int) -> str:
    return f"drawn in spite of {counted(errors, 'error')}" if errors else ""


def _pdf(drawing: Drawing, title: str) -> bytes:
    # reportlab takes longer to import than a lint takes altogether
    from dotleader.output.pdf import PdfFacts, PdfPage, write_pdf  # noqa: PLC0415

    made = BytesIO()
    facts = PdfFacts(title, "Drawn from a run of the cards", "", duplex=None, scaling_none=False)
    write_pdf([PdfPage(drawing.width, drawing.height, drawing.items)], facts, made)
    return made.getvalue()
