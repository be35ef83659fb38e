"""Which findings follow from which: what `follow_up` goes by. Data only."""

from __future__ import annotations

NOWHERE_USED = frozenset({"value-never-used", "control-on-no-card", "gauge-on-no-card"})
"""These mark a name that is declared and stands nowhere else."""

NOWHERE_DECLARED = frozenset(
    {
        "unknown-value",
        "unknown-source",
        "unknown-card",
        "unknown-gauge",
        "unknown-position",
        "position-of-another-control",
    }
)
"""These mark a name that is declared nowhere, or that what is declared does not have."""

ON_ONE_LINE = {
    "tab-indentation": frozenset(
        {"uneven-indentation", "stray-line", "missing-response", "unknown-keyword", "unknown-property"}
    ),
    "uneven-indentation": frozenset({"unknown-property"}),
    "decimal-comma": frozenset({"impossible-value", "uneven-number"}),
    "open-brace": NOWHERE_DECLARED | {"unreadable-value", "near-name", "uneven-wording"},
    "keyword-before-leader": frozenset({"notice-late"}),
    "second-leader": NOWHERE_DECLARED,
    "dots-against-digit": NOWHERE_DECLARED,
    "unknown-keyword": frozenset({"value-without-source"}),
    "empty-block": frozenset({"no-ending"}),
    "unknown-position": frozenset({"uneven-wording"}),
    "near-name": frozenset(
        {"uneven-wording", "value-never-used", "control-on-no-card", "gauge-on-no-card", "not-the-label"}
    ),
    "not-the-label": frozenset({"uneven-wording"}),
    "unclear-unit": frozenset({"uneven-wording", "other-unit"}),
    "vague-response": frozenset({"unknown-position", "amplified-differs"}),
    "trailing-comment": frozenset({"uneven-wording", "near-name"}),
    "typed-completion": frozenset({"vague-response", "empty-block", "notice-late"}),
    "memory-on-normal-card": frozenset({"misplaced-line"}),
    "unknown-unit": frozenset({"value-without-source"}),
}
"""By rule: what follows from its findings on the same line."""

_MISREAD = NOWHERE_USED | {"empty-block", "misplaced-line"}
NEAR_BY = {
    "tab-indentation": _MISREAD,
    "uneven-indentation": _MISREAD,
    "stray-line": _MISREAD | {"unclear-draw"},
    "keyword-before-leader": _MISREAD,
    "unknown-property": frozenset({"name-used-twice"}),
}
"""By rule: what follows from its findings in the same line of the first level of a block, or in the one next to it."""

_LENGTHS = frozenset({"card-continued", "card-too-long"})
_TOO_LONG = _LENGTHS | {"landing-late"}  # with lines on it that nobody could read
IN_ONE_BLOCK = {
    "ambiguous-reference": _LENGTHS,
    "keyword-before-leader": frozenset({"no-trigger", "no-ending"}),
    "unknown-value": _LENGTHS,
    "stray-line": _TOO_LONG | {"empty-card", "gap-between-bands"},
    "missing-challenge": _TOO_LONG,
    "nested-too-deep": _TOO_LONG,
    "uneven-indentation": frozenset({"no-ending", "after-the-end"}),
    "unknown-phase": frozenset({"no-phase"}),
    "unnamed-block": frozenset({"no-phase", "no-trigger", "empty-card"}),
}
"""By rule: what follows from its findings in the same block, because a line of it could not be read."""

OF_WHOLE_CARDS = frozenset({"empty-card", "no-ending", "no-phase", "no-trigger"})
MISREADING = frozenset({"tab-indentation", "uneven-indentation", "stray-line"})
NOT_READ = MISREADING | {
    "dash-for-leader",
    "dots-against-digit",
    "missing-response",
    "second-leader",
    "unknown-property",
}
MISSPELT = frozenset({"near-name", "bare-name", "not-the-label"})
"""These speak of a name that somebody meant, and that stands in what they are related to."""
WRITTEN_OTHERWISE = MISSPELT | {"uneven-wording", "unknown-position", "position-of-another-control", "vague-response"}
"""These speak of how the text that they mark is written, and so of an unknown word in it."""

OF_THE_RUN = frozenset(
    {
        "critical-once",
        "critical-undone",
        "first-already",
        "go-to-blocked",
        "need-not-met",
        "not-as-parked",
        "on-already",
        "stays-elsewhere",
    }
)
"""These say where a control stands, which is not sure where a line that moves it could not be read."""

UNREAD = frozenset({"missing-file", "include-outside", "not-text"})
"""After these a part of the handbook is not at hand."""
