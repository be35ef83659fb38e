"""Exact numbers with their units: read, worked out, converted to the safe side, printed."""
