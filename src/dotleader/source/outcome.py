"""What a stage returns: its value together with its findings. Exceptions are for bugs and the outside world."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from dotleader.source.finding import Finding

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Outcome(Generic[T]):
    value: T
    findings: tuple[Finding, ...] = ()
