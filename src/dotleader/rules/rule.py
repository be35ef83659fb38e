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
FOUND_BY = ("reading", "parsing", "resolving", "a check of its own", "settling")


@record
class Example:
    """A piece of source. `findings` lists (rule, marked text) for a bad one, in order; none for a good one."""

    text: str
    findings: tuple[tuple[str, str], ...] = ()


@record
class Rule:
    """A rule's page and its function. The page is what `explain`, the documentation and the tests use.

    `what`, `why`, `source` and `mend` are Markdown; `why` is one sentence and, with `source`, stands below every
    finding of the rule. `check` is None where the finding is made by the stage that cannot go on without it; then
    `found_by` (one of FOUND_BY) names that stage.
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

    @property
    def facts(self) -> RuleFacts:
        return RuleFacts(self.name, self.severity, self.why, self.source)
