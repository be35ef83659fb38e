"""Faces and sheets to files: each output is one walker over the drawn things. Only `pdf` loads reportlab."""
