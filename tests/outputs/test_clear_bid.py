"""What a clear bid states: every field of the list, filled or told to be missing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from estimator.outputs.clear_bid import clear_bid, not_stated
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.records import Bid
from estimator.tables.bid_fields import bid_fields
from tests.outputs.bid_factory import bid_of, sample_bid
from tests.outputs.spreadsheet import opened

LINES = """
[settings.terms]
firm_license = "Number 12"
insurance_line = "Liability: policy 34"
start_line = "On 4 May 2026"
finish_line = "By 8 May 2026"
lien_line = "A lien may be filed."

[settings.price]
permit_filed_by = "the contractor"
"""


def said(bid: Bid, field: str) -> str:
    return next(each.said for each in clear_bid(bid) if each.field == field)


def test_every_field_on_file_is_looked_at_in_its_order() -> None:
    fields = [each.field for each in clear_bid(sample_bid("nightstand"))]
    assert fields == [row.field for row in bid_fields()]
    assert len(fields) == len(set(fields)) == 30


def test_what_the_shipped_wording_leaves_open_is_not_stated() -> None:
    """A text that asks to be filled in or agreed states nothing."""
    assert not_stated(sample_bid("nightstand")) == (
        "License or registration", "Insurance", "Drawing or sketch of the way",
        "Who files the permit", "Start date", "Finish date", "Lien notice", "Cancellation notice",
    )  # fmt: skip


def test_what_is_filled_in_is_stated() -> None:
    bid = bid_of("nightstand", more=LINES)
    assert not_stated(bid) == ("Drawing or sketch of the way", "Cancellation notice")
    assert said(bid, "license") == "Number 12"
    assert said(bid, "permit-filer") == "the contractor"
    assert said(bid, "start") == "On 4 May 2026"


def test_a_job_without_a_date_has_no_last_day_either() -> None:
    bid = bid_of("nightstand", {"date = 2026-03-02\n": ""})
    assert (said(bid, "date"), said(bid, "valid-until")) == ("", "")


@pytest.mark.parametrize(
    ("more", "field", "want"),
    [
        ('[[allowances]]\nname = "A light"\namount = 1\n', "allowances", "A light"),
        ("", "allowances", "none"),
        ("[settings.terms]\ndeposit_pct = 0\n", "deposit", "none is asked"),
        ("", "deposit", "on the Bid, with its amount"),
        ("[settings.price]\npermit_cost = 75\n", "permit-fee", "on the Bid, with its amount"),
        ("", "permit-fee", "none in this price"),
        ('[settings.terms]\nprice_form = "not-to-exceed"\n', "price-form", "not-to-exceed"),
        ('[settings.tax]\nmode = "vat"\nrate_pct = 20\n', "tax",
         "charged on the whole net price; what is paid when buying comes back"),
        ("", "payments", "on acceptance; on completion"),
        ("[settings.terms]\nexcluded = []\n", "excluded", ""),
    ],
)  # fmt: skip
def test_what_a_field_says(more: str, field: str, want: str) -> None:
    assert said(bid_of("nightstand", more=f"\n{more}"), field) == want


def test_the_notice_of_cancellation_is_the_users_own_text() -> None:
    bid = sample_bid("nightstand")
    terms = replace(bid.books.shop.terms, cancellation_text="You may cancel\nwithin 3 days.")
    books = replace(bid.books, shop=replace(bid.books.shop, terms=terms))
    assert said(replace(bid, books=books), "cancellation") == "You may cancel within 3 days."


def test_the_sheet_lists_all_fields_with_who_asks_for_them() -> None:
    book = opened(bid_workbook(sample_bid("nightstand")), values=True)
    page = book["Assumptions and sources"]
    rows = [[cell.value for cell in row] for row in page[page.tables["Clear_bid"].ref]][1:]
    shown = {row[1]: row[2] for row in rows}
    assert len(shown) == 30
    assert [title for title, words in shown.items() if words == "not stated"] == list(
        not_stated(sample_bid("nightstand"))
    )
    asked = {row[1]: (row[3], row[4]) for row in rows}
    assert asked["Start date"] == (
        "seen",
        "Massachusetts Attorney General, on home improvement contracts: start and completion dates",
    )
