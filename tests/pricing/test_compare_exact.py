"""Each line of comparing in full, a currency without cents, parts by what uses them; by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.pricing.compare import BELOW_HIRE, BELOW_OWN, break_even, compare
from estimator.pricing.compare_hire import column
from estimator.pricing.compare_own import own_work
from estimator.pricing.compare_parts import part_of_items, priced
from estimator.pricing.compare_records import CompareColumn, CostLine, Priced, Taken
from estimator.pricing.records import Bid
from tests.pricing.made_books import with_terms
from tests.worked.compare_job import with_compare

CORNER = "printer-corner"
FIRM = """
[[compare.hire]]
name = "Firm"
quote = 400
tax = "unknown"
includes = ["clean-up"]
excludes = ["permit", "patch", "paint", "materials"]
prices = { paint = 100 }
extras = { Parking = 12.5 }
notes = "Asks for the key"
"""


def corner(text: str, *, currency: str = "USD") -> Bid:
    bid = with_compare(text, sample=CORNER)
    return replace(bid, books=with_terms(bid.books, currency=currency))


def firm(text: str, *, currency: str = "USD") -> CompareColumn:
    (hire,) = compare(corner(text, currency=currency)).hires
    return hire


def test_every_line_of_a_hire_bid_in_full() -> None:
    """Patch without its materials 275.90; materials 105.94 + 46.20 + 7.61 = 159.75."""

    def line(kind: str, name: str, amount: str, how: str, part: str = "") -> CostLine:
        paid = Decimal(amount) if amount else None
        return CostLine(kind, name, paid, paid, how, part=part)  # type: ignore[arg-type]

    hire = firm(FIRM)
    patch = "this takeoff: expected hours of close at the shop's rate"
    assert hire.lines[:-1] == (
        line("quote", "Quote", "400", "stated in the job"),
        line("tax", "Tax on top of it", "", "unknown"),
        line("excluded", "Not in it: permit", "", "unknown", "permit"),
        line("excluded", "Not in it: patch", "275.90", patch, "patch"),
        line("excluded", "Not in it: paint", "100", "stated in the job", "paint"),
        line("excluded", "Not in it: materials", "159.75",
             "what parts and consumables cost you", "materials"),
        line("extra", "Parking", "12.5", "stated in the job"),
    )  # fmt: skip
    assert (hire.kind, hire.name, hire.notes) == ("hire", "Firm", "Asks for the key")
    assert hire.unstated == ()


def test_this_bid_without_its_permit_in_full() -> None:
    hire = firm("")
    total = corner("").price.total
    permit = CostLine("excluded", "Not in it: permit", None, None, "unknown", part="permit")
    quote = CostLine("quote", "Total of this bid", total, total, "this bid")
    assert hire.lines[:2] == (quote, permit)
    assert (hire.kind, hire.name) == ("this bid", "This bid")


def test_a_permit_at_the_price_of_the_office_says_whose_it_is() -> None:
    text = '\n[[compare.hire]]\nname = "Firm"\nquote = 1\nexcludes = ["permit"]'
    (line,) = firm(text + "\n[settings.price]\npermit_cost = 75").lines[1:-1]
    how = "the office's charge, by the shop's settings"
    paid = Decimal(75)
    assert line == CostLine("excluded", "Not in it: permit", paid, paid, how, part="permit")


def test_a_permit_that_a_bid_does_not_speak_of_in_full() -> None:
    text = (
        '\n[[compare.hire]]\nname = "Firm"\nquote = 1\nincludes = ["patch and paint", "clean-up"]'
    )
    nothing = Decimal(0)
    assert firm(text + "\n[compare]\npermit = 65").unstated == (
        Priced("permit", (), nothing, (), nothing, Decimal(65), "stated in the job"),
    )


def test_materials_that_cost_nothing_are_nothing() -> None:
    """Parts stated as 0, consumables as 5."""
    text = '\n[[compare.hire]]\nname = "Firm"\nquote = 1\nexcludes = ["materials"]'
    hire = firm(text + "\n[compare]\nmaterials = 0\nconsumables = 5")
    assert hire.lines[1].cash == 5


def test_a_currency_without_cents_has_none_in_any_line() -> None:
    """Tax 10 %: parts 105.94 x 1.1 = 116.53; small items 7.61 -> 8, 54.20 x 1.1 = 59.62.
    Without tax 106 and 54, together 160."""
    own = own_work(corner("\n[compare]\ntax_pct = 10", currency="JPY"))
    assert (str(own.parts.value), str(own.consumables.value)) == ("117", "60")
    hire = firm(FIRM.replace("400", "400.5"), currency="JPY")
    assert [str(line.cash) for line in hire.lines] == [
        "401", "None", "None", "276", "100", "160", "13", "0",
    ]  # fmt: skip


def test_what_was_taken_says_whether_it_was_stated() -> None:
    own = own_work(corner("\n[compare]\npace = 2\n"))
    assert own.pace == Taken(Decimal(2), True, "stated in the job")
    listed = "the shopping list, with tax at the counter"
    assert own.parts == Taken(Decimal("105.94"), False, listed)
    used_up = "the shopping list and small items, with tax at the counter"
    assert own.consumables == Taken(Decimal("53.81"), False, used_up)


def test_a_part_of_labor_alone_says_so() -> None:
    bid = corner("")
    how = "this takeoff: expected hours of clean-up at the shop's rate"
    hours, amount = Decimal("1.461458"), Decimal("124.22")
    want = Priced("clean-up", ("clean-up",), hours, (), Decimal(0), amount, how)
    assert priced(bid, "clean-up") == want
    items = ("screw-drywall", "joint-tape", "compound-drying", "sanding-sponge")
    assert priced(bid, "patch").items == items


@pytest.mark.parametrize(
    ("per", "part"),
    [
        ("opening", "patch"), ("visible-opening", "patch"), ("plaster-opening", "patch"),
        ("paint", "paint"), ("job", "wiring"),
    ],
)  # fmt: skip
def test_what_is_used_up_belongs_to_what_uses_it(per: str, part: str) -> None:
    bid = corner("")
    practice = bid.books.shop.practice
    used = tuple(replace(each, per=per) for each in practice.consumables)  # type: ignore[arg-type]
    shop = replace(bid.books.shop, practice=replace(practice, consumables=used))
    parts = part_of_items(replace(bid, books=replace(bid.books, shop=shop)))
    listed = {line.item for line in bid.takeoff.parts if line.group == "consumables"}
    assert listed
    assert {parts[item] for item in listed & {each.item for each in used}} == {part}


@pytest.mark.parametrize(
    ("gap", "more", "hour", "words"),
    [("10", "0.5", "20.00", BELOW_OWN), ("-10", "-0.5", "20.00", BELOW_HIRE)],
)
def test_half_an_hour_parts_them_too(gap: str, more: str, hour: str, words: str) -> None:
    assert break_even(Decimal(gap), Decimal(more), "USD") == (Decimal(hour), words)


def test_a_permit_of_the_shop_is_said_word_for_word() -> None:
    made = compare(corner("\n[settings.price]\npermit_cost = 75"))
    said = "The permit is taken as the office's charge, by the shop's settings."
    assert said in made.assumed


def test_a_column_adds_up_what_is_known() -> None:
    """4 + 6 paid; 4 + 5 + 7 all in, 7 of it time; the quote is known."""
    lines = (
        CostLine("quote", "Quote", Decimal(4), Decimal(4), ""),
        CostLine("tool", "Tool: Saw", Decimal(6), Decimal(5), ""),
        CostLine("extra", "Key", None, None, ""),
        CostLine("time", "Your time", Decimal(0), Decimal(7), ""),
    )
    made = column(("hire", "Firm"), lines, Taken(None, False, ""), ("price of x",))
    assert (made.cash, made.before_time, made.all_in) == (Decimal(10), Decimal(9), Decimal(16))
    assert (made.hours, made.left_out) == (Decimal(0), ("key", "price of x"))
