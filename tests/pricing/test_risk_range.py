"""The range of a job: sums by hand, closed forms against draws, and what the bid does with it."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from functools import cache

import pytest

from estimator.pricing.records import Bid
from estimator.pricing.risk import price_range, put_by
from estimator.pricing.risk_records import PriceRange
from tests.pricing.risk_case import bid_with

# One task of 2, 4 and 9 hours at 50.00, materials of 100.00 marked up by half; nothing else.
BARE = """
[settings.price]
labor_rate_per_hour = 50
materials_markup_pct = 50
small_items_pct = 0
minimum_charge = 0
trip_charge = 0

[settings.risk]
correlation_pct = 0
price_low_pct = 0
price_high_pct = 0
waste_high_pct = 0
usual = []
"""
RISK = """
[[risks]]
name = "old pipe"
chance_pct = 25
hours_low = 1
hours_likely = 2
hours_high = 6
parts_low = 10
parts_likely = 20
parts_high = 60
"""


@cache
def one_task(more: str = "", low: str = "2", likely: str = "4", high: str = "9") -> Bid:
    """A bid with one task of three figures and 100.00 of materials, whatever it was taken from."""
    bid = bid_with(BARE + more + "\n[overrides]\nmaterials_cost = 100\n")
    ends = tuple(map(Decimal, (low, likely, high)))
    line = replace(
        bid.labor[0], description="task", where="", hours_low=ends[0], hours_likely=ends[1],
        hours_high=ends[2],
    )  # fmt: skip
    hours = replace(bid.hours, low=ends[0], likely=ends[1], high=ends[2], charged=ends[1])
    return replace(bid, labor=(line,), hours=hours)


@cache
def found(more: str = "", draws: int = 100_000) -> PriceRange:
    return price_range(one_task(more), draws=draws)


@cache
def sample(name: str, more: str = "") -> PriceRange:
    return price_range(bid_with(more, name))


# Triangle 2, 4, 9 by hand: mean 5, variance (4 + 16 + 81 - 8 - 18 - 36)/18 = 39/18. With a risk of
# 25 % of 1, 2, 6 (mean 3, variance 21/18 = 7/6): mean 3/4, variance 1/4 x (7/6 + 9) - 9/16 = 95/48.
@pytest.mark.parametrize(
    ("more", "mean", "variance"),
    [("", "5", Fraction(39, 18)), (RISK, "5.75", Fraction(39, 18) + Fraction(95, 48))],
)
def test_hours_in_closed_form_as_worked_by_hand(more: str, mean: str, variance: Fraction) -> None:
    hours = found(more)
    assert hours.hours_mean == Decimal(mean)
    assert Fraction(hours.hours_sd) ** 2 == pytest.approx(variance, abs=1e-5)


def test_the_built_up_price_in_closed_form_as_worked_by_hand() -> None:
    """5 h x 50 + 100 x 1.5 = 400; sd of 50 x triangle: 50 x sqrt(39/18) = 73.60."""
    assert (found().built_up_mean, found().built_up_sd) == (Decimal("400.00"), Decimal("73.60"))


def test_a_risk_in_the_built_up_price_as_worked_by_hand() -> None:
    """Met: 50 x (1, 2, 6) is mean 150, 1.5 x (10, 20, 60) mean 45: 195 in a quarter, 48.75.

    Variance where met 50^2 x 7/6 + 1.5^2 x 2100/18 = 2916.67 + 262.50 = 3179.17; in all
    (3179.17 + 195^2)/4 - 48.75^2 = 7924.48; with 2500 x 39/18 = 5416.67 the root is 115.50.
    """
    known = found(RISK)
    assert (known.built_up_mean, known.built_up_sd) == (Decimal("448.75"), Decimal("115.50"))


def test_prices_and_waste_in_closed_form_as_worked_by_hand() -> None:
    """Prices -10, 0, +20 %: mean 10/3 %, variance 700/18 %2; waste 0, 0, 30: mean 10, variance 50.

    Mean 150 x 1.03333 x 1.1 = 170.50 and 250 of labor. Variance of the product
    (0.00388889 + 1.0677778) x (0.005 + 1.21) - 1.1366667^2 = 0.01006389, x 150^2 = 226.44;
    with 5416.67 the root is 75.12.
    """
    moved = BARE.replace("price_low_pct = 0", "price_low_pct = 10").replace(
        "price_high_pct = 0", "price_high_pct = 20"
    ).replace("waste_high_pct = 0", "waste_high_pct = 30")  # fmt: skip
    bid = bid_with(moved + "\n[overrides]\nmaterials_cost = 100\n")
    bid = replace(one_task(), books=bid.books, price=bid.price)
    known = price_range(bid, draws=1_000)
    assert (known.built_up_mean, known.built_up_sd) == (Decimal("420.50"), Decimal("75.12"))


@pytest.mark.parametrize("shape", ["triangular", "pert"])
@pytest.mark.parametrize("correlation", ["0", "25", "60"])
def test_draws_of_a_sample_agree_with_the_closed_forms(shape: str, correlation: str) -> None:
    """The mean within four standard errors, the spread within 2 %; no minimum, no rounding."""
    more = (
        f'\n[settings.risk]\nshape = "{shape}"\ncorrelation_pct = {correlation}\n'
        "[settings.price]\nminimum_charge = 0\noverhead_pct = 10\nprofit_pct = 8\n" + RISK
    )
    drawn = sample("printer-corner", more)
    error = float(drawn.total.sd) / drawn.draws**0.5
    assert float(drawn.total.mean) == pytest.approx(float(drawn.built_up_mean), abs=4 * error)
    assert float(drawn.total.sd) == pytest.approx(float(drawn.built_up_sd), rel=0.02)
    error = float(drawn.hours.sd) / drawn.draws**0.5
    assert float(drawn.hours.mean) == pytest.approx(float(drawn.hours_mean), abs=4 * error)
    assert float(drawn.hours.sd) == pytest.approx(float(drawn.hours_sd), rel=0.02)


# Triangle 2, 4, 9: F(x) = (x - 2)^2/14 up to 4 (2/7 of the draws), then 1 - (9 - x)^2/35.
# P10 2 + sqrt(1.4), P50 9 - sqrt(17.5), P80 9 - sqrt(7), P90 9 - sqrt(3.5); F(4) = 2/7.
def test_percentiles_of_one_triangle_as_worked_by_hand() -> None:
    hours = found().hours
    want = (2 + 1.4**0.5, 9 - 17.5**0.5, 9 - 7**0.5, 9 - 3.5**0.5)
    got = (hours.p10, hours.p50, hours.p80, hours.p90)
    assert list(map(float, got)) == pytest.approx(list(want), abs=0.0005)
    assert found().likely_hours_at_pct == Decimal("28.6")


def test_percentiles_of_the_total_follow_from_the_hours() -> None:
    """One task alone: the total is 150.00 and 50.00 an hour."""
    drawn = found()
    for level in drawn.levels:
        assert abs(level.total - (150 + 50 * level.hours)) <= Decimal("0.01")
    assert [level.pct for level in drawn.levels] == [5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95]


def test_likely_values_added_up_are_no_middle() -> None:
    """GAO's lesson: with long tails on the dear side the likely sum lies low."""
    drawn = found()
    assert (drawn.likely_hours, drawn.likely_total) == (Decimal(4), Decimal("350.00"))
    assert drawn.likely_total_at_pct == Decimal("28.6")
    assert drawn.likely_total < drawn.total.p50 < drawn.total.mean


def test_how_often_the_bid_is_enough() -> None:
    """A bid of 4 h is enough in 2/7 of the draws; 150 + 50 x 6.3542 = 467.71 in 8 of 10."""
    drawn = found()
    assert drawn.bid_total == one_task().price.total
    assert abs(drawn.at_confidence - Decimal("467.71")) <= Decimal("0.05")
    assert drawn.confidence_pct == 80
    assert drawn.at_confidence == drawn.total.p80


@pytest.mark.parametrize("total", ["350.00", "467.71", "249.99", "600.01"])
def test_the_chance_that_a_bid_holds_is_read_at_its_total(total: str) -> None:
    """Triangle 2, 4, 9 at (total - 150)/50 hours."""
    bid = one_task()
    held = price_range(replace(bid, price=replace(bid.price, total=Decimal(total)))).bid_holds_pct
    hours = (float(total) - 150) / 50
    want = {"350.00": 2 / 7, "249.99": 0.0, "600.01": 1.0}.get(total, 1 - (9 - hours) ** 2 / 35)
    assert float(held) == pytest.approx(100 * want, abs=0.1)


def test_shares_of_independent_inputs_are_their_variances() -> None:
    """Variances 5416.67 of the task and 7924.48 of the risk, by hand: 40.6 and 59.4 %."""
    shares = {each.name: float(each.share_pct) for each in found(RISK).drivers}
    assert shares == pytest.approx({"old pipe": 59.4, "task": 40.6}, abs=0.6)


def test_drivers_come_largest_first_eight_at_most_and_swing_as_worked_by_hand() -> None:
    """Task (9 - 2) x 50; risk 6 x 50 + 60 at most."""
    swings = {each.name: each.swing for each in found(RISK).drivers}
    assert swings == {"old pipe": Decimal("360.00"), "task": Decimal("350.00")}
    many = sample("printer-corner").drivers
    assert [each.share_pct for each in many] == sorted(
        (each.share_pct for each in many), reverse=True
    )
    assert len(many) == 8


def test_prices_and_waste_can_drive_the_spread() -> None:
    wide = BARE.replace("price_high_pct = 0", "price_high_pct = 900").replace(
        "waste_high_pct = 0", "waste_high_pct = 300"
    )
    bid = bid_with(wide + "\n[overrides]\nmaterials_cost = 1000\nlabor_hours = 1\n")
    drivers = price_range(bid, draws=10_000).drivers
    assert {each.kind for each in drivers[:2]} == {"material prices", "waste"}
    # 900 % and 300 % of 1000
    assert {each.swing for each in drivers[:2]} == {Decimal("9000.00"), Decimal("3000.00")}


def test_shares_add_up_to_the_whole() -> None:
    few = replace(one_task(RISK), labor=one_task().labor * 3)
    assert float(sum(each.share_pct for each in price_range(few).drivers)) == pytest.approx(
        100, abs=0.3
    )


def test_the_same_seed_gives_the_same_figures_and_another_near_ones() -> None:
    one, same = sample("nightstand"), price_range(bid_with())
    other = price_range(bid_with(), seed=2)
    assert one == same
    assert (one.seed, other.seed) == (1, 2)
    assert one.total != other.total
    assert abs(one.total.p80 - other.total.p80) < one.total.sd / 50


def test_correlation_widens_the_range() -> None:
    alone, joint = (
        sample("printer-corner", f"\n[settings.risk]\ncorrelation_pct = {pct}\n") for pct in (0, 60)
    )
    assert joint.total.sd > alone.total.sd * Decimal("1.2")
    assert joint.total.p90 > alone.total.p90
    assert abs(joint.total.mean - alone.total.mean) < alone.total.sd / 50


def test_stated_hours_keep_the_shape_of_the_tasks() -> None:
    """S3 states 1.75 h: the ranges are scaled, and the likely sum is what is stated."""
    drawn = sample("closet-charger")
    assert drawn.likely_hours == Decimal("1.75")
    hours = [each for each in drawn.inputs if each.kind == "hours"]
    assert sum(each.likely for each in hours) == pytest.approx(Decimal("1.75"), abs=Decimal("1e-4"))
    assert "The job states its hours; the ranges of its tasks were scaled to them." in drawn.notes


def test_the_minimum_charge_hides_the_cheap_end() -> None:
    """S3 is priced at the minimum of 225.00, and no draw is cheaper."""
    drawn = sample("closet-charger")
    assert drawn.total.p10 == drawn.likely_total == Decimal("225.00")
    held = next(note for note in drawn.notes if note.startswith("The minimum charge"))
    assert held == (
        f"The minimum charge stands in for the price in {drawn.likely_total_at_pct} % of the draws."
    )


def test_few_draws_are_said() -> None:
    note = "Only 5000 draws: the percentiles are rough. Use 100000 or more to rely on them."
    assert note in found("", 5_000).notes
    assert not [each for each in found().notes if "draws:" in each]


def test_the_usual_risks_say_that_they_are_judgement() -> None:
    risks = [each for each in sample("nightstand").inputs if each.kind == "risk"]
    assert len(risks) == 4
    assert {each.source for each in risks} == {"judgement"}


def test_risks_of_the_job_stand_before_the_usual_ones() -> None:
    risks = [each for each in sample("nightstand", RISK).inputs if each.kind == "risk"]
    assert (risks[0].name, risks[0].source, len(risks)) == ("old pipe", "the job", 5)
    assert (risks[0].mean, risks[0].chance_pct) == (Decimal("0.75"), Decimal(25))


def test_without_any_risk_it_is_said() -> None:
    assert "No risks are named, in the job or in the shop's settings." in found().notes


CONFIDENT = """
[settings.price]
contingency_from = "confidence"
contingency_confidence_pct = 80
"""


def test_contingency_is_what_the_confidence_takes() -> None:
    """P80 of one triangle is 9 - sqrt(7) h: 50 x (6.35425 - 4) = 117.71 over the point of 4 h."""
    bid = one_task()
    point = replace(bid.price, base=Decimal("350.00"), overhead=Decimal(0), profit=Decimal(0))
    enough = put_by(bid.survey, bid.labor, bid.hours, point, bid.books)
    assert abs(enough - Decimal("117.71")) <= Decimal("0.05")


def test_nothing_is_put_by_where_the_point_is_enough() -> None:
    bid = one_task()
    point = replace(bid.price, base=Decimal(5000))
    assert put_by(bid.survey, bid.labor, bid.hours, point, bid.books) == 0


def test_a_bid_puts_by_what_its_range_says() -> None:
    plain, sure = bid_with(), bid_with(CONFIDENT)
    reached = price_range(plain).at_confidence
    assert sure.price.contingency.amount == reached - plain.price.built_up
    assert sure.price.total == reached
    assert sure.price.contingency.source == "confidence"
    assert price_range(sure).bid_holds_pct == Decimal("80.0")


def test_contingency_leaves_the_range_itself_alone() -> None:
    assert price_range(bid_with(CONFIDENT)).total == price_range(bid_with()).total


LOADED = """
import sys
from pathlib import Path
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.survey.reader import job_from_text
path = Path("samples/nightstand.toml")
job = job_from_text(path.read_text(encoding="utf-8") + sys.argv[1], path)
estimate(job.survey, books_for(job))
print("numpy" in sys.modules)
"""


@pytest.mark.parametrize(("more", "want"), [("", "False"), (CONFIDENT, "True")])
def test_the_engine_loads_numpy_only_for_a_confidence(more: str, want: str) -> None:
    command = [sys.executable, "-c", LOADED, more]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == want
