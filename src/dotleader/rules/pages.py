"""A rule's page as Markdown: what `explain` shows and the documentation holds."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.rules.rule import FAMILIES, Example, Rule

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
        "## Not so",
    ]
    for example in rule.bad:
        parts += [_block(example), _marked(rule, example)]
    parts.append("## But so")
    parts += [_block(example) for example in rule.good]
    return "\n\n".join(parts) + "\n"


def index_text(rules: Iterable[Rule]) -> str:
    """The list of all rules, by family; links lead to pages beside it."""
    listed = list(rules)
    parts = [
        "# Rules",
        "Made from the rules themselves; `dotleader explain RULE` shows the same pages. "
        "Errors keep `dotleader print` from printing anything but a draft, and cannot be allowed. "
        "A warning or a note is allowed by a comment that says why, at the end of the line after two spaces "
        "or on the line above: `# allow RULE: reason`.",
    ]
    for family in FAMILIES:
        rows = [rule for rule in listed if rule.family == family]
        if rows:
            table = ["| rule | | what it finds |", "|---|---|---|"]
            table += [
                f"| [{rule.name}]({rule.name}.md) | {rule.severity.word} | {_first(rule.what)} |" for rule in rows
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
