"""The names that a handbook gives to things, which are right because it says so."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dotleader.handbook.model import Control, Handbook
from dotleader.rules.settings import words_allowed
from dotleader.syntax.plain import plain

_WORD = re.compile(r"[^\W\d_]{2,}(?:['-][^\W\d_]+)*")


def own_words(handbook: Handbook) -> frozenset[str]:
    """The words of what is declared, in small letters: what the aircraft is called and made of, its sources, values,
    gauges and controls with all that the panel says of them; and what the `words` rows of the `rules` block allow.

    Titles of cards are none of them. They are prose in the largest print, and what is wrong in one is not to be right
    everywhere else.
    """
    found: set[str] = set()
    for name in _names(handbook):
        for token in _WORD.findall(plain(name)):
            word = token.lower()
            found.add(word)
            found.update(part for part in word.split("-") if len(part) > 1)
    found.update(plain(word).lower() for word in words_allowed(handbook.settings))
    return frozenset(found)


def _names(handbook: Handbook) -> Iterator[str]:
    yield handbook.title
    for fact in handbook.facts.values():
        yield fact.text
    for source in handbook.sources.values():
        yield from (source.name, source.text)
    for value in handbook.values.values():
        yield value.name
        if value.origin is not None:
            yield value.origin.detail
    for gauge in handbook.gauges.values():
        yield gauge.name
    for control in handbook.controls.values():
        yield from _names_of(control)


def _names_of(control: Control) -> Iterator[str]:
    yield control.name
    yield from control.positions
    yield from control.also_called
    for meaning in control.meanings:
        yield meaning.word
    for fact in control.properties:
        yield fact.text
