"""What resolving has to say and what it has seen named, collected on the way."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from dotleader.handbook.model import Mention
from dotleader.source.finding import Finding, Fix, Related
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded


class Ledger:
    """Findings and mentions of one resolve. `card` is the key of the card that is being read, `""` elsewhere."""

    def __init__(self) -> None:
        self.findings: list[Finding] = []
        self.mentions: list[Mention] = []
        self.card = ""

    def say(self, rule: str, spot: Spot, message: str, help_: str, *related: Related, fix: Fix | None = None) -> None:
        self.findings.append(Finding(rule, spot, message, help_, related, fix=fix))

    def say_unknown(self, rule: str, spot: Spot, message: str, name: str, known: Iterable[str], none: str) -> None:
        """A name at `spot` that is none of those that can stand there: the nearest are offered, or `none`."""
        # Only a book with a fault in it pays for this import.
        from dotleader.handbook.mending import respelt  # noqa: PLC0415

        names = list(known)
        self.say(rule, spot, message, offered(name, names, none), fix=respelt(spot, name, names))

    def mention(self, kind: str, key: str, spot: Spot) -> None:
        self.mentions.append(Mention(kind, key, spot, self.card))

    def twice(self, what: str, name: str, spot: Spot, first: Spot) -> None:
        """A name that is declared a second time."""
        self.say(
            "name-used-twice",
            spot,
            f"{what} `{name}` is declared twice.",
            "Give one of them another name, or take one out.",
            Related(first, "It is declared here first."),
        )

    def again(self, what: str, word: str, spot: Spot, first: Spot) -> None:
        """A word of the language that stands a second time where it can stand once."""
        self.say(
            "name-used-twice",
            spot,
            f"{what} `{word}` is given twice.",
            "Take one of them out.",
            Related(first, "It is given here first."),
        )


def part_of(spot: Spot, words: str) -> Spot:
    """Where words of a text stand; all of the text where they stand in it more than once or otherwise written."""
    found = list(re.finditer(rf"(?<!\w){re.escape(words)}(?!\w)", spot.text)) if words else []
    if len(found) != 1:
        return spot
    return Spot(spot.source, spot.start + found[0].start(), spot.start + found[0].end())


def nearest(name: str, known: Iterable[str], most: int = 3) -> list[str]:
    """The declared names most like `name`, best first; none where nothing is like it."""
    return list(_nearest(name, tuple(known), most))


@lru_cache(8)  # the help and the fix of a finding ask for the same
def _nearest(name: str, known: tuple[str, ...], most: int) -> tuple[str, ...]:
    # Only a book with a fault in it pays for this import.
    from rapidfuzz import fuzz, process  # noqa: PLC0415

    found = process.extract(_bare(name), [*map(_bare, known)], scorer=fuzz.ratio, limit=most, score_cutoff=62)
    return tuple(known[place] for _, _score, place in found)


@lru_cache(16_384)
def _bare(name: str) -> str:
    """A name as it is compared; a long book with many slips asks for all its titles again and again."""
    from rapidfuzz import utils  # noqa: PLC0415

    return utils.default_process(name)


def offered(name: str, known: Iterable[str], none: str) -> str:
    """Help for a name that is not declared: the nearest ones, or `none`."""
    near = nearest(name, known)
    if not near:
        return none
    return "Did you mean " + " or ".join(f"`{choice}`" for choice in near) + "?"


def split_prefix(text: str, names: Iterable[str]) -> tuple[str, str] | None:
    """The longest of `names` (as declared) that `text` begins with, folded, and the rest; None if there is none."""
    words = text.split()
    known = {folded(name): name for name in names}
    for count in range(len(words), 0, -1):
        name = known.get(folded(" ".join(words[:count])))
        if name is not None:
            return name, " ".join(words[count:])
    return None
