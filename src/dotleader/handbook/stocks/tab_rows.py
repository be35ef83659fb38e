"""What `tabs` and `dividers` say of a stock: how a section is found by the thumb."""

from __future__ import annotations

from dotleader.handbook.stocks.reading import Unread, length_of
from dotleader.handbook.stocks.written import Tabs
from dotleader.syntax.plain import folded

USUAL_RECESS = 6_000
"""How far the edge is cut back beside tabs where nothing is said of it: as wide as the edge band."""

_FORMS = "It is `printed`, `cut`, `cut, 8 mm deep`, or `none`."


def tabs_of(text: str) -> Tabs | Unread:
    """`printed`, `none`, `cut`, or `cut` with a depth after a comma."""
    word, comma, depth = (part.strip() for part in text.partition(","))
    kind = folded(word)
    if kind in ("printed", "none") and not comma:
        return Tabs(kind)
    if kind != "cut":
        return Unread(f"`{text}` is no kind of tabs.", _FORMS)
    if not comma:
        return Tabs("cut", USUAL_RECESS)
    if not depth:
        return Unread(f"`{text}` does not say how deep the tabs are.", _FORMS)
    recess = length_of(depth[: -len("deep")] if depth.casefold().endswith(" deep") else depth)
    return recess if isinstance(recess, Unread) else Tabs("cut", recess)


def dividers_of(text: str) -> bool | Unread:
    word = folded(text)
    if word not in ("yes", "no", "none"):
        return Unread(f"`{text}` does not say whether there are dividers.", "It is `yes` or `no`.")
    return word == "yes"
