"""Words that are looked up: which are known, where they stand, what is offered."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

from dotleader.handbook.model import Setting
from dotleader.rules.settings import Amiss, Spelling, Words, meaning_of
from dotleader.rules.spelling.knowing import Known
from dotleader.rules.spelling.lists import english, trade
from dotleader.rules.spelling.own_names import own_words
from dotleader.rules.spelling.texts import tokens
from dotleader.source.editing import edited
from dotleader.source.finding import Finding, Severity
from dotleader.source.text import SourceText, Spot
from dotleader.tools.files import Files
from dotleader.tools.pipeline import lint_handbook
from tests.rules.pipeline import findings_of, said

TOP = Path(__file__).parents[2]
KNOWN = Known(english(), trade(), frozenset())
SPOT = Spot(SourceText("a.cards", ""), 0, 0)
BOOKS = sorted(
    path
    for folder in (TOP / "examples" / "ostrel-two", TOP / "tests" / "good")
    for path in folder.rglob("*.cards")
    if re.search(r"^handbook\b", path.read_text(encoding="utf-8"), re.MULTILINE)
)


def _found(*lines: str, rules: str = "", head: str = "") -> list[Finding]:
    body = "".join(f"  {line}\n" for line in lines)
    text = f"rules\n  spelling .... on\n{rules}\n{head}normal Cruise\n  when level\n{body}"
    return [finding for finding in findings_of(text) if finding.rule == "unknown-word"]


def _marked(*lines: str, rules: str = "", head: str = "") -> list[str]:
    return [finding.spot.text for finding in _found(*lines, rules=rules, head=head)]


@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_every_word_of_the_books_is_known(book: Path) -> None:
    handbook = lint_handbook(str(book), Files()).handbook
    known = Known(english(), trade(), own_words(handbook))
    found = tokens(handbook)
    assert len(found) > 50
    assert not [part for token in found for _, part in known.unknown_parts(token)]


@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_most_slips_in_the_books_are_found_and_the_word_is_offered(book: Path) -> None:
    """Two letters exchanged in each longer word, which is seldom another word."""
    handbook = lint_handbook(str(book), Files()).handbook
    known = Known(english(), trade(), own_words(handbook))
    slips = {word[:2] + word[3] + word[2] + word[4:]: word for word in tokens(handbook) if len(word) > 6}
    slips = {slip: word for slip, word in slips.items() if slip != word and word.isalpha()}
    seen = [slip for slip in slips if list(known.unknown_parts(slip))]
    assert len(seen) > 0.97 * len(slips) > 10
    seen = seen[::4]
    offered = [slip for slip in seen if slips[slip] in [word for _, word in known.meant(slip, frozenset())]]
    assert len(offered) > 0.95 * len(seen)


@pytest.mark.parametrize(
    "word",
    ["colour", "color", "manoeuvre", "maneuver", "centre", "center", "organise", "organize", "labelled", "labeled"],
)
def test_both_sides_of_the_ocean_are_right(word: str) -> None:
    for written in (word, word.upper(), word.capitalize(), f"{word}'s"):
        assert not list(KNOWN.unknown_parts(written))


@pytest.mark.parametrize(
    "word",
    [
        "don't", "Don't", "pilot's", "PILOT'S", "EGTs", "QNH", "XPDR", "GPWS", "inHg", "kPa", "KIAS", "x",
        "pre-flight", "de-ice", "walk-around", "fore-and-aft", "Wi-Fi", "café", "燃料ポンプ", "January", "FAA",
        "GO-AROUND",
    ],
)  # fmt: skip
def test_what_is_left_alone(word: str) -> None:
    assert not list(KNOWN.unknown_parts(word))


@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("prop-stirke", [(5, "stirke")]),
        ("anti-colision", [(5, "colision")]),
        ("fore-and-after-burnr", [(15, "burnr")]),
        ("LACHED", [(0, "LACHED")]),
        ("STRTR", [(0, "STRTR")]),
        ("january", [(0, "january")]),  # a name without its capital
        ("Anti-Colision", [(5, "Colision")]),
        ("windtee's", [(0, "windtee")]),
        ("omni", [(0, "omni")]),
        ("omni-directional", []),
        ("teh", [(0, "teh")]),
    ],
)
def test_what_is_unknown(word: str, parts: list[tuple[int, str]]) -> None:
    assert list(KNOWN.unknown_parts(word)) == parts


@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        ("alttiude", "altitude"), ("propellor", "propeller"), ("runawy", "runway"), ("seperate", "separate"),
        ("LACHED", "LATCHED"), ("Faliure", "Failure"), ("zltitude", "altitude"),
        ("ofthe", "of the"), ("glidding", "gliding"), ("checlkist", "checklist"), ("gascolatr", "gascolator"),
    ],
)  # fmt: skip
def test_the_word_that_was_meant_comes_first(wrong: str, right: str) -> None:
    assert KNOWN.meant(wrong, frozenset())[0] == (1, right)


def test_a_word_of_the_handbook_goes_first() -> None:
    assert KNOWN.meant("wich", frozenset({"which"}))[0][1] == "which"
    assert KNOWN.meant("wich", frozenset({"wish"}))[0][1] == "wish"


def test_a_wrong_or_missing_first_letter_is_offered() -> None:
    for wrong in ("ltitude", "zltitude"):
        assert (1, "altitude") in KNOWN.meant(wrong, frozenset())


def test_nothing_is_offered_for_what_is_like_nothing() -> None:
    assert KNOWN.meant("qqxxzzqq", frozenset()) == []
    (finding,) = _found("Qqxxzzqq .... ON")
    assert "Did you mean" not in finding.help
    assert finding.fix is None


def test_everything_that_is_printed_is_looked_at() -> None:
    text = """\
rules
  spelling .... on

speeds
  VX (bset angle) .... 66 KIAS  unverified

equipment
  Pump .... OFF, ON
    does .... Feeds the enigne.

normal Taxing and crusie
  when levle
  group Befroe it
    Pump .... ON
      Watch the presure.
  Mirrors .... FODLED
  note Keep outisde.
  if the pupm fails
    Pump .... OFF
  repeat until colod
    Airspeed .... {VX}
  amplified
    The resaon for it.

text Abuot it
  Some porse.
"""
    marked = [finding.spot.text for finding in findings_of(text) if finding.rule == "unknown-word"]
    assert marked == [
        "bset", "enigne", "crusie", "levle", "Befroe", "presure", "FODLED", "outisde", "pupm", "colod", "resaon",
        "Abuot", "porse",
    ]  # fmt: skip


def test_what_is_no_word_is_not_looked_at() -> None:
    assert _marked("Mixture .... LEANED", "  See b4ttery, xqz.cards, q.v. and a@bxqz.org, https://xqz.org/yqz.") == []
    assert _marked("Mixture .... LEANED", "  Line one", "  # coment here", "  line two.") == []


def test_own_names_are_known_and_titles_are_not() -> None:
    head = (
        "handbook Zorbel\n  registration .... N0QWX\n\nsources\n  Krelb manual .... Frulb 3\n\nequipment\n"
        "  Blonk .... SNARP, ON\n    also called .... grelb\n\ngauge Twimp in psi\n  green .... 1 to 2  unverified\n\n"
    )
    words_ = "  Zorbel, Krelb, Frulb, Blonk, snarp, grelb's, twimp, QWX."
    assert _marked("Blonk .... ON", words_, head=head) == []
    assert _marked("Mixture .... LEANED", words_) == ["Zorbel", "Krelb", "Frulb", "Blonk", "snarp", "grelb", "twimp"]
    assert _marked("Mixture .... LEANED", "  As in faliure.", head="normal Faliure\n  when hot\n  Fan .... ON\n\n") == [
        "Faliure"
    ]


def test_words_are_allowed_by_rows() -> None:
    line = "  Skarn, skarn and SKARN; the windtee's prop-stirke, a stirke."
    assert _marked("Mixture .... LEANED", line) == ["Skarn", "windtee", "stirke"]
    rows = "  words .... Skarn, windtee\n  words .... prop-stirke\n"
    assert _marked("Mixture .... LEANED", line, rules=rows) == ["stirke"]
    foreign = "  Zum Ölpümpchen und zu l’aile-zorbé."
    assert _marked("Mixture .... LEANED", foreign) == ["Zum", "Ölpümpchen", "und", "zu", "l’aile", "zorbé"]
    assert _marked("Mixture .... LEANED", foreign, rules="  words .... Zum und zu, Ölpümpchen l'aile-zorbé\n") == []


def test_each_word_is_said_once_with_its_other_places() -> None:
    (finding,) = _found("Skarn tower .... CALLED", "  At skarn, SKARN and Skarn-Skarn.")
    assert "5 places" in finding.message
    assert [related.spot.text for related in finding.related] == ["skarn", "SKARN", "Skarn"]
    (single,) = _found("Skarn tower .... CALLED")
    assert not single.related
    assert "places" not in single.message


def test_a_comment_allows_it_and_one_that_is_not_needed_is_said_only_where_words_are_looked_up() -> None:
    book = "normal Cruise\n  when level\n  Skarn tower .... CALLED  # allow unknown-word: a place\n"
    on = "rules\n  spelling .... on\n\n"
    assert said(findings_of(on + book)) == []
    assert said(findings_of(book)) == []
    assert said(findings_of(f"rules\n  spelling .... off\n\n{book}")) == []
    clean = book.replace("Skarn", "The")
    assert said(findings_of(on + clean)) == [("allow-unused", "# allow unknown-word: a place")]
    assert said(findings_of(clean)) == []


def test_the_rule_can_be_off_for_a_reason() -> None:
    book = "normal Cruise\n  when level\n  Skarn tower .... CALLED\n"
    off = "rules\n  spelling .... on\n  unknown-word .... off because the names are the examiner's\n\n"
    assert said(findings_of(off + book)) == []


def test_it_is_off_unless_it_is_asked_for() -> None:
    book = "normal Cruise\n  when level\n  Zrblk xyzzyt .... CALLLED\n"
    assert said(findings_of(book)) == []
    assert said(findings_of(f"rules\n  words .... Skarn\n\n{book}")) == []


def test_one_fault_is_one_finding() -> None:
    head = "equipment\n  Fuel pump .... OFF, ON\n\n"
    assert _marked("Feul pump .... ON", "Canopy .... LACTHED", head=head) == ["LACTHED"]
    book = f"rules\n  spelling .... on\n\n{head}normal Cruise\n  when level\n  Fuel pump .... OONN\n"
    assert [rule for rule, _ in said(findings_of(book))] == ["unknown-position"]


def test_a_name_that_may_be_declared_where_nobody_could_read_is_left_alone() -> None:
    card = "normal Cruise\n  when level\n  Mixture .... LEANED\n    Look for the grelb.\n"
    on = "rules\n  spelling .... on\n\n"
    assert ("unknown-word", "grelb") in said(findings_of(on + card))
    for lost in (
        "handbook X\n  include names.cards\n\n",
        "include names.cards\n\n",
        "equipmnt\n  Grelb .... OFF, ON\n\n",
    ):
        assert "unknown-word" not in [rule for rule, _ in said(findings_of(lost + on + card))]


def test_a_missing_space_is_mended_between_words_of_the_handbook_alone() -> None:
    (known,) = _found("Note cards .... CLEAR", "note Clear the noteboards of boards, and of clearboards.")[-1:]
    assert known.fix is not None
    assert known.fix.edits[0].text == "clear boards"
    (strange,) = _found("note Read the preflite list.")
    assert "`pref lite`" in strange.help
    assert strange.fix is None


def test_a_fix_is_offered_for_one_slip_from_one_word_in_all_places_and_never_safe() -> None:
    text = (
        "rules\n  spelling .... on\n\nnormal Cruise\n  when level\n  Mixture .... LEANED\n"
        "    Do it quickley, quickley, and again Quickley. Not teh wich.\n"
    )
    found = [finding for finding in findings_of(text) if finding.rule == "unknown-word"]
    fixes = {finding.spot.text: finding.fix for finding in found}
    assert fixes["teh"] is None
    assert fixes["wich"] is None
    fix = fixes["quickley"]
    assert fix is not None
    assert not fix.safe
    assert edited(text, fix.edits) == text.replace("quickley", "quickly")


@pytest.mark.parametrize(
    ("name", "text", "meaning"),
    [
        ("spelling", "on", Spelling(True)),
        ("Spelling", "ON", Spelling(True)),
        ("spelling", "off", Spelling(False)),
        ("spelling", "off because of the names", Spelling(False)),
        ("spelling", "off, for now", Spelling(False)),
        ("words", "Skarn, prop-strike Foo", Words(("Skarn", "prop-strike", "Foo"))),
        ("spelling", "yes", Amiss(None, None)),
        ("spelling", "on please", Amiss(None, None)),
        ("words", ",", Amiss(None, None)),
    ],
)
def test_rows(name: str, text: str, meaning: object) -> None:
    assert meaning_of(Setting(name, text, SPOT, SPOT)) == meaning


def test_rows_that_set_nothing_are_said() -> None:
    book = "normal Cruise\n  when level\n  Mixture .... LEANED\n"
    rows = "rules\n  spelling .... yes\n  words .... ,\n  speling .... on\n\n"
    found = findings_of(rows + book)
    assert said(found) == [("impossible-setting", "yes"), ("impossible-setting", ","), ("unknown-rule", "speling")]
    assert "`spelling`" in found[2].help


def test_a_lint_without_it_imports_nothing_of_it(tmp_path: Path) -> None:
    book = tmp_path / "a.cards"
    card = "normal Cruise\n  when level\n  Mixture .... LEANED\n"
    for block, asked in (("", False), ("  many-memory-items .... 3 items\n", False), ("  spelling .... on\n", True)):
        book.write_text(f"rules\n{block}\n{card}" if block else card, encoding="utf-8")
        script = (
            "import sys, json\nfrom dotleader.__main__ import main\n"
            f"main(['lint', {str(book)!r}])\nprint(json.dumps(sorted(sys.modules)), file=sys.stderr)"
        )
        done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
        names = json.loads(done.stderr.splitlines()[-1])
        assert any(name.startswith("dotleader.rules.spelling.") for name in names) is asked
        if not block:
            assert "dotleader.rules.wording.unknown_word" not in names
        assert "rapidfuzz" not in names


def test_it_is_a_note_of_low_confidence() -> None:
    (finding,) = _found("Skarn tower .... CALLED")
    from dotleader.rules.catalogue import BY_NAME  # noqa: PLC0415

    rule = BY_NAME[finding.rule]
    assert (rule.severity, rule.confidence, rule.fix) == (Severity.NOTE, "low", "unsafe")
