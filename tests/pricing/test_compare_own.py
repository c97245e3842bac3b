"""Doing it yourself: each line by hand, and what nobody knows left out and named."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.pricing.compare import break_even, compare
from estimator.pricing.compare_records import CostLine
from estimator.pricing.records import Bid
from tests.worked.compare_job import S21, only, own, s21, with_compare

OWN_ALWAYS = "doing it yourself costs less, whatever an hour of yours is worth"
HIRE_ALWAYS = "hiring costs less, whatever an hour of yours is worth"
SAME_ALWAYS = "both cost the same, whatever an hour of yours is worth"
BELOW_OWN = "below this, doing it yourself costs less; above it, hiring"
BELOW_HIRE = "below this, hiring costs less; above it, doing it yourself"

# D11 of the gathered facts: materials 60, permit 40, 6 h at 15.19 (half of 30.38), hired for
# 550.00 + 39.88 tax: 60 + 40 + 91.14 = 191.14; (589.88 - 100) / 6 = 81.646...
D11 = """
[compare]
own_hour = 15.19
own_hours = 6
materials = 60
consumables = 0
permit = 40
rework_chance_pct = 0
rework_cost = 0

[[compare.hire]]
name = "Sample electrician"
quote = 550.00
tax = 39.88
own_hours = 0
"""


def line(kind: str, *changes: tuple[str, str]) -> CostLine:
    return next(each for each in own(s21(*changes)).lines if each.kind == kind)


def test_a_second_vector_of_the_same_formula() -> None:
    made = compare(with_compare(D11))
    assert own(made).all_in == Decimal("191.14")
    assert made.hires[0].cash == Decimal("589.88")
    assert (only(made).break_even, only(made).better) == (Decimal("81.65"), "own")


@pytest.mark.parametrize(
    ("gap", "more_hours", "hour", "words"),
    [
        ("333.10", "8", "41.64", BELOW_OWN),  # 41.6375
        ("0", "8", "0.00", BELOW_OWN),
        ("-1", "8", None, HIRE_ALWAYS),  # dearer before any time, and longer
        ("1", "0", None, OWN_ALWAYS),
        ("-1", "0", None, HIRE_ALWAYS),
        ("0", "0", None, SAME_ALWAYS),
        ("10", "-2", None, OWN_ALWAYS),  # cheaper and quicker
        ("-10", "-2", "5.00", BELOW_HIRE),  # dearer, but it takes less of your time
        ("0.01", "2", "0.01", BELOW_OWN),  # 0.005, half up
    ],
)
def test_the_break_even_hour_and_where_there_is_none(
    gap: str, more_hours: str, hour: str | None, words: str
) -> None:
    want = None if hour is None else Decimal(hour)
    assert break_even(Decimal(gap), Decimal(more_hours), "USD") == (want, words)


def test_a_currency_without_decimals_rounds_to_whole_units() -> None:
    assert break_even(Decimal(333), Decimal(8), "JPY")[0] == Decimal(42)  # 41.625


def test_the_range_of_the_break_even_hour() -> None:
    """333.10 / (12 - 1.5) = 31.7238; 333.10 / (7 - 1.5) = 60.5636."""
    said = ("own_hours = 9.5", "own_hours = 9.5\nown_hours_low = 7\nown_hours_high = 12")
    against = only(s21(said))
    assert against.break_even_low == Decimal("31.72")
    assert against.break_even_high == Decimal("60.56")


def test_without_a_range_both_ends_are_the_same() -> None:
    assert only(s21()).break_even_low == only(s21()).break_even_high == Decimal("41.64")


def test_no_break_even_where_the_hours_are_equal() -> None:
    against = only(s21(("\nown_hours = 9.5", "\nown_hours = 1.5")))
    assert (against.break_even, against.words) == (None, OWN_ALWAYS)


def test_hiring_may_be_better() -> None:
    """Quote 100 + 180 + 27 = 307.00 against 382.90; before time 280.00 < 211.90 is false."""
    against = only(s21(("quote = 365.00", "quote = 100.00")))
    assert (against.better, against.by) == ("hire", Decimal("75.90"))
    assert against.break_even == Decimal("8.51")  # 68.10 / 8 = 8.5125


@pytest.mark.parametrize(
    ("quote", "better", "by"),
    [("175.90", "same", "0.00"), ("175.91", "own", "0.01"), ("175.89", "hire", "0.01")],
)
def test_a_cent_decides(quote: str, better: str, by: str) -> None:
    """Quote 175.90: 175.90 + 180 + 27 = 382.90."""
    against = only(s21(("quote = 365.00", f"quote = {quote}")))
    assert (against.better, against.by) == (better, Decimal(by))


@pytest.mark.parametrize(("have", "how"), [("borrow", "borrowed"), ("own", "yours already")])
def test_a_tool_that_is_not_bought_costs_nothing(have: str, how: str) -> None:
    tool = line("tool", ("price = 87.00", f'price = 87.00\nhave = "{have}"'))
    assert (tool.cash, tool.all_in, tool.how) == (0, 0, how)


def test_what_stays_of_a_tool_is_rounded_once() -> None:
    """87.25 x 0.675 = 58.89375."""
    tool = line("tool", ("price = 87.00\nkeep_pct = 50", "price = 87.25\nkeep_pct = 32.5"))
    assert (tool.name, tool.cash) == ("Tool: Saw that cuts flush", Decimal("87.25"))
    assert tool.all_in == Decimal("58.89")


@pytest.mark.parametrize(
    ("old", "name", "cash", "all_in"),
    [
        ("price = 87.00", "tool: saw that cuts flush", "115.90", "339.40"),
        ("permit = 65.00", "permit", "137.90", "317.90"),
        ("rework_cost = 350.00", "a mistake put right", "202.90", "330.40"),
        ("rework_chance_pct = 15", "a mistake put right", "202.90", "330.40"),
    ],
)
def test_what_nobody_knows_is_left_out_and_named(
    old: str, name: str, cash: str, all_in: str
) -> None:
    made = own(s21((old, f'{old.partition(" = ")[0]} = "unknown"')))
    assert made.left_out == (name,)
    assert (made.cash, made.all_in) == (Decimal(cash), Decimal(all_in))


def test_the_mistake_is_weighed_by_its_chance() -> None:
    assert line("rework").cash == 0
    assert line("rework", ("_pct = 15", "_pct = 12.5")).all_in == Decimal("43.75")


# S1 by the shipped books, worked by hand from the Labor sheet: the sums of the tasks.
BARE = "\n[compare]\n"


def test_hours_come_from_the_takeoff_at_your_pace() -> None:
    bid = with_compare(BARE + "pace = 2")
    made = compare(bid)
    assert made.own is not None
    assert made.own.hours.value == bid.hours.likely * 2
    assert made.own.hours_low.value == bid.hours.low * 2
    assert made.own.hours_high.value == bid.hours.high * 2


def test_the_pace_of_a_first_time_is_the_shops() -> None:
    """conditions.first-time of the shipped shop.toml is 2.5."""
    made = compare(with_compare(BARE))
    assert made.own is not None
    assert (made.own.pace.value, made.own.pace.stated) == (Decimal("2.5"), False)


def test_hours_that_the_job_states_in_all_are_taken_as_they_are() -> None:
    made = compare(with_compare(BARE + "pace = 2\n[overrides]\nlabor_hours = 4"))
    assert made.own is not None
    ends = (made.own.hours_low, made.own.hours, made.own.hours_high)
    assert [each.value for each in ends] == [8, 8, 8]


def test_materials_that_the_job_states_are_the_parts() -> None:
    more = BARE + "tax_pct = 6\n[overrides]\nmaterials_cost = 28.40"
    parts, used_up, *_ = own(compare(with_compare(more))).lines
    assert parts.cash == Decimal("30.10")  # 28.40 x 1.06 = 30.104
    assert (used_up.cash, used_up.how) == (0, "in the parts")
    made = compare(with_compare(more)).own
    assert made is not None and not made.consumables.stated


def test_parts_and_consumables_are_the_shopping_list_with_tax() -> None:
    """Listed as C of the list by its lines; 5 % small items on all; 8.25 % at the counter."""
    bid = with_compare(BARE + "tax_pct = 8.25")
    parts, used_up, *_ = own(compare(bid)).lines
    # Consumables 8.95 + 8.98 + 6.98 + 6.30: see the next test for the items.
    listed = sum((each.cost or Decimal(0) for each in bid.shopping), Decimal(0))
    assert parts.cash is not None and used_up.cash is not None
    whole = (listed + bid.price.small_items) * Decimal("1.0825")
    assert abs(parts.cash + used_up.cash - whole) <= Decimal("0.01")


def test_what_is_used_up_stands_apart() -> None:
    made = compare(with_compare(BARE))
    assert made.own is not None
    assert made.own.consumable_items == ("blade-saw", "drop-cloth", "dust-mask", "trash-bag")
    assert "cable-14-2" in made.own.parts_items


@pytest.mark.parametrize(
    ("tax", "rate"),
    [
        ("", "0"),
        ('mode = "materials-sold"\nrate_pct = 7.25', "7.25"),
        ('mode = "whole-price"\nrate_pct = 8', "8"),
        ('mode = "paid-at-purchase"\nrate_pct = 7\npurchase_rate_pct = 6', "6"),
        ('mode = "gross-receipts"\nrate_pct = 2', "0"),
        ('mode = "vat"\nrate_pct = 20\nprices_include_tax = true', "0"),
        ('mode = "vat"\nrate_pct = 20', "20"),
    ],
)
def test_the_tax_at_the_counter_follows_the_shops_settings(tax: str, rate: str) -> None:
    made = compare(with_compare(f"\n[settings.tax]\n{tax}\n"))
    assert made.own is not None
    assert (made.own.tax_pct.value, made.own.tax_pct.stated) == (Decimal(rate), False)


def test_a_tax_stated_goes_before_the_shops() -> None:
    made = compare(with_compare(BARE + 'tax_pct = 5\n[settings.tax]\nmode = "whole-price"\n'))
    assert made.own is not None
    assert made.own.tax_pct.value == 5


@pytest.mark.parametrize(
    ("more", "cost", "why"),
    [
        ("", None, "unknown"),
        ('\n[house]\npermit = "not needed"', "0", "the job says that none is needed"),
        ("\n[settings.price]\npermit_cost = 75", "75", "the office's charge"),
        ("\n[compare]\npermit = 60\n[settings.price]\npermit_cost = 75", "60", "stated"),
    ],
)
def test_the_permit(more: str, cost: str | None, why: str) -> None:
    made = compare(with_compare(more))
    assert made.own is not None
    assert made.own.permit.value == (None if cost is None else Decimal(cost))
    assert why in made.own.permit.why


def test_somebody_paid_to_patch_and_paint_takes_those_hours_and_parts() -> None:
    """S2: the phases close and paint leave the hours, and tape, compound, paint the parts."""
    whole = compare(with_compare("", sample="printer-corner"))
    bought = compare(with_compare(BARE + "own_patch_paint = 240", sample="printer-corner"))
    assert whole.own is not None and bought.own is not None
    gone = set(whole.own.parts_items) - set(bought.own.parts_items)
    assert {"joint-tape", "primer", "paint-wall"} <= gone
    assert "cable-12-2" not in gone
    paid = next(each for each in own(bought).lines if each.kind == "patch and paint")
    assert (paid.cash, paid.all_in) == (240, 240)


def test_hours_of_patch_and_paint_leave_with_them() -> None:
    bid = with_compare(BARE + "pace = 1\nown_patch_paint = 240", sample="printer-corner")
    made = compare(bid)
    kept = [each for each in bid.labor if each.phase not in ("close", "paint")]
    assert len(kept) < len(bid.labor)
    assert made.own is not None
    assert made.own.hours.value == sum(each.hours_likely for each in kept)
    assert made.own.hours_high.value == sum(each.hours_high for each in kept)


def unpriced(bid: Bid, item: str) -> Bid:
    """The same bid with one item of no known price."""
    lines = tuple(replace(each, cost=None) if each.item == item else each for each in bid.shopping)
    price = replace(bid.price, unpriced_items=(item,))
    return replace(bid, shopping=lines, price=price)


def test_an_item_without_a_price_is_named_and_left_out() -> None:
    bid = with_compare("")
    whole, less = own(compare(bid)).lines[0], own(compare(unpriced(bid, "caulk"))).lines[0]
    cost = next(each.cost for each in bid.shopping if each.item == "caulk")
    assert (whole.cash or 0) - (less.cash or 0) == cost
    assert "price of caulk" in own(compare(unpriced(bid, "caulk"))).left_out


def test_where_the_sums_are_stated_no_item_is_left_out() -> None:
    made = compare(unpriced(with_compare(S21), "caulk"))
    assert own(made).left_out == ()


@pytest.mark.parametrize(
    ("stated", "item", "named"),
    [
        ("materials = 30", "caulk", False),
        ("materials = 30", "drop-cloth", True),
        ("consumables = 30", "caulk", True),
        ("consumables = 30", "drop-cloth", False),
    ],
)
def test_an_item_in_a_sum_that_is_stated_is_not_left_out(
    stated: str, item: str, named: bool
) -> None:
    left_out = own(compare(unpriced(with_compare(BARE + stated), item))).left_out
    assert (f"price of {item}" in left_out) == named


def test_an_item_that_somebody_else_buys_is_not_left_out_of_yours() -> None:
    bid = with_compare(BARE + "own_patch_paint = 240", sample="printer-corner")
    assert "price of primer" not in own(compare(unpriced(bid, "primer"))).left_out


@pytest.mark.parametrize(
    ("more", "kind", "name", "how"),
    [
        (S21, "parts", "Parts", "stated in the job"),
        (BARE, "parts", "Parts", "the shopping list, with tax at the counter"),
        (BARE, "consumables", "Consumables and small items",
         "the shopping list and small items, with tax at the counter"),
        (BARE, "permit", "Permit", "unknown"),
        (S21, "tool", "Tool: Saw that cuts flush",
         "bought; all in, less the share that stays yours"),
        (S21, "rework", "A mistake put right", "chance x cost"),
        (BARE, "rework", "A mistake put right", "unknown"),
        (S21, "time", "Your time", "your hours x worth of an hour"),
        (BARE + "own_patch_paint = 5", "patch and paint", "Patch and paint, bought",
         "stated in the job"),
        ('\n[[compare.tools]]\nname = "Lamp"', "tool", "Tool: Lamp", "unknown"),
    ],
)  # fmt: skip
def test_each_line_says_what_it_is_and_where_it_is_from(
    more: str, kind: str, name: str, how: str
) -> None:
    (found,) = (each for each in own(compare(with_compare(more))).lines if each.kind == kind)
    assert (found.name, found.how) == (name, how)


def test_each_figure_taken_says_where_it_is_from() -> None:
    taken = compare(with_compare(BARE)).own
    assert taken is not None
    assert [each.why for each in (taken.pace, taken.hours, taken.hours_low, taken.hours_high)] == [
        "the shop's factor for a first time", "likely hours of the takeoff x pace",
        "low hours of the takeoff x pace", "high hours of the takeoff x pace",
    ]  # fmt: skip
    assert taken.tax_pct.why == "from the shop's tax settings"
    assert not (taken.parts.stated or taken.consumables.stated or taken.permit.stated)
    assert compare(with_compare(BARE)).own_hour.why == "the shop's figure"


def test_each_figure_stated_is_marked_so() -> None:
    made = s21()
    taken = made.own
    assert taken is not None
    stated = (made.own_hour, taken.hours, taken.parts, taken.consumables, taken.permit,
              taken.rework_chance_pct, taken.rework_cost, made.hires[0].hours_taken)  # fmt: skip
    assert all(each.stated and each.why == "stated in the job" for each in stated)


def test_what_was_assumed_is_said() -> None:
    assert compare(with_compare("")).assumed == (
        "Your hours are likely hours of the takeoff x pace; the pace is 2.5, the shop's factor for "
        "a first time.",
        "Parts come from this takeoff, with 0 % tax, from the shop's tax settings.",
        "What a permit costs is not known: it is in no sum of yours.",
        "No tool is named: you are taken to have every tool.",
        "What a mistake may cost is not known: it is in no sum.",
        "An hour of yours is taken as worth 15.00, the shop's figure.",
        "This bid takes 1.5 h of yours, the shop's figure for one bid.",
    )


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("\n[settings.price]\npermit_cost = 75",
         "The permit is taken as the office's charge, by the shop's settings."),
        ('\n[house]\npermit = "not needed"',
         "The permit is taken as the job says that none is needed."),
        (BARE + "materials = 30", "Parts come from this takeoff, with 0 % tax"),
        (BARE + "consumables = 30", "Parts come from this takeoff, with 0 % tax"),
        (BARE + "rework_cost = 30", "What a mistake may cost is not known: it is in no sum."),
    ],
)  # fmt: skip
def test_what_else_may_be_assumed(more: str, said: str) -> None:
    assert said in " ".join(compare(with_compare(more)).assumed)
