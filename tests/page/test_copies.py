"""Several copies: the sheet of rulers once, and pages that say which sheet they are."""

from __future__ import annotations

import pytest

from dotleader.page.sheet.copies import copied, sheets_of_copies
from dotleader.page.sheet.sheets import sheets
from tests.page.leaves import EVERY_KIND, STOCKS, faces


@pytest.mark.parametrize(("name", "ruled"), [("A5", True), ("sample", False)])
@pytest.mark.parametrize("copies", [1, 3])
def test_the_sheet_of_rulers_comes_once_and_before_all_copies(name: str, ruled: bool, copies: int) -> None:
    stock = STOCKS[name]
    papers = tuple(sheets(faces(*EVERY_KIND, stock=stock), stock))
    found = list(copied(papers, copies, ()))
    assert len(found) == sheets_of_copies(papers, copies) == ruled + copies * (len(papers) - ruled)
    assert [paper.sheet.number for paper in found].count(0) == ruled
    assert (found[0].sheet.number == 0) is ruled
    leaves = [paper.sheet.number for paper in found if paper.sheet.number]
    assert leaves == [paper.number for paper in papers if paper.number] * copies
    assert [paper.copy for paper in found[ruled:]] == sorted(list(range(1, copies + 1)) * (len(papers) - ruled))


def test_no_two_pages_are_called_alike_and_each_names_sheet_side_and_file() -> None:
    stock = STOCKS["A5"]
    some = faces(*EVERY_KIND, stock=stock)[:10]  # five leaves, so that the last sheet is cut in its own way
    papers = tuple(sheets(some, stock))
    last = papers[-1]
    assert last.arrangement == 2
    names = [name for paper in copied(papers, 1, (1, 2)) for name in paper.names]
    assert names[:2] == ["Setting-up sheet, front", "Setting-up sheet, back"]
    assert names[2] == f"Sheet 1 of {last.number}, front, cut.svg"
    assert names[-1] == f"Sheet {last.number} of {last.number}, back, cut-2.svg"
    twice = [name for paper in copied(papers, 2, (1,)) for name in paper.names]
    assert len(set(twice)) == len(twice)
    assert twice[2] == f"Copy 1, sheet 1 of {last.number}, front, cut.svg"
    assert twice[-1] == f"Copy 2, sheet {last.number} of {last.number}, back"
