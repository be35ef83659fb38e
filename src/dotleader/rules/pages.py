"""A rule's page as Markdown: what `explain` shows and the documentation holds."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.rules.rule import CONFIDENCES, FAMILIES, FIXES, Example, Rule
from dotleader.rules.thresholds import THRESHOLDS, Threshold, shown, written

_FAMILY_TITLES = {
    "structure": "Structure: the form of the text",
    "references": "References: names that lead somewhere",
    "coverage": "Coverage: what a handbook has to have",
    "wording": "Wording: what is said and how",
    "form": "Form: how a card is built",
    "suppressions": "Suppressions: what is wrong with an `# allow`",
    "safety": "Safety",
    "numbers": "Numbers",
    "consistency": "Consistency",
    "cockpit": "The cockpit worked through",
    "electrical": "Electrical",
}


def page_text(rule: Rule) -> str:
    """The page of one rule; ends in a line feed."""
    parts = [
        f"# {rule.name}",
        f"*{rule.severity.word}; family: {rule.family}; found by {rule.found_by}*",
        rule.what,
        f"**Why it matters.** {rule.why}",
        f"**Source.** {_sentence(rule.source)}",
        f"**How to mend it.** {rule.mend}",
        *facts_of(rule),
        "## Not so",
    ]
    for example in rule.bad:
        parts += [_block(example), *_beside(example), _marked(rule, example)]
    parts.append("## But so")
    for example in rule.good:
        parts += [_block(example), *_beside(example)]
    return "\n\n".join(parts) + "\n"


def facts_of(rule: Rule) -> Iterable[str]:
    """What can be set, how sure the rule is, and whether it has a fix: a paragraph each."""
    for threshold in thresholds_of(rule):
        yield f"**Threshold.** {threshold_text(threshold)}"
    yield f"**Confidence.** {rule.confidence.capitalize()}: {CONFIDENCES[rule.confidence]}."
    yield f"**Fix.** {fix_text(rule)}"


def thresholds_of(rule: Rule) -> list[Threshold]:
    """The numbers that it measures by; the fourth memory item is counted by the rule for the fifth."""
    return [each for each in THRESHOLDS if rule.name in (each.rule, *each.shared)]


def threshold_text(threshold: Threshold) -> str:
    default, low = written(threshold, threshold.default), shown(threshold.low)
    return (
        f"{default}, {threshold.what} (source: {threshold.source}). A handbook sets another one, from {low} to "
        f"{shown(threshold.high)}, in its `rules` block: `{threshold.name} .... {default}`."
    )


def fix_text(rule: Rule) -> str:
    return (
        f"{rule.fix.capitalize()}: {FIXES[rule.fix]}." if rule.fix else "None: what is right is for the writer to say."
    )


def index_text(rules: Iterable[Rule]) -> str:
    """The list of all rules, by family; links lead to pages beside it."""
    listed = list(rules)
    parts = [
        "# Rules",
        "Made from the rules themselves; `dotleader explain RULE` shows the same pages. "
        "Errors keep `dotleader print` from printing anything but a draft, and cannot be allowed. "
        "A warning or a note is allowed by a comment that says why, at the end of the line after two spaces "
        "or on the line above: `# allow RULE: reason`; a rule is turned off for a whole handbook in its `rules` block: "
        "`RULE .... off because` and the reason. Where a rule measures by a number, its page says how to set it.",
        "Each page says how sure a rule is: "
        + "; ".join(f"*{word}*, {meaning}" for word, meaning in CONFIDENCES.items())
        + ". *Fix* says whether `dotleader lint` can mend what it finds: *safe* where nothing that is meant can change "
        "(`--fix`), *unsafe* where words, order, number or unit would (`--fix-unsafe`, which asks).",
    ]
    for family in FAMILIES:
        rows = [rule for rule in listed if rule.family == family]
        if rows:
            table = ["| rule | | confidence | fix | what it finds |", "|---|---|---|---|---|"]
            table += [
                f"| [{rule.name}]({rule.name}.md) | {rule.severity.word} | {rule.confidence} | {rule.fix} "
                f"| {_first(rule.what)} |"
                for rule in rows
            ]
            parts += [f"## {_FAMILY_TITLES[family]}", "\n".join(table)]
    return "\n\n".join(parts) + "\n"


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:].rstrip(".") + "."


def _first(text: str) -> str:
    """The first sentence of a text, safe in a cell of a table."""
    return text.partition(". ")[0].rstrip(".").replace("|", "\\|") + "."


def _block(example: Example) -> str:
    return f"```text\n{_visible(example.text)}```"


def _beside(example: Example) -> list[str]:
    return ["Beside it `baseline.txt`:", f"```text\n{example.baseline}```"] if example.baseline else []


def _marked(rule: Rule, example: Example) -> str:
    """What is marked in an example, each text once; nothing where the whole file is meant."""
    texts = dict.fromkeys(text for name, text in example.findings if name == rule.name)
    marks = ["the tab" if text == "\t" else _code(_visible(text).strip()) for text in texts if text]
    return f"Marked here: {', '.join(marks)}." if marks else "Marked here: the file."


def _code(text: str) -> str:
    """Inline code that may hold backquotes."""
    return f"`` {text} ``" if "`" in text else f"`{text}`"


def _visible(text: str) -> str:
    """Characters that cannot be seen as their escapes."""
    return "".join(c if c.isprintable() or c == "\n" else "→" if c == "\t" else f"\\x{ord(c):02x}" for c in text)
