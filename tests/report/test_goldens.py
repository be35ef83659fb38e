"""Every source in `tests/bad` and `tests/good` says what is kept beside it."""

from __future__ import annotations

from pathlib import Path

import pytest

from dotleader.report.glyphs import width_of
from dotleader.report.terminal import Terminal
from tests.report.goldens import BAD, GOOD, golden, rendering, sources


def _id(source: Path) -> str:
    return source.relative_to(BAD.parent).as_posix()


@pytest.mark.parametrize("source", [*sources(BAD), *sources(GOOD)], ids=_id)
def test_rendering(source: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(source.parent)
    assert rendering(source) == golden(source).read_text(encoding="utf-8")


@pytest.mark.parametrize("source", sources(BAD), ids=_id)
def test_a_bad_source_has_findings_and_no_line_is_too_wide(source: Path) -> None:
    lines = golden(source).read_text(encoding="utf-8").splitlines()
    assert lines[0].startswith(("error ", "warning ", "note "))
    assert max(width_of(line, Terminal()) for line in lines) <= 80


@pytest.mark.parametrize("source", sources(GOOD), ids=_id)
def test_a_good_source_has_none(source: Path) -> None:
    assert "error" not in golden(source).read_text(encoding="utf-8")


def test_every_rendering_has_its_source() -> None:
    kept = {path for folder in (BAD, GOOD) for path in folder.rglob("*.txt")}
    assert kept == {golden(source) for source in (*sources(BAD), *sources(GOOD))}
