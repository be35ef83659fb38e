"""The rules, listed in `catalogue`."""
