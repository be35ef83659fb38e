"""What is known of the rules, imported when the first finding is to be shown: a clean lint never needs it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from dotleader.source.finding import RuleFacts


class _Facts(Mapping[str, RuleFacts]):
    def _all(self) -> Mapping[str, RuleFacts]:
        from dotleader.rules.catalogue import FACTS  # noqa: PLC0415

        return FACTS

    def __getitem__(self, name: str) -> RuleFacts:
        return self._all()[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._all())

    def __len__(self) -> int:
        return len(self._all())


FACTS: Mapping[str, RuleFacts] = _Facts()
