"""Speed symbols. The list of 14 CFR 1.2 is from memory; the sides are those that the language names."""

from __future__ import annotations

import pytest

from dotleader.handbook.amounts.rounding import Side
from dotleader.handbook.amounts.speed_symbols import SPEED_SYMBOLS, safe_side, speed_symbol

FROM_MEMORY_14_CFR_1_2 = {
    *("V1", "V2", "V2MIN", "VA", "VB", "VC", "VD", "VDF", "VEF", "VF", "VFC", "VFE", "VFTO", "VH"),
    *("VLE", "VLO", "VLOF", "VMC", "VMO", "VMU", "VNE", "VNO", "VR", "VREF", "VS", "VS0", "VS1"),
    *("VSR", "VSR0", "VSR1", "VSW", "VTOSS", "VX", "VY"),
}


def test_the_symbols_of_14_cfr_1_2() -> None:
    in_part_1 = {symbol for symbol, row in SPEED_SYMBOLS.items() if row.in_part_1}
    assert in_part_1 == FROM_MEMORY_14_CFR_1_2
    assert not SPEED_SYMBOLS["VG"].in_part_1


@pytest.mark.parametrize("symbol", ["VS0", "VS1", "VS", "VREF", "VMC"])
def test_speeds_not_to_go_below(symbol: str) -> None:
    assert safe_side(symbol) is Side.UP


@pytest.mark.parametrize("symbol", ["VFE", "VA", "VO", "VNO", "VNE", "VLO", "VLE"])
def test_speeds_not_to_exceed(symbol: str) -> None:
    assert safe_side(symbol) is Side.DOWN


@pytest.mark.parametrize("symbol", ["VG", "VX", "VY", "VR", "cruise climb", ""])
def test_other_speeds(symbol: str) -> None:
    assert safe_side(symbol) is Side.NEAREST


def test_every_least_goes_up_and_every_greatest_goes_down() -> None:
    for row in SPEED_SYMBOLS.values():
        if row.symbol == "VH":  # a speed that the aircraft reaches, not one that limits it
            continue
        words = row.meaning.split()
        if "stalling" in words or "least" in words:
            assert row.side is Side.UP, row
        if "greatest" in words or "exceed" in words:
            assert row.side is Side.DOWN, row


@pytest.mark.parametrize(
    ("name", "symbol"),
    [
        ("VFE at 10 deg", "VFE"),
        ("VLO (wheels in motion)", "VLO"),
        ("VLO(wheels in motion)", "VLO"),
        ("vne", "VNE"),
        ("VSO", "VS0"),
        ("V0", "VO"),
        ("V2min", "V2MIN"),
        ("approach speed", None),
    ],
)
def test_names_of_speeds(name: str, symbol: str | None) -> None:
    found = speed_symbol(name)
    assert (found.symbol if found else None) == symbol
