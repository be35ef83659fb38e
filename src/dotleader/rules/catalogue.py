"""Every rule, in families: those of `checks`, and here those whose findings are made by another stage.

To add a rule of this kind, write its module and list it here.
"""

from __future__ import annotations

from types import MappingProxyType

from dotleader.rules.checks import CHECKED
from dotleader.rules.form import narrow_seal
from dotleader.rules.references import (
    ambiguous_reference,
    ambiguous_unit,
    circular_value,
    division_by_zero,
    empty_section,
    impossible_value,
    position_of_another_control,
    stock_never_used,
    uneven_number,
    unknown_card,
    unknown_gauge,
    unknown_method,
    unknown_phase,
    unknown_position,
    unknown_section,
    unknown_source,
    unknown_stock,
    unknown_unit,
    unknown_value,
    unlike_units,
    value_without_source,
)
from dotleader.rules.rule import FAMILIES, Rule
from dotleader.rules.structure import (
    branch_too_deep,
    dash_for_leader,
    dots_against_digit,
    empty_block,
    impossible_punch,
    impossible_stock,
    include_circle,
    include_outside,
    keyword_before_leader,
    misplaced_line,
    missing_challenge,
    missing_file,
    missing_response,
    name_used_twice,
    nested_too_deep,
    not_text,
    not_utf8,
    notice_below_item,
    open_brace,
    second_leader,
    stray_line,
    tab_indentation,
    uneven_indentation,
    unknown_keyword,
    unknown_property,
    unnamed_block,
    unreadable_value,
)
from dotleader.rules.suppressions import (
    allow_of_error,
    allow_unknown_rule,
    allow_unused,
    allow_without_reason,
    baseline_unused,
    impossible_setting,
    unknown_rule,
)
from dotleader.rules.wording import unknown_word

ASKED_FOR = (unknown_word.RULE,)
"""With a check of its own that is made only where a handbook asks for it."""

STRUCTURE = (
    stray_line.RULE,
    missing_response.RULE,
    missing_challenge.RULE,
    second_leader.RULE,
    dash_for_leader.RULE,
    dots_against_digit.RULE,
    keyword_before_leader.RULE,
    notice_below_item.RULE,
    unknown_keyword.RULE,
    unknown_property.RULE,
    unnamed_block.RULE,
    name_used_twice.RULE,
    misplaced_line.RULE,
    empty_block.RULE,
    branch_too_deep.RULE,
    tab_indentation.RULE,
    uneven_indentation.RULE,
    nested_too_deep.RULE,
    open_brace.RULE,
    unreadable_value.RULE,
    missing_file.RULE,
    include_outside.RULE,
    include_circle.RULE,
    not_utf8.RULE,
    not_text.RULE,
    impossible_stock.RULE,
    impossible_punch.RULE,
)

REFERENCES = (
    unknown_value.RULE,
    ambiguous_reference.RULE,
    unknown_card.RULE,
    unknown_source.RULE,
    unknown_gauge.RULE,
    unknown_position.RULE,
    position_of_another_control.RULE,
    unknown_phase.RULE,
    unknown_method.RULE,
    unknown_stock.RULE,
    stock_never_used.RULE,
    unknown_section.RULE,
    empty_section.RULE,
    unknown_unit.RULE,
    ambiguous_unit.RULE,
    unlike_units.RULE,
    circular_value.RULE,
    division_by_zero.RULE,
    uneven_number.RULE,
    impossible_value.RULE,
    value_without_source.RULE,
)

FORM = (narrow_seal.RULE,)

SUPPRESSIONS = (
    allow_without_reason.RULE,
    allow_unknown_rule.RULE,
    allow_of_error.RULE,
    allow_unused.RULE,
    unknown_rule.RULE,
    impossible_setting.RULE,
    baseline_unused.RULE,
)

_LISTED = (*STRUCTURE, *REFERENCES, *CHECKED, *ASKED_FOR, *FORM, *SUPPRESSIONS)
RULES: tuple[Rule, ...] = tuple(rule for family in FAMILIES for rule in _LISTED if rule.family == family)
"""By families, in each in the order of the lists."""

BY_NAME = MappingProxyType({rule.name: rule for rule in RULES})
FACTS = MappingProxyType({rule.name: rule.facts for rule in RULES})
