"""Comments behind a text, where `#` is text and is printed.

`Tank # 2` and `2 # of oil` are no comments: what follows a `#` and a number may be counted by it.
"""

from __future__ import annotations

import re

TRAILING = re.compile(r"(?<=\S)(?:[^\S\n]+(?=#[^\S\n]+[^\W\d_])|[^\S\n]{2,}(?=#(?!\d)))(?P<comment>#[^\n]*)")
"""Behind a space `# ` and a word, behind two spaces `#` and no number; to the end of its line."""


def without_comment(text: str) -> str:
    """The text, with its spaces as typed, up to a comment behind it."""
    found = TRAILING.search(text) if "#" in text else None
    return text[: found.start()] if found else text
