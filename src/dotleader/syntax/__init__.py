"""Text to tree and back: blocks, lines, values, the formatter. The one room that knows the grammar."""
