"""A character that no font has is found wherever it would be printed, and nowhere else."""

from __future__ import annotations

import pytest

from tests.rules.pipeline import findings_of, said

ODD = "⟰"
FIRE = "emergency Fire\n  when it burns\n  Water .... ON\n  end\n"
CARD = "normal Cruise\n  when level\n  Mixture .... LEANED\n"


@pytest.mark.parametrize(
    "text",
    [
        f"handbook Ostrel {ODD}\n",
        f"handbook Ostrel Two\n  builder .... {ODD}\n",
        f"sources\n  kit manual .... issue {ODD}\n",
        f"speeds\n  VX (to {ODD}) .... 66 KIAS  unverified\n",
        f"gauge Oil {ODD} in psi from unverified\n",
        f"equipment\n  Pump .... OFF, {ODD}\n",
        f"equipment\n  Pump .... OFF, ON\n    does .... Pumps.\n      And {ODD}.\n",
        f"text A {ODD}\n  Words.\n",
        f"text A\n  Words.\n\n  More {ODD}.\n",
        f"emergency Fire {ODD}\n  when it burns\n  Water .... ON\n  end\n",
        *(
            f"emergency Fire\n  {line}\n  Water .... ON\n  end\n"
            for line in (
                f"when it {ODD}",
                f"thumb {ODD}",
                f"Fire {ODD} .... OUT",
                f"Fire .... {ODD}",
                f"Fire .... OUT\n    With {ODD}.",
                f"warning Not {ODD}.",
                f"warning Not\n    {ODD}.",
                f"group {ODD}\n    Fire .... OUT",
                f"if {ODD}\n    Fire .... OUT",
                f"repeat until {ODD}\n    Fire .... OUT",
                f"one of\n    Fire .... {ODD}\n    Fire .... OUT",
            )
        ),
        f"{FIRE}  amplified\n    So {ODD}.\n    Water .... ON\n      Ah.\n",
        f"{FIRE}  amplified\n    Water .... ON\n      Ah {ODD}.\n",
    ],
)
def test_it_is_found(text: str) -> None:
    found = [pair for pair in said(findings_of(f"{text}\n{CARD}")) if pair[0] == "no-such-character"]
    assert len(found) == 1


@pytest.mark.parametrize("line", [f"# {ODD}", f"Gap .... NONE  # allow near-name: {ODD}"])
def test_a_comment_is_not_printed(line: str) -> None:
    assert "no-such-character" not in dict(said(findings_of(f"{CARD}  {line}\n")))


def test_what_cannot_be_seen_is_named_by_its_number() -> None:
    (found,) = findings_of(f"{CARD}  Lever .... \u200bIN\n")
    assert found.rule == "no-such-character"
    assert "U+200B" in found.message
    assert "\u200b" not in found.message
