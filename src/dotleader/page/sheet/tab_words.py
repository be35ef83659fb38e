"""Where tabs are cut, in words: for sheets without room for marks beside them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dotleader.handbook.stocks.fault import millimetres
from dotleader.handbook.stocks.measures import tab_radius
from dotleader.handbook.stocks.stock import Stock
from dotleader.page.face.thumb_index import section_slot, slot_span
from dotleader.page.labels import section_order


def tabs_said(stock: Stock, sections: Iterable[str]) -> Iterator[str]:
    """How far the outer edge is cut back, and from where to where it is not, for each of these sections."""
    if not stock.recess:
        return
    slots: dict[int, list[str]] = {}
    for section in sorted(set(sections), key=section_order):
        slots.setdefault(section_slot(section), []).append(section)
    spans = []
    for slot, sharing in slots.items():
        top, low = slot_span(stock, slot)
        spans.append(f"{' and '.join(sharing)} from {millimetres(top)} to {millimetres(low)}")
    yield (
        f"Then cut the outer edge of each leaf back by {millimetres(stock.recess)}, but not at the tab of its section, "
        f"and round the four corners of the tab to {millimetres(tab_radius(stock))}. Tabs stand, from the head of a "
        f"front: section {'; '.join(spans)}."
    )
