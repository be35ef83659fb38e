"""Cards made in a line or two, for tests of layout."""

from __future__ import annotations

from dotleader.handbook.cards import (
    Arm,
    Branch,
    Card,
    Challenge,
    End,
    GoTo,
    Group,
    Item,
    Kind,
    Memory,
    Notice,
    OneOf,
    Phrase,
    Repeat,
    Step,
)
from dotleader.page.drawn import Line, Text, mm
from dotleader.page.laid import Frame, LaidCard, LaidFace
from dotleader.page.lay.lay_card import lay_card
from dotleader.source.text import SourceText, Spot

SPOT = Spot(SourceText("test.cards", ""), 0, 0)
FRAME = Frame(
    width=mm(114.05),
    height=mm(222.25),
    top=mm(17),
    bottom=mm(204.5),
    label_width=mm(16),
    label_height=mm(6.2),
    label_size=14_000,
    smallest=12_000,
)
"""Of a leaf of 5.75 by 8.75 in, read at 600 mm."""

NO_SYMBOLS: frozenset[str] = frozenset()


def phrase(text: str) -> Phrase:
    return Phrase((text,), SPOT)


def item(challenge: str, response: str = "ON", *detail: str, critical: bool = False, only: str = "") -> Item:
    """`only` is `with NAME` or `without NAME`; a plus joins several challenges."""
    word, _, option = only.partition(" ")
    return Item(
        challenges=tuple(Challenge(phrase(part)) for part in challenge.split(" + ")),
        response=phrase(response),
        detail=tuple(phrase(text) for text in detail),
        critical=critical,
        only=((word, option),) if only else (),
        moves=(),
        spot=SPOT,
    )


def notice(word: str, text: str) -> Notice:
    return Notice(word, phrase(text), SPOT)


def group(title: str, *steps: Step) -> Group:
    return Group(phrase(title), steps, SPOT)


def memory(*steps: Step) -> Memory:
    return Memory(steps, SPOT)


def branch(*arms: tuple[str, tuple[Step, ...]]) -> Branch:
    """Arms by their condition, which is empty for `otherwise`."""
    words = ["if", *["or if"] * len(arms)]
    return Branch(
        tuple(
            Arm(word if condition else "otherwise", phrase(condition) if condition else None, steps, SPOT)
            for word, (condition, steps) in zip(words, arms, strict=False)
        ),
        SPOT,
    )


def one_of(*steps: Step) -> OneOf:
    return OneOf(steps, SPOT)


def repeat(until: str, *steps: Step) -> Repeat:
    return Repeat(phrase(until), steps, SPOT)


def go_to(title: str) -> GoTo:
    return GoTo(title, title.casefold(), SPOT)


END = End(SPOT)


def card(*steps: Step, title: str = "A card", kind: Kind = Kind.EMERGENCY, when: str = "") -> Card:
    return Card(
        key=title.casefold(),
        kind=kind,
        title=title,
        phase="",
        thumb="TEST",
        during=(),
        after="",
        when=phrase(when) if when else None,
        method="read and do",
        steps=steps,
        amplified=(),
        spot=SPOT,
    )


def texts(laid: LaidCard | LaidFace) -> list[Text]:
    """The texts of all faces, in the order in which they are drawn."""
    faces = laid.faces if isinstance(laid, LaidCard) else (laid,)
    return [one for face in faces for one in face.items if isinstance(one, Text)]


def lines(laid: LaidCard | LaidFace) -> list[Line]:
    faces = laid.faces if isinstance(laid, LaidCard) else (laid,)
    return [one for face in faces for one in face.items if isinstance(one, Line)]


def text(laid: LaidCard | LaidFace, string: str) -> Text:
    """The one text that reads so."""
    (found,) = (one for one in texts(laid) if one.string == string)
    return found


FIRE = card(
    memory(item("Cabin heat", "OFF"), item("Descent", "START")),
    item("Land", "AT ONCE"),
    branch(
        (
            "the engine burns",
            (
                item("Fuel selector", "OFF", critical=True),
                branch(("flames remain", (item("Airspeed", "120 KIAS"),))),
                notice("warning", "Do not restart the engine."),
                go_to("Forced landing"),
            ),
        ),
        ("", (item("Master", "OFF"), END)),
    ),
    title="Fire in flight",
    when="you see flames",
)
"""With all that branches can hold."""


def laid(*steps: Step, kind: Kind = Kind.EMERGENCY, title: str = "A card", when: str = "") -> LaidCard:
    return lay_card(card(*steps, kind=kind, title=title, when=when), FRAME, NO_SYMBOLS)


def items(count: int, *, name: str = "Item", critical: bool = False) -> list[Step]:
    return [item(f"{name} {chr(65 + at % 26)}", "SET", critical=critical) for at in range(count)]
