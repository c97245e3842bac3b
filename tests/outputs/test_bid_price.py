"""The price on the customer's page, line by line, for the settings that call for each line."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.outputs.text_bid import bid_summary
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.price_records import OneMore
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, bid_of, sample_bid
from tests.outputs.spreadsheet import opened

# Worked by hand: labor 6.25 h at 92, one trip at 45, materials 118.40 + 35 %, supply run 0.75 h,
# permit 75 + 25, tax 6 % on materials: 958.43 (S23). Deposit 30 % is 287.53, and 10 % is 95.84.
S23 = """
[overrides]
labor_hours = 6.25
materials_cost = 118.40
trips = 1

[settings.price]
labor_rate_per_hour = 92
trip_charge = 45
materials_markup_pct = 35
supply_run_hours = 0.75
minimum_charge = 0
permit_cost = 75
permit_handling = 25
permit_filed_by = "the contractor"
{price}

[settings.tax]
mode = "materials-sold"
rate_pct = 6

[settings.terms]
{terms}
"""
PLAN = """payment_steps = [{ when = "on acceptance", pct = 30 },
{ when = "walls closed", pct = 35 }, { when = "on completion", pct = 35 }]"""


def s23(price: str = "", terms: str = "") -> Bid:
    return bid_of("nightstand", more=S23.format(price=price, terms=terms))


def lines(bid: Bid) -> dict[str, tuple[object, object]]:
    """Words and amount of every line of the page, by its label."""
    page = opened(bid_workbook(bid), values=True)["Bid"]
    return {str(row[0].value): (row[1].value, row[2].value) for row in page.iter_rows(max_col=3)}


def summary(bid: Bid) -> str:
    return " ".join(" ".join(bid_summary(bid)).split())


def test_a_fixed_price_states_its_sentence_tax_and_deposit() -> None:
    page = lines(s23())
    assert str(page["Price form"][0]).startswith("Fixed price:")
    assert page["Rates"][0] == "none: the price is fixed"
    assert page["Tax"] == ("6 % on the materials as sold", 9.59)
    assert page["Total"] == ("For all of the work above, tax included.", 958.43)
    assert page["Deposit"] == ("30 % of the total", 287.53)
    assert page["Balance"][1] == 670.90
    assert page["Not to exceed"][1] == "none"


def test_a_price_not_to_exceed_states_its_cap_and_its_rates() -> None:
    """958.43 x 1.15 = 1,102.19."""
    page = lines(s23(terms='price_form = "not-to-exceed"'))
    assert page["Not to exceed"] == ("the most that is paid for the work above", 1102.19)
    assert page["Rates"][0] == (
        "92 USD an hour of one person; materials at cost and 35 %; 45 USD a trip"
    )


def test_payments_of_a_plan_stand_in_place_of_the_balance() -> None:
    """958.43: 30 % is 287.529, 35 % 335.4505 twice; cents left go to the largest remainders."""
    page = lines(s23(terms=PLAN))
    assert [page[f"Payment {at}"][1] for at in (1, 2, 3)] == [287.53, 335.45, 335.45]
    assert page["Payment 2"][0] == "walls closed"
    assert page["Deposit"] == ("the first payment below", 287.53)
    assert "Balance" not in page


def test_a_deposit_over_the_cap_is_flagged_on_the_page_and_in_the_summary() -> None:
    """10 % of 958.43 is 95.84, and 287.53 is more."""
    bid = s23(terms="deposit_cap_pct = 10\ndeposit_cap_amount = 1000")
    assert "CHECK BEFORE SENDING" in str(lines(bid)["Deposit"][0])
    assert lines(bid)["Deposit"][1] == 287.53
    assert "$287.53, then $670.90; MORE than the cap that is set ($95.84)" in summary(bid)


@pytest.mark.parametrize(("shown", "there"), [("true", True), ("false", False)])
def test_contingency_is_a_line_of_the_bid_or_inside_the_price(shown: str, there: bool) -> None:
    """10 % of labor 575.00 is 57.50; by either way it is in the price."""
    bid = s23(price=f"contingency_pct = 10\ncontingency_shown = {shown}")
    page = lines(bid)
    assert page["Price before tax"][1] == 1006.34  # 948.84 + 57.50
    assert ("Contingency" in page) == there
    assert not there or page["Contingency"][1] == 57.50


def test_allowances_are_listed_each_with_its_sum() -> None:
    light = '\n[[allowances]]\nname = "Light of your choice"\namount = 120\n'
    page = lines(bid_of("nightstand", more=light))
    assert page["Allowance"] == (
        "Light of your choice (allowance: settled up or down at what it costs)", 120,
    )  # fmt: skip
    assert lines(sample_bid("nightstand"))["Allowances"][0] == "none"


def test_the_permit_says_who_files_it() -> None:
    page = lines(s23())
    assert page["Permit filed by"][0] == "the contractor"
    assert "$100.00 permit, filed by: the contractor" in summary(s23())


@pytest.mark.parametrize(
    ("price", "want"),
    [
        ("permit_visits = 2", "none in this price, with 2 trip(s) to meet the inspector"),
        ("permit_cost = 75", "fee and handling, in the price"),
        ("", "none in this price"),
    ],
)
def test_the_permit_says_what_it_costs_and_its_trips(price: str, want: str) -> None:
    assert (
        lines(bid_of("nightstand", more=f"\n[settings.price]\n{price}\n"))["Permit fee"][0] == want
    )


def test_what_the_list_calls_stated_is_printed_and_what_is_empty_is_not() -> None:
    stated = {
        "Finish": ("finish_line", "By 8 May"), "Insurance": ("insurance_line", "Policy 34"),
        "Liens": ("lien_line", "A lien may be filed."), "Cleaning up": ("cleanup_line", "We do."),
    }  # fmt: skip
    terms = "\n".join(f'{key} = "{text}"' for key, text in stated.values())
    page = lines(s23(terms=terms))
    assert {label: page[label][0] for label in stated} == {
        label: text for label, (_, text) in stated.items()
    }
    assert not {"Finish", "Insurance", "Liens"} & set(lines(sample_bid("nightstand")))


@pytest.mark.parametrize("which", ["included", "excluded"])
def test_both_lists_are_printed_where_one_is_empty(which: str) -> None:
    page = opened(bid_workbook(s23(terms=f"{which} = []")), values=True)["Bid"]
    rows = [(row[0].value, row[1].value) for row in page.iter_rows(max_col=2)]
    labels = [label for label, _ in rows]
    title = {"included": "Included", "excluded": "Not included"}[which]
    assert {"Included", "Not included"} <= set(labels)
    assert rows[labels.index(title) + 1] == (None, "not stated")


def test_one_more_outlet_stands_where_it_was_worked_out() -> None:
    more = replace(s23(), one_more=OneMore(Decimal("140.00"), "like the last"))
    assert lines(more)["One more outlet"] == (
        "while there, on top of the total: like the last", 140,
    )  # fmt: skip
    assert "One more outlet $140.00 more: like the last" in summary(more)
    none = replace(s23(), one_more=OneMore(None, "a finding stops the job itself"))
    assert "One more outlet" not in lines(none)
    assert "One more outlet not worked out: a finding stops the job itself" in summary(none)


def test_the_summary_counts_what_the_bid_does_not_state() -> None:
    said = summary(sample_bid("nightstand"))
    assert "Not stated on the bid (8)" in said
    assert "license or registration, insurance," in said


TAXED = {
    "rec-room": "13 % value added tax on the whole price before it",
    "terrace-bedroom": "20 % value added tax on the whole price before it",
}


@pytest.mark.parametrize("name", NAMES)
def test_every_sample_states_its_price_form_and_tax(name: str) -> None:
    page = lines(sample_bid(name))
    assert str(page["Price form"][0]).startswith("Fixed price:")
    assert page["Tax"][0] == TAXED.get(name, "no tax is charged")
