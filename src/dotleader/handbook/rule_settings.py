"""The `rules` block: what the linter is told of this handbook. What a row means is for the rules to say."""

from __future__ import annotations

from collections.abc import Iterable

from dotleader.handbook.gather import At
from dotleader.handbook.ledger import Ledger
from dotleader.handbook.model import Setting
from dotleader.syntax.plain import folded
from dotleader.syntax.tree import Row


def read_settings(blocks: Iterable[At], ledger: Ledger) -> tuple[Setting, ...]:
    """The rows of all these blocks, in reading order; one that stands a second time is said and not kept.

    `words` can stand several times, for they add up.
    """
    settings: list[Setting] = []
    first: dict[str, Setting] = {}
    for at in blocks:
        for line in at.block.lines:
            row = line.body
            if not isinstance(row, Row) or row.right is None:
                continue
            key, spot = folded(row.left.text), at.spot(row.left.span)
            if key in first and key != "words":
                ledger.again("The row", row.left.text, spot, first[key].spot)
                continue
            settings.append(Setting(row.left.text, row.right.text, spot, at.spot(row.right.span)))
            first.setdefault(key, settings[-1])
    return tuple(settings)
