"""The shopping list page in a real browser: ticks, prices, sums, and nothing leaves it."""

from __future__ import annotations

import csv
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from functools import cache
from io import StringIO
from pathlib import Path

import pytest

from estimator.ledger.reader import close_out_from_text
from estimator.outputs.shopping_items import items_of
from estimator.outputs.shopping_page import shopping_page
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import bid_of, full_bid, in_currency, sample_bid
from tests.pages.browsing import Opened
from tests.words.marked import Marked

Browse = Callable[..., Opened]
HEAD = '[close_out]\njob = "S1"\ndate = 2026-03-20\n[estimate]\nprice = 1\nmaterials = 1\n' \
    "labor_hours = 1\n"  # fmt: skip


@cache
def page() -> str:
    return shopping_page(sample_bid("nightstand"))


@cache
def full_page() -> str:
    """Truck stock, two items without a price, many aisles."""
    return shopping_page(full_bid())


def type_prices(opened: Opened, *prices: str) -> None:
    for at, price in enumerate(prices):
        opened.page.locator(".price").nth(at).fill(price)


def test_everything_to_get_is_there_by_aisle(browse: Browse) -> None:
    opened = browse(full_page())
    items = items_of(full_bid())
    assert opened.page.locator("li .got + label").all_inner_texts() == [each.what for each in items]
    aisles = list(dict.fromkeys(each.aisle for each in items))
    assert opened.page.locator("main h2").all_inner_texts() == [*aisles, "What was paid"]


def test_ticks_and_prices_survive_a_reload(browse: Browse) -> None:
    opened = browse(page())
    opened.page.locator(".got").nth(2).check()
    type_prices(opened, "3.10")
    opened.page.reload()
    assert opened.page.locator(".got:checked").count() == 1
    assert opened.page.locator(".got").nth(2).is_checked()
    assert opened.page.locator(".price").first.input_value() == "3.10"
    assert opened.text("#sum").startswith("Got 1 of 14. Paid $3.10 of about $")


def test_another_list_has_no_ticks_of_this_one(browse: Browse) -> None:
    opened = browse(page())
    opened.page.locator(".got").first.check()
    other = opened.path.with_name("other.html")
    changed = bid_of("nightstand", more='\n[settings.practice]\ntail = "40 in"\n')
    other.write_text(shopping_page(changed), encoding="utf-8")
    opened.page.goto(other.as_uri())
    assert opened.page.locator(".got:checked").count() == 0
    opened.page.goto(opened.path.as_uri())
    assert opened.page.locator(".got:checked").count() == 1


def test_the_sum_is_right_to_the_cent(browse: Browse) -> None:
    """Binary fractions would give 0.30000000000000004 and 33.30 short of a cent now and then."""
    prices = ["0.10", "0.20", "1.005", "4.35", "9.95", "0.07", "18.63"]
    opened = browse(page())
    type_prices(opened, *prices)
    whole = sum(Decimal(each) for each in prices if each != "1.005")
    assert f"Paid ${whole} of about" in opened.text("#sum")
    assert opened.page.locator(".wrong:not(:empty)").count() == 1


def test_the_expected_sum_is_that_of_the_list(browse: Browse) -> None:
    cost = sum(each.cost or 0 for each in items_of(full_bid()) if each.kind == "buy")
    assert f"of about ${cost:,}." in browse(full_page()).text("#sum")


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("12.34", "$12.34"), ("12,34", "$12.34"), ("$12.34", "$12.34"), (" 12 ", "$12.00"),
        ("1,234.50", "$1,234.50"), ("1,234", "$1,234.00"), ("1.234,50", "$1,234.50"),
        ("12.3", "$12.30"), ("0", "$0.00"), (".65", "$0.65"), (",65", "$0.65"), ("$.5", "$0.50"),
        (".655", None), (",655", None), (".", None), ("1234567.89", "$1,234,567.89"),
        ("1.234", None), ("12.345", None), ("-3", None), ("12-6", None), ("abc", None),
        ("1,23,4", None), ("9999999999", None), ("", "$0.00"),
    ],
)  # fmt: skip
def test_amounts_as_people_type_them(browse: Browse, typed: str, shown: str | None) -> None:
    opened = browse(page())
    type_prices(opened, typed)
    field = opened.page.locator(".price").first
    assert f"Paid {shown or '$0.00'} of" in opened.text("#sum")
    assert (field.get_attribute("aria-invalid") == "true") == (shown is None)
    told = opened.page.locator(".wrong").first.inner_text()
    assert bool(told) == (shown is None)


@pytest.mark.parametrize(
    ("typed", "shown"),
    [("12,34", "12,34\u00a0€"), ("1.234,50", "1.234,50\u00a0€"), ("1.234", "1.234,00\u00a0€"),
     ("12.34", "12,34\u00a0€"), ("1,234", "0,00\u00a0€"), (",65", "0,65\u00a0€"),
     (".650", "0,00\u00a0€")],
)  # fmt: skip
def test_amounts_with_a_decimal_comma(browse: Browse, typed: str, shown: str) -> None:
    opened = browse(shopping_page(in_currency("lounge", "EUR", "de_DE")))
    type_prices(opened, typed)
    assert f"Paid {shown} of" in str(opened.page.locator("#sum").text_content())


@pytest.mark.parametrize(
    ("currency", "typed", "shown"),
    [("JPY", "1,234", "¥1,234"), ("JPY", "12.5", "¥0"), ("KWD", "1.234", "KWD\u00a01.234")],
)
def test_currencies_with_other_decimals(
    browse: Browse, currency: str, typed: str, shown: str
) -> None:
    opened = browse(shopping_page(in_currency("nightstand", currency, "en_US")))
    type_prices(opened, typed)
    assert f"Paid {shown} of" in str(opened.page.locator("#sum").text_content())


def test_paid_is_held_against_the_same_things_on_the_list(browse: Browse) -> None:
    """The first two items of S1 cost 2.85 and 3.10 on the list."""
    costs = [each.cost for each in items_of(sample_bid("nightstand"))[:2]]
    assert costs == [Decimal("2.85"), Decimal("3.10")]
    opened = browse(page())
    type_prices(opened, "3.00", "2.75")
    assert opened.text("#against") == (
        "For 2 things with a price typed: expected $5.95, paid $5.75, $0.20 less."
    )


def test_what_was_there_already_is_not_counted_as_paid(browse: Browse) -> None:
    opened = browse(page())
    type_prices(opened, "3.00", "2.75")
    opened.page.locator(".had").first.check()
    assert opened.text("#sum") == "Got 1 of 14. Paid $2.75 of about $59.77."
    assert opened.page.locator(".told").first.is_visible()
    assert "3.00" not in opened.value("#out")


def test_why_is_folded_until_asked_for(browse: Browse) -> None:
    opened = browse(page())
    why = opened.page.locator("details p").first
    assert not why.is_visible()
    opened.page.locator("summary").first.press("Enter")
    assert why.inner_text().startswith("The work needs 1: ")


def test_forget_asks_and_then_forgets_everything(browse: Browse) -> None:
    opened = browse(page())
    opened.page.locator(".got").first.check()
    type_prices(opened, "3.00")
    opened.page.once("dialog", lambda dialog: dialog.dismiss())
    opened.page.locator("#forget").click()
    assert opened.page.locator(".got:checked").count() == 1
    opened.page.once("dialog", lambda dialog: dialog.accept())
    opened.page.locator("#forget").click()
    opened.page.reload()
    assert opened.page.locator(".got:checked").count() == 0
    assert opened.page.locator(".price").first.input_value() == ""


def test_what_was_paid_is_read_as_receipts_of_a_close_out_file(browse: Browse) -> None:
    opened = browse(page())
    type_prices(opened, "3.05", "2.75")
    opened.page.locator("#r0number").fill('R-"44"\\71')
    opened.page.locator("#r0date").fill("2026-03-09")
    opened.page.locator("#r0tax").fill("0.48")
    record = close_out_from_text(HEAD + opened.value("#out"), Path("job.toml")).record
    (receipt,) = record.receipts
    assert (receipt.doc_no, str(receipt.date), receipt.tax) == (
        'R-"44"\\71', "2026-03-09", Decimal("0.48"),
    )  # fmt: skip
    items = items_of(sample_bid("nightstand"))
    assert receipt.supplier == items[0].supplier
    assert [
        (line.description, line.amount, line.item, line.quantity) for line in receipt.lines
    ] == [
        (items[0].what, Decimal("3.05"), items[0].item, items[0].quantity),
        (items[1].what, Decimal("2.75"), items[1].item, items[1].quantity),
    ]


def test_each_shop_has_its_own_receipt(browse: Browse) -> None:
    opened = browse(page())
    shops = list(dict.fromkeys(each.supplier for each in items_of(sample_bid("nightstand"))))
    legends = opened.page.locator("#receipts legend").all_inner_texts()
    assert legends == [f"Receipt of {shop}" for shop in shops]
    type_prices(opened, *["1.00"] * 14)
    record = close_out_from_text(
        HEAD + opened.value("#out").replace("the number here", "X", 1), Path("job.toml")
    ).record
    assert [receipt.supplier for receipt in record.receipts] == shops
    assert sum(len(receipt.lines) for receipt in record.receipts) == 14


def test_the_table_for_a_spreadsheet(browse: Browse) -> None:
    opened = browse(full_page())
    type_prices(opened, "3.05")
    opened.page.locator("#as-csv").check()
    rows = list(csv.DictReader(StringIO(opened.value("#out"))))
    items = items_of(full_bid())
    assert [row["what"] for row in rows] == [each.what for each in items]
    assert (rows[0]["paid"], rows[1]["paid"]) == ("3.05", "")
    assert [row["expected"] for row in rows] == [
        "" if each.cost is None else str(each.cost) for each in items
    ]


def test_copied_and_saved_text_is_what_is_shown(browse: Browse) -> None:
    opened = browse(page(), permissions=["clipboard-read", "clipboard-write"])
    type_prices(opened, "3.05")
    opened.page.locator("#copy").click()
    opened.page.wait_for_function("document.getElementById('status').textContent")
    assert opened.text("#status") == "Copied. Things in the text: 1."
    shown = opened.value("#out")
    assert opened.page.evaluate("navigator.clipboard.readText()") == shown
    with opened.page.expect_download() as download:
        opened.page.locator("#save").click()
    assert download.value.suggested_filename == "paid-S1.toml"
    saved = Path(download.value.path()).read_text(encoding="utf-8")
    assert (saved.startswith("format = 1\n"), saved.endswith("\n\n" + shown)) == (True, True)


def test_it_says_so_where_nothing_can_be_remembered(browse: Browse) -> None:
    opened = browse(page())
    opened.page.add_init_script(
        "Storage.prototype.setItem = Storage.prototype.getItem = () => { throw new Error('no'); }"
    )
    opened.page.reload()
    assert "cannot remember ticks and prices" in opened.text("#status")
    opened.page.locator(".got").first.check()
    assert opened.text("#sum").startswith("Got 1 of 14.")


def test_without_script_the_list_can_be_read_and_ticked(browse: Browse) -> None:
    opened = browse(full_page(), script=False)
    assert opened.page.locator("li label").first.is_visible()
    assert "cannot remember ticks" in opened.text("noscript")
    for selector in (".price", "#out", ".bar", ".had"):
        assert not opened.page.locator(selector).first.is_visible()
    opened.page.locator(".got").first.check()
    opened.page.locator("summary").first.click()
    assert opened.page.locator("details p").first.is_visible()


def in_marks(bid: Bid) -> str:
    """The page in a made-up language that stands in marks."""
    return shopping_page(replace(bid, books=replace(bid.books, language=Marked())))


def test_ticks_are_found_again_in_another_language(browse: Browse) -> None:
    opened = browse(page())
    opened.page.locator(".got").nth(2).check()
    type_prices(opened, "3.10")
    opened.path.write_text(in_marks(sample_bid("nightstand")), encoding="utf-8")
    opened.page.reload()
    assert opened.page.locator(".got").nth(2).is_checked()
    assert opened.page.locator(".price").first.input_value() == "3.10"


def test_what_the_script_says_is_in_the_language_of_the_page(browse: Browse) -> None:
    """The first two items of S1 cost 2.85 and 3.10 on the list; 3.00 is 0.15 more."""
    opened = browse(in_marks(sample_bid("nightstand")))
    type_prices(opened, "3.00", "no amount")
    assert opened.text("#sum") == "⟦Got ⟧0⟦ of ⟧14⟦. Paid ⟧$3.00⟦ of about ⟧$62.62⟦.⟧"
    assert opened.text("#against") == (
        "⟦For ⟧1⟦ thing with a price typed: expected ⟧$2.85⟦, paid ⟧$3.00⟦, ⟧$0.15⟦ more.⟧"
    )
    assert opened.text("#i2e") == ("⟦This is not an amount. Write it like ⟧12.50⟦.⟧")
    legends = opened.page.locator("#receipts legend").all_inner_texts()
    assert legends[0] == "⟦Receipt of ⟧Sample supply house⟦⟧"
    assert opened.page.locator("#receipts label").first.inner_text() == "⟦Shop⟧"
    opened.page.locator("#as-csv").check()
    heads = opened.value("#out").splitlines()[0].split(",")
    assert all(head.startswith("⟦") for head in heads)
