"""Where something stands, as fields of a JSON object."""

from __future__ import annotations

from dotleader.source.text import Spot


def place_object(spot: Spot) -> dict[str, object]:
    """File, line and column from 1; `end_line` and `end_column` are those of the first character no longer meant."""
    line, column = spot.source.line_and_column(spot.start)
    end_line, end_column = spot.source.line_and_column(spot.end)
    return {
        "file": spot.source.name,
        "line": line,
        "column": column,
        "end_line": end_line,
        "end_column": end_column,
    }
