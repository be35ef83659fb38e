"""Bytes to text. Never fails: what is not UTF-8 is read by the likely encoding, with one finding beside it."""

from __future__ import annotations

import codecs

from dotleader.source.finding import Finding
from dotleader.source.outcome import Outcome
from dotleader.source.text import SourceText, Spot

_BOMS = (
    (codecs.BOM_UTF32_LE, "utf-32", "UTF-32"),  # before UTF-16, whose mark it begins with
    (codecs.BOM_UTF32_BE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF16_LE, "utf-16", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16", "UTF-16"),
)
_NOT_IN_1252 = frozenset(b"\x81\x8d\x8f\x90\x9d")
_CONTROLS = bytes(set(range(32)) - set(b"\t\n\r\f")) + b"\x7f"
_JUNK = 0.002  # share of control characters above which nothing in a file is worth reading
_FEW = 4  # control characters that may stand even in a very short text
_LATIN = 0.1  # share of ASCII below which something with a UTF-16 mark is no text of ours: dots, spaces, keywords
_SHOWN = 40
_DOCUMENTS = {
    b"{\\rtf": "a rich-text document",
    b"<!doctype html": "a web page",
    b"<html": "a web page",
    b"%pdf-": "a PDF",
    b"pk\x03\x04": "an archive, as the documents of word processors are",
}
"""What is no list of cards though some of it is text, by how it begins, in lower case."""
_FULL_OF_BYTES = "The file is not text: it is full of bytes that no text holds, and nothing of it was read."
_GIVE_TEXT = "Give a file that was written with a text editor and saved as UTF-8."
_SAVE_AS_TEXT = "Save it as plain text in UTF-8 from the program that it was written with, or type it in a text editor."
_SAVE_AS_UTF8 = "Save the file as UTF-8; every editor offers it, often under `Save as` or `Encoding`."


def decode(name: str, data: bytes) -> Outcome[SourceText]:
    """The text of a file, and a finding where it is not UTF-8 text.

    A byte-order mark is dropped, and offsets count without it. Lone carriage returns end lines where a file has no
    line feed at all. Of a file that is no text nothing is kept.
    """
    for mark, codec, encoding in _BOMS:
        if data.startswith(mark):
            return _of_another(name, data, codec, encoding)
    body = data.removeprefix(codecs.BOM_UTF8)
    if codec := _wide(body):
        return _of_another(name, body, codec, "UTF-16")
    head = body[:64].lstrip().lower()
    for start, kind in _DOCUMENTS.items():
        if head.startswith(start):
            return _no_text(name, f"The file is {kind}, and nothing of it was read.", _SAVE_AS_TEXT)
    strange = len(body) - len(body.translate(None, _CONTROLS))
    if strange > max(_FEW, _JUNK * len(body)):
        return _no_text(name)
    try:
        source = SourceText(name, _line_feeds(body.decode("utf-8")))
        found: tuple[Finding, ...] = ()
    except UnicodeDecodeError as error:
        source, not_utf8 = _in_pieces(name, body, error.start, len(data) - len(body))
        found = (not_utf8,)
    return Outcome(source, (*found, _control(source)) if strange else found)


def _wide(data: bytes) -> str:
    """The codec of UTF-16 without a mark: every other byte of a Latin text is NUL."""
    sample = data[:2000]
    half = len(sample) // 2
    if half < 2 or b"\0" not in sample:
        return ""
    even, odd = sample[0::2].count(0), sample[1::2].count(0)
    if odd > 0.7 * half and even < 0.1 * half:
        return "utf-16-le"
    return "utf-16-be" if even > 0.7 * half and odd < 0.1 * half else ""


def _of_another(name: str, data: bytes, codec: str, encoding: str) -> Outcome[SourceText]:
    text = data.decode(codec, errors="replace").removeprefix("\ufeff")
    if sum(map(str.isascii, text)) < _LATIN * len(text):
        return _no_text(name)
    source = SourceText(name, _line_feeds(text))
    spot = Spot(source, 0, min(len(source.line(1)), _SHOWN))
    message = f"The file is not UTF-8: from byte offset 0 on it looks like {encoding}."
    return Outcome(source, (Finding("not-utf8", spot, message, _SAVE_AS_UTF8),))


def _in_pieces(name: str, data: bytes, first: int, mark: int) -> tuple[SourceText, Finding]:
    """What is UTF-8 as such, each other byte by the likely encoding, because files get pasted together.

    `first` is the offset of the first byte that is not UTF-8, `mark` the length of the byte-order mark before `data`.
    """
    bad = bytearray()

    def kept(error: UnicodeError) -> tuple[str, int]:
        assert isinstance(error, UnicodeDecodeError)
        bad.extend(error.object[error.start : error.end])
        return "", error.end

    codecs.register_error("dotleader-kept", kept)
    data.decode("utf-8", errors="dotleader-kept")
    codec, encoding = ("cp1252", "Windows-1252")
    if not _NOT_IN_1252.isdisjoint(bad):
        codec, encoding = ("latin-1", "Latin-1 (ISO 8859-1)")

    def likely(error: UnicodeError) -> tuple[str, int]:
        assert isinstance(error, UnicodeDecodeError)
        return error.object[error.start : error.end].decode(codec), error.end

    codecs.register_error("dotleader-likely", likely)
    source = SourceText(name, _line_feeds(data.decode("utf-8", errors="dotleader-likely")))
    at = len(data[:first].decode("utf-8"))
    read_as = source.text[at] if source.text[at].isprintable() else f"U+{ord(source.text[at]):04X}"
    message = (
        f"The file is not UTF-8: the byte at offset {first + mark} (hexadecimal {data[first]:02x}) looks like "
        f"{encoding}, where it is `{read_as}`."
    )
    return source, Finding("not-utf8", Spot(source, at, at + 1), message, _SAVE_AS_UTF8)


def _line_feeds(text: str) -> str:
    """One for one, so that offsets stay true."""
    return text.replace("\r", "\n") if "\r" in text and "\n" not in text else text


def _no_text(name: str, message: str = _FULL_OF_BYTES, advice: str = _GIVE_TEXT) -> Outcome[SourceText]:
    source = SourceText(name, "")
    return Outcome(source, (Finding("not-text", Spot(source, 0, 0), message, advice),))


def _control(source: SourceText) -> Finding:
    """One finding for all the control characters of a file that is text otherwise."""
    controls = frozenset(_CONTROLS.decode("ascii"))
    places = [at for at, mark in enumerate(source.text) if mark in controls]
    at = places[0]
    message = f"Here stands the control character U+{ord(source.text[at]):04X}, which no text holds"
    message += f"; it is the first of {len(places)} in this file." if len(places) > 1 else "."
    return Finding("not-text", Spot(source, at, at + 1), message, "Take it out, or type the line again.")
