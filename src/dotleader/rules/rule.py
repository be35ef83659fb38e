"""What a rule is. Each rule is one module with one `RULE`; `rules/__init__.py` lists them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from dotleader.source.finding import Finding, RuleFacts, Severity

if TYPE_CHECKING:  # what a rule is asked with; only its type is needed here
    from dotleader.rules.subject import Subject


@dataclass(frozen=True, slots=True)
class Example:
    """A piece of source. `findings` lists (rule, marked text) for a bad one, in order; none for a good one."""

    text: str
    findings: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule's page and its function. The page is what `explain`, the documentation and the tests use.

    `check` is None where the finding is made by the stage that cannot go on without it (parsing, resolving, layout);
    the rule then says so in `found_by`.
    """

    name: str
    severity: Severity
    family: str  # "structure" | "references" | "coverage" | "wording" | "form" | "suppressions"
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
