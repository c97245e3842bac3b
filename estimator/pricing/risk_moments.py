"""Mean and variance of what may come out otherwise, in exact fractions."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Context, Decimal
from fractions import Fraction
from typing import NamedTuple

from estimator.settings_risk import Shape

_ROOTS = Context(prec=34)
_PERT_LIKELY, _PERT_SHARE = 4, 6
_TRIANGLE_MEAN, _TRIANGLE_VARIANCE = 3, 18


class Range(NamedTuple):
    """Low, likely and high of one figure."""

    low: Decimal
    likely: Decimal
    high: Decimal


class Moments(NamedTuple):
    """Mean, and variance in the unit squared."""

    mean: Fraction
    variance: Fraction

    @property
    def sd(self) -> Decimal:
        """Standard deviation, to 34 digits."""
        return root(self.variance)


def root(square: Fraction) -> Decimal:
    """The square root, to 34 digits.

    >>> root(Fraction(9, 4))
    Decimal('1.5')
    """
    return _ROOTS.sqrt(_ROOTS.divide(Decimal(square.numerator), Decimal(square.denominator)))


def moments(each: Range, shape: Shape) -> Moments:
    """Mean and variance of one range.

    Triangular: mean (a + m + b)/3, variance (a2 + m2 + b2 - am - ab - mb)/18. PERT: mean
    (a + 4m + b)/6, standard deviation (b - a)/6.

    >>> moments(Range(Decimal(5), Decimal(8), Decimal(14)), "pert")
    Moments(mean=Fraction(17, 2), variance=Fraction(9, 4))
    """
    low, likely, high = map(Fraction, each)
    if shape == "pert":
        mean = (low + _PERT_LIKELY * likely + high) / _PERT_SHARE
        return Moments(mean, ((high - low) / _PERT_SHARE) ** 2)
    squares = low**2 + likely**2 + high**2 - low * likely - low * high - likely * high
    return Moments((low + likely + high) / _TRIANGLE_MEAN, squares / _TRIANGLE_VARIANCE)


def by_chance(inside: Moments, chance_pct: Decimal) -> Moments:
    """What happens in `chance_pct` of all jobs, and is nothing in the others.

    Mean p x mean; variance p x (variance + mean squared) - (p x mean) squared.
    """
    chance = Fraction(chance_pct) / 100
    mean = chance * inside.mean
    return Moments(mean, chance * (inside.variance + inside.mean**2) - mean**2)


def scaled(each: Moments, factor: Fraction) -> Moments:
    """The same, each outcome multiplied."""
    return Moments(each.mean * factor, each.variance * factor**2)


def added(parts: Sequence[Moments], correlation_pct: Decimal = Decimal(0)) -> Moments:
    """A sum: means add up, and so do variances where the parts move on their own.

    With a common correlation r between any two of them the variance is
    (1 - r) x sum of variances + r x (sum of standard deviations) squared; the roots in it are
    taken to 34 digits.
    """
    mean = sum((part.mean for part in parts), Fraction(0))
    apart = sum((part.variance for part in parts), Fraction(0))
    if not correlation_pct:
        return Moments(mean, apart)
    shared = Fraction(correlation_pct) / 100
    together = sum((Fraction(part.sd) for part in parts), Fraction(0)) ** 2
    return Moments(mean, (1 - shared) * apart + shared * together)
