"""The Price build-up sheet: from hours and cost to the total, the only place where rates stand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, formula, words
from estimator.outputs.charts import Bars, Picture
from estimator.outputs.draft import Draft
from estimator.outputs.labor_steps import labor_steps, rate_steps
from estimator.outputs.materials_steps import materials_steps
from estimator.outputs.offer_steps import before_tax_steps, offer_steps
from estimator.outputs.pay_steps import deposit_steps, total_steps, write_forms, write_plan
from estimator.outputs.price_step import Step
from estimator.outputs.tax_steps import tax_steps, tax_sum_steps, write_taxed
from estimator.pricing.records import PriceBuild

NAME = "Price build-up"
WIDTHS = "38 18 16 50"
HEADERS = ("Step", "Rate or count", "Amount", "How it is worked out")
PART_HEADERS = ("Part", "Share", "Amount", "What it is")
TAX_ADVICE = "What is taxed differs from place to place: ask your tax office."
_SHARE_PLACES = 4
_CHART_ROWS, _CHART_CM = 18, (9, 20)


def write_price(draft: Draft) -> Sheet:
    """Write the sheet; every rate and every amount in it gets a name that formulas use."""
    sheet = draft.sheet(NAME, WIDTHS, wide=False)
    draft.heading(sheet, "Price build-up: the only place where rates stand")
    _steps(draft, sheet, "Labor", labor_steps(draft))
    _steps(draft, sheet, "Materials", materials_steps(draft))
    _steps(draft, sheet, "Price offered", offer_steps(draft))
    _steps(draft, sheet, "Before tax", before_tax_steps(draft))
    _steps(draft, sheet, "Tax", tax_steps(draft), TAX_ADVICE)
    sheet.section("Tax, line by line")
    write_taxed(draft, sheet)
    _steps(draft, sheet, "Tax charged", tax_sum_steps(draft))
    _steps(draft, sheet, "Total", total_steps(draft))
    sheet.section("Price forms")
    write_forms(draft, sheet)
    _steps(draft, sheet, "Deposit", deposit_steps(draft))
    write_plan(draft, sheet)
    _steps(draft, sheet, "Labor rate, built up", rate_steps(draft))
    _write_parts(draft, sheet)
    return sheet


def _steps(draft: Draft, sheet: Sheet, title: str, steps: Iterable[Step], advice: str = "") -> None:
    """A section of the build-up, with a table of its steps."""
    sheet.section(title)
    if advice:
        sheet.note(advice)
    name = f"{title.replace(',', '').replace(' ', '_')}_steps"
    sheet.table(name, HEADERS, (_row(draft, sheet, step) for step in steps))


def _write_parts(draft: Draft, sheet: Sheet) -> None:
    """What the total is made of, with its chart."""
    sheet.section("Where the price goes")
    parts = _parts(draft.bid.price)
    made = sheet.table("Price_parts", PART_HEADERS, _part_rows(draft, sheet, parts))
    rows = (made.first_row + 1, made.last_row)
    together = f"SUM(C{rows[0]}:C{rows[1]})"
    total = draft.money(together, draft.bid.price.total, total=True)
    sheet.put([words("All parts together", looks.LABEL), None, total])
    sheet.begin_block()
    sheet.skip()
    sheet.picture = _picture(draft, sheet, parts, rows)
    sheet.skip(_CHART_ROWS)


def _row(draft: Draft, sheet: Sheet, step: Step) -> Row:
    """One step, with its name given to its cell."""
    column = "C" if step.amount else "B"
    draft.names[step.name] = sheet.ref(column, sheet.next_row)
    if step.choice:
        sheet.choices.append((f"{column}{sheet.next_row}", step.choice))
    label = words(step.label, looks.STRONG if step.amount else looks.TEXT)
    empty = words("")
    cells = [empty, step.cell] if step.amount else [step.cell, empty]
    how = words(step.how) if isinstance(step.how, str) else step.how
    return [label, *cells, how]


def _parts(price: PriceBuild) -> dict[str, tuple[str, Decimal, str]]:
    """What the total is made of: formula, amount and meaning by name."""
    return {
        "Labor": ("labor_amount", price.labor, "hours charged at the labor rate"),
        "Materials": ("materials_sold", price.materials_sell, "as sold"),
        "Trips": ("trips_amount", price.trips, "visits to the job"),
        "Supply run": ("supply_run", price.supply_run.amount, "where it is a line of its own"),
        "Overhead": ("overhead_amount", price.overhead, ""),
        "Profit": ("profit_amount", price.profit, ""),
        "Contingency": ("contingency", price.contingency.amount, "for what may be found"),
        "Minimum": ("minimum_step", step_up(price), "step up to the minimum"),
        "Rounding": ("offer_rounding", price.offer_rounding, "of the price offered"),
        "Allowances": ("allowances", price.allowances_total, "for what is not chosen yet"),
        "Permit": (
            "permit_cost+permit_handling",
            price.permit_cost + price.permit_handling,
            "with its handling",
        ),
        "Tax": ("tax_amount", price.tax, "charged to the customer"),
    }


def step_up(price: PriceBuild) -> Decimal:
    """What the minimum charge adds to the built-up price."""
    return price.offered - price.offer_rounding - price.built_up


def _part_rows(
    draft: Draft, sheet: Sheet, parts: dict[str, tuple[str, Decimal, str]]
) -> Iterator[Row]:
    total = draft.bid.price.total
    for name, (text, amount, meaning) in parts.items():
        share = Fraction(amount) / Fraction(total) if total else Fraction(0)
        ratio = f"IF(bid_total=0,0,ROUND(C{sheet.next_row}/bid_total,{_SHARE_PLACES}))"
        shown = formula(ratio, to_decimal(share, _SHARE_PLACES), looks.figure(looks.PERCENT))
        yield [words(name), shown, draft.money(text, amount), words(meaning)]


def _picture(
    draft: Draft, sheet: Sheet, parts: dict[str, tuple[str, Decimal, str]], rows: tuple[int, int]
) -> Picture:
    amounts = tuple(amount for _, amount, _ in parts.values())
    bars = Bars("Amount", sheet.span("C", *rows), amounts)
    labels = (sheet.span("A", *rows), tuple(parts))
    title, form, row = "Where the price goes", draft.formats.money, sheet.next_row
    return Picture(title, labels, (bars,), form, _CHART_CM, row, lying=True)
