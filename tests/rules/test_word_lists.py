"""The lists of words are what is recorded of them. Without network: what they are made of is held by its digests."""

from __future__ import annotations

import hashlib
import zlib

from dotleader.rules.spelling.lists import english
from tests.tables.make_word_list import INPUTS, LICENCE, LIST, MADE, SPELLING, WORDS, digest, without_doubles, words


def test_the_list_is_what_was_made_of_known_packages() -> None:
    """Without network: the list, its recorded digest and that of its inputs belong together."""
    text = zlib.decompress(LIST.read_bytes()).decode("ascii")
    assert digest(text) == MADE
    lines = text.split("\n")
    assert len(lines) == WORDS
    assert lines == sorted(set(lines))
    assert without_doubles(set(lines)) == set(lines)
    assert LIST.stat().st_size < 1_000_000
    assert len({known for _, known in INPUTS}) == len(INPUTS) == 2
    assert hashlib.sha256(LICENCE.read_bytes()).hexdigest() == (
        "2a7e8d8ae9e8facc84818546ae2a8d83aec5e9c80a675ff789acd1c338b53b3d"
    )
    assert "Permission to use, copy, modify, distribute and sell these word" in LICENCE.read_text(encoding="utf-8")


def test_endings_are_worked_out_when_the_list_is_made() -> None:
    aff = (
        "PFX U Y 1\nPFX U 0 un .\n\nSFX D Y 4\nSFX D 0 d e\nSFX D y ied [^aeiou]y\nSFX D 0 ed [^ey]\n"
        "SFX D 0 ed [aeiou]y\n\nSFX M Y 1\nSFX M 0 's .\n"
    )
    dic = "9\nlatch/UDM\ndry/D\nstay/D\nmove/D\nMarch/M\nmarch\nFAA\n1st/p\ndon't\nrude/!\nx\n"
    assert words(aff, dic) == {
        "latch", "latched", "unlatch", "unlatched", "dry", "dried", "stay", "stayed", "move", "moved", "March", "march",
        "FAA", "don't",
    }  # fmt: skip
    assert without_doubles({"March", "march", "FAA"}) == {"march", "FAA"}


def test_the_trade_list_is_in_order_and_repeats_nothing() -> None:
    groups: list[list[str]] = []
    for line in (SPELLING / "trade.txt").read_text(encoding="utf-8").splitlines():
        assert len(line) <= 120
        if line.startswith("#"):
            groups.append([])
        else:
            groups[-1].extend(line.split())
    every = [word for group in groups for word in group]
    assert len(every) == len(set(every)) > 400
    assert all(group == sorted(group) for group in groups)
    general = english()
    assert not [word for word in every if word in general or not word.islower()]
