"""One total order, and nothing twice."""

from __future__ import annotations

import random

from dotleader.report.order import facts_of, ordered
from dotleader.source.finding import Finding, Severity
from dotleader.source.record import replace
from dotleader.source.text import SourceText, Spot
from tests.report.samples import FACTS, SOURCE, UNKNOWN, finding


def test_by_file_place_rank_rule_and_message() -> None:
    other = SourceText("books/emergency.cards", "x")
    wanted = [
        finding("near-name", Spot(other, 0, 1)),
        finding("near-name", Spot(SOURCE, 3, 4)),
        finding("near-name", Spot(SOURCE, 3, 5), "A."),
        finding("near-name", Spot(SOURCE, 3, 5), "B."),
        finding("unknown-value", Spot(SOURCE, 3, 5), "A."),
        replace(finding("unknown-value", Spot(SOURCE, 3, 5), "Z."), rank=1),
        replace(finding("near-name", Spot(SOURCE, 3, 5), "A."), rank=2),
        finding("near-name", Spot(SOURCE, 10, 11)),
    ]
    for seed in range(20):
        mixed = list(wanted)
        random.Random(seed).shuffle(mixed)
        assert ordered(mixed) == wanted


def test_what_reads_the_same_is_shown_once_whichever_came_first() -> None:
    again = Finding(UNKNOWN.rule, UNKNOWN.spot, UNKNOWN.message, "A help that differs.")
    assert ordered([UNKNOWN, UNKNOWN]) == [UNKNOWN]
    assert ordered([UNKNOWN, again]) == ordered([again, UNKNOWN]) == [again]


def test_a_rule_that_nobody_knows_is_an_error() -> None:
    assert facts_of(finding("no-such-rule", "VGG"), FACTS).severity is Severity.ERROR
