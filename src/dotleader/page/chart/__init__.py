"""Drawings of a run: where each control stands in the course of a flight, and the hand's way over a panel."""
