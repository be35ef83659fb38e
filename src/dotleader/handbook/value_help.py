"""What may be meant by a reference that names nothing."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from dotleader.handbook.amounts.units import Unit, find_unit
from dotleader.handbook.model import Gauge
from dotleader.handbook.names import offered
from dotleader.syntax.plain import folded, looks


def value_help(name: str, declared: Mapping[str, tuple[str, bool]], gauges: Collection[Gauge]) -> str:
    """Help for a reference. `declared` are the values by key, with their names and whether they are speeds."""
    known = [written for written, _ in declared.values()]
    known += [f"{gauge.name} {band.colour}" for gauge in gauges for band in gauge.bands]
    return _nearly_right(name, declared) or offered(
        name, dict.fromkeys(known), "Declare it under `speeds` or `values`, or take the braces away."
    )


def _nearly_right(name: str, declared: Mapping[str, tuple[str, bool]]) -> str:
    """Help where only the form of a reference is wrong; `""` where it is not."""
    plain = name.partition("(")[0].strip()
    if plain != name and folded(plain) in declared:
        whole = declared[folded(plain)][0]
        return f"Declared is `{whole}`, to which `{{{plain}}}` refers; round brackets hold a meaning."
    words = name.split()
    for count in range(len(words), 0, -1):
        written = " ".join(words[:count])
        for key, (own, speed) in declared.items():
            if looks(key) == looks(written) and key != folded(written):
                meant = " ".join((own.partition("(")[0].strip() if speed else own, *words[count:]))
                return f"Did you mean `{{{meant}}}`? A zero and a letter O look alike."
    for count in range(len(words) - 1, 0, -1):
        value, unit = " ".join(words[:count]), " ".join(words[count:])
        if folded(value) in declared and isinstance(find_unit(unit), Unit):
            return f"Write `{{{value} in {unit}}}`."
    return ""
