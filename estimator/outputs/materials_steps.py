"""Steps of the price build-up from listed materials to what they are sold for."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import blank, formula
from estimator.outputs.draft import Draft, percent, price
from estimator.outputs.labor_steps import OVERRIDE
from estimator.outputs.price_step import Step, by_word, choice, rate, text
from estimator.outputs.tax_words import PAY_AT_COUNTER, VAT

LISTED, FILL_IN = "list", "fill in the override"
MATERIALS_BASIS = {LISTED: "the Shopping list", OVERRIDE: "the amount in the next row"}
YES, NO = "yes", "no"
INCLUDE_TAX = {
    NO: "prices in the materials book are before tax",
    YES: "prices in the materials book hold the tax of the counter; it is taken out",
}
BEFORE, AFTER, LOST = "before-markup", "after-markup", "not-recovered"
PURCHASE_TAX = {
    BEFORE: "a cost like the materials, and marked up with them",
    AFTER: "added as it is paid, after the markup",
    LOST: "the firm's own loss: the price does not hold it",
}
_MARGIN_PLACES = 4


def materials_steps(draft: Draft) -> Iterator[Step]:
    """What the list costs, what tax does to it, and what it is sold for."""
    yield from _listed(draft)
    yield from _tax_of_the_counter(draft)
    yield from _sold(draft)


def _listed(draft: Draft) -> Iterator[Step]:
    build, typed = draft.bid.price, draft.bid.price.materials_overridden
    basis = OVERRIDE if typed else LISTED
    yield choice("materials_basis", "Materials to charge", basis, MATERIALS_BASIS)
    override = price(build.materials_listed) if typed else blank(looks.entry(looks.MONEY))
    how = "used only with the word override"
    yield rate("materials_override", "Materials, if override", override, how)
    own = f'IF(materials_override="",{text(FILL_IN)},materials_override)'
    chosen = by_word("materials_basis", {OVERRIDE: own, LISTED: "shopping_cost"})
    how = "everything on the Shopping list that has a price"
    listed = draft.money(chosen, build.materials_listed)
    yield Step("materials_listed", "Materials listed", listed, how)
    small = percent(build.small_items_pct)
    yield rate("small_items_rate", "Small items", small, "on materials listed")
    amount = draft.money(draft.round_to("materials_listed*small_items_rate"), build.small_items)
    yield Step("small_items", "Small items", amount, "materials listed x small items rate")


def _tax_of_the_counter(draft: Draft) -> Iterator[Step]:
    """Tax that is paid when materials are bought: which rate, and what of it is a cost."""
    build, terms = draft.bid.price, draft.bid.books.shop.tax
    counter = percent(terms.purchase_rate_pct)
    yield rate("purchase_rate_set", "Tax rate of the counter", counter, "paid when buying")
    included = YES if terms.prices_include_tax else NO
    yield choice("prices_include_tax", "Tax in the book's prices", included, INCLUDE_TAX)
    back = "IF(purchase_rate_set=0,tax_rate,purchase_rate_set)"
    modes = dict.fromkeys(PAY_AT_COUNTER, "purchase_rate_set")
    used = by_word(
        "tax_mode",
        {**modes, VAT: f'IF(prices_include_tax="{YES}",{back},0)', "": "0"},
    )
    share = build.purchase_rate_pct.scaleb(-2)
    at_counter = formula(used, share, looks.figure(looks.PERCENT))
    yield rate("purchase_rate", "Tax of the counter that counts", at_counter, "by the tax mode")
    gross = "materials_listed+small_items"
    inside = f"{gross}-{draft.round_to(f'({gross})/(1+purchase_rate)')}"
    out = draft.money(by_word("prices_include_tax", {YES: inside, NO: "0"}), build.input_tax)
    yield Step("input_tax", "Tax in the book's prices", out, "taken out of listed + small items")
    cost = draft.money(f"{gross}-input_tax", build.materials_cost)
    yield Step("materials_cost", "Materials, cost", cost, "listed + small items - tax in them")
    paid = draft.round_to("materials_cost*purchase_rate")
    held = by_word("prices_include_tax", {YES: "input_tax", NO: paid})
    owed = draft.money(by_word("tax_mode", {VAT: "0", "": held}), build.purchase_tax)
    yield Step("purchase_tax", "Tax paid at the counter", owed, "materials, cost x its rate")
    yield choice("purchase_tax_how", "Tax paid at the counter is",
                 build.purchase_tax_how, PURCHASE_TAX)  # fmt: skip


def _sold(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    yield rate("markup_rate", "Markup on materials", percent(build.markup_pct), "on their cost")
    margin = to_decimal(Fraction(build.margin_pct) / 100, _MARGIN_PLACES)
    same = formula(
        f"ROUND(markup_rate/(1+markup_rate),{_MARGIN_PLACES})", margin, looks.figure(looks.PERCENT)
    )
    yield rate("margin_rate", "The same as a margin", same, "share of what they are sold for")
    plain = draft.round_to("materials_cost*(1+markup_rate)")
    ways = {
        BEFORE: draft.round_to("(materials_cost+purchase_tax)*(1+markup_rate)"),
        AFTER: f"{plain}+purchase_tax",
        LOST: plain,
    }
    sold = draft.money(by_word("purchase_tax_how", ways), build.materials_sell)
    yield Step("materials_sold", "Materials, as sold", sold, "cost and tax x (1 + markup)")
