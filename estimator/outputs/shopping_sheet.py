"""The Shopping list sheet: what to get by aisle, what each item needs, what it costs."""

from __future__ import annotations

import re
from decimal import Decimal
from math import ceil

from estimator.outputs import looks
from estimator.outputs.cells import (
    Cell,
    Row,
    Sheet,
    figure_only,
    formula,
    line_number,
    middle,
    number,
    words,
)
from estimator.outputs.draft import UNKNOWN, Draft
from estimator.outputs.price_step import text
from estimator.outputs.shopping_rows import ROUND_SIX, Getting, is_unpriced, money_or_unknown
from estimator.pricing.records import ShoppingLine
from estimator.saying import said

NAME = said("Shopping list")
WIDTHS = "7 16 36 19 8 10 6 19 11 11 36"
GET_HEADERS = (
    said("Got it"), said("Aisle"), said("What to get"), said("Item"), said("Packs"),
    said("Pack size"), said("Unit"), said("From"), said("Price each"), said("Cost"),
    said("Sold as"),
)  # fmt: skip
NEED_HEADERS = (
    said("Line"), said("Aisle"), said("What"), said("Item"), said("Need"), said("From truck"),
    said("Unit"), said("To buy"), said("Left over"), said("Cost"), said("Why"),
)  # fmt: skip
_STANDS_FOR_MORE = re.compile("[~?*]")
_ROWS_BEFORE = 3  # of the things to get: a free row, the heading, the headers
_ROWS_BETWEEN = 5  # and of the needs: two sums, a free row, the heading, the headers


def write_shopping(draft: Draft) -> Sheet:
    """Write the sheet; names the cost of all priced items, and the number of unpriced ones."""
    sheet = draft.sheet(NAME, WIDTHS, language=draft.language)
    draft.heading(sheet, said("Shopping list: what to get, and why that much"))
    lines = draft.bid.shopping
    count = sum(len(line.stock) + len(line.packs) + is_unpriced(line) for line in lines)
    first = sheet.next_row + _ROWS_BEFORE + count + _ROWS_BETWEEN
    getting = Getting(draft, sheet, first)
    sheet.section(said("To get"))
    sheet.table("To_get", GET_HEADERS, getting.rows())
    _sums(draft, sheet, sheet.span("J", first, first + max(len(lines), 1) - 1))
    sheet.section(said("What each item needs"))
    needs = (_need(draft, sheet, getting, line) for line in lines)
    sheet.table("Needs", NEED_HEADERS, needs)
    return sheet


def _sums(draft: Draft, sheet: Sheet, costs: str) -> None:
    """The sum of all that has a price, and how many items have none."""
    bid = draft.bid
    known = sum((line.cost for line in bid.shopping if line.cost is not None), Decimal(0))
    unpriced = sum(line.cost is None for line in bid.shopping)
    row = _sum_row(
        said("Together, where there is a price"), draft.money(f"SUM({costs})", known, total=True)
    )
    draft.names["shopping_cost"] = sheet.ref("J", sheet.put(row))
    unknown = text(_as_it_is(draft.say(UNKNOWN)))
    counted = formula(f"COUNTIFS({costs},{unknown})", unpriced, looks.total())
    draft.names["unpriced_count"] = sheet.ref(
        "J", sheet.put(_sum_row(said("Items without a price"), counted))
    )


def _as_it_is(told: str) -> str:
    """A word to look for: in what formulas look for, ? and * stand for anything."""
    return _STANDS_FOR_MORE.sub(r"~\g<0>", told)


def _sum_row(what: str, amount: Cell) -> Row:
    return [None, None, words(what, looks.LABEL), *[None] * 6, amount]


def _need(draft: Draft, sheet: Sheet, getting: Getting, line: ShoppingLine) -> Row:
    """One item: what the takeoff asks for, less the truck's, to buy, and what will be left."""
    row, unknown = sheet.next_row, text(draft.say(UNKNOWN))
    items, quantities = draft.places["takeoff", "items"], draft.places["takeoff", "quantities"]
    need = f"ROUND(SUMPRODUCT(({items}=D{row})*1,{quantities}),{ROUND_SIX})"
    drawn, packs = getting.truck_rows[line.item], getting.pack_rows[line.item]
    costs = "+".join(f"J{at}" for at in [*drawn, *packs])
    draft.places["cost", line.item] = sheet.ref("J", row)
    return [
        line_number(draft.bid.shopping.index(line) + 1),
        words(line.aisle), words(line.description), words(line.item),
        formula(need, line.need),
        _from_truck(line, drawn),
        middle(line.unit),
        _to_buy(line, row),
        _left_over(line, packs, row),
        money_or_unknown(f"IFERROR({costs},{unknown})" if costs else "0", line.cost),
        words(line.why),
    ]  # fmt: skip


def _from_truck(line: ShoppingLine, rows: list[int]) -> Cell:
    return formula("+".join(f"E{at}" for at in rows), _given(line)) if rows else figure_only(0)


def _given(line: ShoppingLine) -> Decimal:
    return sum((stock.quantity for stock in line.stock), Decimal(0))


def _to_buy(line: ShoppingLine, row: int) -> Cell:
    """What is left to buy; where the engine found another figure, that one stands as typed."""
    if max(line.need - _given(line), Decimal(0)) != line.to_buy:
        return number(line.to_buy)
    return formula(f"MAX(ROUND(E{row}-F{row},{ROUND_SIX}),0)", line.to_buy)


def _left_over(line: ShoppingLine, packs: list[int], row: int) -> Cell:
    if not packs:
        return figure_only(0)
    bought = sum((pack.count * pack.pack_size for pack in line.packs), Decimal(0))
    over = (bought if line.packs else Decimal(ceil(line.to_buy))) - line.to_buy
    products = "+".join(f"E{at}*F{at}" for at in packs)
    return formula(f"ROUND({products}-H{row},{ROUND_SIX})", over)
