"""What a stage returns: its value together with its findings. Exceptions are for bugs and the outside world."""

from __future__ import annotations

from typing import Generic, TypeVar

from dotleader.source.finding import Finding
from dotleader.source.record import record

T = TypeVar("T")


@record
class Outcome(Generic[T]):
    value: T
    findings: tuple[Finding, ...] = ()
