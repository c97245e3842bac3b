"""How far the hours of closed jobs move the labor book: little by few, more by many."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.measures import to_decimal

HOURS_PLACES = 4


def weight(jobs_before: int, credibility_jobs: Decimal) -> Fraction:
    """The share that one more job gets of the new figure.

    n jobs together weigh n / (n + k) against the labor book, k being the jobs of one's own
    that weigh as much as it does. Taken one at a time, each in its turn weighs
    1 / (k + jobs before + 1), which comes to the same.

    Source: the credibility formula Z = n / (n + k) of insurance mathematics; taking it for
    labor hours, and the shipped k, are common practice.

    >>> weight(0, Decimal(10)), weight(9, Decimal(10))
    (Fraction(1, 11), Fraction(1, 20))
    """
    return 1 / (Fraction(credibility_jobs) + jobs_before + 1)


def moved(likely: Decimal, observed: Fraction, share: Fraction) -> Decimal:
    """New likely hours of one unit: the old ones moved towards the observed by a share.

    To four places, half up.

    >>> moved(Decimal("0.50"), Fraction("0.75"), Fraction(1, 11))
    Decimal('0.5227')
    """
    old = Fraction(likely)
    return to_decimal(old + share * (observed - old), HOURS_PLACES)
