"""Numbers as people write them, and as they print."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dotleader.handbook.amounts.numerals import NumberFault, NumberTrouble, Numeral, Written, number_text, read_number
from dotleader.handbook.amounts.trouble import said_of_number


@pytest.mark.parametrize(
    ("text", "value", "written"),
    [
        ("82", "82", Written(0, False)),
        ("2.10", "2.1", Written(2, False)),
        ("1,234.5", "1234.5", Written(1, True)),
        ("1,000,000", "1000000", Written(0, True)),
        (".5", "0.5", Written(1, False)),
        ("-5", "-5", Written(0, False)),
        ("−5", "-5", Written(0, False)),  # minus sign U+2212
        ("–5", "-5", Written(0, False)),  # an en dash, pasted
        ("- 5", "-5", Written(0, False)),
        ("090", "90", Written(0, False, 3)),
        ("0.25", "0.25", Written(2, False)),
        (" 7 ", "7", Written(0, False)),
    ],
)
def test_numbers(text: str, value: str, written: Written) -> None:
    assert read_number(text) == Numeral(Fraction(value), written)


@pytest.mark.parametrize(
    ("text", "fault", "offers"),
    [
        ("3,5", NumberFault.DECIMAL_COMMA, ["3.5"]),
        (",5", NumberFault.DECIMAL_COMMA, ["0.5"]),
        ("-3,5", NumberFault.DECIMAL_COMMA, ["-3.5"]),
        ("12,34", NumberFault.DECIMAL_COMMA, ["12.34"]),
        ("1,2345", NumberFault.DECIMAL_COMMA, ["1.2345"]),
        ("0,500", NumberFault.DECIMAL_COMMA, ["0.500"]),
        ("1234,567", NumberFault.DECIMAL_COMMA, ["1234.567", "1,234,567"]),
        ("1.234,5", NumberFault.FOREIGN_THOUSANDS, ["1,234.5"]),
        ("1.234.567", NumberFault.FOREIGN_THOUSANDS, ["1,234,567"]),
        ("1 234", NumberFault.FOREIGN_THOUSANDS, ["1,234"]),
        ("1\u202f234,5", NumberFault.FOREIGN_THOUSANDS, ["1,234.5"]),
        ("1’234", NumberFault.FOREIGN_THOUSANDS, ["1,234"]),
        ("12,34,567", NumberFault.MISPLACED_COMMA, []),
        ("5.", NumberFault.BARE_POINT, ["5"]),
        ("0,.", NumberFault.NOT_A_NUMBER, []),
        ("1,5.", NumberFault.NOT_A_NUMBER, []),
        ("+3.8", NumberFault.PLUS_SIGN, ["3.8"]),
        ("1e5", NumberFault.NOT_A_NUMBER, []),
        ("1O", NumberFault.NOT_A_NUMBER, []),
        ("٣", NumberFault.NOT_A_NUMBER, []),
        ("--5", NumberFault.NOT_A_NUMBER, []),
        ("", NumberFault.NOT_A_NUMBER, []),
        (".", NumberFault.NOT_A_NUMBER, []),
        ("-", NumberFault.NOT_A_NUMBER, []),
        ("9" * 5000, NumberFault.TOO_LONG, []),
        ("+" * 5000, NumberFault.NOT_A_NUMBER, []),
    ],
)
def test_texts_that_are_no_number(text: str, fault: NumberFault, offers: list[str]) -> None:
    assert read_number(text) == NumberTrouble(fault, text, tuple(offers))
    for offer in offers:
        assert isinstance(read_number(offer), Numeral)


@given(st.text(alphabet="0123456789.,-+ e−'\u00a0x", max_size=60) | st.text(max_size=20))
def test_reading_never_raises_and_every_offer_is_right(text: str) -> None:
    result = read_number(text)
    if isinstance(result, NumberTrouble):
        assert all(isinstance(read_number(offer), Numeral) for offer in result.offers)
        message, advice = said_of_number(result)
        assert message.endswith(".")
        assert advice.endswith(".")


@given(st.decimals(allow_nan=False, allow_infinity=False, places=4, min_value=-(10**9), max_value=10**9))
def test_a_printed_number_reads_back_as_itself(number: object) -> None:
    value = Fraction(str(number))
    text = number_text(value)
    assert text is not None
    read = read_number(text)
    assert isinstance(read, Numeral)
    assert read.value == value


@given(st.from_regex(r"-?(0|[1-9][0-9]{0,2}(,[0-9]{3}){0,2}|0?[0-9]{1,3})(\.[0-9]{1,3})?", fullmatch=True))
def test_a_literal_prints_as_it_was_written(text: str) -> None:
    read = read_number(text)
    assert isinstance(read, Numeral)
    sign = "−" if read.value < 0 else ""
    assert number_text(read.value, read.written) == sign + text.removeprefix("-")


@pytest.mark.parametrize(
    ("value", "written", "expected"),
    [
        ("1000", None, "1,000"),
        ("999.5", None, "999.5"),
        ("1013", Written(grouped=False), "1013"),
        ("2", Written(2), "2.00"),
        ("2.125", Written(1), "2.125"),  # never a digit fewer than the number needs
        ("-0.5", None, "−0.5"),
        ("0", None, "0"),
        ("1/8", None, "0.125"),
        ("1/3", None, None),
        ("1/3", Written(2), None),
    ],
)
def test_printing(value: str, written: Written | None, expected: str | None) -> None:
    assert number_text(Fraction(value), written) == expected
