"""Hire bids: what they leave out priced from the takeoff, what they do not speak of, the stop."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.outputs.text_compare import compare_text
from estimator.pricing.compare import compare
from estimator.pricing.compare_parts import hours_of, items_of, part_of_items, priced
from estimator.pricing.compare_records import CompareColumn
from tests.worked.compare_job import S21, s21, with_compare

CORNER = "printer-corner"
HIRE = '\n[[compare.hire]]\nname = "Firm"\n'

# S2 by the shipped books, worked by hand. Hours low, likely, high: patch 0.4 + 0.275 + 0.4 + 0.55,
# 0.75 + 0.55 + 0.75 + 1.1, 1.25 + 0.916667 + 1.25 + 1.833334; paint 0.36 + 1.4664, 0.54 + 2.1996,
# 0.9 + 3.666; clean-up 0.45 + 0.29375, 0.75 + 0.5875, 1.5 + 1.175. Expected by (l + 4m + h) / 6.
# Materials: screws 3.20, tape 3.10, compound 11.40, sanding sponge 3.60; primer 11.50, paint 38.00,
# painter's tape 6.90, roller cover 4.60.
PARTS = [
    ("patch", "3.245834", "21.30", "297.20"),  # 275.90 + 21.30
    ("paint", "2.891800", "61.00", "306.80"),  # 245.80 + 61.00
    ("patch and paint", "6.137634", "82.30", "604.00"),  # 521.70 + 82.30
    ("clean-up", "1.461458", "0", "124.22"),
]


def firm(text: str, sample: str = CORNER) -> CompareColumn:
    (column,) = compare(with_compare(HIRE + text, sample=sample)).hires
    return column


def amounts(column: CompareColumn) -> dict[str, Decimal | None]:
    return {line.name: line.cash for line in column.lines}


@pytest.mark.parametrize(("part", "hours", "materials", "amount"), PARTS)
def test_a_part_by_its_hours_at_the_rate_and_its_materials(
    part: str, hours: str, materials: str, amount: str
) -> None:
    made = priced(with_compare("", sample=CORNER), part)
    assert (made.hours, made.materials) == (Decimal(hours), Decimal(materials))
    assert made.amount == Decimal(amount)


def test_a_part_follows_the_hours_and_the_rate_that_the_shop_charges() -> None:
    """Likely 3.15 h x 92.00 = 289.80, and 21.30."""
    more = '\n[settings.price]\nhours_basis = "likely"\nlabor_rate_per_hour = 92\n'
    made = priced(with_compare(more, sample=CORNER), "patch")
    assert made.amount == Decimal("311.10")
    assert made.how == "this takeoff: likely hours of close at the shop's rate, and their materials"


def test_wiring_is_all_that_is_no_closing_painting_or_cleaning() -> None:
    """Likely hours, so that sums of phases add up."""
    more = '\n[settings.price]\nhours_basis = "likely"\n'
    bid = with_compare(more, sample=CORNER)
    made = priced(bid, "wiring")
    assert made.phases == ("set-up", "rough-in", "terminate", "test")
    others = ("close", "paint", "clean-up")
    kept = [each.hours_likely for each in bid.labor if each.phase not in others]
    assert made.hours == sum(kept)
    assert made.how.startswith(
        "this takeoff: likely hours of set-up and rough-in and terminate and test at the shop's"
    )


def test_a_part_that_the_takeoff_does_not_hold_costs_nothing_and_says_so() -> None:
    """S3: nothing is opened."""
    made = priced(with_compare("", sample="closet-charger"), "patch and paint")
    assert (made.amount, made.how) == (0, "none in this job")


def test_where_the_job_states_its_hours_parts_go_by_the_likely_ones() -> None:
    bid = with_compare("\n[overrides]\nlabor_hours = 2\n", sample=CORNER)
    assert hours_of(bid, ("close",)) == Decimal("3.15")


def test_items_belong_to_the_part_that_uses_them() -> None:
    bid = with_compare("", sample=CORNER)
    assert items_of(bid, "patch") == (
        "screw-drywall", "joint-tape", "compound-drying", "sanding-sponge",
    )  # fmt: skip
    assert items_of(bid, "paint") == ("primer", "paint-wall", "painters-tape", "roller-cover")
    assert part_of_items(bid)["cable-12-2"] == part_of_items(bid)["drop-cloth"] == "wiring"


def test_excluded_parts_are_priced_from_the_takeoff_and_named_as_such() -> None:
    column = firm('quote = 400\nexcludes = ["patch", "paint", "clean-up"]')
    assert amounts(column) == {
        "Quote": 400, "Not in it: patch": Decimal("297.20"), "Not in it: paint": Decimal("306.80"),
        "Not in it: clean-up": Decimal("124.22"), "Your time": 0,
    }  # fmt: skip
    assert column.cash == Decimal("1128.22")
    assert column.lines[1].how.startswith("this takeoff: expected hours of close")


def test_a_price_stated_for_one_part_leaves_the_others_to_the_takeoff() -> None:
    column = firm('quote = 400\nexcludes = ["patch", "paint"]\nprices = { paint = 100.005 }')
    assert amounts(column)["Not in it: patch"] == Decimal("297.20")
    assert amounts(column)["Not in it: paint"] == Decimal("100.01")


def test_materials_left_out_are_what_they_cost_you_and_counted_once() -> None:
    """Parts 105.94, used up 46.20, small items 5 % of 152.14 = 7.61; patch: 275.90 of labor."""
    column = firm('quote = 400\nexcludes = ["materials", "patch"]')
    assert amounts(column)["Not in it: materials"] == Decimal("159.75")
    assert amounts(column)["Not in it: patch"] == Decimal("275.90")


def test_a_permit_left_out_costs_what_it_costs_you() -> None:
    text = 'quote = 400\nexcludes = ["permit"]\n[compare]\npermit = 65'
    assert amounts(firm(text))["Not in it: permit"] == 65


def test_a_permit_left_out_that_nobody_knows_is_left_out_and_named() -> None:
    column = firm('quote = 400\nexcludes = ["permit"]')
    assert amounts(column)["Not in it: permit"] is None
    assert column.left_out == ("not in it: permit",)
    assert column.cash == 400


def test_tax_and_extras_come_on_top() -> None:
    """400 + 29.00 + 12.50 + 8.00."""
    column = firm('quote = 400\ntax = 29\nextras = { "Parking" = 12.5, "Key" = 8 }')
    assert column.cash == Decimal("449.50")
    assert list(amounts(column))[1:4] == ["Tax on top of it", "Parking", "Key"]


def test_a_tax_in_the_quote_has_no_line_and_an_unknown_one_is_named() -> None:
    assert "Tax on top of it" not in amounts(firm("quote = 400"))
    assert firm('quote = 400\ntax = "unknown"').left_out == ("tax on top of it",)


def test_without_a_quote_there_are_no_sums() -> None:
    column = firm('quote = "unknown"\nexcludes = ["patch"]')
    assert (column.cash, column.before_time, column.all_in) == (None, None, None)
    assert amounts(column)["Not in it: patch"] == Decimal("297.20")
    assert column.left_out == ("quote",)


def test_against_a_bid_without_a_quote_nothing_is_said() -> None:
    (against,) = s21(("quote = 365.00", 'quote = "unknown"')).against
    assert (against.better, against.by, against.break_even) == ("unknown", None, None)
    assert against.words == "the quote is not known"


def test_what_a_bid_does_not_speak_of_is_told_and_in_no_sum() -> None:
    column = firm('quote = 400\nincludes = ["paint"]')
    assert [(each.part, each.amount) for each in column.unstated] == [
        ("patch", Decimal("297.20")), ("clean-up", Decimal("124.22")), ("permit", None),
    ]  # fmt: skip
    assert column.cash == 400


def test_patch_and_paint_speaks_of_both() -> None:
    named = firm('quote = 400\nincludes = ["patch and paint", "permit"]').unstated
    assert [each.part for each in named] == ["clean-up"]


def test_where_no_permit_is_needed_nobody_is_asked() -> None:
    text = 'quote = 400\nincludes = ["patch and paint"]\n[house]\npermit = "not needed"'
    assert [each.part for each in firm(text).unstated] == ["clean-up"]


def test_a_job_that_opens_no_wall_asks_of_no_patch_and_no_paint() -> None:
    """S3: the outlet is back to back, and nothing is opened."""
    assert [each.part for each in firm("quote = 400", "closet-charger").unstated] == [
        "clean-up", "permit",
    ]  # fmt: skip


def test_hours_that_hiring_takes_are_the_shops_unless_stated() -> None:
    column = firm("quote = 400")
    assert (column.hours, column.hours_taken.stated) == (Decimal("1.5"), False)
    assert firm("quote = 400\nown_hours = 0").hours == 0
    assert firm("quote = 400\nown_hours = 0").hours_taken.stated


def test_several_bids_stand_side_by_side_each_against_doing_it_yourself() -> None:
    """The second bid: 700.00 and 0.5 h x 18.00; 709.00 - 382.90; (700 - 211.90) / 9."""
    second = '\n[[compare.hire]]\nname = "Second firm"\nquote = 700\nown_hours = 0.5\n'
    made = compare(with_compare(S21 + second))
    assert [each.name for each in made.hires] == ["Sample electrician", "Second firm"]
    assert [each.by for each in made.against] == [Decimal("189.10"), Decimal("326.10")]
    assert [each.break_even for each in made.against] == [Decimal("41.64"), Decimal("54.23")]


def test_two_bids_of_one_name_are_numbered() -> None:
    again = '\n[[compare.hire]]\nname = "Sample electrician"\nquote = 700\n'
    made = compare(with_compare(S21 + again + HIRE + "quote = 900"))
    names = ["Sample electrician (1)", "Sample electrician (2)", "Firm"]
    assert [each.name for each in made.hires] == [each.hire for each in made.against] == names


# Screws close the wall; a primer paints it; box and cable are for the wiring.
LEFT_OUT = [
    ('["materials"]', "", ("price of primer", "price of screw-drywall")),
    ('["materials", "patch"]', "", ("price of primer", "price of screw-drywall")),
    ('["materials"]', "materials = 99", ()),
    ('["patch"]', "", ("price of screw-drywall",)),
    ('["patch"]', "patch = 99", ()),
    ('["patch and paint"]', "", ("price of primer", "price of screw-drywall")),
    ('["clean-up"]', "", ()),
]


@pytest.mark.parametrize(("excludes", "prices", "left_out"), LEFT_OUT)
def test_items_without_a_price_in_what_a_bid_leaves_out_are_named(
    excludes: str, prices: str, left_out: tuple[str, ...]
) -> None:
    text = f"{HIRE}quote = 400\nexcludes = {excludes}\nprices = {{ {prices} }}"
    bid = with_compare(text, sample=CORNER)
    price = replace(bid.price, unpriced_items=("primer", "screw-drywall"))
    (column,) = compare(replace(bid, price=price)).hires
    assert column.left_out == left_out


def test_without_a_bid_of_others_this_bid_stands_for_hiring() -> None:
    bid = with_compare("")
    (column,) = compare(bid).hires
    assert (column.kind, column.name) == ("this bid", "This bid")
    assert column.lines[0].cash == column.cash == bid.price.total
    assert (column.lines[0].name, column.lines[0].how) == ("Total of this bid", "this bid")
    assert column.left_out == ("not in it: permit",)


def test_a_permit_priced_in_this_bid_is_not_added_again() -> None:
    bid = with_compare("\n[settings.price]\npermit_cost = 75\npermit_handling = 25\n")
    (column,) = compare(bid).hires
    assert [line.kind for line in column.lines] == ["quote", "time"]
    assert column.kind == "this bid"
    assert column.cash == bid.price.total


def test_a_permit_that_this_bid_leaves_out_is_added() -> None:
    bid = with_compare("\n[compare]\npermit = 65\n")
    (column,) = compare(bid).hires
    assert column.cash == bid.price.total + 65


FORBIDDEN = ("own_hours = 9.5", 'own_hours = 9.5\nforbidden = " Town code 12 "')


def test_a_local_rule_withholds_every_figure_of_own_work() -> None:
    made = s21(FORBIDDEN)
    assert made.stops == ("A local rule named in the job: Town code 12",)
    assert (made.own, made.own_column, made.against) == (None, None, ())
    assert made.hires[0].all_in == Decimal("572.00")
    assert made.assumed == ()


def test_blank_words_forbid_nothing() -> None:
    assert s21(("own_hours = 9.5", 'own_hours = 9.5\nforbidden = "  "')).stops == ()


def test_a_finding_that_stops_the_bid_is_named_with_its_figures_and_remedy() -> None:
    """14 AWG copper on a 20 A breaker: NEC 240.4(D) ends at 15 A."""
    made = s21(("breaker = 15", "breaker = 20"))
    old_wire, new_cable = made.stops
    assert old_wire.startswith("Breaker against wire (breaker-wire:circuit): the smallest old wire")
    assert "(breaker-wire:run 1): new 14-2 cable" in new_cable
    assert "breaker 20 A, at most 15 A. The old wire is too thin" in new_cable
    assert made.own_column is None


def test_a_finding_accepted_stops_nothing() -> None:
    said = "".join(
        f'\n[[acceptances]]\nfinding = "breaker-wire:{subject}"\nreason = "changed first"\n'
        for subject in ("circuit", "run 1")
    )
    made = compare(with_compare(S21 + said, ("breaker = 15", "breaker = 20")))
    assert made.stops == ()
    assert made.own_column is not None


def test_what_was_assumed_of_hiring_is_said_even_where_own_work_is_not_offered() -> None:
    made = compare(with_compare('\n[compare]\nforbidden = "Town code 12"\n'))
    assert made.assumed == (
        "An hour of yours is taken as worth 15.00, the shop's figure.",
        "This bid takes 1.5 h of yours, the shop's figure for one bid.",
    )


def test_a_part_that_the_job_has_none_of_says_so() -> None:
    """The closet charger is fed through the wall, with nothing to close or to paint."""
    bid = with_compare(f'{HIRE}quote = 400\nexcludes = ["patch"]', sample="closet-charger")
    (column,) = compare(bid).hires
    assert (column.lines[1].how, column.cash) == ("none in this job", 400)
    (line,) = (row for row in compare_text(bid) if "Not in it: patch" in row)
    assert line.split("  ")[-1].strip() == "none in this job"
    assert "$" not in line
