"""Bytes to text: what is UTF-8, what is not, and what is no text at all."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.source.decode import decode
from dotleader.source.text import SourceText

CARD = "normal Taxi\n  Brakes .... HELD – 20 °C\n"


def read(data: bytes) -> tuple[str, list[tuple[str, int, int]]]:
    outcome = decode("a.cards", data)
    return outcome.value.text, [(f.rule, f.spot.start, f.spot.end) for f in outcome.findings]


def message(data: bytes) -> str:
    (finding,) = decode("a.cards", data).findings
    return finding.message


def test_utf8_with_and_without_a_mark() -> None:
    assert read(CARD.encode()) == (CARD, [])
    assert read(b"\xef\xbb\xbf" + CARD.encode()) == (CARD, [])
    assert read(b"") == ("", [])


def test_line_ends() -> None:
    assert read(b"normal Taxi\r\n  A .... B\r\n")[0] == "normal Taxi\r\n  A .... B\r\n"
    assert read(b"normal Taxi\r  A .... B\r")[0] == "normal Taxi\n  A .... B\n"
    source = SourceText("a.cards", "a\r\nbc")
    assert [source.line(1), source.line(2)] == ["a", "bc"]


def test_windows_1252_is_named_with_the_byte_offset() -> None:
    data = CARD.encode("cp1252")
    assert read(data) == (CARD, [("not-utf8", CARD.index("–"), CARD.index("–") + 1)])
    assert f"offset {data.index(0x96)} " in message(data)
    assert "Windows-1252" in message(data)
    assert "`–`" in message(data)


def test_the_byte_offset_counts_the_mark_but_the_place_does_not() -> None:
    data = b"\xef\xbb\xbfab \xb0C"
    assert read(data) == ("ab °C", [("not-utf8", 3, 4)])
    assert "offset 6 " in message(data)


def test_a_byte_that_windows_1252_lacks_makes_it_latin_1() -> None:
    assert read(b"a \x81 \xe9")[0] == "a \x81 é"
    assert "Latin-1" in message(b"a \x81 \xe9")


def test_a_pasted_line_leaves_the_utf8_of_the_others_alone() -> None:
    text, found = read("Öl – 5 °C\n".encode() + b"20 \xb0C \x93x\x94\n")
    assert text == "Öl – 5 °C\n20 °C “x”\n"
    assert found == [("not-utf8", 13, 14)]


@pytest.mark.parametrize("codec", ["utf-16", "utf-16-le", "utf-16-be", "utf-32"])
def test_wide_encodings(codec: str) -> None:
    text, found = read(CARD.encode(codec))
    if codec.startswith("utf-32") or codec.startswith("utf-16"):
        assert text == CARD
    assert found == [("not-utf8", 0, len("normal Taxi"))]
    assert codec[:6].upper() in message(CARD.encode(codec))
    assert "byte offset 0" in message(CARD.encode(codec))


@pytest.mark.parametrize(
    "data",
    [bytes(range(256)) * 8, b"\x89PNG\r\n\x1a\n" + bytes(60), b"\xff\xfe" + bytes(range(256)) * 4, b"\0" * 900],
)
def test_what_is_no_text_gives_one_finding_and_nothing_to_read(data: bytes) -> None:
    assert read(data) == ("", [("not-text", 0, 0)])


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"{\\rtf1\\ansi\\deff0\n\\f0 Before takeoff\\par\n}", "a rich-text document"),
        (b"\n<!DOCTYPE html>\n<html><body>Before takeoff</body></html>", "a web page"),
        (b"<html>\n", "a web page"),
        (b"%PDF-1.7\n1 0 obj\n", "a PDF"),
        (b"PK\x03\x04 a few letters", "an archive, as the documents of word processors are"),
    ],
)
def test_documents_that_are_partly_text_are_named(data: bytes, kind: str) -> None:
    assert read(data) == ("", [("not-text", 0, 0)])
    assert message(data) == f"The file is {kind}, and nothing of it was read."


def test_one_finding_for_the_control_characters_of_a_text() -> None:
    text, found = read(CARD.encode() + b"  A\x07 .... \x00B\n")
    at = text.index("\x07")
    assert text.endswith("  A\x07 .... \x00B\n")
    assert found == [("not-text", at, at + 1)]
    assert "U+0007" in message(CARD.encode() + b"  A\x07 .... \x00B\n")
    assert "first of 2" in message(CARD.encode() + b"  A\x07 .... \x00B\n")


@given(st.binary(max_size=400))
def test_any_bytes_become_text_with_at_most_two_findings_inside_it(data: bytes) -> None:
    outcome = decode("a.cards", data)
    assert len(outcome.findings) <= 2
    for finding in outcome.findings:
        assert finding.spot.source is outcome.value
        assert 0 <= finding.spot.start <= finding.spot.end <= len(outcome.value.text)


@given(st.text(alphabet=st.characters(exclude_categories=["Cs", "Cc"], exclude_characters="\ufeff"), max_size=200))
def test_text_survives(text: str) -> None:
    assert read(text.encode()) == (text, [])
