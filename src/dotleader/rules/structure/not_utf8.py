"""A file that is not UTF-8."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Cruise
  Oil temperature .... 80 to 100 °C
""",
    (("not-utf8", "°"),),
)

GOOD = Example(
    """\
normal Cruise
  Oil temperature .... 80 to 100 degC
""",
)

RULE = Rule(
    name="not-utf8",
    severity=Severity.ERROR,
    family="structure",
    what=(
        "A file with bytes that are not UTF-8. The finding names the first such byte and the encoding that the file "
        "probably has."
    ),
    why="Degree signs, fractions and dashes of another encoding would be printed as other characters.",
    source=THE_LANGUAGE,
    mend="Save the file as UTF-8; every text editor offers it where it saves.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="reading",
)
