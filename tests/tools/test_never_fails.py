"""Whatever stands in a file, a lint ends with an answer: no byte and no slip of the pen is a fault of ours."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dotleader.report.brief import brief
from dotleader.report.full import full
from dotleader.report.json_list import json_list
from dotleader.report.terminal import Terminal
from dotleader.rules.catalogue import FACTS
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook

TOP = Path(__file__).parents[2]
SAMPLES = [
    *(path.read_text(encoding="utf-8") for path in sorted((TOP / "tests" / "good" / "sample").glob("*.cards"))),
    *(path.read_bytes().decode("utf-8", "replace") for path in sorted((TOP / "tests" / "bad").glob("*.cards"))),
]
SCRAPS = (
    "", " ", "  ", "\n", "\n\n", "\t", "....", " .... ", "..", "…", "{", "}", "{{", "{VS0}", "{VS0 in mph}", "#",
    "  # allow",
    "if x", "otherwise", "memory", "end", "go to ", "group", "note", "normal ", "include ", "include handbook.cards",
    "handbook", "values", "gauge X in psi", "equipment", "stock", "+/-", "1,5", "1e9", "9" * 40, "/ 0", "root of (",
    "rounded to 0", "KIAS", "gal", "[critical]", "[with ", "–", "\u200b", "\u202e", "燃", "\x00", "\r", "\ufeff",
)  # fmt: skip


@st.composite
def mutated(draw: st.DrawFn) -> str:
    """A sample with a few cuts, copies and scraps in it, on lines and within them."""
    lines = draw(st.sampled_from(SAMPLES)).split("\n")
    for _ in range(draw(st.integers(1, 6))):
        at = draw(st.integers(0, len(lines) - 1))
        match draw(st.sampled_from(["cut", "copy", "swap", "scrap", "indent", "cut inside"])):
            case "cut":
                lines[at : at + draw(st.integers(0, 3))] = [""]
            case "copy":
                lines.insert(draw(st.integers(0, len(lines))), lines[at])
            case "swap":
                other = draw(st.integers(0, len(lines) - 1))
                lines[at], lines[other] = lines[other], lines[at]
            case "scrap":
                column = draw(st.integers(0, len(lines[at])))
                lines[at] = lines[at][:column] + draw(st.sampled_from(SCRAPS)) + lines[at][column:]
            case "indent":
                lines[at] = " " * draw(st.integers(0, 9)) + lines[at].lstrip()
            case "cut inside":
                column = draw(st.integers(0, len(lines[at])))
                lines[at] = lines[at][:column]
    return "\n".join(lines)


def answer(folder: Path, data: bytes) -> None:
    path = folder / "handbook.cards"
    path.write_bytes(data)
    found = lint_handbook(str(path), Files()).findings
    for terminal in (Terminal(), Terminal(40, False, "ascii")):
        assert not [line for line in full(found, FACTS, terminal) if "\n" in line]
        assert len(list(brief(found, FACTS, terminal))) == len(json.loads(json_list(found, FACTS)))
    for finding in found:
        assert finding.rule in FACTS
        assert finding.message
        assert finding.message == finding.message.strip()
        assert 0 <= finding.spot.start <= finding.spot.end <= len(finding.spot.source.text)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("book")


QUIET = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])


@QUIET
@given(mutated())
def test_mutated_sources(folder: Path, text: str) -> None:
    answer(folder, text.encode("utf-8", "replace"))


@QUIET
@given(st.binary(max_size=600))
def test_any_bytes(folder: Path, data: bytes) -> None:
    answer(folder, data)


@QUIET
@given(st.lists(st.sampled_from(SCRAPS), max_size=60).map("".join))
def test_scraps(folder: Path, text: str) -> None:
    answer(folder, text.encode("utf-8", "replace"))
