"""Steps of the price build-up that find the tax: mode, rates, and the tax on every line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.money import round_money
from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, formula, words
from estimator.outputs.draft import Draft, percent
from estimator.outputs.price_step import Step, by_word, choice, rate, text
from estimator.outputs.rounding import DOWN, HALF_EVEN, HALF_UP, rounded_as_named
from estimator.outputs.tax_words import (
    BEFORE_PROFIT,
    CHARGED_ON,
    GROSS,
    ON_MATERIALS,
    PART,
    SOLD,
    TAX_MODES,
)
from estimator.pricing.price import price_lines

TAXED_HEADERS = ("Line of the price", "Taxed", "Tax on the line", "The same before rounding")
INVOICE, LINE = "invoice", "line"
BASES = {
    INVOICE: "the lines are added up, then taxed once",
    LINE: "each line is taxed and rounded, then the taxes are added up",
}
ROUNDINGS = {
    HALF_UP: "half a cent goes up",
    DOWN: "parts of a cent are left out",
    HALF_EVEN: "half a cent goes to the even cent",
}
MATERIALS_BASES = {
    SOLD: "materials as they are sold",
    BEFORE_PROFIT: "with their part of the overhead, without the profit",
}
EXACT = "exact"
PLACES = 9
_NOTHING = Decimal(0)
# Cells that the lines of a price stand in; an allowance has a cell of its own.
LINE_CELLS: Mapping[str, str] = {
    "materials": "taxed_materials", "labor": "labor_amount", "trips": "trips_amount",
    "supply run": "supply_run", "overhead": "overhead_amount", "profit": "profit_amount",
    "contingency": "contingency", "minimum": "minimum_step", "offer rounding": "offer_rounding",
    "permit": "permit_cost", "permit handling": "permit_handling",
}  # fmt: skip


def tax_steps(draft: Draft) -> Iterator[Step]:
    """Mode and rates, and the materials as they are taxed."""
    build, terms = draft.bid.price, draft.bid.books.shop.tax
    yield choice("tax_mode", "Tax mode", build.tax_mode, TAX_MODES)
    yield rate("tax_rate", "Tax rate", percent(build.tax_rate_pct), "charged to the customer")
    share = percent(terms.taxed_share_pct)
    yield rate("tax_share_set", "Share that is taxed", share, "used only with part-of-price")
    shared = formula(
        by_word("tax_mode", {PART: "tax_share_set", "": "1"}),
        build.tax_build.share_pct.scaleb(-2), looks.figure(looks.PERCENT),
    )  # fmt: skip
    yield rate("tax_share", "Share that counts", shared, "by the tax mode")
    yield from _factor(draft)
    yield choice("materials_base", "Materials are taxed", terms.materials_base, MATERIALS_BASES)
    more = draft.round_to("materials_sold*overhead_rate")
    with_more = by_word("materials_base", {BEFORE_PROFIT: more, SOLD: "0"})
    taxed = by_word("tax_mode", {ON_MATERIALS: f"materials_sold+{with_more}", "": "materials_sold"})
    yield Step("taxed_materials", "Materials, as they are taxed",
               draft.money(taxed, taxed_materials(draft)), "as the words above say")  # fmt: skip
    yield choice("tax_basis", "Tax is worked out on", terms.basis, BASES)
    yield choice("tax_rounding", "Tax is rounded", terms.rounding, ROUNDINGS)


def taxed_materials(draft: Draft) -> Decimal:
    """Materials as sold, with their part of the overhead where they are taxed so."""
    build, terms = draft.bid.price, draft.bid.books.shop.tax
    if (build.tax_mode, terms.materials_base) != (ON_MATERIALS, BEFORE_PROFIT):
        return build.materials_sell
    more = build.materials_sell * build.overhead_pct / 100
    return build.materials_sell + round_money(more, draft.bid.books.shop.currency)


def _factor(draft: Draft) -> Iterator[Step]:
    """What the taxed part is multiplied by."""
    terms = draft.bid.books.shop.tax
    published = terms.gross_factor_pct
    cell = words(EXACT, looks.ENTRY_WORD) if published is None else percent(published)
    how = "exact, or a published percentage; used only with gross-receipts"
    yield rate("gross_factor", "Gross-up", cell, how)
    grossed = f"IF(gross_factor={text(EXACT)},tax_rate/(1-tax_rate),gross_factor)"
    modes = {mode: "tax_rate" for mode, kinds in CHARGED_ON.items() if kinds} | {GROSS: grossed}
    used = formula(
        by_word("tax_mode", {**modes, "": "0"}), Fraction(_factor_exactly(draft)),
        looks.figure(looks.PERCENT),
    )  # fmt: skip
    yield rate("tax_factor", "Rate that counts", used, "by the tax mode")


def _factor_exactly(draft: Draft) -> Fraction:
    """The factor without any rounding."""
    terms = draft.bid.books.shop.tax
    if not CHARGED_ON[terms.mode]:
        return Fraction(0)
    if terms.mode != GROSS:
        return Fraction(terms.rate_pct) / 100
    if terms.gross_factor_pct is not None:
        return Fraction(terms.gross_factor_pct) / 100
    return Fraction(terms.rate_pct) / (100 - Fraction(terms.rate_pct))


def write_taxed(draft: Draft, sheet: Sheet) -> None:
    """Every line of the price with the part of it that is taxed, and the tax on it alone."""
    made = sheet.table("Taxed_lines", TAXED_HEADERS, _lines(draft, sheet))
    rows = (made.first_row + 1, made.last_row)
    for name, column in (("taxed_parts", "B"), ("line_taxes", "C")):
        draft.names[name] = sheet.span(column, *rows)


def _lines(draft: Draft, sheet: Sheet) -> Iterator[Row]:
    """The lines in the order of the build-up; a line below zero takes no more than there is."""
    build, first, on_lines = draft.bid.price, sheet.next_row, iter(draft.bid.price.tax_build.lines)
    allowances = iter(range(1, len(build.allowances) + 1))
    for name, kind, amount in price_lines(build):
        row = sheet.next_row
        cell = LINE_CELLS[name] if name in LINE_CELLS else f"allowance_{next(allowances)}"
        whole = taxed_materials(draft) if name == "materials" else amount
        charged = whole and kind in CHARGED_ON[build.tax_mode]
        part, tax = (whole, next(on_lines).tax) if charged else (_NOTHING, _NOTHING)
        share = draft.round_to(f"B{row}*tax_share")
        exact = formula(f"ROUND({share}*tax_factor,{PLACES})", _exact(draft, part))
        rounded = rounded_as_named(f"D{row}", draft.formats.places, "tax_rounding")
        before = f"-SUM(C{first}:C{row - 1})" if row > first else "0"
        yield [
            words(name), draft.money(_taxed(cell, kind), part),
            draft.money(f"MAX({before},{rounded})", tax), exact,
        ]  # fmt: skip


def _taxed(cell: str, kind: str) -> str:
    """The amount of a line in the modes that tax its kind, else nothing."""
    modes = {mode: cell for mode, kinds in CHARGED_ON.items() if kind in kinds}
    return by_word("tax_mode", {**modes, "": "0"})


def _exact(draft: Draft, part: Decimal) -> Decimal:
    share_pct = draft.bid.price.tax_build.share_pct
    shared = round_money(part * share_pct / 100, draft.bid.books.shop.currency)
    return to_decimal(Fraction(shared) * _factor_exactly(draft), PLACES)


def tax_sum_steps(draft: Draft) -> Iterator[Step]:
    """The base and the tax charged."""
    build, places = draft.bid.price.tax_build, draft.formats.places
    lines = f"SUMPRODUCT(ROUND(taxed_parts*tax_share,{places}))"
    whole = draft.round_to("SUM(taxed_parts)*tax_share")
    base = draft.money(by_word("tax_basis", {LINE: lines, INVOICE: whole}), build.base)
    yield Step("tax_base", "Taxed together", base, "the lines above")
    exact = formula(
        f"ROUND(tax_base*tax_factor,{PLACES})",
        to_decimal(Fraction(build.base) * _factor_exactly(draft), PLACES),
    )
    yield rate("tax_exact", "Tax on them, before rounding", exact, "taxed x rate that counts")
    once = rounded_as_named("tax_exact", places, "tax_rounding")
    tax = draft.money(by_word("tax_basis", {LINE: "SUM(line_taxes)", INVOICE: once}), build.tax)
    yield Step("tax_amount", "Tax", tax, "rounded, or the taxes of the lines added up")
