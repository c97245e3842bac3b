"""The estimate as a job file gives it: settings that move it, and what is not in its phases."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.catalog.shipped import shipped_catalogs
from estimator.ledger.closing import open_job
from estimator.ledger.compare import compare
from estimator.ledger.comparison import Comparison
from estimator.ledger.estimated import Closed, estimate_of
from estimator.problems import InputError
from tests.ledger.made_close_out import SAMPLE, closed, sample
from tests.worked.job import worked

JOB = SAMPLE.parents[1] / "nightstand.toml"


def compared(folder: Path, more: str, close_out: str = "") -> Comparison:
    """The sample closed, with more lines in its job file and its close-out file."""
    (folder / "job.toml").write_text(JOB.read_text(encoding="utf-8") + more, encoding="utf-8")
    text = SAMPLE.read_text(encoding="utf-8").replace("../nightstand.toml", "job.toml")
    (folder / "close-out.toml").write_text(text + close_out, encoding="utf-8")
    return compare(open_job(folder / "close-out.toml"))


def phases(job: Comparison) -> dict[str, Decimal]:
    return {line.phase: line.hours.estimated for line in job.phases}


def test_the_cap_of_the_shop_flags_the_deposit(tmp_path: Path) -> None:
    """30 % of 678.31 is 203.49; the cap is the lesser of 200.00 and 50 %."""
    more = "\n[settings.terms]\ndeposit_cap_amount = 200\ndeposit_cap_pct = 50\n"
    check = compared(tmp_path, more).deposit
    assert (check.asked, check.cap, check.over) == (Decimal("203.49"), Decimal(200), True)


def test_hours_of_a_supply_run_are_estimated_too(tmp_path: Path) -> None:
    """6.44507 h and 0.75 h at 38.00: 273.41266 -> 273.41."""
    job = compared(tmp_path, "\n[settings.price]\nsupply_run_hours = 0.75\n")
    assert phases(job)["supply run"] == Decimal("0.75")
    assert job.costs[1].estimated == Decimal("273.41")
    assert sum(line.cost.estimated for line in job.phases) == Decimal("273.41")


def test_tax_paid_at_the_counter_is_a_cost_of_materials(tmp_path: Path) -> None:
    """65.75 x 8.25 % = 5.424375 -> 5.42."""
    more = '\n[settings.tax]\nmode = "paid-at-purchase"\npurchase_rate_pct = 8.25\n'
    assert compared(tmp_path, more).costs[0].estimated == Decimal("71.17")


def test_allowances_are_estimated_at_their_sums(tmp_path: Path) -> None:
    more = '\n[[allowances]]\nname = "Lamp"\namount = 80\nkind = "materials"\n'
    more += '\n[[allowances]]\nname = "Painter"\namount = 120\nkind = "labor"\n'
    costs = {line.name: line.estimated for line in compared(tmp_path, more).costs}
    assert (costs["materials"], costs["other"]) == (Decimal("145.75"), Decimal(120))


@pytest.mark.parametrize(("stated", "rest"), [("8.5", True), ("3", True)])
def test_hours_stated_for_the_job(stated: str, rest: bool, tmp_path: Path) -> None:
    """What the job states beyond its tasks, or short of them, is the whole job's."""
    job = compared(tmp_path, f"\n[overrides]\nlabor_hours = {stated}\n")
    assert sum(phases(job).values()) == Decimal(stated)
    assert ("whole job" in phases(job)) is rest
    assert sum(line.cost.estimated for line in job.phases) == Decimal(stated) * 38


def test_likely_hours_where_those_are_charged(tmp_path: Path) -> None:
    """5.8975 h likely at 38.00: 224.105 -> 224.11."""
    job = compared(tmp_path, '\n[settings.price]\nhours_basis = "likely"\n')
    assert (job.estimate.hours, job.costs[1].estimated) == (Decimal("5.8975"), Decimal("224.11"))
    assert phases(job)["test"] == Decimal("0.2")


def test_own_cost_of_an_hour_in_the_job_s_settings(tmp_path: Path) -> None:
    """The close-out's own figure goes before it: 38.00."""
    more = "\n[settings.ledger]\nlabor_cost_per_hour = 50\n"
    assert compared(tmp_path, more).estimate.cost_per_hour == 38
    text = (tmp_path / "close-out.toml").read_text(encoding="utf-8")
    kept = [line for line in text.splitlines() if not line.startswith("labor_cost_per_hour")]
    (tmp_path / "close-out.toml").write_text("\n".join(kept), encoding="utf-8")
    assert open_job(tmp_path / "close-out.toml").cost_per_hour == 50


def test_books_that_the_close_out_names(tmp_path: Path) -> None:
    text = closed().file.text.replace("[close_out]", '[close_out]\nbooks = "my-books"')
    (tmp_path / "s19.toml").write_text(text)
    with pytest.raises(InputError, match=r"my-books/labor\.csv: there is no such file"):
        open_job(tmp_path / "s19.toml")
    assert open_job(tmp_path / "s19.toml", shipped_catalogs()).currency == "USD"


def test_a_typed_estimate_opens_with_the_shipped_books(tmp_path: Path) -> None:
    (tmp_path / "s19.toml").write_text(closed().file.text)
    assert compare(open_job(tmp_path / "s19.toml")).actual_margin.amount == Decimal("287.30")


def test_an_estimate_is_named_or_typed() -> None:
    with pytest.raises(ValueError, match="names a job file or types its estimate"):
        estimate_of(Closed(sample().file, sample().books, None))


def test_names_come_from_the_job_file() -> None:
    assert (sample().title, sample().customer) == ("Nightstand outlet", "Sample customer")
    assert sample().phase_of_task("fish-drop") == "rough-in"
    assert closed().phase_of_task("fish-drop") == ""


@pytest.mark.parametrize("name", ["printer-corner", "closet-light", "closet-charger", "lounge"])
def test_hours_of_the_phases_add_up_in_every_sample(name: str) -> None:
    """Rounded to millionths each, they may miss the sum by one; the last phase takes it."""
    bid = worked(name)
    hours = dict(estimate_of(Closed(sample().file, bid.books, bid)).by_phase)
    assert sum(hours.values()) == bid.hours.charged
    assert ("whole job" in hours) is (name == "closet-charger")


LOUNGE = """
[close_out]
job = "S10"
date = 2026-05-04
estimate = "{}"

[[mileage]]
date = 2026-05-03
distance = 30
"""


def test_a_metric_job_in_its_own_currency_and_locale(tmp_path: Path) -> None:
    """30 km at 0.28: 8.40. The rates on file are US dollars for a mile, so one must be typed."""
    path = tmp_path / "c.toml"
    text = LOUNGE.format(JOB.with_name("lounge.toml"))
    path.write_text(text)
    with pytest.raises(InputError, match="rates on file are in USD, and the books are in GBP"):
        open_job(path)
    path.write_text(text + 'unit = "km"\nrate = 0.28\n')
    job = compare(open_job(path))
    assert (job.estimate.currency, job.estimate.locale) == ("GBP", "en_GB")
    assert job.costs[-1].actual == Decimal("8.40")
