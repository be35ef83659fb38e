"""Dotleader: plain-text checklists, linted, laid out and printed double-sided."""

__version__ = "0.1.0"
