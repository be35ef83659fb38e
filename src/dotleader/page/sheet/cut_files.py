"""What the files that sheets are cut by are called, and which sheet is cut by which."""

from __future__ import annotations

from collections.abc import Sequence


def cut_file(number: int, ending: str = "svg") -> str:
    """The name of the file of an arrangement, which counts from 1: `cut.svg`, then `cut-2.svg`."""
    return f"cut.{ending}" if number == 1 else f"cut-{number}.{ending}"


_FEW = 3
"""Of so many sheets it is said which faces they have."""


def cut_by(arrangements: Sequence[int], firsts: Sequence[str] = ()) -> str:
    """In words, by which file each sheet is cut; the first of `arrangements` is that of sheet 1.

    `firsts` are the labels of a face on the front of each, for sheets that do not bear their number.
    """
    files = {number: [n for n, own in enumerate(arrangements, start=1) if own == number] for number in arrangements}
    if len(files) == 1:
        return f"A machine cuts every sheet by {cut_file(arrangements[0])}."
    parts = [
        f"{sheets_numbered(sheets)}{_with_faces(sheets, firsts)} by {cut_file(number)}"
        for number, sheets in files.items()
    ]
    return f"A machine cuts {and_last(parts)}."


def _with_faces(sheets: Sequence[int], firsts: Sequence[str]) -> str:
    if not firsts or len(sheets) > _FEW:
        return ""
    return f" (with {and_last([firsts[number - 1] for number in sheets])})"


def and_last(words: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else words[0]


def sheets_numbered(sheets: Sequence[int]) -> str:
    """`sheet 3`, `sheets 1 to 4`, `sheets 1, 3 and 4`; the numbers rise."""
    if len(sheets) == 1:
        return f"sheet {sheets[0]}"
    if len(sheets) > 2 and sheets[-1] - sheets[0] == len(sheets) - 1:
        return f"sheets {sheets[0]} to {sheets[-1]}"
    return f"sheets {and_last([str(number) for number in sheets])}"
