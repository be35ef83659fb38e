"""Type measured: widths, words, where lines break."""
