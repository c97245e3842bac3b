"""Actual against estimate beyond S19: job files, phases, items, other costs; sums by hand."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.ledger.compare import NO_HOURS, NOT_INVOICED, compare, percent_of
from estimator.ledger.comparison import Comparison
from estimator.ledger.estimated import own_cost_per_hour
from estimator.ledger.reader import close_out_from_text
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed, closed, sample, us_books

SAMPLE = compare(sample())


def figures(job: Comparison) -> dict[str, tuple[str, str]]:
    return {line.name: (f"{line.estimated}", f"{line.actual}") for line in job.costs}


def test_own_cost_of_an_hour_is_the_burdened_wage() -> None:
    """30.38 x 1.4334 = 43.5467 -> 43.55 (BLS wage, burden of ECEC June 2022)."""
    assert own_cost_per_hour(us_books().shop) == Decimal("43.55")


def test_the_burdened_wage_is_taken_where_no_cost_is_given() -> None:
    """7.25 h x 43.55 = 315.7375 -> 315.74; 5.5 h: 239.525 -> 239.53."""
    job = compare(closed(changed(S19, ("labor_cost_per_hour = 38.00\n", ""))))
    assert figures(job)["labor"] == ("239.53", "315.74")


def test_a_line_of_hours_may_cost_its_own_rate() -> None:
    """7.25 h x 20.10 = 145.725 -> 145.73."""
    job = compare(closed(changed(S19, ("hours = 7.25", "hours = 7.25\ncost_per_hour = 20.10"))))
    assert figures(job)["labor"] == ("209.00", "145.73")


def test_materials_of_the_sample() -> None:
    """Receipts 40.30 + 14.20; tax of 223.75 at 8.25 % is 18.46, of it 0.50 and 2.82 here, by
    largest remainder (0.503, 2.822, 9.282, 3.387, 2.467 add up to 18.46 as 0.50, 2.82, 9.28,
    3.39, 2.47); 1.16; return 13.50 + 1.11; cable 14 x 0.45 - 2 x 0.45."""
    want = Decimal("40.30") + Decimal("3.32") + Decimal("14.20") + Decimal("1.16")
    want += Decimal("-14.61") + Decimal("6.30") - Decimal("0.90")
    assert figures(SAMPLE)["materials"] == ("65.75", f"{want}")


def test_driving_is_a_cost_of_its_own() -> None:
    """24 miles at 72.5 cents (IRS, 2026)."""
    assert figures(SAMPLE)["driving"] == ("0.00", "17.40")


def test_what_was_invoiced_stands_against_the_price() -> None:
    """85.48 + 547.83 + 45.00 = 678.31, all of it paid: 203.49 + 474.82."""
    assert (SAMPLE.price.estimated, SAMPLE.price.actual) == (Decimal("678.31"),) * 2
    assert SAMPLE.balance_due == 0


def test_hours_of_phases_add_up_to_the_estimate() -> None:
    hours = sum(line.hours.estimated for line in SAMPLE.phases)
    costs = sum(line.cost.estimated for line in SAMPLE.phases)
    assert (hours, costs) == (SAMPLE.estimate.hours, SAMPLE.costs[1].estimated)


def test_the_phase_of_a_task_is_that_of_the_estimate() -> None:
    """set-up 0.75 + identify-circuit 0.50; fish-drop 1.75 + trim 0.50 + rough-in 2.25."""
    worked = {line.phase: line.hours.actual for line in SAMPLE.phases}
    assert (worked["set-up"], worked["rough-in"]) == (Decimal("1.25"), Decimal("4.50"))


def test_phases_that_were_typed() -> None:
    phases = ('labor_hours = 5.5\nphases = [{ phase = "rough-in", hours = 4 }, '
              '{ phase = "finish", hours = 1.5 }]')  # fmt: skip
    job = compare(closed(changed(S19, ("labor_hours = 5.5", phases))))
    rows = [(line.phase, line.hours.estimated, line.hours.actual) for line in job.phases]
    assert rows == [("rough-in", 4, Decimal("7.25")), ("finish", Decimal("1.5"), 0)]
    assert [line.cost.estimated for line in job.phases] == [Decimal("152.00"), Decimal("57.00")]


def test_items_that_were_written_down() -> None:
    """Cable 14 - 2 = 12 ft for 6.30 - 0.90; caulk 4.30 and its share of 1.16 tax: 0.35."""
    rows = {line.item: line for line in SAMPLE.items}
    cable, caulk = rows["cable-14-2"], rows["caulk"]
    assert (cable.estimated_quantity, cable.quantity, cable.cost) == (11, 12, Decimal("5.40"))
    assert (caulk.estimated_cost, caulk.cost) == (Decimal("4.30"), Decimal("4.65"))


def test_an_item_that_nobody_estimated() -> None:
    job = compare(closed(changed(S19, ("amount = 62.10", 'amount = 62.10, item = "lamp"'))))
    (line,) = job.items
    assert (line.item, line.estimated_quantity, line.quantity) == ("lamp", None, None)
    assert line.cost == Decimal("67.22")


@pytest.mark.parametrize("kind", ["permit", "subcontract", "other"])
def test_other_kinds_of_cost_stand_apart(kind: str) -> None:
    job = compare(closed(changed(S19, ("amount = 62.10", f'amount = 62.10, kind = "{kind}"'))))
    assert figures(job)[kind] == ("0.00", "67.22")
    assert figures(job)["materials"] == ("84.00", "9.98")


def test_a_permit_that_was_estimated_and_never_paid() -> None:
    job = compare(closed(changed(S19, ("labor_hours = 5.5", "labor_hours = 5.5\npermit = 65"))))
    assert figures(job)["permit"] == ("65.00", "0.00")
    assert job.estimated_margin.amount == Decimal("282.00")


def test_lines_of_another_file_for_this_job() -> None:
    """41.05 + 3.39 of S19's receipt."""
    job = compare(closed(changed(DOUBLE_ENTRY, ('job = "B1"', 'job = "S20"'))), [closed().file])
    assert figures(job)["materials"] == ("120.00", "164.44")


def test_a_number_of_this_job_is_this_job() -> None:
    text = changed(S19, ("amount = 62.10", 'amount = 62.10, for = "job:S19"'))
    assert compare(closed(text)).costs == compare(closed()).costs


def test_tax_that_is_claimed_back_is_no_cost() -> None:
    """62.10 - 7.85 + 18.48 = 72.73."""
    job = compare(closed(changed(S19, ("labor_cost", 'purchase_tax = "recovered"\nlabor_cost'))))
    assert figures(job)["materials"] == ("84.00", "72.73")


def test_a_whole_coil_and_what_is_left_of_it() -> None:
    """A coil at 48.00; 180 of its 250 ft put back: 34.56; used 13.44."""
    coil = 'quantity = 1\nunit = "coil"\nunit_cost = 48.00\n'
    back = '\n[[stock]]\ndate = 2026-03-11\nwhat = "Cable"\nmove = "put back"\nquantity = 180\n'
    back += 'unit = "ft"\npack_size = 250\npack_cost = 48.00\n'
    old = 'quantity = 42\nunit = "ft"\nunit_cost = 0.44\n'
    job = compare(closed(changed(S19, (old, coil)) + back))
    assert [part.amount for part in job.parts][2:] == [Decimal("48.00"), Decimal("-34.56")]


def test_a_share_of_a_coil_is_rounded_once() -> None:
    """1 of 3 at 0.05 is 0.01666..: 0.02; 0.10 of 20 is 0.005: half up, 0.01."""
    for size, cost, want in ((3, "0.05", "0.02"), (20, "0.10", "0.01")):
        pack = f"quantity = 1\npack_size = {size}\npack_cost = {cost}\n"
        old = 'quantity = 42\nunit = "ft"\nunit_cost = 0.44\n'
        assert compare(closed(changed(S19, (old, pack)))).parts[2].amount == Decimal(want)


def test_what_is_still_owed() -> None:
    """560.88 - 185.09; with the balance nothing."""
    head, _, rest = DOUBLE_ENTRY.rpartition("[[payments]]")
    job = compare(closed(head + rest[rest.index("[[paid_out]]") :]))
    assert job.balance_due == Decimal("375.79")
    assert compare(closed(DOUBLE_ENTRY)).balance_due == 0


def test_a_deposit_received_above_the_cap_is_flagged_too() -> None:
    cap = "[deposit]\nasked_pct = 0\ncap_amount = 185.08\n\n[[receipts]]"
    check = compare(closed(changed(DOUBLE_ENTRY, ("[[receipts]]", cap)))).deposit
    assert (check.asked, check.received, check.over) == (0, Decimal("185.09"), True)


TAXED = ("price = 550.00", "price = 550.00\ntax = 10.88")
CAPPED = ("[[receipts]]", "[deposit]\nasked_pct = 33\ncap_pct = 10\n\n[[receipts]]")


def test_a_typed_deposit_and_its_cap_are_of_the_price_with_tax() -> None:
    """560.88 with tax: 33 % is 185.0904 and 10 % is 56.088; of 550.00 they are 181.50 and 55.00."""
    with_tax = compare(closed(changed(changed(DOUBLE_ENTRY, CAPPED), TAXED))).deposit
    assert (with_tax.asked, with_tax.cap) == (Decimal("185.09"), Decimal("56.09"))
    without = compare(closed(changed(DOUBLE_ENTRY, CAPPED))).deposit
    assert (without.asked, without.cap) == (Decimal("181.50"), Decimal("55.00"))


def test_the_tax_of_a_typed_estimate_is_no_part_of_its_price() -> None:
    job = compare(closed(changed(DOUBLE_ENTRY, TAXED)))
    assert (job.price.estimated, job.price.actual) == (Decimal("550.00"), Decimal("550.00"))


def test_without_a_cap_nothing_is_over_it() -> None:
    check = compare(closed(DOUBLE_ENTRY)).deposit
    assert (check.cap, check.over) == (None, False)


def test_what_is_missing_is_said() -> None:
    assert compare(closed()).notes == (NOT_INVOICED,)
    assert compare(closed(DOUBLE_ENTRY)).notes == (NO_HOURS,)


def test_a_percentage_of_nothing_is_not_known() -> None:
    assert percent_of(Decimal(1), Decimal(0)) is None
    assert percent_of(Decimal("66.50"), Decimal("209.00")) == Decimal("31.8")


def test_the_deposit_of_the_bid_is_taken() -> None:
    """30 % of 678.31 = 203.493."""
    assert SAMPLE.deposit.asked == Decimal("203.49")


def test_a_typed_deposit_goes_before_that_of_the_bid() -> None:
    text = sample().file.text + "\n[deposit]\nasked_pct = 50\ncap_pct = 10\n"
    file = close_out_from_text(text, sample().file.path)
    check = compare(type(sample())(file, sample().books, sample().bid)).deposit
    assert (check.asked, check.cap) == (Decimal("339.16"), Decimal("67.83"))
    assert Path(file.path).name == "nightstand.toml"
