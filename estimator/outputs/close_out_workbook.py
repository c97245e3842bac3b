"""The workbook of a closed job: estimate against actual with live formulas, and what is behind."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction

from estimator.ledger.comparison import CompareLine, Comparison, ItemLine, PhaseLine
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, middle, number, words
from estimator.outputs.close_out_sheets import (
    FRAMED,
    Pages,
    typed,
    write_costs,
    write_hours,
    write_others,
)
from estimator.outputs.formats import formats
from estimator.outputs.ledger_sheets import sized_sheet
from estimator.outputs.looks import DATE, MONEY

NAME = "Close-out"
OVER, WITHIN, NO_CAP = "over the cap you set", "within the cap you set", "no cap is set"
_HEADS = ("Line", "Estimated", "Actual", "Difference", "Difference %")
_PHASE_HEADS = (
    "Phase", "Hours estimated", "Hours", "Hours more", "Hours more %",
    "Cost estimated", "Cost", "Cost more",
)  # fmt: skip
_ITEM_HEADS = ("Item", "Estimated", "Used", "Unit", "Cost estimated", "Cost", "Cost more")
_NOTHING, _UNKNOWN = "none", "unknown"


def close_out_workbook(job: Comparison) -> bytes:
    """Make the workbook of a closed job, as the bytes of an .xlsx file.

    Raises:
        InputError: a currency that is not on file.
    """
    pages = Pages(job, formats(job.estimate.currency, job.estimate.locale))
    costs, kinds, amounts = write_costs(pages)
    hours, ranges = write_hours(pages)
    front = _front(pages, {"kind": kinds, "amount": amounts}, ranges)
    from estimator.outputs.book import Contents, book_bytes  # openpyxl, and only here

    return book_bytes(
        Contents(
            sheets=(front, costs, hours, write_others(pages)),
            names={},
            forms={MONEY: pages.formats.money, DATE: pages.formats.date},
            paper=pages.formats.paper,
            job_id=job.estimate.job,
            title=f"Close-out {job.estimate.job}",
            subject=job.estimate.title,
            creator="",
            dated=job.closed,
        )
    )


def _front(pages: Pages, costs: Mapping[str, str], hours: Mapping[str, str]) -> Sheet:
    """Estimate against actual, phase by phase, item by item; deposit and balance."""
    job = pages.job
    sheet = sized_sheet(NAME, "30 14 14 14 14 14 14 14")
    sheet.one_page = True
    sheet.begin_block()
    sheet.title(f"Close-out of job {job.estimate.job}: {job.estimate.title}".rstrip(": "))
    sheet.note(FRAMED)
    for note in job.notes:
        sheet.note(note)
    sheet.freeze()
    sheet.section("Estimate against actual")
    _compare(pages, sheet, costs, hours)
    sheet.section("Phases")
    sheet.table("Phases", _PHASE_HEADS, _phases(pages, sheet, hours))
    if job.items:
        sheet.section("Items")
        sheet.table("Items", _ITEM_HEADS, _items(pages, sheet, job.items))
    _money(pages, sheet)
    return sheet


def _compare(
    pages: Pages, sheet: Sheet, costs: Mapping[str, str], hours: Mapping[str, str]
) -> None:
    """Costs, price and margin, each estimated and actual."""
    job = pages.job
    rate = sheet.put([words("Own cost of an hour", looks.LABEL), typed(job.estimate.cost_per_hour)])
    time = sheet.put(
        [
            words("Hours estimated", looks.LABEL),
            number(job.estimate.hours, looks.entry(looks.HOURS)),
        ]
    )

    def rows() -> Iterator[Row]:
        for line in job.costs:
            by_kind = f'SUMPRODUCT(({costs["kind"]}="{line.name}")*1,{costs["amount"]})'
            is_labor = line.name == "labor"
            estimated = (
                pages.amount(f"B{time}*B{rate}", line.estimated)
                if is_labor
                else typed(line.estimated)
            )
            actual = f"SUM({hours['cost']})" if is_labor else by_kind
            yield _line(pages, sheet, line, (estimated, pages.amount(actual, line.actual)))

    made = sheet.table("Comparison", _HEADS, rows())
    first, last = made.first_row + 1, made.last_row
    sums = (
        pages.amount(f"SUM({letter}{first}:{letter}{last})", value, total=True)
        for letter, value in (("B", job.total.estimated), ("C", job.total.actual))
    )
    total = sheet.put(_line(pages, sheet, job.total, tuple(sums)))
    prices = (typed(job.price.estimated), typed(job.price.actual))
    price = sheet.put(_line(pages, sheet, job.price, prices))
    _margin(pages, sheet, price, total)


def _line(pages: Pages, sheet: Sheet, line: CompareLine, cells: tuple[Cell, ...]) -> Row:
    """One line with its difference, and that in percent of the estimate."""
    row = sheet.next_row
    difference = pages.amount(f"C{row}-B{row}", line.difference)
    return [words(line.name.capitalize()), *cells, difference, _share(line, f"D{row}", f"B{row}")]


def _share(line: CompareLine, part: str, whole: str) -> Cell:
    """A difference in percent of the estimate, or the word for no estimate."""
    value = Fraction(line.difference) / Fraction(line.estimated) if line.estimated else _NOTHING
    return formula(f'IF({whole}=0,"{_NOTHING}",{part}/{whole})', value, looks.figure(looks.PERCENT))


def _margin(pages: Pages, sheet: Sheet, price: int, total: int) -> None:
    """What is left of the price, in money and in percent of it."""
    job, row = pages.job, sheet.next_row
    margins = ((job.estimated_margin, job.price.estimated), (job.actual_margin, job.price.actual))
    amounts = [
        pages.amount(f"{letter}{price}-{letter}{total}", margin.amount, total=True)
        for letter, (margin, _) in zip("BC", margins, strict=True)
    ]
    change = margins[1][0].amount - margins[0][0].amount
    sheet.put([words("Margin", looks.LABEL), *amounts, pages.amount(f"C{row}-B{row}", change)])
    shares = [
        formula(
            f'IF({letter}{price}=0,"{_NOTHING}",{letter}{row}/{letter}{price})',
            Fraction(margin.amount) / Fraction(paid) if paid else _NOTHING,
            looks.figure(looks.PERCENT),
        )
        for letter, (margin, paid) in zip("BC", margins, strict=True)
    ]
    sheet.put([words("Margin, share of the price", looks.LABEL), *shares])


def _phases(pages: Pages, sheet: Sheet, hours: Mapping[str, str]) -> Iterator[Row]:
    for line in pages.job.phases:
        yield _phase(pages, sheet, line, hours)


def _phase(pages: Pages, sheet: Sheet, line: PhaseLine, hours: Mapping[str, str]) -> Row:
    """Hours and cost of one phase; what was worked is added up from the sheet of hours."""
    row, hours_look = sheet.next_row, looks.figure(looks.HOURS)
    mine = f"EXACT({hours['phase']},A{row})*1"
    return [
        words(line.phase),
        number(line.hours.estimated, looks.entry(looks.HOURS)),
        formula(f"SUMPRODUCT({mine},{hours['hours']})", line.hours.actual, hours_look),
        formula(f"C{row}-B{row}", line.hours.difference, hours_look),
        _share(line.hours, f"D{row}", f"B{row}"),
        typed(line.cost.estimated),
        pages.amount(f"SUMPRODUCT({mine},{hours['cost']})", line.cost.actual),
        pages.amount(f"G{row}-F{row}", line.cost.difference),
    ]


def _items(pages: Pages, sheet: Sheet, items: tuple[ItemLine, ...]) -> Iterator[Row]:
    for line in items:
        row, known = sheet.next_row, line.estimated_cost
        more = (
            words(_UNKNOWN) if known is None else pages.amount(f"F{row}-E{row}", line.cost - known)
        )
        yield [
            words(line.item), _or_unknown(line.estimated_quantity), _or_unknown(line.quantity),
            middle(line.unit), words(_UNKNOWN) if known is None else typed(known),
            typed(line.cost), more,
        ]  # fmt: skip


def _or_unknown(amount: Decimal | None) -> Cell:
    return words(_UNKNOWN) if amount is None else number(amount)


def _money(pages: Pages, sheet: Sheet) -> None:
    """The deposit against its cap, and what the customer still owes."""
    job = pages.job
    sheet.section("Deposit and balance")
    asked = sheet.put([words("Deposit asked", looks.LABEL), typed(job.deposit.asked)])
    came = sheet.put([words("Deposit received", looks.LABEL), typed(job.deposit.received)])
    if job.deposit.cap is None:
        sheet.put([words("Local cap", looks.LABEL), words(NO_CAP)])
    else:
        said = OVER if job.deposit.over else WITHIN
        cap = sheet.put([words("Local cap", looks.LABEL), typed(job.deposit.cap)])
        told = f'IF(MAX(B{asked},B{came})>B{cap},"{OVER}","{WITHIN}")'
        sheet.put([words("The deposit is", looks.LABEL), formula(told, said, looks.TEXT)])
    if job.balance_due is not None:
        sheet.put([words("Still owed by the customer", looks.LABEL), typed(job.balance_due)])
