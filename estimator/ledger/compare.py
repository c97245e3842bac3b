"""Actual against estimate: every cost, phase and item, the margin, and the deposit's cap."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from fractions import Fraction

from estimator.ledger.bought import BoughtLine, bought_lines, lines_for
from estimator.ledger.comparison import (
    CompareLine,
    Comparison,
    DepositCheck,
    Estimate,
    Margin,
    PhaseLine,
)
from estimator.ledger.estimated import WHOLE_JOB, Closed, estimate_of
from estimator.ledger.invoiced import balance_due, invoiced_net
from estimator.ledger.reader import CloseOutFile
from estimator.ledger.records import CloseOutRecord, WorkedHours
from estimator.ledger.spent import drive_cost, labor_cost
from estimator.ledger.used import cost_of, item_lines, material_parts
from estimator.measures import to_decimal
from estimator.money import round_money, split_money

_ZERO = Decimal(0)
_PCT_PLACES = 1
_ALL_PCT = 100
NOT_INVOICED = "Nothing is invoiced in this file: the price of the estimate is taken."
NO_HOURS = "No hours are written down: labor stands at zero."
OTHER_PHASE = "no phase"


def compare(closed: Closed, others: Sequence[CloseOutFile] = ()) -> Comparison:
    """Hold a closed job against its estimate.

    Args:
        closed: the file, its books, and its bid where it names a job file.
        others: close-out files of other jobs, whose receipts may hold lines for this one.

    Raises:
        InputError: no cost of an hour is known.
    """
    estimate, record, currency = estimate_of(closed), closed.file.record, closed.currency
    lines = lines_for(closed.file.job, (closed.file, *others), currency)
    parts = tuple(material_parts(record, lines, currency))
    materials = round_money(sum((part.amount for part in parts), _ZERO), currency)
    costs = tuple(_costs(closed, estimate, lines, materials))
    total = _total(costs)
    invoiced = invoiced_net(record, currency) if record.invoices else estimate.price
    price = compared("price", estimate.price, invoiced)
    return Comparison(
        estimate=estimate,
        closed=record.close_out.date,
        costs=costs,
        total=total,
        price=price,
        estimated_margin=_margin(price.estimated, total.estimated),
        actual_margin=_margin(price.actual, total.actual),
        phases=tuple(_phases(closed, estimate)),
        items=tuple(item_lines(record, estimate, lines, currency)),
        materials=parts,
        elsewhere=tuple(
            line for line in bought_lines(closed.file, currency) if line.job != closed.file.job
        ),
        deposit=_deposit(record, estimate, currency),
        balance_due=balance_due(record, currency),
        notes=tuple(_notes(record)),
    )


def percent_of(part: Decimal, whole: Decimal) -> Decimal | None:
    """A part in percent of a whole, to one decimal, half away from zero; None of nothing.

    >>> percent_of(Decimal("-6.80"), Decimal("84.00"))
    Decimal('-8.1')
    """
    if not whole:
        return None
    return to_decimal(Fraction(part) * _ALL_PCT / Fraction(whole), _PCT_PLACES)


def compared(name: str, estimated: Decimal, actual: Decimal) -> CompareLine:
    """One line with its difference."""
    difference = actual - estimated
    return CompareLine(name, estimated, actual, difference, percent_of(difference, estimated))


def _sum(amounts: Iterable[Decimal], currency: str) -> Decimal:
    return round_money(sum(amounts, _ZERO), currency)


def _total(costs: Sequence[CompareLine]) -> CompareLine:
    estimated = sum((each.estimated for each in costs), _ZERO)
    return compared("all costs", estimated, sum((each.actual for each in costs), _ZERO))


def _margin(price: Decimal, cost: Decimal) -> Margin:
    return Margin(price - cost, percent_of(price - cost, price))


def _costs(
    closed: Closed, estimate: Estimate, lines: Sequence[BoughtLine], materials: Decimal
) -> Iterator[CompareLine]:
    """Materials and labor always; the others where one side has an amount."""
    record, currency = closed.file.record, closed.currency
    bought = {
        kind: _sum((cost_of(line, record) for line in lines if line.kind == kind), currency)
        for kind in ("permit", "subcontract", "other")
    }
    driven = _sum((drive_cost(each, currency) for each in record.mileage), currency)
    estimated_labor = round_money(estimate.hours * estimate.cost_per_hour, currency)
    actual_labor = _sum((_labor(closed, each) for each in record.hours), currency)
    nothing = round_money(_ZERO, currency)
    yield compared("materials", estimate.materials, materials)
    yield compared("labor", estimated_labor, actual_labor)
    rest = (
        compared("permit", estimate.permit, bought["permit"]),
        compared("subcontract", nothing, bought["subcontract"]),
        compared("driving", nothing, driven),
        compared("other", estimate.other, bought["other"]),
    )
    yield from (line for line in rest if line.estimated or line.actual)


def _labor(closed: Closed, worked: WorkedHours) -> Decimal:
    return labor_cost(worked, closed.cost_per_hour, closed.currency)


def phase_of(worked: WorkedHours, estimate: Estimate) -> str:
    """Phase of a line of hours: as written, or that of its task in the estimate.

    An estimate without phases has one row for the whole job, which then takes all hours.
    """
    if [phase for phase, _ in estimate.by_phase] == [WHOLE_JOB]:
        return WHOLE_JOB
    by_task = {task.task: task.phase for task in estimate.tasks}
    return worked.phase or by_task.get(worked.task, OTHER_PHASE)


def _phases(closed: Closed, estimate: Estimate) -> Iterator[PhaseLine]:
    """Hours and cost of each phase; the costs estimated add up to those of all hours."""
    hours = dict(estimate.by_phase)
    whole = round_money(estimate.hours * estimate.cost_per_hour, closed.currency)
    # A job may state fewer hours than its phases add up to; no share of the cost is below zero.
    weights = [max(each, _ZERO) for each in hours.values()]
    shares = split_money(whole, weights, closed.currency) if any(weights) else [_ZERO] * len(hours)
    costs = dict(zip(hours, shares, strict=True))
    rows = [(phase_of(each, estimate), each) for each in closed.file.record.hours]
    for phase in dict.fromkeys([*hours, *(name for name, _ in rows)]):
        mine = [each for name, each in rows if name == phase]
        worked = sum((each.hours for each in mine), _ZERO)
        paid = _sum((_labor(closed, each) for each in mine), closed.currency)
        yield PhaseLine(
            phase,
            compared("hours", hours.get(phase, _ZERO), worked),
            compared("cost", costs.get(phase, paid - paid), paid),
        )


def _deposit(record: CloseOutRecord, estimate: Estimate, currency: str) -> DepositCheck:
    """The deposit asked and received against the cap; nothing is changed, only said."""
    came = (each.amount for each in record.payments if each.kind == "deposit")
    received = round_money(sum(came, _ZERO), currency)
    cap = estimate.deposit_cap
    over = cap is not None and max(estimate.deposit, received) > cap
    return DepositCheck(estimate.deposit, received, cap, over)


def _notes(record: CloseOutRecord) -> Iterator[str]:
    if not record.invoices:
        yield NOT_INVOICED
    if not record.hours:
        yield NO_HOURS
