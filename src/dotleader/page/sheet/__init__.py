"""Faces as pages to read, and leaves laid out on paper with the marks to cut by."""
