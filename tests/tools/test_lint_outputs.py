"""SARIF, annotations and files as a lint puts them out."""

from __future__ import annotations

import json
import os
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings

from dotleader.handbook.resolve import resolve
from dotleader.report.github import github
from dotleader.report.sarif import sarif
from dotleader.rules.baseline import keys_of
from dotleader.rules.catalogue import FACTS
from dotleader.rules.checks import check
from dotleader.rules.settling import settled
from dotleader.rules.subject import subject_of
from dotleader.source.text import SourceText
from tests.syntax.strategies import ANY
from tests.tools.running import CLEAN, FAULTY, process, run, write

SCHEMA = json.loads(
    (Path(__file__).parents[1] / "report" / "schemas" / "sarif-2.1.0-rtm.5.json").read_text(encoding="utf-8")
)
BAD = Path(__file__).parents[1] / "bad"
BOOK = """\
rules
  value-never-used .... off because rows are kept for the placards

values
  spare .... 5 mm  unverified

equipment
  Fuel pump .... OFF, ON
    also called .... boost pump

normal Taxi
  when the engine runs smoothly
  Boost pump .... ON
  Feul pump .... ON  # allow near-name: so it stands on the panel
  Mixture .... RICH  # ask Bob
  Trim .... {VX}
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def _sarif(text: str) -> dict[str, Any]:
    log: dict[str, Any] = json.loads(text)
    jsonschema.Draft4Validator(SCHEMA).validate(log)
    (only,) = log["runs"]
    assert isinstance(only, dict)
    return only


def _by_rule(log: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {result["ruleId"]: result for result in log["results"]}


def test_sarif_is_what_the_schema_says(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, **{"my book": BOOK})
    ran = run(capsys, "lint", "--as", "sarif", ".")
    assert ran.code == 1
    assert ran.out.isascii()
    log = _sarif(ran.out)
    results = _by_rule(log)
    assert log["columnKind"] == "unicodeCodePoints"
    assert log["invocations"] == [{"executionSuccessful": True}]
    place = results["unknown-value"]["locations"][0]["physicalLocation"]
    assert place["artifactLocation"] == {"uri": "my%20book.cards", "uriBaseId": "SRCROOT"}
    assert place["region"] == {"startLine": 16, "startColumn": 13, "endLine": 16, "endColumn": 17}
    assert results["unknown-value"]["level"] == "error"
    assert results["unknown-value"]["suppressions"] == []
    assert results["alias-used"]["relatedLocations"][0]["message"]["text"].startswith("`Fuel pump` is declared here")
    changes = results["alias-used"]["fixes"][0]["artifactChanges"][0]["replacements"]
    assert changes[0]["insertedContent"] == {"text": "Fuel pump"}
    rules = log["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == sorted(results)
    for result in log["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]
    for rule in rules:
        assert rule["help"]["text"]
        assert "Source: " in rule["help"]["markdown"]
        assert rule["properties"]["confidence"] in ("high", "medium", "low")


def test_suppressions_are_listed_with_their_reasons(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=BOOK)
    run(capsys, "baseline", "a.cards")
    results = _by_rule(_sarif(run(capsys, "lint", "--as", "sarif", ".").out))
    said = {name: result["suppressions"] for name, result in results.items()}
    assert said["near-name"] == [
        {"kind": "inSource", "status": "accepted", "justification": "so it stands on the panel"}
    ]
    assert said["value-never-used"][0]["justification"] == "rows are kept for the placards"
    assert said["alias-used"] == [
        {"kind": "external", "status": "accepted", "justification": "accepted in baseline.txt"}
    ]
    assert said["unknown-value"] == []
    listed = json.loads(run(capsys, "lint", "--as", "json", ".").out)
    held = {each["rule"]: each["suppressed"] for each in listed}
    assert held["near-name"] == {"by": "comment", "reason": "so it stands on the panel"}
    assert held["value-never-used"] == {"by": "rules block", "reason": "rows are kept for the placards"}
    assert held["alias-used"] == {"by": "baseline", "reason": "accepted in baseline.txt"}
    assert held["unknown-value"] is None
    full = run(capsys, "lint", ".").out
    assert "`value-never-used` is off (1 not shown): rows are kept for the placards\n" in full
    assert "2 accepted in `baseline.txt` and not shown\n" in full
    assert "near-name" not in full


def _prints(log: dict[str, Any]) -> list[str]:
    return sorted(result["partialFingerprints"]["content/v1"] for result in log["results"])


def test_fingerprints_stay_when_lines_move_and_files_are_renamed(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(here, a=BOOK + "  Boost pump .... ON\n")
    before = _prints(_sarif(run(capsys, "lint", "--as", "sarif", "a.cards").out))
    assert len(set(before)) == len(before)
    (here / "a.cards").unlink()
    write(here, b="# A remark.\n\n" + (BOOK + "  Boost pump .... ON\n").replace("  Trim", "\n  # Another.\n  Trim"))
    run(capsys, "format", "b.cards")
    assert _prints(_sarif(run(capsys, "lint", "--as", "sarif", "b.cards").out)) == before


@pytest.mark.parametrize("source", sorted(BAD.glob("*.cards")), ids=lambda path: path.stem)
def test_every_kind_of_finding_is_sarif(
    source: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(BAD)
    log = _sarif(run(capsys, "lint", "--as", "sarif", source.name).out)
    assert log["results"]
    for result in log["results"]:
        assert not result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"].startswith("/")


def test_what_could_not_be_read_makes_a_run_incomplete(here: Path) -> None:
    write(here, a=FAULTY)
    ran = process("lint", "--as", "sarif", "a.cards", "b.cards", cwd=here)
    assert ran.code == 2
    assert _sarif(ran.out)["invocations"] == [{"executionSuccessful": False}]


def test_standard_input_in_every_form(here: Path) -> None:
    for form in ("full", "brief", "json", "sarif", "github"):
        assert process("lint", "--as", form, "-", stdin=FAULTY.encode(), cwd=here).code == 1


@given(ANY)
@settings(max_examples=60, deadline=None)
def test_whatever_is_found_is_sarif_and_one_annotation_a_line(text: str) -> None:
    read = resolve(SourceText("a.cards", text), "a.cards", lambda _: "there is no such file")
    handbook, files = read.value
    found, held = settled([*read.findings, *check(subject_of(handbook))], files, handbook.settings)
    keys = {finding.order: tuple(key) for finding, key in keys_of(found, files)}
    log = _sarif(sarif(found, held, FACTS, keys, complete=True))
    assert len(log["results"]) == len(found) + len(held)
    assert all("partialFingerprints" in each for each in log["results"] if not each["suppressions"])
    assert all(COMMAND.fullmatch(line) for line in github(found, FACTS))
    assert len(list(github(found, FACTS))) == len(found)


COMMAND = re.compile(r"::(?P<word>error|warning|notice) (?P<properties>[^:]*)::(?P<message>[^\r\n]*)")


def _unescaped(text: str) -> str:
    for written, meant in (("%0D", "\r"), ("%0A", "\n"), ("%3A", ":"), ("%2C", ","), ("%25", "%")):
        text = text.replace(written, meant)
    return text


def test_annotations_can_be_read_back(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = "100 %, a:b.cards"
    (here / name).write_text(BOOK.replace("{VX}", "{V%0A::x, 50 %}"), encoding="utf-8")
    ran = run(capsys, "lint", "--as", "github", name)
    lines = ran.out.splitlines()
    found = [COMMAND.fullmatch(line) for line in lines]
    assert all(found)
    (error,) = [each for each in found if each and each["word"] == "error"]
    properties = dict(part.split("=", 1) for part in error["properties"].split(","))
    assert _unescaped(properties["file"]) == name
    assert (properties["line"], properties["col"], properties["title"]) == ("16", "13", "unknown-value")
    assert int(properties["endColumn"]) == 13 + len("{V%0A::x, 50 %}") - 1
    assert "V%0A::x, 50 %" in _unescaped(error["message"])


def test_several_forms_in_one_run(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=FAULTY)
    ran = run(capsys, "lint", "--as", "sarif=out.sarif", "--as", "github=notes.txt", "--as", "brief", ".")
    assert ran.code == 1
    assert ran.out.startswith("a.cards:3:17: error")
    assert len(_sarif((here / "out.sarif").read_text())["results"]) == 1
    assert (here / "notes.txt").read_text().startswith("::error file=a.cards,line=3,")
    only = run(capsys, "lint", "--as", "full=words.txt", ".")
    assert (only.code, only.out) == (1, "")
    assert (here / "words.txt").read_text(encoding="utf-8").startswith("error unknown-value ...")


@pytest.mark.parametrize(
    ("forms", "said"),
    [
        (("full", "brief"), "Standard output cannot take two forms."),
        (("json=a.txt", "sarif=./a.txt"), "cannot take two forms."),
        (("json=",), "`--as json=` names no file."),
        (("jsn=a.txt",), "`--as jsn` is not known."),
        (("json=a.cards",), "`a.cards` is the name of a source."),
        (("json=missing/a.txt",), "`missing/a.txt` cannot be written: no such file or directory."),
        (("json=.",), "`.` cannot be written: it is a folder."),
        ((f"json={os.devnull}",), "cannot be written: it is no plain file."),
        (("json=baseline.txt",), "`baseline.txt` is where accepted findings are kept."),
    ],
)
def test_forms_that_cannot_be(
    here: Path, capsys: pytest.CaptureFixture[str], forms: tuple[str, ...], said: str
) -> None:
    write(here, a=CLEAN)
    ran = run(capsys, "lint", ".", *(f"--as={form}" for form in forms))
    assert ran.code == 2
    assert said in ran.err
    assert (here / "a.cards").read_text() == CLEAN
    assert os.listdir(here) == ["a.cards"]  # noqa: PTH208  # hidden ones too


@pytest.mark.parametrize("onto", ["link.json", "notes.txt"])
def test_no_source_is_written_over(here: Path, capsys: pytest.CaptureFixture[str], onto: str) -> None:
    write(here, a=FAULTY)
    (here / "notes.txt").write_text(FAULTY)
    (here / "link.json").symlink_to("a.cards")
    ran = run(capsys, "lint", f"--as=json={onto}", "--as=brief", "a.cards", "notes.txt")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith(f"dotleader: `{onto}` is ")
    assert (here / "a.cards").read_text() == (here / "notes.txt").read_text() == FAULTY


def test_what_cannot_be_written_keeps_nothing_else_back(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=FAULTY)
    ran = run(capsys, "lint", "--as=json=missing/a.txt", "--as=brief", "--as=github=b.txt", "a.cards")
    assert ran.code == 2
    assert ran.out.startswith("a.cards:3:17: error")
    assert (here / "b.txt").read_text().startswith("::error file=a.cards,")
    assert "`missing/a.txt` cannot be written" in ran.err


def test_braces_are_doubled_as_in_section_3_11_5(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """SARIF 2.1.0 (OASIS), section 3.11.5: both plain and formatted messages write `{` as `{{`."""
    write(here, a="speeds\n  VG .... 82 KIAS  unverified\n\nnormal Climb\n  when climbing\n  Airspeed .... VG\n")
    log = _sarif(run(capsys, "lint", "--as", "sarif", ".").out)
    found = _by_rule(log)["bare-name"]
    assert "{{VG}}" in found["message"]["text"]
    assert found["fixes"][0]["artifactChanges"][0]["replacements"][0]["insertedContent"]["text"] == "{VG}"
    (rule,) = [rule for rule in log["tool"]["driver"]["rules"] if rule["id"] == "bare-name"]
    assert not re.search(r"(?<!{){(?!{)", rule["help"]["text"] + rule["help"]["markdown"])


@pytest.mark.skipif(os.name == "nt", reason="file names are not bytes there")
def test_paths_are_percent_encoded(here: Path) -> None:
    names = {b"lat\xe9in": "lat%E9in", b"50%25 off": "50%2525%20off", b"a:b": "a%3Ab", b"two\nlines": "two%0Alines"}
    for name in names:
        os.mkdir(name)  # noqa: PTH102  # bytes
        Path(os.fsdecode(name), "a.cards").write_text(FAULTY)
    results = _sarif(process("lint", "--as", "sarif", ".", cwd=here).out)["results"]
    uris = {each["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] for each in results}
    assert uris == {f"{name}/a.cards" for name in names.values()}
    assert len(process("lint", "--as", "brief", ".", cwd=here).out.splitlines()) == len(names)


def test_json_says_how_sure_a_rule_is_and_what_would_mend_it(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(here, a=BOOK)
    listed = {each["rule"]: each for each in json.loads(run(capsys, "lint", "--as", "json", ".").out)}
    assert listed["alias-used"]["confidence"] == "high"
    assert listed["trailing-comment"]["confidence"] == "medium"
    fix = listed["alias-used"]["fix"]
    assert fix["safe"] is False
    (edit,) = fix["edits"]
    source = SourceText("a.cards", BOOK)
    assert source.line(edit["line"])[edit["column"] - 1 : edit["end_column"] - 1] == "Boost pump"
    assert edit["text"] == "Fuel pump"
    assert listed["unknown-value"]["fix"] is None
