"""What printed things are called."""

from __future__ import annotations

from dotleader.page.making_up.names import BACKS as BACKS  # noqa: PLC0414  # names like the rest, which pages speak of
from dotleader.page.making_up.names import FRONTS as FRONTS  # noqa: PLC0414
from dotleader.page.making_up.names import SHEETS as SHEETS  # noqa: PLC0414
from dotleader.tools.printing.printed_into import PRINTED as PRINTED  # noqa: PLC0414

READING = "reading.pdf"
MAKING_UP = "making-up.pdf"

CUT_SVG, CUT_DXF = "svg", "dxf"
"""Endings: each arrangement of leaves is cut by a pair of files, `cut.svg` and `cut.dxf`, then `cut-2.svg` ..."""

CALIBRATION = "calibration.pdf"
"""Printed by itself, beside whatever else a folder has."""
