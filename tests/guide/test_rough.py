"""The rough price: from eight answers on, around the price of the finished job."""

from __future__ import annotations

from estimator.guide.rough import FROM_ANSWERS, rough_price
from tests.guide.made_answers import DRAWN, bid_for
from tests.pricing.made_books import shipped


def test_there_is_none_before_eight_answers() -> None:
    few = dict(list(DRAWN.items())[: FROM_ANSWERS - 1])
    assert rough_price(few, shipped()) is None


def test_it_holds_the_price_that_the_job_comes_to() -> None:
    some = dict(list(DRAWN.items())[:FROM_ANSWERS])
    rough, bid = rough_price(some, shipped()), bid_for(DRAWN)
    assert rough is not None and bid.second_total is not None
    assert rough.low <= bid.price.total <= bid.second_total <= rough.high


def test_at_the_end_it_is_the_two_totals_of_the_bid() -> None:
    rough, bid = rough_price(DRAWN, shipped()), bid_for(DRAWN)
    assert rough is not None
    assert (rough.low, rough.high) == (bid.price.total, bid.second_total)


def test_a_larger_job_costs_more() -> None:
    short = rough_price(DRAWN, shipped())
    long = rough_price(DRAWN | {"new_x": "11 ft", "first_stud": "unknown"}, shipped())
    assert short is not None and long is not None
    assert long.high > short.high
