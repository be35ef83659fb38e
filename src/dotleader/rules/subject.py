"""What rules are asked with: the handbook, and for some of them its faces."""

from __future__ import annotations

from dataclasses import dataclass

from dotleader.handbook.model import Handbook


@dataclass(frozen=True, slots=True)
class Subject:
    handbook: Handbook
