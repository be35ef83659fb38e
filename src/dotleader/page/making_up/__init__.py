"""The sheet for the bench: what is needed, what is done with it, how the leaves follow each other."""
