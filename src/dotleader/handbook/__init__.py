"""Tree to handbook: names become things, values are worked out, cards know what they refer to."""
