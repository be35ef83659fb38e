"""The cards worked through against the declared cockpit: what moves, what was so already, what cannot be yet."""
