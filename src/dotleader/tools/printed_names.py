"""What printed things are called."""

from __future__ import annotations

PRINTED = "printed"
"""The folder that `print` writes into unless another is named; nothing in it is a source."""

READING = "reading.pdf"
SHEETS = "sheets.pdf"
