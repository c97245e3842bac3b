"""Actual against estimate: every cost, phase and item, the margin, and the deposit's cap."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from fractions import Fraction

from estimator.ledger.bought import bought_lines, lines_for
from estimator.ledger.comparison import (
    CompareLine,
    Comparison,
    CostPart,
    DepositCheck,
    Estimate,
    Margin,
    PhaseLine,
    WorkedLine,
)
from estimator.ledger.entries import papers_twice, refuse
from estimator.ledger.estimated import WHOLE_JOB, Closed, estimate_of
from estimator.ledger.invoiced import balance_due, came_in, invoiced_net
from estimator.ledger.reader import CloseOutFile
from estimator.ledger.records import CloseOutRecord, WorkedHours
from estimator.ledger.spent import labor_cost
from estimator.ledger.used import cost_parts, item_lines
from estimator.measures import to_decimal
from estimator.money import round_money, split_money

_ZERO = Decimal(0)
_PCT_PLACES = 1
_ALL_PCT = 100
NOT_INVOICED = "Nothing is invoiced in this file: the price of the estimate is taken."
NO_HOURS = "No hours are written down: labor stands at zero."
OTHER_PHASE = "no phase"
LINES = ("materials", "labor", "permit", "subcontract", "driving", "other")
ALWAYS = ("materials", "labor")


def compare(closed: Closed, others: Sequence[CloseOutFile] = ()) -> Comparison:
    """Hold a closed job against its estimate.

    Args:
        closed: the file, its books, and its bid where it names a job file.
        others: close-out files of other jobs, whose receipts may hold lines for this one.

    Raises:
        InputError: a job or a paper that stands in two of the files.
    """
    refuse(papers_twice((closed.file, *others)))
    estimate, record, currency = estimate_of(closed), closed.file.record, closed.currency
    lines = lines_for(closed.file.job, (closed.file, *others), currency)
    parts = tuple(cost_parts(record, lines, currency))
    worked = tuple(_worked(closed, estimate))
    costs = tuple(_costs(closed, estimate, parts, worked))
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
        phases=tuple(_phases(estimate, worked)),
        items=tuple(item_lines(record, estimate, lines, currency)),
        parts=parts,
        worked=worked,
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
    closed: Closed, estimate: Estimate, parts: Sequence[CostPart], worked: Sequence[WorkedLine]
) -> Iterator[CompareLine]:
    """Materials and labor always; the others where one side has an amount."""
    currency = closed.currency
    nothing = round_money(_ZERO, currency)
    expected = {
        "materials": estimate.materials,
        "labor": round_money(estimate.hours * estimate.cost_per_hour, currency),
        "permit": estimate.permit,
        "other": estimate.other,
    }
    for name in LINES:
        amounts = (part.amount for part in parts if part.kind == name)
        paid = (each.cost for each in worked) if name == "labor" else amounts
        line = compared(name, expected.get(name, nothing), _sum(paid, currency))
        if name in ALWAYS or line.estimated or line.actual:
            yield line


def _worked(closed: Closed, estimate: Estimate) -> Iterator[WorkedLine]:
    """Every line of hours with its phase and its cost."""
    for each in closed.file.record.hours:
        rate = closed.cost_per_hour if each.cost_per_hour is None else each.cost_per_hour
        yield WorkedLine(
            date=each.date,
            phase=phase_of(each, estimate),
            task=each.task,
            who=each.who,
            hours=each.hours,
            cost_per_hour=rate,
            cost=labor_cost(each, rate, closed.currency),
        )


def phase_of(worked: WorkedHours, estimate: Estimate) -> str:
    """Phase of a line of hours: as written, or that of its task in the estimate.

    An estimate without phases has one row for the whole job, which then takes all hours.
    """
    if [phase for phase, _ in estimate.by_phase] == [WHOLE_JOB]:
        return WHOLE_JOB
    by_task = {task.task: task.phase for task in estimate.tasks}
    return worked.phase or by_task.get(worked.task, OTHER_PHASE)


def _phases(estimate: Estimate, worked: Sequence[WorkedLine]) -> Iterator[PhaseLine]:
    """Hours and cost of each phase; the costs estimated add up to those of all hours."""
    hours = dict(estimate.by_phase)
    currency = estimate.currency
    whole = round_money(estimate.hours * estimate.cost_per_hour, currency)
    # A job may state fewer hours than its phases add up to; no share of the cost is below zero.
    weights = [max(each, _ZERO) for each in hours.values()]
    shares = split_money(whole, weights, currency) if any(weights) else [_ZERO] * len(hours)
    costs = dict(zip(hours, shares, strict=True))
    for phase in dict.fromkeys([*hours, *(each.phase for each in worked)]):
        mine = [each for each in worked if each.phase == phase]
        spent = sum((each.hours for each in mine), _ZERO)
        paid = _sum((each.cost for each in mine), currency)
        yield PhaseLine(
            phase,
            compared("hours", hours.get(phase, _ZERO), spent),
            compared("cost", costs.get(phase, paid - paid), paid),
        )


def _deposit(record: CloseOutRecord, estimate: Estimate, currency: str) -> DepositCheck:
    """The deposit asked and received against the cap; nothing is changed, only said."""
    received = came_in((each for each in record.payments if each.kind == "deposit"), currency)
    cap = estimate.deposit_cap
    over = cap is not None and max(estimate.deposit, received) > cap
    return DepositCheck(estimate.deposit, received, cap, over)


def _notes(record: CloseOutRecord) -> Iterator[str]:
    if not record.invoices:
        yield NOT_INVOICED
    if not record.hours:
        yield NO_HOURS
