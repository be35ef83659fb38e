"""Amplified text and texts on their faces."""

from __future__ import annotations

from dotleader.handbook.cards import Essay, Explained
from dotleader.page.drawn import Font, mm
from dotleader.page.lay.lay_prose import lay_amplified, lay_essay
from dotleader.source.record import replace

from .building import FIRE, FRAME, NO_SYMBOLS, SPOT, item, lines, phrase, text, texts

PROSE = phrase("Trim first. " + "Everything else is done with the aircraft already in its glide. " * 4)


def essay(count: int) -> Essay:
    return Essay("text: foreword", "Foreword", (PROSE,) * count, SPOT)


def test_a_card_without_prose_has_no_amplified_face() -> None:
    assert lay_amplified(FIRE, FRAME, NO_SYMBOLS) is None


def test_amplified_text_stands_in_the_section_of_its_card() -> None:
    one = lay_amplified(replace(FIRE, amplified=(PROSE,)), FRAME, NO_SYMBOLS)
    assert one is not None
    assert (one.kind, one.section, one.thumb) == ("amplified", "3", FIRE.thumb)
    assert one.key != FIRE.key
    assert [found.string for found in texts(one)][:2] == [FIRE.title, "amplified"]


def test_an_item_that_is_explained_stands_over_its_prose_with_its_leader() -> None:
    part = Explained(item("Fuel pump", "ON"), (phrase("Restores the pressure."),))
    one = lay_amplified(replace(FIRE, amplified=(PROSE, part)), FRAME, NO_SYMBOLS)
    assert one is not None
    challenge, response, prose = text(one, "Fuel pump"), text(one, "ON"), text(one, "Restores the pressure.")
    assert (challenge.x, response.x, prose.x) == (0, mm(38), mm(4))
    assert challenge.y == response.y < prose.y
    assert response.font is Font.BOLD
    assert len([line for line in lines(one) if line.dots]) == 1
    assert one.faces[0].says[-2:] == ("Fuel pump .... ON", "  Restores the pressure.")


def test_prose_goes_over_as_many_faces_as_it_takes_and_leaves_no_single_line() -> None:
    for count in range(1, 30):
        one = lay_essay(essay(count), FRAME, NO_SYMBOLS)
        assert (one.kind, one.section, one.over) == ("text", "1", 0)
        assert sum(found.string.startswith("Trim first") for found in texts(one)) == count
        per_face = [[found for found in texts(face) if found.size < 14_000] for face in one.faces]
        for face in per_face[1:]:
            assert face[0].string == "continued"
            starts = [at for at, found in enumerate(face) if found.string.startswith("Trim first")]
            assert not starts or starts[0] != 2  # the last line of a paragraph is not the first of a face
    assert len(one.faces) > 2


def test_prose_is_not_too_small() -> None:
    assert min(found.size for found in texts(lay_essay(essay(30), FRAME, NO_SYMBOLS))) == 12_000
