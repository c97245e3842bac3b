"""The Books sheet: the bid's lines with their accounts, as a memo for whoever keeps the books."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, middle, number, words
from estimator.outputs.draft import UNKNOWN, Draft
from estimator.pricing.records import BookLine

NAME = "Books"
# Which cells of the price build-up a kind of line follows: its quantity, its cost, its price.
# Allowances are not here: each has a cell of its own.
FOLLOWS = {
    "materials": ("", "materials_cost", "materials_sold"),
    "purchase-tax": ("", "purchase_tax", "0"),
    "labor": ("labor_hours", "", "labor_amount"),
    "supply-run": ("supply_run_hours", "", "supply_run"),
    "trips": ("trip_count", "", "trips_amount"),
    "overhead": ("", "", "overhead_amount"),
    "profit": ("", "", "profit_amount"),
    "contingency": ("", "", "contingency"),
    "minimum": ("", "", "minimum_step"),
    "rounding": ("", "", "offer_rounding"),
    "permit": ("", "permit_cost", "permit_cost+permit_handling"),
    "tax": ("", "", "tax_amount"),
}
ALLOWANCE = "allowance"
_WITHOUT_COST = ("profit", "minimum", "rounding", "tax")
NO_COST = "none"
WIDTHS = "10 26 16 44 11 11 16 16"
HEADERS = (
    "Account", "Account name", "Kind", "Description", "Quantity", "Unit", "Cost", "Price",
)  # fmt: skip
ACCOUNT_HEADERS = (
    "Account", "Account name", "Currency", "What posts there", "Lines", "Cost unknown", "Cost",
    "Price",
)  # fmt: skip
MEMO = "A bid posts nothing: these lines are a budget. The prices add up to the total of the bid."
Cells = tuple[str, str, str]
TIES, DIFFERS = "ties to the total", "does not tie to the total"


def write_books(draft: Draft) -> Sheet:
    """Write the sheet; amounts that stand in the price build-up follow it."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Books: lines for bookkeeping", MEMO)
    sheet.section("Lines")
    lines = [*draft.bid.book_lines, *_lines_of_nothing(draft)]
    cells = _cells_of(draft, lines)
    made = sheet.table(
        "Book_lines",
        HEADERS,
        (_line(draft, *pair) for pair in zip(lines, cells, strict=True)),
    )
    rows = (made.first_row + 1, max(made.last_row, made.first_row + 1))
    _sums(draft, sheet, rows)
    sheet.section("By account")
    sheet.table("Accounts", ACCOUNT_HEADERS, _accounts(draft, sheet, lines, rows))
    return sheet


def _lines_of_nothing(draft: Draft) -> Iterator[BookLine]:
    """Kinds of line that are zero in this bid, so that they fill when a rate is changed."""
    kinds = {line.line_kind for line in draft.bid.book_lines}
    zero = Decimal(0)
    for kind in (kind for kind in FOLLOWS if kind not in kinds):
        account = draft.bid.books.accounts.get(kind)
        if account is not None:
            name, code = account.account_name, account.account_code
            yield BookLine(kind, code, name, kind.capitalize(), None, "", None, zero)


def _cells_of(draft: Draft, lines: Iterable[BookLine]) -> Iterator[Cells]:
    """The cells that each line follows; the allowances of more than nothing have theirs in turn."""
    allowances = enumerate(draft.bid.price.allowances, start=1)
    named = iter([f"allowance_{at}" for at, each in allowances if each.amount])
    for line in lines:
        if line.line_kind == ALLOWANCE:
            yield "", "", next(named)
        else:
            yield FOLLOWS.get(line.line_kind, ("", "", ""))


def _line(draft: Draft, line: BookLine, follows: Cells) -> Row:
    quantity, cost, price = follows
    return [
        words(line.account_code), words(line.account_name), words(line.line_kind),
        words(line.description), _quantity(quantity, line.quantity), middle(line.unit),
        _cost(draft, line, cost), _amount(draft, price, line.price),
    ]  # fmt: skip


def _quantity(name: str, quantity: Decimal | None) -> Cell:
    if quantity is None:
        return words("")
    return formula(name, quantity) if name else number(quantity)


def _amount(draft: Draft, name: str, amount: Decimal) -> Cell:
    return draft.money(name, amount) if name else number(amount, looks.entry(looks.MONEY))


def _cost(draft: Draft, line: BookLine, name: str) -> Cell:
    if name:
        return draft.money(name, line.cost or Decimal(0))
    if line.cost is None:
        return words(NO_COST if line.line_kind in _WITHOUT_COST else UNKNOWN)
    return number(line.cost, looks.entry(looks.MONEY))


def _sums(draft: Draft, sheet: Sheet, rows: tuple[int, int]) -> None:
    """The lines together, the bid's total, and whether they are the same."""
    bid = draft.bid
    prices = sum((line.price for line in bid.book_lines), Decimal(0))
    costs = sum((line.cost for line in bid.book_lines if line.cost is not None), Decimal(0))
    cells = [
        draft.money(f"SUM({column}{rows[0]}:{column}{rows[1]})", value, total=True)
        for column, value in (("G", costs), ("H", prices))
    ]
    row = sheet.put(
        [None, None, None, words("All lines (known costs)", looks.LABEL), None, None, *cells]
    )
    same = f'IF({draft.round_to(f"H{row}-bid_total")}=0,"{TIES}","{DIFFERS}")'
    said = TIES if prices == bid.price.total else DIFFERS
    total = draft.money("bid_total", bid.price.total, total=True)
    told = formula(same, said, looks.TEXT)
    sheet.put([None, None, None, words("Total of the bid", looks.LABEL), None, None, told, total])


def _accounts(
    draft: Draft, sheet: Sheet, lines: list[BookLine], rows: tuple[int, int]
) -> Iterator[Row]:
    """Each account once, with its lines added up."""
    first, last = rows
    currency = draft.bid.books.shop.currency
    for code, posted in _by_account(lines).items():
        picked = f"(A{first}:A{last}=A{sheet.next_row})*1"
        known = [line.cost for line in posted if line.cost is not None]
        prices = [line.price for line in posted]
        sums = (
            draft.money(
                f"SUMPRODUCT({picked},{column}{first}:{column}{last})", sum(found, Decimal(0))
            )
            for column, found in (("G", known), ("H", prices))
        )
        unknown = sum(line.cost is None and _is_unknown(line) for line in posted)
        missing = f'SUMPRODUCT({picked},(G{first}:G{last}="{UNKNOWN}")*1)'
        yield [
            words(code), words(posted[0].account_name), words(currency),
            words(", ".join(dict.fromkeys(line.line_kind for line in posted))),
            formula(f"SUMPRODUCT({picked})", len(posted)), formula(missing, unknown), *sums,
        ]  # fmt: skip


def _is_unknown(line: BookLine) -> bool:
    """Whether a line without a cost has one that nobody knows."""
    follows = FOLLOWS.get(line.line_kind, ("", "", ""))
    return line.line_kind not in _WITHOUT_COST and not follows[1]


def _by_account(lines: list[BookLine]) -> dict[str, list[BookLine]]:
    found: dict[str, list[BookLine]] = {}
    for line in lines:
        found.setdefault(line.account_code, []).append(line)
    return found
