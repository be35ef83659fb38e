"""What there is in a picture: thin lines, and what is solid. In pixels; rows of them, 0 for white to 255."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

Ink = NDArray[np.uint8]

COARSE = 10
"""Pixels to the millimetre."""

DARK = 60
STEP, MEETINGS = 6, 4


def thin(ink: Ink) -> Iterator[tuple[float, float, float]]:
    """Level lines of 3 mm and more that are under 0.4 mm thick: row, start and end, in pixels.

    They are looked for in every sixth column, which is enough to meet each of them four times.
    """
    thick = 4
    dark = np.ascontiguousarray(ink[:, ::STEP]) > DARK
    solid = eroded(dark, MEETINGS)
    found = solid[thick:-thick].copy()
    for beside in (dark[: -2 * thick], dark[2 * thick :]):
        found &= ~beside[:, : found.shape[1]] & ~beside[:, MEETINGS - 1 :]
    rows, starts = np.divmod(np.flatnonzero(found), found.shape[1])
    segments: list[tuple[int, int, int]] = []  # row, first start, last start
    for row, start in zip(rows.tolist(), starts.tolist(), strict=True):
        if segments and segments[-1][0] == row and segments[-1][2] == start - 1:
            segments[-1] = (row, segments[-1][1], start)
        else:
            segments.append((row, start, start))
    for at, (row, first, last) in enumerate(segments):
        if any(0 < row - r <= 3 and first <= b and a <= last for r, a, b in segments[max(0, at - 40) : at]):
            continue  # another row of the same line
        line = _measured(ink, row + thick, first * STEP, (last + MEETINGS - 1) * STEP + 1)
        if line[2] - line[1] > 2.9 * COARSE:
            yield line


def _measured(ink: Ink, row: int, start: int, end: int) -> tuple[float, float, float]:
    """The middle of a line's ink, and its ends by how much of their pixels they cover."""
    around = slice(max(0, row - 5), row + 9)
    middle = ink[around, start + (end - start) // 5 : end - (end - start) // 5]
    rows = np.median(middle, axis=1)
    # beside the line, only what belongs to it: from its darkest row outwards to the first white one
    peak = int(rows[4:10].argmax()) + 4 if rows.size > 10 else int(rows.argmax())
    above, below = peak, peak
    while above > 0 and rows[above - 1] > 8:
        above -= 1
    while below < len(rows) - 1 and rows[below + 1] > 8:
        below += 1
    line = rows[above : below + 1]
    at = around.start + above + float(((np.arange(len(line)) + 0.5) * line).sum() / line.sum())
    along = ink[around.start + above : around.start + below + 1].astype(float).sum(axis=0) / float(line.sum())
    first, last = start, end - 1
    while first > 0 and along[first - 1] > 0.03:
        first -= 1
    while last < len(along) - 1 and along[last + 1] > 0.03:
        last += 1
    half = (first + last + 1) // 2
    return at, half - float(along[first:half].clip(max=1).sum()), half + float(along[half : last + 1].clip(max=1).sum())


def eroded(dark: NDArray[np.bool_], length: int) -> NDArray[np.bool_]:
    """Where a level stretch of that many dark pixels begins."""
    covered = 1
    while covered < length:
        step = min(covered, length - covered)
        dark = dark[:, :-step] & dark[:, step:]
        covered += step
    return dark


def boxes(mask: NDArray[np.bool_], gap: int) -> Iterator[tuple[int, int, int, int]]:
    """The rectangles that hold what is set: left, top, right, bottom; what is nearer than `gap` belongs together."""
    for left, right in _stretches(mask.any(axis=0), gap):
        for top, bottom in _stretches(mask[:, left:right].any(axis=1), gap):
            for inner, outer in _stretches(mask[top:bottom, left:right].any(axis=0), gap):
                yield left + inner, top, left + outer, bottom


def _stretches(some: NDArray[np.bool_], gap: int) -> list[tuple[int, int]]:
    found: list[tuple[int, int]] = []
    for at in np.nonzero(some)[0].tolist():
        if found and at - found[-1][1] < gap:
            found[-1] = (found[-1][0], at + 1)
        else:
            found.append((at, at + 1))
    return found
