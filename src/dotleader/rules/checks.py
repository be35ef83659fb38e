"""The rules that have a check of their own, which every lint asks. To add one, write its module and list it here.

Rules whose findings are made by the stage that cannot go on without them stand in `catalogue`, which nobody needs to
import where nothing was found.
"""

from __future__ import annotations

from dotleader.rules.cockpit import (
    first_already,
    go_to_blocked,
    hand_goes_back,
    need_not_met,
    not_as_parked,
    on_already,
    stays_elsewhere,
    too_many_states,
)
from dotleader.rules.consistency import (
    amplified_differs,
    order_differs,
    two_positions,
)
from dotleader.rules.coverage import (
    missing_emergency,
    missing_phase,
)
from dotleader.rules.electrical import (
    alternator_overloaded,
    battery_too_small,
    breaker_above_wire,
    breaker_below_load,
    large_voltage_drop,
    unclear_draw,
    wire_too_thin,
)
from dotleader.rules.form import (
    after_the_end,
    branch_in_memory,
    branch_in_verify_list,
    card_continued,
    card_too_long,
    condition_after_action,
    empty_card,
    endless_loop,
    fourth_memory_item,
    go_to_chain,
    go_to_circle,
    limit_without_else,
    long_block,
    long_list,
    many_memory_items,
    memory_not_first,
    memory_on_normal_card,
    nested_condition,
    never_reached,
    no_ending,
    no_trigger,
    one_option,
    same_trigger,
    typed_completion,
    very_long_block,
)
from dotleader.rules.numbers import (
    arc_elsewhere,
    bands_overlap,
    fast_approach,
    gap_between_bands,
    maneuvering_speed_high,
    slow_approach,
    speeds_out_of_order,
    typed_again,
    typed_otherwise,
    unverified_in_emergency,
)
from dotleader.rules.references import (
    bare_name,
    control_on_no_card,
    gauge_on_no_card,
    go_to_outside_book,
    near_name,
    no_phase,
    value_never_used,
)
from dotleader.rules.rule import Rule
from dotleader.rules.safety import (
    critical_late,
    critical_once,
    critical_undone,
    landing_late,
    notice_late,
    one_drill_any_height,
    unidentified_shut_down,
)
from dotleader.rules.structure import (
    decimal_comma,
    no_such_character,
)
from dotleader.rules.subject import Subject
from dotleader.rules.wording import (
    action_in_notice,
    alias_used,
    and_or_mixed,
    double_negative,
    long_capitals,
    not_the_label,
    other_unit,
    response_without_number,
    trailing_comment,
    two_actions,
    unclear_unit,
    uneven_wording,
    vague_response,
)
from dotleader.source.finding import Finding

CHECKED: tuple[Rule, ...] = (
    no_such_character.RULE,
    decimal_comma.RULE,
    no_phase.RULE,
    value_never_used.RULE,
    control_on_no_card.RULE,
    gauge_on_no_card.RULE,
    go_to_outside_book.RULE,
    near_name.RULE,
    bare_name.RULE,
    missing_phase.RULE,
    missing_emergency.RULE,
    vague_response.RULE,
    alias_used.RULE,
    uneven_wording.RULE,
    trailing_comment.RULE,
    memory_on_normal_card.RULE,
    memory_not_first.RULE,
    many_memory_items.RULE,
    fourth_memory_item.RULE,
    no_ending.RULE,
    after_the_end.RULE,
    no_trigger.RULE,
    typed_completion.RULE,
    empty_card.RULE,
    card_continued.RULE,
    card_too_long.RULE,
    need_not_met.RULE,
    go_to_blocked.RULE,
    not_as_parked.RULE,
    on_already.RULE,
    first_already.RULE,
    stays_elsewhere.RULE,
    too_many_states.RULE,
    hand_goes_back.RULE,
    critical_late.RULE,
    critical_once.RULE,
    critical_undone.RULE,
    go_to_circle.RULE,
    go_to_chain.RULE,
    same_trigger.RULE,
    never_reached.RULE,
    alternator_overloaded.RULE,
    battery_too_small.RULE,
    breaker_below_load.RULE,
    breaker_above_wire.RULE,
    wire_too_thin.RULE,
    large_voltage_drop.RULE,
    unclear_draw.RULE,
    response_without_number.RULE,
    other_unit.RULE,
    unclear_unit.RULE,
    not_the_label.RULE,
    double_negative.RULE,
    two_actions.RULE,
    and_or_mixed.RULE,
    action_in_notice.RULE,
    long_capitals.RULE,
    condition_after_action.RULE,
    nested_condition.RULE,
    branch_in_memory.RULE,
    branch_in_verify_list.RULE,
    one_option.RULE,
    endless_loop.RULE,
    limit_without_else.RULE,
    long_list.RULE,
    long_block.RULE,
    very_long_block.RULE,
    landing_late.RULE,
    notice_late.RULE,
    one_drill_any_height.RULE,
    unidentified_shut_down.RULE,
    typed_again.RULE,
    typed_otherwise.RULE,
    unverified_in_emergency.RULE,
    speeds_out_of_order.RULE,
    arc_elsewhere.RULE,
    slow_approach.RULE,
    fast_approach.RULE,
    maneuvering_speed_high.RULE,
    bands_overlap.RULE,
    gap_between_bands.RULE,
    amplified_differs.RULE,
    two_positions.RULE,
    order_differs.RULE,
)


def check(subject: Subject) -> list[Finding]:
    """What these rules find, in their order, and what a handbook asks for besides."""
    found = [finding for rule in CHECKED if rule.check is not None for finding in rule.check(subject)]
    if any(setting.name.casefold() == "spelling" for setting in subject.handbook.settings):
        # Off unless it is asked for; a lint without it imports nothing of it.
        from dotleader.rules.wording import unknown_word  # noqa: PLC0415

        found.extend(unknown_word.check(subject))
    return found
