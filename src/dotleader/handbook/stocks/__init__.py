"""Leaf, pouch, holes and paper: known stocks, those that are described, and what cannot be."""
