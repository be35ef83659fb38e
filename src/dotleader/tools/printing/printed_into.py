"""The folder that is printed into. By itself, because commands that print nothing pass it over."""

from __future__ import annotations

PRINTED = "printed"
"""What `print` writes into unless another is named; nothing in it is a source."""
