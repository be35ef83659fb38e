"""What is wrong with the rows of a `rules` block, and which rules they turn off."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from dotleader.handbook.model import Setting
from dotleader.rules.rule import Rule
from dotleader.rules.settings import SWITCHES, Amiss, Off, meaning_of, rules_off
from dotleader.rules.suppressions import (
    allow_of_error,
    allow_unused,
    allow_without_reason,
    impossible_setting,
    unknown_rule,
)
from dotleader.rules.thresholds import BY_NAME as THRESHOLDS
from dotleader.source.finding import Finding, Severity
from dotleader.syntax.plain import folded


def turned_off(settings: Sequence[Setting], rules: Mapping[str, Rule]) -> dict[str, str]:
    """The reasons of the rules that are off; errors stay on."""
    return {
        name: off.reason
        for name, (_, off) in rules_off(settings).items()
        if name in rules and rules[name].severity is not Severity.ERROR
    }


def judged_settings(
    settings: Sequence[Setting], found: Collection[str], asked: Collection[str], rules: Mapping[str, Rule]
) -> Iterator[Finding]:
    """One finding at most for each row. `found` names the rules that had something to say, `asked` those that could."""
    for setting in settings:
        key = folded(setting.name)
        known = rules.get(key)
        match meaning_of(setting):
            case Off() if known is None:
                yield unknown_rule.finding(setting, rules)
            case Off() if known is not None and known.severity is Severity.ERROR:
                yield allow_of_error.finding_off(setting.spot, key)
            case Off() if key in asked and key not in found:
                yield allow_unused.finding_off(setting.spot, key)
            case Off(reason="") if known is not None:
                yield allow_without_reason.finding_off(setting.value_spot, key)
            case Amiss() if key in SWITCHES:
                yield impossible_setting.finding_switch(setting)
            case Amiss(threshold=None) if known is None:
                yield unknown_rule.finding(setting, dict.fromkeys((*rules, *THRESHOLDS, *SWITCHES)))
            case Amiss(threshold, number):
                yield impossible_setting.finding(setting, threshold, number, is_error=_is_error(known))
            case _:
                pass


def _is_error(rule: Rule | None) -> bool:
    return rule is not None and rule.severity is Severity.ERROR
