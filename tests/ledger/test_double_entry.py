"""Postings of each event; the base case is the double-entry example computed in the facts on
bookkeeping (materials 120.00, invoice 560.88, deposit 185.09, balance 375.79, tax 10.88)."""

from __future__ import annotations

from collections import defaultdict
from decimal import Decimal

import pytest

from estimator.ledger.entries import Entry, entries_of
from estimator.ledger.estimated import Closed
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed, closed, sample


def by_txn(job: Closed) -> dict[str, list[Entry]]:
    """Entries of each transaction."""
    found: dict[str, list[Entry]] = defaultdict(list)
    for entry in entries_of([job]):
        found[entry.txn_id].append(entry)
    return found


def posted(job: Closed) -> list[tuple[str, list[tuple[str, str]]]]:
    """Each event with its postings: kind of line, and amount with a minus for credit."""
    return [
        (lines[0].doc_type, [(each.line_kind, f"{each.amount_gross}") for each in lines])
        for lines in by_txn(job).values()
    ]


def test_the_example_event_by_event() -> None:
    assert posted(closed(DOUBLE_ENTRY)) == [
        ("deposit received", [("bank", "185.09"), ("deposit", "-185.09")]),
        ("bill", [("cost-materials", "120.00"), ("payable", "-120.00")]),
        ("deposit applied", [("deposit", "185.09"), ("receivable", "-185.09")]),
        ("invoice", [("receivable", "560.88"), ("materials", "-150.00"), ("labor", "-400.00"),
                     ("tax", "-10.88")]),
        ("payment received", [("bank", "375.79"), ("receivable", "-375.79")]),
        ("tax payment", [("tax", "10.88"), ("bank", "-10.88")]),
    ]  # fmt: skip


def test_the_accounts_are_those_of_the_accounts_book() -> None:
    invoice = next(lines for lines in by_txn(closed(DOUBLE_ENTRY)).values()
                   if lines[0].doc_type == "invoice")  # fmt: skip
    assert [(each.account_code, each.account_name) for each in invoice] == [
        ("1200", "Accounts receivable"), ("4010", "Sales, materials"),
        ("4020", "Sales, labor"), ("2200", "Sales tax payable"),
    ]  # fmt: skip


@pytest.mark.parametrize("job", [closed(), closed(DOUBLE_ENTRY), sample()],
                         ids=["S19", "example", "sample"])  # fmt: skip
def test_every_transaction_balances(job: Closed) -> None:
    for lines in by_txn(job).values():
        assert sum(each.debit for each in lines) == sum(each.credit for each in lines) > 0
        for name in ("amount_net", "tax_amount", "amount_gross"):
            assert sum(getattr(each, name) for each in lines) == 0


@pytest.mark.parametrize("job", [closed(), closed(DOUBLE_ENTRY), sample()],
                         ids=["S19", "example", "sample"])  # fmt: skip
def test_one_sign_convention(job: Closed) -> None:
    for entry in entries_of([job]):
        assert entry.debit >= 0 and entry.credit >= 0 and 0 in (entry.debit, entry.credit)
        assert entry.debit - entry.credit == entry.amount_gross
        assert entry.amount_net + entry.tax_amount == entry.amount_gross


def test_a_receipt_for_several_purposes() -> None:
    """S19: 62.10 + 5.12, 41.05 + 3.39, 22.50 + 1.86, 9.52 + 0.78; 146.32 from the bank."""
    kind, lines = posted(closed())[0]
    assert (kind, lines) == ("bill", [
        ("cost-materials", "67.22"), ("cost-materials", "44.44"), ("stock", "24.36"),
        ("tools", "10.30"), ("bank", "-146.32"),
    ])  # fmt: skip
    assert [each.job_no for each in entries_of([closed()])[:3]] == ["S19", "S20", ""]


def test_a_return_goes_the_other_way() -> None:
    lines = dict(posted(closed()))["bill credit"]
    assert lines == [("cost-materials", "-8.50"), ("bank", "8.50")]


def test_stock_and_hours() -> None:
    found = dict(posted(closed()))
    assert found["stock"] == [("cost-materials", "18.48"), ("stock", "-18.48")]
    assert found["time"] == [("cost-labor", "275.50"), ("labor-applied", "-275.50")]


def test_what_is_put_back_becomes_stock_again() -> None:
    text = changed(S19, ('what = "Cable"', 'what = "Cable"\nmove = "put back"'))
    assert dict(posted(closed(text)))["stock"] == [("cost-materials", "-18.48"), ("stock", "18.48")]


def test_tax_that_is_claimed_back_is_no_cost() -> None:
    text = changed(S19, ("labor_cost", 'purchase_tax = "recovered"\nlabor_cost'))
    lines = dict(posted(closed(text)))["bill"]
    assert [amount for _, amount in lines] == [
        "62.10", "41.05", "22.50", "9.52", "11.15", "-146.32"
    ]  # fmt: skip
    assert lines[4][0] == "input-tax"


def test_a_credit_note_takes_back_an_invoice() -> None:
    text = changed(DOUBLE_ENTRY, ('doc_no = "14"', 'doc_no = "14"\ncredit = true'))
    assert dict(posted(closed(text)))["credit"] == [
        ("receivable", "-560.88"), ("materials", "150.00"), ("labor", "400.00"), ("tax", "10.88")
    ]  # fmt: skip


def test_a_deposit_without_an_invoice_stays_owed() -> None:
    head, _, rest = DOUBLE_ENTRY.partition("[[invoices]]")
    text = head + rest[rest.index("[[payments]]") :]
    assert "deposit applied" not in dict(posted(closed(text)))


def test_a_deposit_is_not_applied_before_it_came() -> None:
    text = changed(DOUBLE_ENTRY, ("date = 2026-04-01", "date = 2026-04-12"))
    applied = [each for each in entries_of([closed(text)]) if each.doc_type == "deposit applied"]
    assert {each.date.isoformat() for each in applied} == {"2026-04-12"}


def test_a_bill_paid_later() -> None:
    text = changed(DOUBLE_ENTRY, ('to = "tax office"', 'to = "supplier"'))
    assert dict(posted(closed(text)))["bill payment"] == [("payable", "10.88"), ("bank", "-10.88")]


def test_miles_at_the_rate_of_their_year() -> None:
    """24 miles at 72.5 cents (IRS, 2026): 17.40."""
    (cost, applied) = dict(posted(sample()))["mileage"]
    assert (cost, applied) == (("cost-trips", "17.40"), ("vehicle-applied", "-17.40"))


def test_the_lines_of_a_job_say_whether_they_are_billed_on() -> None:
    text = changed(S19, ("amount = 62.10", "amount = 62.10, billable = true"))
    marks = [(each.line_kind, each.billable) for each in entries_of([closed(text)])[:5]]
    assert marks == [
        ("cost-materials", "Y"), ("cost-materials", "N"), ("stock", ""), ("tools", ""),
        ("bank", ""),
    ]  # fmt: skip


def test_nothing_is_posted_of_a_bid() -> None:
    """A close-out with an estimate and nothing else has no entries."""
    head, _, _ = S19.partition("[deposit]")
    assert entries_of([closed(head)]) == ()


def test_no_amount_is_minus_zero() -> None:
    for entry in entries_of([closed(), closed(DOUBLE_ENTRY, "b.toml")]):
        for amount in (entry.amount_net, entry.tax_amount, entry.debit, entry.credit):
            assert str(amount) != "-0.00" and amount.as_tuple().exponent == -2


def test_tax_as_invoiced_goes_before_a_rate() -> None:
    text = changed(DOUBLE_ENTRY, ('tax_rate_pct = 7.25\ntaxed = "materials"', "tax = 10.87"))
    lines = dict(posted(closed(text)))["invoice"]
    assert (lines[0], lines[3]) == (("receivable", "560.87"), ("tax", "-10.87"))


def test_tax_on_the_whole_invoice() -> None:
    """550.00 x 7.25 % = 39.875 -> 39.88."""
    text = changed(DOUBLE_ENTRY, ('taxed = "materials"', 'taxed = "all"'))
    lines = dict(posted(closed(text)))["invoice"]
    assert (lines[0], lines[3]) == (("receivable", "589.88"), ("tax", "-39.88"))


def test_an_event_of_nothing_is_left_out() -> None:
    text = changed(DOUBLE_ENTRY, ("amount = 120.00", "amount = 0"))
    assert "bill" not in dict(posted(closed(text)))


@pytest.mark.parametrize(("paid", "kind"), [("card", "card"), ("bank", "bank")])
def test_where_a_receipt_was_paid_from(paid: str, kind: str) -> None:
    text = changed(DOUBLE_ENTRY, ('paid = "on account"', f'paid = "{paid}"'))
    assert dict(posted(closed(text)))["bill"][1] == (kind, "-120.00")


@pytest.mark.parametrize("purpose", ["supplies", "owner"])
def test_lines_for_no_job(purpose: str) -> None:
    text = changed(S19, ('for = "own-tool"', f'for = "{purpose}"'))
    assert (purpose, "10.30") in dict(posted(closed(text)))["bill"]


def test_a_line_says_where_it_comes_from() -> None:
    entry = entries_of([closed()])[1]
    assert (entry.source_line_id, entry.party, entry.party_type, entry.line_no) == (
        "close-out.toml:receipts[0].lines[1]", "Sample supply house", "supplier", 2
    )  # fmt: skip
    assert (entry.tax_code, entry.tax_rate, entry.currency) == ("purchase", Decimal("8.25"), "USD")


def test_hours_say_who_what_and_for_how_much() -> None:
    hours = [each for each in entries_of([sample()]) if each.line_kind == "cost-labor"]
    first = next(each for each in hours if each.description == "fish-drop")
    assert (first.party, first.party_type, first.phase) == ("A. Sample", "worker", "rough-in")
    assert (first.qty, first.unit, first.unit_cost) == (Decimal("1.75"), "h", 38)


def test_stock_off_a_coil_says_what_a_foot_costs() -> None:
    """112.50 / 250 = 0.45."""
    stock = [each for each in entries_of([sample()]) if each.doc_type == "stock"]
    assert {(each.unit, each.unit_cost) for each in stock} == {("ft", Decimal("0.450000"))}
