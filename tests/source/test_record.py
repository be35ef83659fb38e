"""A record does what a frozen dataclass with slots does, which stands beside it here as the reference."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import pytest

from dotleader.source.record import record, replace


@record
class Point:
    """A docstring is kept."""

    x: int
    y: int = 7

    @property
    def both(self) -> tuple[int, int]:
        return self.x, self.y


@record
class Other:
    x: int
    y: int = 7


@dataclass(frozen=True, slots=True)
class Reference:
    x: int
    y: int = 7


@record
class Empty:
    pass


@record(uncompared=("written",))
class Amount:
    number: int
    written: str = ""


def test_it_is_built_and_shown_like_a_dataclass() -> None:
    assert repr(Point(1)) == repr(Reference(1)).replace("Reference", "Point")
    assert (Point(1, 2).x, Point(1, y=2).y, Point(3).both) == (1, 2, (3, 7))
    assert Point.__doc__ == "A docstring is kept."
    assert Point.__match_args__ == Reference.__match_args__


@pytest.mark.parametrize("arguments", [(), (1, 2, 3)])
def test_it_takes_its_fields_and_nothing_else(arguments: tuple[Any, ...]) -> None:
    with pytest.raises(TypeError):
        Point(*arguments)


def test_equality_and_hash_are_of_the_fields_and_of_the_class() -> None:
    assert Point(1) == Point(1, 7)
    assert Point(1) != Point(2)
    assert Point(1) != Other(1)
    assert hash(Point(1)) == hash(Point(1, 7))
    assert len({Point(1), Point(1), Other(1)}) == 2
    assert Empty() == Empty()
    assert Amount(1, "1.0") == Amount(1, "1")
    assert hash(Amount(1, "1.0")) == hash(Amount(1, "1"))


def test_it_is_frozen_and_has_no_room_for_more() -> None:
    point = Point(1)
    for name in ("x", "z"):
        with pytest.raises(AttributeError):
            setattr(point, name, 2)
        with pytest.raises(AttributeError):
            delattr(point, name)
    assert not hasattr(point, "__dict__")


def test_one_like_another_with_a_field_changed() -> None:
    assert replace(Point(1), y=2) == Point(1, 2)
    with pytest.raises(TypeError):
        replace(Point(1), z=2)


def test_patterns_see_its_fields() -> None:
    match Point(1, 2):
        case Point(x, y):
            assert (x, y) == (1, 2)
