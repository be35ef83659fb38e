"""A line more than twelve levels deep."""

from __future__ import annotations

from dotleader.rules.rule import THE_LANGUAGE, Example, Rule
from dotleader.source.finding import Severity

BAD = Example(
    """\
normal Taxi
  group Part
    group Part
      group Part
        group Part
          group Part
            group Part
              group Part
                group Part
                  group Part
                    group Part
                      group Part
                        group Part
                          Mixture .... RICH
""",
    (("nested-too-deep", "Mixture .... RICH"),),
)

GOOD = Example(
    """\
normal Taxi
  group Engine
    Mixture .... RICH
""",
)

RULE = Rule(
    name="nested-too-deep",
    severity=Severity.ERROR,
    family="structure",
    what="A line that stands more than twelve levels below the head of its block.",
    why="Nobody can follow a card that deep, and no face has room for its indentation.",
    source=THE_LANGUAGE,
    mend="Make a card of its own of what stands so deep, and `go to` it.",
    bad=(BAD,),
    good=(GOOD,),
    found_by="parsing",
)
