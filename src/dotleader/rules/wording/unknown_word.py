"""A word that is in no list. Looked for only where a handbook asks for it: `spelling .... on` in its `rules` block."""

from __future__ import annotations

from collections.abc import Iterator

from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.subject import Subject
from dotleader.source.finding import Edit, Finding, Fix, Related, Severity
from dotleader.source.text import Spot

BAD = Example(
    """\
rules
  spelling .... on

emergency Engine faliure after takeoff
  when the engine stops below 500 ft
  Airspeed .... BEST GLIDE
    Lower the nose at once: the airspeed decays quickley.
  Fuel selector .... OFF
  warning Do not turn back: height is lost quickley.
  note A wing may stall seperately.
  end
""",
    (("unknown-word", "faliure"), ("unknown-word", "quickley"), ("unknown-word", "seperately")),
)

CAPITALS = Example(
    """\
rules
  spelling .... on

normal Before takeoff
  when holding short of the runway
  Canopy .... LACHED
  Anti-colision light .... ON
""",
    (("unknown-word", "LACHED"), ("unknown-word", "colision")),
)

GOOD = Example(
    """\
rules
  spelling .... on
  words ....... Skarn, windtee

normal Before takeoff
  when holding short of runway 23 at Skarn
  Windtee .... CHECKED
  Altimeter .... SET TO QNH 1013 hPa
  EGTs and CHTs .... IN THE GREEN
    Colour or color, manoeuvre or maneuver; the pilot's own aeroplane doesn't mind.
    See preflight.cards, i.e. the walk-around.
  note Left-hand circuit, 45-degree entry.
""",
)

UNASKED = Example(
    """\
normal Before takeoff
  when holding short of runway 23 at Skarn
  Altimetre .... SET
""",
)

_SHORTEST = 5  # letters of a word that one slip changes into another one only
_SHOWN = 3


def check(subject: Subject) -> Iterator[Finding]:
    # The page of this rule is at hand wherever something is found; all that it needs, only for those who asked.
    from dotleader.rules.settings import spelling_on  # noqa: PLC0415

    handbook = subject.handbook
    if not spelling_on(handbook.settings):
        return
    from dotleader.rules.spelling.knowing import Known  # noqa: PLC0415
    from dotleader.rules.spelling.lists import english, trade  # noqa: PLC0415
    from dotleader.rules.spelling.own_names import own_words  # noqa: PLC0415
    from dotleader.rules.spelling.texts import tokens  # noqa: PLC0415

    known = Known(english(), trade(), own_words(handbook))
    unknown: dict[str, list[Spot]] = {}
    used: set[str] = set()
    for token, spots in tokens(handbook).items():
        parts = list(known.unknown_parts(token))
        if not parts:
            used.add(token.lower())
        for at, part in parts:
            unknown.setdefault(part.lower(), []).extend(
                Spot(spot.source, spot.start + at, spot.start + at + len(part)) for spot in spots
            )
    for places in unknown.values():
        places.sort(key=lambda spot: spot.order)
        yield _finding(places, known.meant(places[0].text, frozenset(used)), used)


def _finding(places: list[Spot], meant: list[tuple[int, str]], used: set[str]) -> Finding:
    """One for all places of a word: who allows it, allows it everywhere."""
    first, *others = places
    word = first.text
    count = f"; it stands in {len(places)} places" if others else ""
    help_ = f"If it is right, write `words .... {word}` in the `rules` block."
    if meant:
        help_ = "Did you mean " + " or ".join(f"`{each}`" for _, each in meant) + f"? {help_}"
    return Finding(
        RULE.name,
        first,
        f"`{word}` is no word that is known{count}.",
        help_,
        tuple(Related(spot, "It stands here, too.") for spot in others[:_SHOWN]),
        fix=_fix(places, meant, used),
    )


def _fix(places: list[Spot], meant: list[tuple[int, str]], used: set[str]) -> Fix | None:
    """One slip from one word alone; in the file of the first place, wherever it is written in the same way.

    Two words for one only where both are words of the handbook: `Preflite` is no `Pref lite`.
    """
    near = [word for slips, word in meant if slips == 1]
    first = places[0]
    if (
        len(near) != 1
        or len(first.text) < _SHORTEST
        or (" " in near[0] and not used.issuperset(near[0].lower().split()))
    ):
        return None
    alike = (spot for spot in places if spot.source is first.source and spot.text == first.text)
    return Fix(tuple(Edit(spot, near[0]) for spot in alike), safe=False)


RULE = Rule(
    name="unknown-word",
    severity=Severity.NOTE,
    family="wording",
    what=(
        "A word that is in no list, where the handbook asks for its words to be looked up: its `rules` block says "
        "`spelling .... on`. The lists are English, American and British, the words of the trade, the units, and the "
        "handbook's own names: aircraft, sources, values, gauges, controls and what they are also called. Each word is "
        "said once, where it stands first. Words in capitals are looked up in small letters. Left out are names in "
        "braces, words with digits, single letters, abbreviations with dots, up to three letters in capitals (four "
        "without a vowel), names with a capital inside, and names of files. A hyphenated word is known where its parts "
        "are."
    ),
    why="A misspelt word is read twice, and one that reads as another word is done wrongly.",
    source=NO_SOURCE,
    mend=(
        "Write it rightly. A word that is right in this handbook stands in a row of its `rules` block, "
        "`words .... Skarn, windtee`; there may be several such rows. `# allow unknown-word: reason` at its first "
        "place allows it everywhere."
    ),
    bad=(BAD, CAPITALS),
    good=(GOOD, UNASKED),
    check=check,
    confidence="low",
    fix="unsafe",
)
