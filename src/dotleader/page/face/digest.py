"""Two digests of a face: what it means, and what is drawn on it.

They are kept for years beside what was released, so what they are taken of is written out here field by field and
depends on no library and no version of Python.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from hashlib import sha256
from typing import assert_never

from dotleader.page.drawn import Box, Drawn, Group, Line, Link, Picture, Text
from dotleader.page.face.faces import Face

LENGTH = 16
"""Hexadecimal digits that are kept: 64 bits."""

NOT_DRAWN = frozenset({"label", "issue", "code", "bar", "draft", "links"})
"""Roles that may change without the face having changed: its own label, issue and date, foot code, change bars,
draft marks. Links are not ink, and lead where the tabs say."""


def meaning(face: Face) -> str:
    """Changes when a text, a value or their order does, and never with a label or a measure."""
    return _digest("meaning 1", (face.kind, face.title, *face.says))


def drawn(face: Face) -> str:
    """Changes when anything on the face looks different, its side and the labels of go-tos included."""
    kept = (group for group in face.groups if group.role not in NOT_DRAWN)
    return _digest("drawn 1", (face.side.value, *_fields(kept)))


def _digest(name: str, fields: Iterable[str]) -> str:
    whole = sha256(name.encode())
    for field in fields:
        encoded = field.encode("utf-8", "surrogatepass")
        whole.update(b"%d:" % len(encoded))  # so that no two lists of texts run into the same bytes
        whole.update(encoded)
    return whole.hexdigest()[:LENGTH]


def _fields(items: Iterable[Drawn]) -> Iterator[str]:
    for item in items:
        match item:
            case Text(x, y, string, size, font, ink, turn, hollow):
                yield f"text {x} {y} {size} {font.value} {ink.value} {turn} {hollow}"
                yield string
            case Line(points, width, closed, fill, ink, dots):
                path = " ".join(f"{x},{y}" for x, y in points)
                yield f"line {path} {width} {int(closed)} {fill.value} {ink.value} {dots}"
            case Box(x, y, w, h, fill, stroke, radius):
                yield f"box {x} {y} {w} {h} {fill.value} {stroke} {radius}"
            case Picture(x, y, w, h, name):
                yield f"picture {x} {y} {w} {h}"
                yield name
            case Link():
                pass
            case Group(x, y, inner, turn, role):
                if role not in NOT_DRAWN:
                    yield f"group {x} {y} {turn} {role} {len(inner)}"
                    yield from _fields(inner)
            case _ as never:
                assert_never(never)
