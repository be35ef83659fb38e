"""The page of a rule, and the list of all rules."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.console import RenderableType
from rich.text import Text

from dotleader.report.glyphs import glyphs
from dotleader.rules.pages import fix_text, threshold_text, thresholds_of
from dotleader.rules.rule import CONFIDENCES, FAMILIES, Example, Rule
from dotleader.source.finding import Severity
from dotleader.tools.showing.pages import WEIGHT, dotted, indented, labelled, listed, prose, terminal


def rule_list(rules: Sequence[Rule]) -> Iterator[RenderableType]:
    """Every rule under its family, with the first sentence of its page."""
    for family in (family for family in FAMILIES if any(rule.family == family for rule in rules)):
        yield Text(family, style="bold")
        yield listed(
            (rule.name, Text(rule.severity.word, style="dim"), prose(_first_sentence(rule.what)))
            for rule in sorted(rules, key=lambda rule: rule.name)
            if rule.family == family
        )
        yield ""
    yield prose("`dotleader explain RULE` shows the page of a rule.")


def rule_page(rule: Rule) -> Iterator[RenderableType]:
    yield dotted(Text(rule.name, style="bold"), Text(rule.severity.word, style=WEIGHT[rule.severity]))
    yield indented(prose(rule.what))
    yield ""
    yield labelled(
        (
            ("why", prose(rule.why)),
            ("source", prose(rule.source)),
            ("mend", prose(rule.mend)),
            *(("threshold", prose(threshold_text(threshold))) for threshold in thresholds_of(rule)),
            ("confidence", prose(f"{rule.confidence}: {CONFIDENCES[rule.confidence]}")),
            ("fix", prose(fix_text(rule))),
        )
    )
    for title, examples in (("not so", rule.bad), ("but so", rule.good)):
        for example in examples:
            yield ""
            yield indented(Text(title, style="dim"))
            yield from (indented(line, 4) for line in _source(example, rule))
    yield ""
    yield indented(prose(_allowing(rule), style="dim"))


def _allowing(rule: Rule) -> str:
    if rule.severity is Severity.ERROR:
        return "This is an error: it keeps a handbook from being printed, and cannot be allowed."
    return (
        f"Where it is right as it is, say so on the line above it: `# allow {rule.name}: reason`; for a whole handbook "
        f"in its `rules` block: `{rule.name} .... off because` and the reason."
    )


def _first_sentence(text: str) -> str:
    end = text.find(". ")
    return text if end < 0 else text[: end + 1]


def _source(example: Example, rule: Rule) -> Iterator[Text]:
    """An example line by line, with marks below what is found in it; of an old book what was accepted of it, too."""
    shown = terminal()
    bar, mark = shown.pick("│", "|"), shown.pick("▔", "^")
    marked = _marked(example)
    start = 0
    for line in (example.baseline or example.text).splitlines():
        cells = glyphs(line, shown)
        yield Text.assemble((f"{bar} ", "dim"), "".join(cell.text for cell in cells))
        for at, end in marked:
            if start <= at <= start + len(line) and line:
                before = sum(cell.width for cell in cells[: at - start])
                width = sum(cell.width for cell in cells[at - start : end - start])
                yield Text.assemble((f"{bar} ", "dim"), " " * before, (mark * max(1, width), WEIGHT[rule.severity]))
        start += len(line) + 1


def _marked(example: Example) -> list[tuple[int, int]]:
    """Where the texts that are found stand: findings come in the order of the source."""
    places: list[tuple[int, int]] = []
    at = 0
    for _, text in example.findings:
        found = (example.baseline or example.text).find(text, at)
        if found < 0:
            continue
        places.append((found, found + len(text)))
        at = found + 1
    return places
