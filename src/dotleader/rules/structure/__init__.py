"""The form of the text: found where it is read."""
