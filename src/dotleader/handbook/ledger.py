"""What resolving has to say and what it has seen named, collected on the way."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.handbook.model import Mention
from dotleader.handbook.names import offered
from dotleader.source.finding import Finding, Fix, Related
from dotleader.source.text import Spot


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
