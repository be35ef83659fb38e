"""Rules that the cards worked through against the declared cockpit give."""
