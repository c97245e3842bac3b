"""Doing it yourself against hiring it out: columns, what is better, the break-even hour."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.money import minor_unit
from estimator.pricing.compare_hire import column, hire_columns
from estimator.pricing.compare_own import STATED, own_lines, own_work, unpriced_of_list
from estimator.pricing.compare_records import (
    Against,
    Better,
    CompareColumn,
    Comparison,
    OwnWork,
    Taken,
)
from estimator.pricing.records import Bid

OWN_ALWAYS = "doing it yourself costs less, whatever an hour of yours is worth"
HIRE_ALWAYS = "hiring costs less, whatever an hour of yours is worth"
SAME_ALWAYS = "both cost the same, whatever an hour of yours is worth"
BELOW_OWN = "below this, doing it yourself costs less; above it, hiring"
BELOW_HIRE = "below this, hiring costs less; above it, doing it yourself"
NO_QUOTE = "the quote is not known"
YOURSELF = "Do it yourself"


def compare(bid: Bid) -> Comparison:
    """Set doing it yourself against hiring.

    Where a finding stops the bid, or the job names a local rule against it, doing it yourself
    is not offered: no figure of it is given, and only the hire side is shown.
    """
    own_hour, stops = _own_hour(bid), tuple(_stops(bid))
    hires = tuple(hire_columns(bid, own_hour))
    if stops:
        assumed = tuple(_assumed_of_hire(own_hour, hires))
        return Comparison(stops, own_hour, None, None, hires, (), assumed)
    own = own_work(bid)
    lines = tuple(own_lines(bid, own, own_hour))
    unpriced = tuple(f"price of {item}" for item in unpriced_of_list(bid, own))
    mine = column(("own", YOURSELF), lines, own.hours, unpriced)
    currency = bid.books.shop.currency
    against = tuple(_against(own, mine, hire, currency) for hire in hires)
    assumed = (*_assumed(bid, own), *_assumed_of_hire(own_hour, hires))
    return Comparison(stops, own_hour, own, mine, hires, against, assumed)


def _own_hour(bid: Bid) -> Taken:
    stated = bid.survey.compare.own_hour
    if stated is not None:
        return Taken(stated, True, STATED)
    return Taken(bid.books.shop.compare.own_hour, False, "the shop's figure")


def _stops(bid: Bid) -> Iterator[str]:
    """Why doing it yourself is not offered: a local rule, and findings that stop the bid."""
    forbidden = bid.survey.compare.forbidden.strip()
    if forbidden:
        yield f"A local rule named in the job: {forbidden}"
    for finding in bid.findings:
        if finding.stops_the_bid:
            title = finding.title or finding.rule
            yield f"{title} ({finding.finding_id}): {finding.figures}. {finding.remedy}".strip()


def _against(own: OwnWork, mine: CompareColumn, hire: CompareColumn, currency: str) -> Against:
    """One hire bid, all in and at the hours that it may take."""
    if mine.all_in is None or hire.all_in is None or mine.before_time is None:
        return Against(hire.name, "unknown", None, None, None, None, NO_QUOTE)
    gap = (hire.before_time or Decimal(0)) - mine.before_time
    found, words = break_even(gap, mine.hours - hire.hours, currency)
    ends = [each.value or Decimal(0) for each in (own.hours_low, own.hours_high)]
    at_most = break_even(gap, max(ends) - hire.hours, currency)[0]
    at_least = break_even(gap, min(ends) - hire.hours, currency)[0]
    by = hire.all_in - mine.all_in
    return Against(hire.name, _better(by), abs(by), found, at_most, at_least, words)


def _better(by: Decimal) -> Better:
    if by == 0:
        return "same"
    return "own" if by > 0 else "hire"


def break_even(gap: Decimal, more_hours: Decimal, currency: str) -> tuple[Decimal | None, str]:
    """Worth of an hour at which both cost the same, rounded once; or in words why there is none.

    Args:
        gap: what hiring costs more than doing it yourself, before any time.
        more_hours: hours that doing it yourself takes more than hiring does.
        currency: to round to its minor unit.

    >>> break_even(Decimal("333.10"), Decimal(8), "USD")[0]
    Decimal('41.64')
    """
    if more_hours == 0:
        if gap == 0:
            return None, SAME_ALWAYS
        return None, OWN_ALWAYS if gap > 0 else HIRE_ALWAYS
    exact = Fraction(gap) / Fraction(more_hours)
    if exact < 0:
        return None, OWN_ALWAYS if gap > 0 else HIRE_ALWAYS
    hour = to_decimal(exact, minor_unit(currency))
    return hour, BELOW_OWN if more_hours > 0 else BELOW_HIRE


def _assumed(bid: Bid, own: OwnWork) -> Iterator[str]:
    """What the job does not state of doing it yourself, and what was taken in its place."""
    if not own.hours.stated:
        yield f"Your hours are {own.hours.why}; the pace is {own.pace.value}, {own.pace.why}."
    if not own.parts.stated or not own.consumables.stated:
        tax = own.tax_pct
        yield f"Parts come from this takeoff, with {tax.value} % tax, {tax.why}."
    if not own.permit.stated:
        known = own.permit.value is not None
        taken = f"The permit is taken as {own.permit.why}."
        yield taken if known else "What a permit costs is not known: it is in no sum of yours."
    if not bid.survey.compare.tools:
        yield "No tool is named: you are taken to have every tool."
    if None in (own.rework_chance_pct.value, own.rework_cost.value):
        yield "What a mistake may cost is not known: it is in no sum."


def _assumed_of_hire(own_hour: Taken, hires: tuple[CompareColumn, ...]) -> Iterator[str]:
    if not own_hour.stated:
        yield f"An hour of yours is taken as worth {own_hour.value}, {own_hour.why}."
    for hire in hires:
        if not hire.hours_taken.stated:
            yield f"{hire.name} takes {hire.hours} h of yours, {hire.hours_taken.why}."
