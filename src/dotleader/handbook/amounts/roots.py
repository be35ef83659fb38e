"""Exact numbers with square roots in them, for a `root of` that is rounded only at the end of a longer sum.

`{VS1} * root of ({load factor}) rounded down to 1 KIAS` rounds a product, not the root. So a root is kept
as what it is until it is rounded: a sum of rational multiples of square roots of whole numbers. Two roots
whose radicands multiply to a square are multiples of each other and are put together; the roots that remain
are independent over the rationals, so such a sum is rational exactly when only the root of 1 is left, and
an irrational one never falls on a step: finer and finer whole-number bounds settle any rounding. No binary
floating point anywhere.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import product
from math import isqrt
from typing import TypeAlias

from dotleader.source.record import record

MOST_BITS = 512
MOST_TERMS = 8


@record
class Roots:
    """An irrational number: the sum of factor times square root of radicand, as (radicand, factor)."""

    terms: tuple[tuple[int, Fraction], ...]


Number: TypeAlias = Fraction | Roots


def root_of(number: Fraction) -> Number:
    """The square root of a number that is not below zero; rational when it comes out even."""
    return _collected([(number.numerator * number.denominator, Fraction(1, number.denominator))])


def plus(left: Number, right: Number) -> Number:
    if isinstance(left, Fraction) and isinstance(right, Fraction):
        return left + right
    return _collected((*_terms(left), *_terms(right)))


def times(left: Number, right: Number) -> Number:
    if isinstance(left, Fraction) and isinstance(right, Fraction):
        return left * right
    return _collected((a * b, m * n) for (a, m), (b, n) in product(_terms(left), _terms(right)))


def inverse(number: Number) -> Number | None:
    """One over a number that is not zero; `None` for a sum of several roots, by which nobody divides."""
    if isinstance(number, Fraction):
        return 1 / number
    if len(number.terms) > 1:
        return None
    radicand, factor = number.terms[0]
    return Roots(((radicand, 1 / (factor * radicand)),))


def floor_of(number: Number) -> int:
    """The greatest whole number that is not above a number."""
    if isinstance(number, Fraction):
        return number.numerator // number.denominator
    bits = 64
    while True:
        low = high = Fraction(0)
        for radicand, factor in number.terms:
            below = isqrt(radicand << (2 * bits))
            bounds = (factor * below, factor * (below + 1)) if radicand != 1 else (factor * below,) * 2
            low += min(bounds)
            high += max(bounds)
        least, most = low // (1 << bits), high // (1 << bits)
        if least == most:
            return least
        bits *= 2


def too_large(number: Number) -> bool:
    """Whether a number is beyond what a handbook can mean. Keeps a chain of squares from filling memory."""
    terms = _terms(number)
    return len(terms) > MOST_TERMS or any(
        max(radicand.bit_length(), factor.numerator.bit_length(), factor.denominator.bit_length()) > MOST_BITS
        for radicand, factor in terms
    )


def _terms(number: Number) -> tuple[tuple[int, Fraction], ...]:
    return number.terms if isinstance(number, Roots) else ((1, number),)


def _collected(terms: Iterable[tuple[int, Fraction]]) -> Number:
    """Terms put together. The root of 1 comes first, so every square radicand ends there."""
    kept: dict[int, Fraction] = {1: Fraction(0)}
    for radicand, factor in terms:
        if not radicand:
            continue
        for other in kept:
            root = isqrt(radicand * other)
            if root * root == radicand * other:
                kept[other] += factor * Fraction(root, other)
                break
        else:
            kept[radicand] = factor
    left = tuple((radicand, factor) for radicand, factor in kept.items() if factor)
    match left:
        case ():
            return Fraction(0)
        case ((1, factor),):
            return factor
        case _:
            return Roots(left)
