"""Several copies of the sheets: what is printed once, what with every copy, and what each page of the file is called.

The sheet of rulers says how the printer prints, and once is enough. Where leaves fill their paper, nothing beside them
can say which sheet it is: its page in the file does.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from dotleader.page.face.placement import Side
from dotleader.page.sheet.cut_files import cut_file
from dotleader.page.sheet.sheets import Sheet
from dotleader.source.record import record


@record
class CopiedSheet:
    """A sheet of one of the copies, with the names of its two pages; `copy` is 0 for the sheet of rulers."""

    sheet: Sheet
    copy: int
    names: tuple[str, str]


def sheets_of_copies(papers: Sequence[Sheet], copies: int) -> int:
    """How many sheets so many copies take; `papers` are those of one."""
    return sum(copies if sheet.number else 1 for sheet in papers)


def copied(papers: Sequence[Sheet], copies: int, filed: Collection[int]) -> Iterator[CopiedSheet]:
    """The sheet of rulers, if there is one, then one whole copy after another.

    `filed` are the arrangements that have a file to cut by.
    """
    for copy in range(1, copies + 1):
        for sheet in papers:
            if sheet.number:
                of_copy = f"Copy {copy}, sheet" if copies > 1 else "Sheet"
                of = f"{of_copy} {sheet.number} of {papers[-1].number}"
                cut = f", {cut_file(sheet.arrangement)}" if sheet.arrangement in filed else ""
                front, back = (f"{of}, {side.value}{cut}" for side in (Side.FRONT, Side.BACK))
                yield CopiedSheet(sheet, copy, (front, back))
            elif copy == 1:
                yield CopiedSheet(sheet, 0, ("Setting-up sheet, front", "Setting-up sheet, back"))
