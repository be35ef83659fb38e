"""What a machine may cut, in words: the cut files say it by colours and layers, and programs that cut every line ask
for neither.
"""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.page.sheet.cut_shapes import Cutting, Layer


def colours_said(cuttings: Iterable[Cutting]) -> str:
    """One sentence; `""` where there is no file to cut by."""
    layers = {cut.layer for cutting in cuttings for cut in cutting.cuts}
    if not layers:
        return ""
    done = [
        *(["red is cut"] if any(layer.is_cut for layer in layers) else []),
        *(["green is scored"] if any(layer.is_scored for layer in layers) else []),
    ]
    eye = "the outlines of paper and pouch" if Layer.POUCH in layers else "the outline of the paper"
    return (
        f"In the cut files {', '.join(done)}, and blue ({eye}) is for the eye only: hide it from a machine that cuts "
        "every line."
    )
