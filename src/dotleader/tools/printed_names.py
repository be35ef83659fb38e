"""What printed things are called."""

from __future__ import annotations

PRINTED = "printed"
"""The folder that `print` writes into unless another is named; nothing in it is a source."""

READING = "reading.pdf"
SHEETS = "sheets.pdf"

FRONTS = "fronts.pdf"
BACKS = "backs.pdf"
"""The sheets once more, for a printer that prints one side."""

CUT_SVG, CUT_DXF = "svg", "dxf"
"""Endings: each arrangement of leaves is cut by a pair of files, `cut.svg` and `cut.dxf`, then `cut-2.svg` ..."""

CALIBRATION = "calibration.pdf"
"""Printed by itself, beside whatever else a folder has."""
