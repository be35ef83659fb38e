"""Handbook to faces, placement and sheets: pure geometry in whole micrometres, knowing nothing of PDF."""
