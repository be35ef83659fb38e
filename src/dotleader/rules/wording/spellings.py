"""Texts that are nearly the same, found by an index and not by comparing all with all.

Two texts are alike where they differ only in case, hyphens, spaces or marks; in the plural of their words; or in one
letter of one word. Texts whose numbers differ are never alike.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator, Sequence
from itertools import combinations, product
from operator import attrgetter

from dotleader.rules.references.ordinary_words import ORDINARY_WORDS
from dotleader.rules.wording.real_words import REAL_WORDS
from dotleader.source.text import Spot

SHORTEST = 5
"""Letters below which texts and words are too often near by chance."""

MANY = 3
"""A word that stands in so many different texts is no slip."""

_WORD = re.compile(r"\{[^}]*\}|[^\s\-/,;:.!?'\"()]+(?:[.,]\d+)*")
_NUMBER = re.compile(r"[-+−]?\d+(?:[.,:]\d+)*")
_KNOWN = REAL_WORDS | ORDINARY_WORDS


class Form:
    """One way of writing something, with the places where it stands in order.

    `declared` where it is what the panel says, which is right by itself. `number` holds, of the things that it is said
    of, whether they are several; `answers`, of a challenge, what is said to it.
    """

    __slots__ = ("answers", "at", "declared", "number", "places", "text", "words")

    def __init__(self, text: str, at: int, words: tuple[str, ...]) -> None:
        self.text, self.at, self.words, self.declared = text, at, words, False
        self.places: list[Spot] = []
        self.number: set[bool] = set()
        self.answers: set[str] = set()

    @property
    def rank(self) -> tuple[bool, int, int]:
        """What is declared goes first, then what stands more often, then what came first."""
        return self.declared, len(self.places), -self.at

    @property
    def letters(self) -> str:
        return "".join(self.words)

    @property
    def stems(self) -> str:
        return "".join(map(singular, self.words))


class Forms:
    """All texts of one kind: challenges, or responses."""

    def __init__(self) -> None:
        self.by_text: dict[str, Form] = {}

    def add(
        self, text: str, place: Spot, *, declared: bool = False, several: bool | None = None, answer: str = ""
    ) -> None:
        form = self.by_text.get(text)
        if form is None:
            form = self.by_text[text] = Form(text, len(self.by_text), words_of(text))
        form.declared = form.declared or declared
        form.places.append(place)
        if several is not None:
            form.number.add(several)
        if answer:
            form.answers.add(answer)

    def uneven(self) -> Iterator[tuple[Form, Form]]:
        """Each form that is the lesser of two that are alike, with the best of those that it is like."""
        better: dict[str, Form] = {}
        for one, other in self._alike():
            lesser, greater = sorted((one, other), key=attrgetter("rank"))
            best = better.get(lesser.text)
            if not lesser.declared and (best is None or greater.rank > best.rank):
                better[lesser.text] = greater
        for text, greater in better.items():
            yield self.by_text[text], greater

    def _alike(self) -> Iterator[tuple[Form, Form]]:
        forms = [form for form in self.by_text.values() if form.words]
        yield from _sharing(forms, attrgetter("letters"))
        for one, other in _sharing(forms, attrgetter("stems")):
            if min(len(one.letters), len(other.letters)) >= SHORTEST and not _agree(one, other):
                yield one, other
        yield from _one_letter_apart(forms)


def words_of(text: str) -> tuple[str, ...]:
    """The words of a text, folded; a reference in braces is one word."""
    return tuple(_WORD.findall(text.casefold()))


def singular(word: str) -> str:
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "sses", "xes", "zes")):
        return word[:-2]
    if word.endswith("s") and not word.endswith(("ss", "us", "is")) and len(word) > 3:
        return word[:-1]
    return word


def is_plural(text: str) -> bool:
    words = words_of(text)
    return bool(words) and singular(words[-1]) != words[-1]


def _sharing(forms: Sequence[Form], key: Callable[[Form], str]) -> Iterator[tuple[Form, Form]]:
    """The pairs that have a key and all numbers in common."""
    groups: defaultdict[tuple[str, ...], list[Form]] = defaultdict(list)
    for form in forms:
        groups[key(form), *_NUMBER.findall(form.text)].append(form)
    for group in groups.values():
        yield from combinations(group, 2)


def _agree(one: Form, other: Form) -> bool:
    """Whether a plural has its reason: a response follows its challenge (`Rudder .... MOVES`, `Ailerons .... MOVE`), or
    two challenges are not answered alike (`Fields .... ONE IN REACH`, `Field .... CHOSEN`).
    """
    if one.letters == other.letters:
        return False
    follows = bool(one.number and other.number) and one.number.isdisjoint(other.number)
    return follows or (bool(one.answers and other.answers) and one.answers.isdisjoint(other.answers))


def _one_letter_apart(forms: Sequence[Form]) -> Iterator[tuple[Form, Form]]:
    """The pairs that differ in one word by one letter added, left out, changed or swapped with its neighbour."""
    spread = Counter(word for form in forms for word in set(form.words))
    for by_word in _with_one_word_open(forms).values():
        for a, b in _near_words(by_word):
            for one, other in product(by_word[a], by_word[b]):
                rarer = a if one.rank < other.rank else b
                if spread[rarer] < MANY:
                    yield one, other


def _with_one_word_open(forms: Sequence[Form]) -> dict[tuple[str, ...], dict[str, list[Form]]]:
    """Forms by what is left of them without one word, and by that word."""
    groups: defaultdict[tuple[str, ...], defaultdict[str, list[Form]]] = defaultdict(lambda: defaultdict(list))
    for form in forms:
        for at, word in enumerate(form.words):
            if len(word) >= SHORTEST and word.isalpha():
                groups[*form.words[:at], "", *form.words[at + 1 :]][word].append(form)
    return {rest: dict(by_word) for rest, by_word in groups.items() if len(by_word) > 1}


def _near_words(words: dict[str, list[Form]]) -> Iterator[tuple[str, str]]:
    """The pairs of words one letter apart that may be a slip. Words are compared that are equal with a letter less."""
    sharing: defaultdict[str, list[str]] = defaultdict(list)
    for word in words:
        for cut in {word, *(word[:at] + word[at + 1 :] for at in range(len(word)))}:
            sharing[cut].append(word)
    pairs = {pair for group in sharing.values() for pair in combinations(group, 2)}
    candidates = sorted(pair for pair in pairs if not _differ_on_purpose(*pair))
    if not candidates:
        return
    # Only a book in which something may be misspelt pays for this import.
    from rapidfuzz.distance import OSA  # noqa: PLC0415

    for a, b in candidates:
        if OSA.distance(a, b, score_cutoff=1) == 1:
            yield a, b


def _differ_on_purpose(a: str, b: str) -> bool:
    """Whether both are words of their own, or two forms of one: `close` and `closed`, `heated` and `heater`."""
    if singular(a) == singular(b):
        return True
    if _is_known(a) and _is_known(b):
        return True
    if len(a) == len(b):
        return a[:-1] == b[:-1] and a[-2] == "e" and {a[-1], b[-1]} <= set("drsn")
    shorter, longer = sorted((a, b), key=len)
    return longer[:-1] == shorter and shorter.endswith("e") and longer[-1] in "drsn"


def _is_known(word: str) -> bool:
    return word in _KNOWN or singular(word) in _KNOWN
