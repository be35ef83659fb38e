"""The `equipment` block: controls, their positions, and what is said of them."""

from __future__ import annotations

from functools import partial

from dotleader.handbook.amounts.units import Unit
from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Control, Effect, Fact, Gauge, Meaning, Need
from dotleader.handbook.names import offered, part_of, split_prefix
from dotleader.handbook.numbers import Numbers
from dotleader.handbook.panel_place import read_place
from dotleader.handbook.phrases import Phrases
from dotleader.handbook.positions import Positions, matched, read_positions, unlisted
from dotleader.handbook.wiring_reading import CIRCUIT, WHILE_MOVING, read_wiring
from dotleader.handbook.wiring_reading import SAMPLES as CIRCUIT_SAMPLES
from dotleader.source.finding import Related
from dotleader.source.text import Spot
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Line, Prose, Row, Words

PROPERTIES = (
    "parked", "needs", "turned", "springs", "means", "read on", "also called",
    "draws", "breaker", "fuse", "wire", "at", "does",
)  # fmt: skip
_SAMPLES = {
    "needs": "needs .... Master switch ON",
    "turned": "turned START .... Engine RUNNING",
    "springs": "springs .... START to BOTH",
    "means": "means .... FULLEST TANK: LEFT or RIGHT",
    "at": "at .... panel 42 mm, 110 mm",
    **CIRCUIT_SAMPLES,
}
_WITH_POSITION = ("needs", "turned", "draws")


class Outline:
    """A control whose name and positions are known, and whose properties are still to be read."""

    __slots__ = ("at", "key", "line", "name", "positions", "row", "unit")

    def __init__(self, line: Line, row: Row, at: At, numbers: Numbers) -> None:
        self.line, self.row, self.at = line, row, at
        self.name = row.left.text
        self.key = folded(self.name)
        self.positions: Positions = read_positions(row.right.text if row.right else "")
        self.unit: Unit | None = None
        if self.positions.unit and row.right is not None:
            self.unit = numbers.unit(self.positions.unit, at.spot(row.right.span))

    @property
    def spot(self) -> Spot:
        return self.at.spot(self.row.left.span)


def outlines(at: At, numbers: Numbers, ledger: Ledger, known: dict[str, Outline]) -> None:
    """Take up the controls of a block; a name that stands twice, or a position, is said."""
    for line in at.block.lines:
        if not isinstance(line.body, Row):
            continue
        outline = Outline(line, line.body, at, numbers)
        if outline.key in known:
            ledger.twice("The control", outline.name, outline.spot, known[outline.key].spot)
            continue
        if line.body.right is not None and unlisted(outline.positions):
            ledger.say(
                "unreadable-value",
                at.spot(line.body.right.span),
                f"`{line.body.right.text}` is read as a single position.",
                "Positions are listed with commas, `OFF, ON`; a lever is a range, `CLOSED to FULL`.",
            )
        seen: set[str] = set()
        for position in outline.positions.names:
            if matched(position) in seen and line.body.right is not None:
                ledger.again("The position", position, at.spot(line.body.right.span), at.spot(line.body.right.span))
            seen.add(matched(position))
        known[outline.key] = outline


class Reading:
    """Reads the properties of controls, with all controls' names and positions at hand."""

    def __init__(
        self, known: dict[str, Outline], gauges: dict[str, Gauge], numbers: Numbers, phrases: Phrases, ledger: Ledger
    ) -> None:
        self.known, self.gauges, self.numbers = known, gauges, numbers
        self.phrases, self.ledger = phrases, ledger
        self.names = [outline.name for outline in known.values()]

    def control(self, outline: Outline) -> Control:
        """The whole control. Every property is read; one that cannot be is said and left out."""
        parked, does, place = "", None, None
        needs: list[Need] = []
        effects: list[Effect] = []
        springs: list[tuple[str, str]] = []
        meanings: list[Meaning] = []
        read_on: list[str] = []
        aliases: list[str] = []
        others: dict[str, Fact] = {}
        circuit: list[Row] = []
        for line, row, key, right in self._properties(outline):
            spot = outline.at.spot(right.span)
            word = key.split(" ")[0]
            match word:
                case "parked":
                    parked = self._position(outline, right.text, spot)
                case "needs":
                    needs.append(self._need(outline, row, right.text, spot))
                case "turned":
                    effects.extend(self._effect(outline, row, right.text, spot))
                case "springs":
                    springs.extend(self._springs(outline, right.text, spot))
                case "means":
                    meanings.extend(self._meaning(outline, right.text, spot))
                case "read":
                    read_on.extend(self._gauges(right.text, spot))
                case "also":
                    aliases.extend(name.strip() for name in right.text.split(",") if name.strip())
                case "does":
                    lines = [child.body.words for child in line.children if isinstance(child.body, Prose)]
                    does = self.phrases.joined([right, *lines], outline.at)
                case _:
                    if word == "at":
                        place = read_place(right.text)
                        if place is None:
                            self._form(word, spot, right.text)
                    others[key] = Fact(key, right.text, spot)
                    circuit.extend([row] if word in CIRCUIT else [])
        positions = outline.positions
        return Control(
            key=outline.key,
            name=outline.name,
            positions=positions.names,
            lever=positions.lever,
            takes_any=positions.takes_any,
            unit=outline.unit,
            parked=parked,
            needs=tuple(needs),
            effects=tuple(effects),
            springs=tuple(springs),
            meanings=tuple(meanings),
            read_on=tuple(read_on),
            also_called=tuple(aliases),
            properties=tuple(others.values()),
            does=does,
            spot=outline.spot,
            place=place,
            wiring=read_wiring(circuit, partial(self._position, outline), outline.at, self.numbers),
        )

    def _properties(self, outline: Outline) -> list[tuple[Line, Row, str, Words]]:
        found: list[tuple[Line, Row, str, Words]] = []
        once: dict[str, Spot] = {}
        for line in outline.line.children:
            row = line.body
            if not isinstance(row, Row) or row.right is None:
                continue
            key, spot = folded(row.left.text), outline.at.spot(row.left.span)
            name = next((p for p in PROPERTIES if key == p or (p in _WITH_POSITION and key.startswith(p + " "))), "")
            if not name or _half_said(key):
                message = f"`{row.left.text}` is no property of a control."
                if name:
                    self.ledger.say("unknown-property", spot, message, f"Write `{_SAMPLES[name]}`.")
                else:
                    properties = "The properties are " + ", ".join(f"`{p}`" for p in PROPERTIES) + "."
                    self.ledger.say_unknown("unknown-property", spot, message, row.left.text, PROPERTIES, properties)
                continue
            if key in once and name not in ("needs", "turned", "means", "springs", "also called", "read on"):
                self.ledger.again("The property", row.left.text, spot, once[key])
                continue
            once[key] = spot
            found.append((line, row, key, row.right))
        return found

    def _position(self, outline: Outline, text: str, spot: Spot) -> str:
        """A position of this control as declared; said and empty where it has none of that name."""
        if outline.positions.takes_any:
            return text
        for name in outline.positions.names:
            if matched(name) == matched(text):
                return name
        names = outline.positions.names
        self.ledger.say(
            "unknown-position",
            part_of(spot, text),
            f"`{outline.name}` has no position `{text}`.",
            "Its positions are " + ", ".join(f"`{name}`" for name in names) + "." if names else "It has no positions.",
            Related(outline.spot, "It is declared here."),
        )
        return ""

    def _setting(self, text: str, spot: Spot, sample: str) -> tuple[str, str] | None:
        """`CONTROL POSITION`, the longest control name first."""
        split = split_prefix(text, self.names)
        if split is None or not split[1]:
            self.ledger.say(
                "unknown-position",
                spot,
                f"`{text}` begins with the name of no declared control."
                if split is None
                else f"`{text}` names a control but no position of it.",
                offered(text, self.names, f"A control and its position are meant, both as declared: `{sample}`.")
                if split is None
                else f"Write both as declared: `{sample}`.",
            )
            return None
        outline = self.known[folded(split[0])]
        self.ledger.mention("control", outline.key, spot)
        position = self._position(outline, split[1], spot)
        return (outline.key, position) if position else None

    def needed(self, moved: str, text: str, spot: Spot) -> Need:
        """What has to hold: alternatives of a control and its position, joined by `or`."""
        settings = [self._setting(part, spot, _SAMPLES["needs"]) for part in text.split(" or ")]
        return Need(moved, tuple(setting for setting in settings if setting), spot)

    def _need(self, outline: Outline, row: Row, text: str, spot: Spot) -> Need:
        words = " ".join(row.left.text.split())
        moved = words[len("needs for ") :] if folded(words).startswith("needs for ") else ""
        if moved:
            moved = self._position(outline, moved, outline.at.spot(row.left.span))
        return self.needed(moved, text, spot)

    def _effect(self, outline: Outline, row: Row, text: str, spot: Spot) -> list[Effect]:
        words = " ".join(row.left.text.split())[len("turned ") :]
        position = self._position(outline, words, outline.at.spot(row.left.span))
        settings = [self._setting(part.strip(), spot, _SAMPLES["turned"]) for part in text.split(",")]
        return [Effect(position, control, to, spot) for control, to in filter(None, settings) if position]

    def _springs(self, outline: Outline, text: str, spot: Spot) -> list[tuple[str, str]]:
        pairs = []
        for part in text.split(","):
            start, to, end = part.strip().partition(" to ")
            if not to:
                self._form("springs", spot, part.strip())
                continue
            pair = (self._position(outline, start, spot), self._position(outline, end, spot))
            if all(pair):
                pairs.append(pair)
        return pairs

    def _meaning(self, outline: Outline, text: str, spot: Spot) -> list[Meaning]:
        word, colon, rest = text.partition(":")
        if not colon or not word.strip() or not rest.strip():
            self._form("means", spot, text)
            return []
        rest = rest.strip()
        other = rest.startswith("the other of ")
        names = rest[len("the other of ") :] if other else rest
        positions = [self._position(outline, name.strip(), spot) for name in names.split(" or ")]
        return [Meaning(" ".join(word.split()), tuple(filter(None, positions)), other, spot)]

    def _gauges(self, text: str, spot: Spot) -> list[str]:
        keys = []
        for part in text.split(","):
            key = folded(part)
            if key in self.gauges:
                self.ledger.mention("gauge", key, spot)
                keys.append(key)
            else:
                known = [gauge.name for gauge in self.gauges.values()]
                self.ledger.say_unknown(
                    "unknown-gauge",
                    spot,
                    f"No gauge `{part.strip()}` is declared.",
                    part.strip(),
                    known,
                    "Declare it: `gauge Engine speed in rpm from engine manual`.",
                )
        return keys

    def _form(self, word: str, spot: Spot, text: str) -> None:
        self.ledger.say(
            "unreadable-value", spot, f"`{text}` cannot be read after `{word}`.", f"Write it like `{_SAMPLES[word]}`."
        )


def _half_said(key: str) -> bool:
    """Whether a property lacks the words that have to follow it, or has others."""
    match key.split(" ", maxsplit=1)[0]:
        case "needs":
            return key != "needs" and not key.startswith("needs for ")
        case "draws":
            return key not in ("draws", WHILE_MOVING) and not key.startswith("draws in ")
        case _:
            return key == "turned"
