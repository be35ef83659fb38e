"""What the files are called that the making-up sheet speaks of."""

from __future__ import annotations

SHEETS = "sheets.pdf"

FRONTS = "fronts.pdf"
BACKS = "backs.pdf"
"""The sheets once more, for a printer that prints one side."""
