"""A book as files in a folder, the printers it goes through, and what is said of it."""
