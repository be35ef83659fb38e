"""The hand's way over the panel: how far it goes, and where it goes back."""

from __future__ import annotations

import pytest

from dotleader.cockpit.panel import Way, places, way_of
from tests.handbook.texts import resolved

PANEL = """\
equipment
  A ... OFF, ON
    at ... panel 0 mm, 0 mm
  B ... OFF, ON
    at ... panel 3 cm, 4 cm
  C ... OFF, ON
    at ... panel 4 in, 0 in
  D ... OFF, ON
    at ... Left console 10 mm, 10 mm
  E ... OFF, ON

normal Cruise
  when level
"""


def way(*challenges: str) -> Way:
    handbook, _ = resolved(PANEL + "".join(f"  {one} ... ON{mark}\n" for one, _, mark in map(_parts, challenges)))
    return way_of(handbook.cards[0], handbook.controls, places(handbook.controls))


def _parts(text: str) -> tuple[str, str, str]:
    name, mark, _ = text.partition("!")
    return name.replace("+", " + "), mark, " [critical]" if mark else ""


@pytest.mark.parametrize(
    ("challenges", "distance", "turns", "returns"),
    [
        ("A", 0, "", ""),
        ("A B", 50, "", ""),  # 30 and 40 mm: a triangle of 3, 4, 5
        ("A E B", 50, "", ""),  # what stands nowhere is passed over
        ("A C", 102, "", ""),  # 4 in = 101.6 mm
        ("A C B", 184, "B", ""),
        ("A C B C", 266, "BC", ""),
        ("A C B! C", 266, "", ""),  # a critical item goes first wherever it stands
        ("A D A", 0, "", "A"),
        ("A D A! B", 50, "", ""),
        ("C B A", 132, "", ""),  # from the right to the left is as good
        ("C A+B", 132, "", ""),  # the hand begins an item over two controls at its nearer end
        ("A B+C", 132, "", ""),
    ],
)
def test_the_way(challenges: str, distance: int, turns: str, returns: str) -> None:
    found = way(*challenges.split())
    assert found.distance == distance
    assert "".join(reach.control.name for reach in found.turns) == turns
    assert "".join(reach.control.name for reach in found.returns) == returns


def test_several_controls_of_one_line_are_reached_in_turn() -> None:
    handbook, _ = resolved(PANEL + "  A + C ... ON\n")
    assert way_of(handbook.cards[0], handbook.controls, places(handbook.controls)).distance == 102
