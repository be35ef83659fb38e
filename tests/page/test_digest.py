"""What a face means and how it looks, as two digests that outlive the program."""

from __future__ import annotations

import subprocess
import sys
from hashlib import sha256

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.page.drawn import Box, Font, Group, Ink, Line, Picture, Text
from dotleader.page.face.digest import drawn, meaning
from dotleader.page.face.faces import Face, faces_of
from dotleader.page.face.placement import Side, place
from dotleader.page.labels import Label
from dotleader.page.laid import LaidCard
from dotleader.source.record import replace
from tests.page.leaves import EVERY_KIND, IMPRINT, STOCKS, by_title, cards, faces, laid

GOES = laid("Engine failure", kind="emergency", section="3", to="Forced landing")
TARGET = laid("Forced landing", kind="emergency", section="3")


def digests(some: tuple[Face, ...]) -> dict[tuple[str, int], tuple[str, str]]:
    return {(face.key, face.part): (meaning(face), drawn(face)) for face in some if not face.blank}


def test_the_digests_are_what_is_written_here() -> None:
    """Worked out by hand from the encoding, so that no change to it goes unnoticed."""
    items = (
        Text(1, 2, "Fuel pump", 15_000, Font.BOLD, Ink.BLACK),
        Line(((0, 0), (5, 6)), 7, dots=8),
        Box(1, 2, 3, 4, Ink.MEMORY, 5, 6),
        Picture(1, 2, 3, 4, "panel"),
    )
    groups = (Group(9, 8, items, role="body"), Group(0, 0, (Text(0, 0, "3-1", 1),), role="label"))
    face = Face(Label("3", 1), Side.FRONT, "a", "emergency", "A", 0, 1, groups, ("Fuel pump ON",))

    def of(*fields: str) -> str:
        encoded = b"".join(b"%d:%s" % (len(field.encode()), field.encode()) for field in fields[1:])
        return sha256(fields[0].encode() + encoded).hexdigest()[:16]

    assert meaning(face) == of("meaning 1", "emergency", "A", "Fuel pump ON")
    assert drawn(face) == of(
        "drawn 1",
        "front",
        "group 9 8 0 body 4",
        "text 1 2 15000 bold black 0 0",
        "Fuel pump",
        "line 0,0 5,6 7 0 none black 8",
        "box 1 2 3 4 memory 5 6",
        "picture 1 2 3 4",
        "panel",
    )


@given(cards(), st.data())
def test_changing_a_card_changes_neither_digest_of_another(some: tuple[LaidCard, ...], data: st.DataObject) -> None:
    if not some:
        return
    at = data.draw(st.integers(0, len(some) - 1))
    card = some[at]
    reworded = tuple(
        replace(face, items=(Text(0, 60_000, "Other words", 13_000),), says=("Other words",)) for face in card.faces
    )
    after = (*some[:at], replace(card, faces=reworded), *some[at + 1 :])
    before, then = digests(faces(*some)), digests(faces(*after))
    assert before.keys() == then.keys()
    for key, both in before.items():
        if key[0] != card.key:
            assert then[key] == both
        else:
            assert then[key][0] != both[0]
            assert then[key][1] != both[1]


def test_moving_the_target_of_a_go_to_changes_only_what_is_drawn() -> None:
    before = by_title(faces(GOES, TARGET))["Engine failure"]
    after = by_title(faces(GOES, laid("Fire", kind="emergency", section="3"), TARGET))["Engine failure"]
    assert before.label == after.label
    assert meaning(before) == meaning(after)
    assert drawn(before) != drawn(after)


def test_a_face_that_is_only_relabelled_is_drawn_the_same() -> None:
    new = [laid(f"New {number}", kind="emergency", section="3") for number in range(12)]
    before = by_title(faces(TARGET, laid("Fire", kind="emergency", section="3")))["Forced landing"]
    after = by_title(faces(*new, TARGET))["Forced landing"]
    assert (str(before.label), str(after.label)) == ("3-1", "3-13")
    assert meaning(before) == meaning(after)
    assert drawn(before) == drawn(after)


def test_a_face_that_changes_sides_is_drawn_otherwise_and_means_the_same() -> None:
    before = by_title(faces(TARGET))["Forced landing"]
    after = by_title(faces(laid("Fire", kind="emergency", section="3"), TARGET))["Forced landing"]
    assert meaning(before) == meaning(after)
    assert drawn(before) != drawn(after)


def test_issue_date_and_draft_marks_change_neither() -> None:
    stock, placement = STOCKS["sample"], place(EVERY_KIND)
    before = digests(tuple(faces_of(placement, IMPRINT, stock)))
    issued = replace(IMPRINT, issue="issue 2", date="2026-06-01")
    assert digests(tuple(faces_of(placement, issued, stock))) == before
    assert digests(tuple(faces_of(placement, IMPRINT, stock, 3))) == before


def test_another_registration_or_leaf_is_drawn_otherwise_and_means_the_same() -> None:
    stock, placement = STOCKS["sample"], place(EVERY_KIND)
    before = digests(tuple(faces_of(placement, IMPRINT, stock)))
    for after in (
        digests(tuple(faces_of(placement, replace(IMPRINT, registration="N0AAA"), stock))),
        digests(tuple(faces_of(placement, IMPRINT, STOCKS["A5"]))),
    ):
        for key, (means, looks) in before.items():
            assert after[key][0] == means
            assert after[key][1] != looks


@pytest.mark.parametrize(
    "says", [("Flaps", "UP"), ("Flaps UP",), ("UP", "Flaps"), ("Flaps", "UP", ""), ("Flap", "sUP")]
)
def test_order_and_division_of_texts_count(says: tuple[str, ...]) -> None:
    (face, _) = faces(laid("Cruise"))
    others = {("Flaps", "UP"), ("Flaps UP",), ("UP", "Flaps"), ("Flaps", "UP", ""), ("Flap", "sUP")} - {says}
    assert meaning(replace(face, says=says)) not in {meaning(replace(face, says=other)) for other in others}


def test_the_digests_are_the_same_in_another_process() -> None:
    program = (
        "from tests.page.leaves import EVERY_KIND, faces\n"
        "from dotleader.page.face.digest import drawn, meaning\n"
        "print([(meaning(face), drawn(face)) for face in faces(*EVERY_KIND)])\n"
    )
    here = str([(meaning(face), drawn(face)) for face in faces(*EVERY_KIND)])
    for seed in ("1", "2"):
        done = subprocess.run(
            [sys.executable, "-c", program],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(filter(None, sys.path))},
            capture_output=True,
            text=True,
            check=True,
        )
        assert done.stdout.strip() == here
