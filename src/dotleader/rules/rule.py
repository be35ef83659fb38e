"""What a rule is. Each rule is one module with one `RULE`; `catalogue` lists them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from dotleader.source.finding import Finding, RuleFacts, Severity
from dotleader.source.record import record

if TYPE_CHECKING:  # what a rule is asked with; only its type is needed here
    from dotleader.rules.subject import Subject


THE_LANGUAGE = "the language itself: docs/language.md"
NO_SOURCE = "common practice, no source"

FAMILIES = (
    "structure", "references", "coverage", "wording", "form", "safety", "numbers", "consistency", "cockpit",
    "electrical", "suppressions",
)  # fmt: skip
CONFIDENCES = {
    "high": "what it says is so, whatever was meant",
    "medium": "it is so in most handbooks; a name, a title or a habit has been understood",
    "low": "it is a guess from the wording, and worth a look",
}
"""How sure a rule is, in words. It says nothing of how much a finding matters: that is its severity."""
FIXES = {
    "": "",
    "safe": "`dotleader lint --fix` mends what has one exact text and cannot change what is meant",
    "unsafe": "`dotleader lint --fix-unsafe` offers one exact text, shows it and asks",
}
"""Whether findings of a rule may carry a fix, and which one at most."""
FOUND_BY = ("reading", "parsing", "resolving", "a check of its own", "settling")


@record
class Example:
    """A piece of source. `findings` lists (rule, marked text) for a bad one, in order; none for a good one.

    `baseline` is the `baseline.txt` beside it, if any.
    """

    text: str
    findings: tuple[tuple[str, str], ...] = ()
    baseline: str = ""


@record
class Rule:
    """A rule's page and its function. The page is what `explain`, the documentation and the tests use.

    `what`, `why`, `source` and `mend` are Markdown; `why` is one sentence and, with `source`, stands below every
    finding of the rule. `check` is None where the finding is made by the stage that cannot go on without it; then
    `found_by` (one of FOUND_BY) names that stage. `confidence` is one of CONFIDENCES, `fix` one of FIXES.
    """

    name: str
    severity: Severity
    family: str  # one of FAMILIES
    what: str
    why: str
    source: str
    mend: str
    bad: tuple[Example, ...]
    good: tuple[Example, ...]
    check: Callable[[Subject], Iterable[Finding]] | None = None
    found_by: str = "a check of its own"
    confidence: str = "high"
    fix: str = ""

    @property
    def facts(self) -> RuleFacts:
        return RuleFacts(
            self.name,
            self.severity,
            self.why,
            self.source,
            what=self.what,
            mend=self.mend,
            family=self.family,
            confidence=self.confidence,
            fix=self.fix,
        )
