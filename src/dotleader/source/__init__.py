"""Positions in text, findings, outcomes. Standard library only; imports no other room."""
