"""Which leaf of a book stands on which sheet, and where."""

from __future__ import annotations

from typing import Literal, assert_never

Order = Literal["sequence", "stack"]

ORDERS: tuple[Order, ...] = ("sequence", "stack")


def leaf_order(leaves: int, places: int, order: Order) -> tuple[range, ...]:
    """For each sheet the leaves on it, in the order of its places; leaves count from 0.

    In sequence leaves follow one another on each sheet. In stacks they follow one another through the pile of sheets:
    when the pile has been cut, the stack of each place comes after that of the place before, and the book is in order.
    A sheet with fewer leaves than places has its last places empty, never one in between; in stacks, sheets with one
    leaf fewer than the others come after these.
    """
    sheets = -(-leaves // places)
    match order:
        case "sequence":
            return tuple(range(number * places, min((number + 1) * places, leaves)) for number in range(sheets))
        case "stack":
            return tuple(range(number, leaves, sheets) for number in range(sheets))
        case _:
            assert_never(order)
