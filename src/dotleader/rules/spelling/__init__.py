"""Which words are known, and what may be meant by one that is not. Imported only where a handbook asks for it."""
