"""A row of a `rules` block that sets nothing."""

from __future__ import annotations

from fractions import Fraction

from dotleader.handbook.model import Setting
from dotleader.rules.rule import NO_SOURCE, Example, Rule
from dotleader.rules.thresholds import Threshold, written
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded

BAD = Example(
    """\
rules
  many-memory-items .... 40 items
  near-name .... 3 letters

normal Preflight
  when before the first flight of the day
  Fuel caps .... TIGHT
""",
    (("impossible-setting", "40 items"), ("impossible-setting", "3 letters")),
)

SWITCH = Example(
    """\
rules
  spelling .... British

normal Preflight
  when before the first flight of the day
  Fuel caps .... TIGHT
""",
    (("impossible-setting", "British"),),
)

UNIT = Example(
    """\
rules
  many-memory-items .... 3 lines

normal Preflight
  when before the first flight of the day
  Fuel caps .... TIGHT
""",
    (("impossible-setting", "3 lines"),),
)

GOOD = Example(
    """\
rules
  many-memory-items .... 3 items

normal Preflight
  when before the first flight of the day
  Fuel caps .... TIGHT
""",
)

_OFF = "off because the maker's own wording is kept"


def finding(setting: Setting, threshold: Threshold | None, number: Fraction | None, *, is_error: bool) -> Finding:
    """`threshold` is what the row could set, if anything; `number` one in its unit, but out of bounds or not whole."""
    name, text = setting.name, setting.text
    if threshold is None:
        message = f"`{name}` has no number that can be set, and `{text}` does not turn it off."
        help_ = (
            "Its findings are errors, which cannot be turned off: take this row out."
            if is_error
            else f"Turn it off with a reason, `{name} .... {_OFF}`, or take this row out."
        )
    elif number is None:
        message = f"`{text}` is no number of {threshold.unit}, which `{name}` counts."
        sample = written(threshold, threshold.default)
        help_ = f"Write it like `{name} .... {sample}`, or turn the rule off: `{threshold.rule} .... {_OFF}`."
    else:
        low, high = written(threshold, threshold.low), written(threshold, threshold.high)
        within = threshold.low <= number <= threshold.high
        message = (
            f"`{text}` is no whole number, and `{name}` takes nothing between."
            if within
            else f"`{text}` is out of bounds: `{name}` can be {low} to {high}."
        )
        help_ = f"Without this row it is {written(threshold, threshold.default)}."
    return Finding(RULE.name, setting.value_spot, message, help_)


def finding_switch(setting: Setting) -> Finding:
    """Of `spelling`, which is neither on nor off, and of `words` without any."""
    if folded(setting.name) == "words":
        message, help_ = "The row `words` names no word.", "Name words that are right here, or take this row out."
    else:
        message = f"`{setting.name}` can be `on` or `off`, and `{setting.text}` is neither."
        help_ = "Write `spelling .... on`, or take this row out: words are looked up only where it is on."
    return Finding(RULE.name, setting.value_spot, message, help_)


RULE = Rule(
    name="impossible-setting",
    severity=Severity.WARNING,
    family="suppressions",
    what=(
        "A row of the `rules` block that is neither `off because` with a reason nor a number that the rule can take: "
        "the rule has none, the unit is another one, or the number is out of its bounds. The rule then stays as it is. "
        "And `spelling` that is neither `on` nor `off`."
    ),
    why="Whoever wrote it believes that the rule measures by it, and it does not.",
    source=NO_SOURCE,
    mend="Write number and unit as the page of the rule shows them, within the bounds that stand there.",
    bad=(BAD, UNIT, SWITCH),
    good=(GOOD,),
    found_by="settling",
)
