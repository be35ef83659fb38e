"""Comments behind a text, where `#` is text and is printed.

`Tank # 2` and `2 # of oil` are no comments: what follows a `#` and a number may be counted by it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_TRAILING = r"(?<=\S)(?:[^\S\n]+(?=#[^\S\n]+[^\W\d_])|[^\S\n]{2,}(?=#(?!\d)))(?P<comment>#[^\n]*)"
"""Behind a space `# ` and a word, behind two spaces `#` and no number; to the end of its line.

Compiled when it is first needed, which in most books is never.
"""


def comments_in(text: str) -> Iterator[tuple[int, str]]:
    """Where comments behind text stand, each with its text."""
    for found in re.finditer(_TRAILING, text) if "#" in text else ():
        yield found.start("comment"), found["comment"].rstrip()


def without_comment(text: str) -> str:
    """The text, with its spaces as typed, up to a comment behind it."""
    found = next(comments_in(text), None)
    return text[: found[0]].rstrip() if found else text
