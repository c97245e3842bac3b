"""Whatever the terms: parts add up, nothing is undercut, and tax that goes in comes out again."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.catalog.records import Books
from estimator.money import minor_unit, round_money
from estimator.pricing.book_lines import book_lines
from estimator.pricing.hours import total_hours
from estimator.pricing.price import build_price, price_lines
from estimator.pricing.records import Bid, PriceBuild
from estimator.pricing.tax import UNTAXED, without_tax
from estimator.settings import PlannedPayment
from estimator.survey.allowances import Allowance
from estimator.survey.records import Survey
from tests.pricing.made_books import bid, with_terms

MODES = (
    "none", "paid-at-purchase", "materials-sold", "whole-price", "purchase-and-labor",
    "gross-receipts", "part-of-price", "vat",
)  # fmt: skip
percent = st.decimals(0, 200, places=3)
share = st.decimals(0, 99, places=3)
money = st.decimals(0, 2000, places=4)
hours = st.decimals(0, 100, places=6)
or_none = st.none()
TERMS: dict[str, st.SearchStrategy[Any]] = {
    "labor_rate_per_hour": st.one_of(or_none, money),
    "materials_markup_pct": percent,
    "small_items_pct": percent,
    "minimum_charge": st.one_of(st.just(Decimal(0)), money),
    "trip_charge": money,
    "overhead_pct": percent,
    "profit_pct": percent,
    "permit_cost": st.one_of(or_none, money),
    "permit_handling": money,
    "permit_visits": st.integers(0, 3),
    "supply_run_hours": hours,
    "supply_run_policy": st.sampled_from(["line", "in-markup", "in-labor"]),
    "contingency_pct": percent,
    "contingency_on": st.sampled_from(["labor", "built-up"]),
    "contingency_from": st.sampled_from(["percent", "confidence"]),
    "offer_step": st.sampled_from([Decimal(each) for each in ("0", "0.05", "5", "100")]),
    "offer_rounding": st.sampled_from(["nearest", "up"]),
    "mode": st.sampled_from(MODES),
    "rate_pct": share,
    "purchase_rate_pct": share,
    "purchase_tax": st.sampled_from(["before-markup", "after-markup", "not-recovered"]),
    "taxed_share_pct": st.decimals(0, 100, places=2),
    "materials_base": st.sampled_from(["sold", "before-profit"]),
    "gross_factor_pct": st.one_of(or_none, share),
    "basis": st.sampled_from(["invoice", "line"]),
    "rounding": st.sampled_from(["half-up", "down", "half-even"]),
    "prices_include_tax": st.booleans(),
    "deposit_of": st.sampled_from(["total", "materials"]),
    "deposit_pct": st.decimals(0, 100, places=2),
    "deposit_cap_pct": st.one_of(or_none, share),
    "deposit_cap_amount": st.one_of(or_none, money),
    "price_form": st.sampled_from(["fixed", "time-and-material", "not-to-exceed"]),
    "not_to_exceed_pct": percent,
    "payment_steps": st.sampled_from([
        (),
        (PlannedPayment("a", Decimal("33.3")), PlannedPayment("b", Decimal("66.7"))),
        (PlannedPayment("a", Decimal(1)), PlannedPayment("b", Decimal(98)),
         PlannedPayment("c", Decimal(1))),
    ]),
}  # fmt: skip


@cache
def small_job() -> Bid:
    return bid()


def survey_with(stated: dict[str, Any], allowances: list[dict[str, Any]]) -> Survey:
    job = small_job().survey
    known = job.overrides.model_copy(update=stated)
    lines = tuple(Allowance.model_validate(each) for each in allowances)
    return job.model_copy(update={"overrides": known, "allowances": lines})


def built(survey: Survey, books: Books, from_range: Decimal | None = None) -> PriceBuild:
    """The price of the small job under these books."""
    job = small_job()
    charged = total_hours(survey, job.labor, books)
    return build_price(survey, job.takeoff, job.shopping, charged, books, from_range)


@st.composite
def cases(draw: Any) -> tuple[Survey, Books, Decimal | None]:
    """Any job under any terms."""
    terms = {key: draw(of) for key, of in TERMS.items()}
    stated = {"labor_hours": draw(hours), "materials_cost": draw(money)}
    kept = draw(st.sets(st.sampled_from(sorted(stated))))
    kinds = st.sampled_from(["materials", "labor", "other"])
    row = st.fixed_dictionaries({"name": st.just("a"), "kind": kinds, "amount": money})
    survey = survey_with({key: stated[key] for key in kept}, draw(st.lists(row, max_size=3)))
    books = with_terms(currency=draw(st.sampled_from(["USD", "JPY", "KWD"])), **terms)
    return survey, books, draw(st.one_of(or_none, money))


@settings(max_examples=150, deadline=None)
@given(cases())
def test_parts_add_up_to_the_total(case: tuple[Survey, Books, Decimal | None]) -> None:
    got, books = built(*case), case[1]
    assert sum(amount for _, _, amount in price_lines(got)) == got.before_tax
    assert got.before_tax + got.tax == got.total
    assert sum(each.price for each in book_lines(got, books)) == got.total
    assert got.base == got.labor + got.materials_sell + got.trips + got.supply_run.amount
    assert got.built_up == got.base + got.overhead + got.profit + got.contingency.amount


@settings(max_examples=150, deadline=None)
@given(cases())
def test_what_is_paid_is_the_total(case: tuple[Survey, Books, Decimal | None]) -> None:
    got, terms = built(*case), case[1].shop.terms
    assert got.deposit + got.balance == got.total
    assert sum(each.amount for each in got.payment.steps) == got.total
    assert 0 <= got.deposit <= got.total
    cap = got.payment.cap
    assert got.payment.over_cap == (cap is not None and got.deposit > cap)
    assert (got.form.cap is not None) == (terms.price_form == "not-to-exceed")
    assert got.form.cap is None or got.form.cap >= got.total


@settings(max_examples=150, deadline=None)
@given(cases())
def test_never_below_the_minimum_or_below_nothing(
    case: tuple[Survey, Books, Decimal | None],
) -> None:
    got, shop = built(*case), case[1].shop
    assert got.offered >= round_money(got.minimum_charge, shop.currency)
    assert got.offered > 0 or got.built_up == 0
    assert got.tax >= 0
    assert got.tax == 0 or shop.tax.mode not in UNTAXED
    if shop.price.offer_rounding == "up" or shop.price.offer_step == 0:
        assert got.offer_rounding >= 0
    step = round_money(shop.price.offer_step, shop.currency)
    assert step == 0 or got.offered % step == 0
    assert abs(got.offer_rounding) < step or got.offer_rounding == 0


@settings(max_examples=150, deadline=None)
@given(cases())
def test_every_amount_is_in_whole_minor_units(case: tuple[Survey, Books, Decimal | None]) -> None:
    got, places = built(*case), minor_unit(case[1].shop.currency)
    amounts = [
        got.labor, got.materials_cost, got.input_tax, got.purchase_tax, got.materials_sell,
        got.supply_run.worth, got.supply_run.amount, got.contingency.amount, got.offered,
        got.offer_rounding, got.allowances_total, got.tax, got.total, got.deposit, got.balance,
        *(each.tax for each in got.tax_build.lines), *(each.amount for each in got.payment.steps),
    ]  # fmt: skip
    assert all(amount == round(amount, places) for amount in amounts)


@settings(max_examples=150, deadline=None)
@given(cases())
def test_the_tax_taken_out_is_the_tax_put_in(case: tuple[Survey, Books, Decimal | None]) -> None:
    """Where the tax of the counter is a cost and in the book prices, cost with tax is as listed."""
    got = built(*case)
    spent = got.materials_listed + got.small_items
    assert got.materials_cost + got.input_tax == spent
    if got.input_tax and got.tax_mode != "vat":
        assert got.purchase_tax == got.input_tax


@settings(max_examples=150, deadline=None)
@given(
    net=st.decimals(0, 100_000, places=2),
    rate=st.decimals(Decimal("0.01"), 100, places=3),
)
def test_vat_put_on_and_taken_out_again(net: Decimal, rate: Decimal) -> None:
    """The rounded tax is off by half a cent at most, and (1 + rate) makes less of that."""
    gross = net + round_money(net * rate / 100)
    assert without_tax(gross, rate, "USD") == net


whole = st.integers(0, 400)


@settings(max_examples=150, deadline=None)
@given(cases(), whole, whole, whole)
def test_a_supply_run_costs_the_same_as_a_line_or_in_the_hours(
    case: tuple[Survey, Books, Decimal | None], job_h: int, run_h: int, rate: int
) -> None:
    """Where rate x hours are whole cents, nothing is a percentage of labor alone (contingency),
    and tax does not go line by line: overhead, profit and tax then lie on the same sum."""
    survey, books, from_range = case
    hours_stated = survey.overrides.model_copy(update={"labor_hours": Decimal(job_h)})
    survey = survey.model_copy(update={"overrides": hours_stated})
    terms = {
        "supply_run_hours": Decimal(run_h),
        "labor_rate_per_hour": Decimal(rate),
        "contingency_on": "built-up",
        "basis": "invoice",
    }
    totals = {
        built(
            survey,
            with_terms(books, currency=books.shop.currency, supply_run_policy=policy, **terms),
            from_range,
        ).total
        for policy in ("line", "in-labor")
    }
    assert len(totals) == 1


@pytest.mark.parametrize("mode", MODES)
def test_in_the_markup_it_costs_nothing_more(mode: str) -> None:
    books = with_terms(mode=mode, rate_pct=Decimal(7), supply_run_policy="in-markup")
    none = replace(books, shop=replace(
        books.shop, price=replace(books.shop.price, supply_run_hours=Decimal(0))
    ))  # fmt: skip
    some = with_terms(books, supply_run_hours=Decimal(5))
    job = small_job().survey
    assert built(job, some).total == built(job, none).total


@pytest.mark.parametrize("mode", MODES)
def test_ways_and_the_second_total_hold_in_every_mode(mode: str) -> None:
    """Two ways, one shorter; a box that nobody opened: the bad case is dearer."""
    boxes = [
        {"id": "a", "existing": True, "wall": "w", "x": 20, "height": 15, "unknown_cables": True,
         "volume": "12.5 in3"},
        {"id": "b", "wall": "w", "x": 92, "height": 15},
    ]  # fmt: skip
    runs = [
        {"id": name, "from": "a", "to": "b", "cable": "14-2", "route": name, "method": "bored",
         "legs": [{"go": "along", "length": length}]}
        for name, length in (("long", "30 ft"), ("short", "6 ft"))
    ]  # fmt: skip
    terms = {"mode": mode, "rate_pct": Decimal(8), "purchase_rate_pct": Decimal(6)}
    made = bid(with_terms(**terms), boxes=boxes, runs=runs)
    assert [each.route for each in made.routes] == ["short", "long"]
    assert made.routes[0].total == made.price.total
    assert made.second_total is not None and made.second_total > made.price.total
    assert sum(each.price for each in made.book_lines) == made.price.total
