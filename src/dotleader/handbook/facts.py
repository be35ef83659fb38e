"""The `handbook` and `sources` blocks."""

from __future__ import annotations

from dotleader.handbook.amounts.units import Basis
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Fact, From
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Row, SourceNote, Words

HANDBOOK_FACTS = (
    "aircraft",
    "registration",
    "serial",
    "engine",
    "propeller",
    "seats",
    "categories",
    "builder",
    "built at",
    "airspeed in",
    "paper",
)
"""What a `handbook` block can say; all of it is optional and printed on the title face, but for `paper`."""


def read_facts(at: At, ledger: Ledger, known: tuple[str, ...] | None) -> dict[str, Fact]:
    """The rows of a block of plain facts by folded name; `known` names the rows it may have, None any."""
    facts: dict[str, Fact] = {}
    for line in at.block.lines:
        if not isinstance(line.body, Row) or line.body.right is None:
            continue
        left, right = line.body.left, line.body.right
        key, spot = folded(left.text), at.spot(left.span)
        if known is not None and key not in known:
            block = at.block.head.keyword
            ledger.say_unknown(
                "unknown-property",
                spot,
                f"`{left.text}` is nothing that a `{block}` block says.",
                left.text,
                known,
                "It can say: " + ", ".join(f"`{name}`" for name in known) + ".",
            )
        if key in facts:
            (ledger.twice if known is None else ledger.again)("The row", left.text, spot, facts[key].spot)
            continue
        facts[key] = Fact(left.text, right.text, spot)
    return facts


def value_spot(fact: Fact) -> Spot:
    """Where the right part of a fact stands; its name where that is written in another way than it reads."""
    source = fact.spot.source
    at = source.text.find(fact.text, fact.spot.end) if fact.text else -1
    on_its_line = at >= 0 and "\n" not in source.text[fact.spot.end : at]
    return Spot(source, at, at + len(fact.text)) if on_its_line else fact.spot


def airspeed_basis(facts: dict[str, Fact], ledger: Ledger) -> Basis:
    """What plain `kt` in a `speeds` block is measured by; indicated unless the handbook says otherwise."""
    fact = facts.get("airspeed in")
    if fact is None:
        return Basis.IAS
    words = fact.text.upper()
    for basis in (Basis.IAS, Basis.CAS, Basis.TAS):
        if words.endswith(basis.value):
            return basis
    ledger.say(
        "unknown-unit",
        value_spot(fact),
        f"`{fact.text}` does not say what airspeeds are measured by.",
        "Write `KIAS`, `KCAS`, `mph IAS`, `km/h IAS` or the like.",
    )
    return Basis.IAS


def origin_of(
    note: SourceNote | None, head: Words | None, at: At, sources: dict[str, Fact], ledger: Ledger
) -> From | None:
    """Where a row's number comes from: its own note, or the head's; an undeclared source is a finding."""
    if note is not None:
        spot = at.spot(note.span)
        if note.unverified:
            return From("", "", True, spot)
        return _from(note.name, spot, sources, ledger)
    if head is not None:
        spot = at.spot(head.span)
        if folded(head.text) == "unverified":
            return From("", "", True, spot)
        return _from(head.text, spot, sources, None)
    return None


def check_head_source(at: At, sources: dict[str, Fact], ledger: Ledger) -> None:
    """Say once, at the head, that its source is not declared."""
    head = at.block.head.source
    if head is not None and folded(head.text) != "unverified":
        _from(head.text, at.spot(head.span), sources, ledger)


def _from(text: str, spot: Spot, sources: dict[str, Fact], ledger: Ledger | None) -> From:

    key = folded(text)
    detail = ""
    if key not in sources:
        name, _, detail = text.partition(",")
        while folded(name) not in sources and "," in detail:
            more, _, detail = detail.partition(",")
            name = f"{name},{more}"
        key = folded(name)
    if key in sources:
        if ledger is not None:
            ledger.mention("source", key, spot)
    elif ledger is not None:
        shown = text.split(",", maxsplit=1)[0].strip()
        known = [fact.name for fact in sources.values()]
        ledger.say_unknown(
            "unknown-source",
            spot,
            f"The source `{shown}` is not declared.",
            shown,
            known,
            "Declare it in the `sources` block: `kit manual .... builder's manual, issue 4`.",
        )
        key, detail = folded(shown), ""
    return From(key, detail.strip(), False, spot)
