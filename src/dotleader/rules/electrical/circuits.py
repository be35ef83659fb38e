"""Whether there is anything to ask of the circuits of a handbook."""

from __future__ import annotations

from dotleader.handbook.model import Handbook


def has_circuits(handbook: Handbook) -> bool:
    """Whether a control has a breaker, a fuse or a wire."""
    wirings = (control.wiring for control in handbook.controls.values())
    return any(wiring.protector is not None or wiring.wire is not None for wiring in wirings)
