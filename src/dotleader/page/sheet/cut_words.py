"""What a machine may cut, in words: the cut files say it by colours and layers, and programs that cut every line ask
for neither.
"""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.page.sheet.cut_shapes import Cutting, Layer


def colours_said(cuttings: Iterable[Cutting]) -> str:
    """One sentence; `""` where there is no file to cut by."""
    layers = _layers(cuttings)
    if not layers:
        return ""
    eye = "the outlines of paper and pouch" if Layer.POUCH in layers else "the outline of the paper"
    return (
        f"In the cut files {_done(layers)}, and blue ({eye}) is for the eye only: hide it from a machine that cuts "
        "every line."
    )


def colours_in_brief(cuttings: Iterable[Cutting]) -> str:
    """The same in the fewest words, for where the files have been named; `""` where there is none."""
    done = _done(_layers(cuttings))
    return f"{done[0].upper()}{done[1:]}, blue is for the eye only." if done else ""


def _layers(cuttings: Iterable[Cutting]) -> frozenset[Layer]:
    return frozenset(cut.layer for cutting in cuttings for cut in cutting.cuts)


def _done(layers: frozenset[Layer]) -> str:
    """What is done to lines by their colours: `red is cut, green is scored`."""
    done = (
        *(("red is cut",) if any(layer.is_cut for layer in layers) else ()),
        *(("green is scored",) if any(layer.is_scored for layer in layers) else ()),
    )
    return ", ".join(done)
