"""Golden cases in text files: `=== title`, the source, `---`, what is expected of it.

What cannot be seen is written as a mark of its own: `⇥` a tab, `⍽` a non-breaking space, `⇤` a byte-order mark,
`⏎` a carriage return at the end of a line. `python -m tests.syntax.golden` writes the expectations anew, to be
reviewed as text.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from dotleader.source.text import SourceText
from dotleader.syntax.format import format_text
from tests.syntax.outline import outline

HERE = Path(__file__).parent
_UNSEEN = {"⇥": "\t", "⍽": "\u00a0", "⇤": "\ufeff", "⏎": "\r"}


def _formatted(text: str) -> str:
    return format_text(SourceText("a.cards", text)).removesuffix("\n")


FILES: dict[str, Callable[[str], str]] = {"parsed.txt": outline, "formatted.txt": _formatted}


def cases(name: str) -> list[tuple[str, str, str]]:
    """Title, source and expectation of each case in a golden file."""
    found: list[tuple[str, str, str]] = []
    for part in (HERE / name).read_text(encoding="utf-8").split("=== ")[1:]:
        title, _, rest = part.partition("\n")
        source, _, expected = rest.partition("\n---\n")
        found.append((title, seen(source), seen(expected.rstrip("\n"))))
    return found


def seen(text: str) -> str:
    for mark, char in _UNSEEN.items():
        text = text.replace(mark, char)
    return text


def _unseen(text: str) -> str:
    for mark, char in _UNSEEN.items():
        text = text.replace(char, mark)
    return text


def rewrite(name: str) -> None:
    out = [f"=== {title}\n{_unseen(source)}\n---\n{_unseen(FILES[name](source))}\n" for title, source, _ in cases(name)]
    (HERE / name).write_text("\n".join(out), encoding="utf-8")


if __name__ == "__main__":
    for file in FILES:
        rewrite(file)
