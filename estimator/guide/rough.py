"""A rough range of the price while the survey is still going on."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from estimator.catalog.records import Books
from estimator.guide.checked import Guess, survey_of
from estimator.guide.questions import Answers
from estimator.pricing.engine import estimate
from estimator.problems import InputError

GUESSES: tuple[Guess, ...] = ("low", "high")
FROM_ANSWERS = 8
"""How many answers there must be before a price is worth saying."""


@dataclass(frozen=True, slots=True)
class Rough:
    """The least and the most that the job may come to, tax and all, on what is known so far."""

    low: Decimal
    high: Decimal
    currency: str


def rough_price(answers: Answers, books: Books) -> Rough | None:
    """Price the job twice: the rest of it small and easy, then large and turning out badly.

    Returns:
        None with fewer than `FROM_ANSWERS` answers, or where no price can be worked out.
    """
    if len(answers) < FROM_ANSWERS:
        return None
    try:
        bids = [estimate(survey_of(answers, guess), books) for guess in GUESSES]
    except InputError:
        return None
    ends = [total for bid in bids for total in (bid.price.total, bid.second_total)]
    totals = [total for total in ends if total is not None]
    return Rough(min(totals), max(totals), books.shop.currency)
