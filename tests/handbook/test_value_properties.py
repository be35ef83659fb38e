"""Properties of values that must hold for every number: exactness, and that no limit becomes less safe."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import assume, given
from hypothesis import strategies as st

from dotleader.handbook.amounts.arithmetic import add, compare, divide, exactly_in, multiply, rounded, subtract
from dotleader.handbook.amounts.composing import composed, factor_of
from dotleader.handbook.amounts.conversion import convert
from dotleader.handbook.amounts.printing import shown, shown_quantity
from dotleader.handbook.amounts.quantity import AtLeast, AtMost, Quantity, Range, Tolerance
from dotleader.handbook.amounts.roots import floor_of, inverse, plus, root_of, times
from dotleader.handbook.amounts.rounding import Side, round_to
from dotleader.handbook.amounts.shapes import convert_shape
from dotleader.handbook.amounts.trouble import Kind, Trouble
from dotleader.handbook.amounts.units import UNITS, Unit, find_unit, like, longest_unit

numbers = st.decimals(min_value=-100_000, max_value=100_000, places=3, allow_nan=False).map(
    lambda number: Fraction(str(number))
)
steps = st.sampled_from([Fraction(n) for n in ("1", "5", "10", "0.5", "0.25", "0.1", "0.01", "1/3")])
sides = st.sampled_from(Side)
units = st.sampled_from(list(UNITS.values()))


@st.composite
def like_units(draw: st.DrawFn) -> tuple[Unit, Unit]:
    one = draw(units)
    return one, draw(st.sampled_from([other for other in UNITS.values() if like(one, other)]))


@given(numbers, like_units())
def test_there_and_back_is_exact(number: Fraction, pair: tuple[Unit, Unit]) -> None:
    there = exactly_in(Quantity(number, pair[0]), pair[1])
    assert isinstance(there, Quantity)
    assert exactly_in(there, pair[0]) == Quantity(number, pair[0])


@given(numbers, like_units(), sides, st.none() | steps)
def test_a_printed_limit_is_never_less_safe(
    number: Fraction, pair: tuple[Unit, Unit], side: Side, step: Fraction | None
) -> None:
    """What stands on the face, read back, compared in exact numbers with what was declared."""
    declared = Quantity(number, pair[0])
    result = convert(declared, pair[1], side, step)
    assert isinstance(result, Quantity)
    order = compare(result, declared)
    match side:
        case Side.UP:
            assert order in (0, 1)
        case Side.DOWN:
            assert order in (-1, 0)
        case Side.NEAREST:
            pass
    text = shown_quantity(result)
    if step == Fraction(1, 3) and isinstance(text, Trouble):
        assert text.kind is Kind.UNEVEN
    else:
        assert isinstance(text, str)


@given(numbers, like_units(), st.booleans())
def test_a_least_goes_up_and_a_most_goes_down(number: Fraction, pair: tuple[Unit, Unit], least: bool) -> None:
    declared = Quantity(number, pair[0])
    converted = convert_shape(AtLeast(declared) if least else AtMost(declared), pair[1])
    assert isinstance(converted, AtLeast | AtMost)
    assert compare(converted.quantity, declared) in ((0, 1) if least else (0, -1))


@given(numbers, numbers, like_units())
def test_a_converted_range_lies_inside_the_declared_one(low: Fraction, high: Fraction, pair: tuple[Unit, Unit]) -> None:
    assume(low <= high)
    declared = Range(Quantity(low, pair[0]), Quantity(high, pair[0]))
    converted = convert_shape(declared, pair[1])
    if isinstance(converted, Trouble):
        assert converted.kind is Kind.TOO_COARSE
        assert high - low < 1
        return
    assert isinstance(converted, Range)
    assert compare(converted.low, declared.low) in (0, 1)
    assert compare(converted.high, declared.high) in (0, -1)
    assert isinstance(shown(converted), str)


@given(numbers, st.integers(1, 1000), like_units())
def test_a_converted_tolerance_lies_inside_the_declared_one(mid: Fraction, width: int, pair: tuple[Unit, Unit]) -> None:
    one, other = pair
    declared = Tolerance(Quantity(mid, one), Quantity(Fraction(width), one))
    converted = convert_shape(declared, other)
    assert isinstance(converted, Tolerance)
    middle, room = converted.mid.number, converted.plus_minus.number
    assert room > 0
    for end, limit, orders in (
        (middle - room, mid - width, (0, 1)),
        (middle + room, mid + width, (0, -1)),
    ):
        assert compare(Quantity(end, other), Quantity(limit, one)) in orders


@given(numbers, steps, sides)
def test_rounding_is_on_a_step_on_its_side_and_near(number: Fraction, step: Fraction, side: Side) -> None:
    result = round_to(number, step, side)
    assert (result / step).denominator == 1
    assert abs(result - number) < step
    match side:
        case Side.UP:
            assert result >= number
        case Side.DOWN:
            assert result <= number
        case Side.NEAREST:
            assert abs(result - number) <= step / 2
            assert round_to(-number, step, side) == -result
    assert round_to(result, step, side) == result


@given(numbers, numbers, like_units())
def test_sums_agree_with_fractions(left: Fraction, right: Fraction, pair: tuple[Unit, Unit]) -> None:
    one, other = pair
    assume(one.dimension.name != "temperature")
    scale = other.factor / one.factor
    assert add(Quantity(left, one), Quantity(right, other)) == Quantity(left + right * scale, one)
    assert subtract(Quantity(left, one), Quantity(right, other)) == Quantity(left - right * scale, one)


@given(numbers, numbers, st.none() | units, st.none() | units)
def test_products_agree_with_fractions_in_base_units(
    left: Fraction, right: Fraction, one: Unit | None, other: Unit | None
) -> None:
    """Whatever unit the result is in, its amount in base units is the product of the amounts."""
    assume(not any(unit and unit.dimension.name == "temperature" for unit in (one, other)))
    expected = left * factor_of(one) * right * factor_of(other)
    result = multiply(Quantity(left, one), Quantity(right, other))
    assert isinstance(result, Quantity)
    assert result.number * factor_of(result.unit) == expected
    assume(right)
    result = divide(Quantity(left, one), Quantity(right, other))
    assert isinstance(result, Quantity)
    assert result.number * factor_of(result.unit) == left * factor_of(one) / (right * factor_of(other))


@given(units, units)
def test_what_is_multiplied_and_divided_again_is_like_what_it_was(one: Unit, other: Unit) -> None:
    assume(one.parts and "temperature" not in {one.dimension.name, other.dimension.name})
    there, _ = composed(one, other, 1)
    back, _ = composed(there, other, -1)
    assert back is not None
    assert back.dimension == one.dimension


def test_a_root_that_nearly_comes_out_even_is_told_from_one_that_does() -> None:
    """1 part in 10 to the 60th from even: the first bounds, of 64 binary places, do not settle it."""
    nearly = root_of(Fraction(10**60 + 1))
    assert floor_of(nearly) == 10**30
    assert floor_of(times(nearly, Fraction(-1))) == -(10**30) - 1
    assert floor_of(times(root_of(Fraction(10**60)), Fraction(-1))) == -(10**30)


positives = st.fractions(min_value=Fraction(1, 1000), max_value=10_000, max_denominator=1000)


@given(positives, steps, sides)
def test_the_rounding_of_a_root_is_exact(number: Fraction, step: Fraction, side: Side) -> None:
    """Checked by squaring: no floating point on either side."""
    result = round_to(root_of(number), step, side)
    match side:
        case Side.UP:
            assert result**2 >= number > (result - step) ** 2
        case Side.DOWN:
            assert result**2 <= number < (result + step) ** 2
        case Side.NEAREST:
            assert (result + step / 2) ** 2 >= number
            assert result == 0 or (result - step / 2) ** 2 <= number


@given(positives, positives)
def test_roots_multiply_and_divide_as_they_should(one: Fraction, other: Fraction) -> None:
    product = times(root_of(one), root_of(other))
    assert times(product, product) == one * other
    turned = inverse(root_of(one))
    assert turned is not None
    assert times(turned, root_of(one)) == 1
    total = plus(root_of(one), root_of(other))
    square = times(total, total)
    assert plus(square, times(product, Fraction(-2))) == one + other


@given(positives, positives, positives)
def test_the_whole_part_of_a_sum_of_roots(one: Fraction, other: Fraction, less: Fraction) -> None:
    """root of a + root of b - c, against bounds by whole-number squares at a hundred more binary places."""
    number = plus(plus(root_of(one), root_of(other)), -less)
    whole = floor_of(number)
    finest = Fraction(1, 2**100)
    low = round_to(root_of(one), finest, Side.DOWN) + round_to(root_of(other), finest, Side.DOWN) - less
    assert whole <= low + 2 * finest
    assert low < whole + 1


@given(numbers, steps, sides, like_units())
def test_rounding_to_a_step_of_another_unit(
    number: Fraction, step: Fraction, side: Side, pair: tuple[Unit, Unit]
) -> None:
    result = rounded(Quantity(number, pair[0]), Quantity(step, pair[1]), side)
    exact = exactly_in(Quantity(number, pair[0]), pair[1])
    assert isinstance(result, Quantity)
    assert isinstance(exact, Quantity)
    assert result == Quantity(round_to(exact.number, step, side), pair[1])


@given(st.text(max_size=12) | st.sampled_from(sorted(UNITS)).flatmap(lambda s: st.text(max_size=3).map(s.__add__)))
def test_looking_for_units_never_raises(text: str) -> None:
    found = find_unit(text)
    head = longest_unit(text)
    if isinstance(found, Unit):
        assert head == (found, text[len(text.rstrip()) :]) or head is not None
    if head is not None:
        assert text.endswith(head[1])
