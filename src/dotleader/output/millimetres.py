"""Whole micrometres written out in millimetres, exactly."""

from __future__ import annotations


def millimetres(length: int) -> str:
    """`146.05` of 146050; no more digits than there are, never an exponent or a rounded figure."""
    whole, rest = divmod(abs(length), 1000)
    written = f"{whole}.{rest:03}".rstrip("0").rstrip(".")
    return f"-{written}" if length < 0 else written
