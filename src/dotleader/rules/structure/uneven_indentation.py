"""A line whose indentation fits no line above it."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD_1 = Example(
    """\
normal Before takeoff
  group Engine
      Fuel pump .... ON
    Magnetos .... BOTH
""",
    (("uneven-indentation", "Fuel pump .... ON"),),
)

BAD_2 = Example(
    """\
normal Before takeoff
  Fuel pump .... ON
    Magnetos .... BOTH
""",
    (("uneven-indentation", "Magnetos .... BOTH"),),
)

BAD_HEAD = Example(
    """\
speeds
  VG .... 82 KIAS  unverified

  normal Descent
    Airspeed .... {VG}
""",
    (("uneven-indentation", "normal Descent"),),
)

GOOD = Example(
    """\
normal Before takeoff
  group Engine
    Fuel pump .... ON
      The gauge moves within two seconds.
    Magnetos .... BOTH
""",
)

RULE = Rule(
    name="uneven-indentation",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A line indented by less or more than the lines it stands among, an item indented below an item, a line "
        "below something that has nothing below it, or a line that opens a block and is indented."
    ),
    why=(
        "Indentation says what belongs to what; where it is uneven, an item may be read as part of another or of "
        "another branch."
    ),
    source=THE_LANGUAGE,
    mend=(
        "Indent the line like the lines it stands among, or by two more if it belongs to the one above. Below an item "
        "stand only its details, which have no leader."
    ),
    bad=(BAD_1, BAD_2, BAD_HEAD),
    good=(GOOD,),
    found_by="parsing",
    fix="safe",
)
