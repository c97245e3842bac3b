"""Stock, hours and driving of a job in money."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.ledger.records import Drive, StockMove, WorkedHours
from estimator.measures import to_decimal
from estimator.money import minor_unit, round_money
from estimator.tables.mileage import mileage_rate_usd_per_mi

_PLACES = 6


def unit_cost(move: StockMove) -> Decimal:
    """What one unit cost, to six places; of a whole coil or pack, its share."""
    if move.pack_size is None or move.pack_cost is None:
        return move.unit_cost or Decimal(0)
    return to_decimal(Fraction(move.pack_cost) / Fraction(move.pack_size), _PLACES)


def stock_cost(move: StockMove, currency: str) -> Decimal:
    """What the stock of one move cost, to the minor unit; the same for drawn and put back."""
    if move.pack_size is None or move.pack_cost is None:
        return round_money(move.quantity * (move.unit_cost or 0), currency)
    exact = Fraction(move.quantity) * Fraction(move.pack_cost) / Fraction(move.pack_size)
    return to_decimal(exact, minor_unit(currency))


def labor_cost(worked: WorkedHours, cost_per_hour: Decimal, currency: str) -> Decimal:
    """What one line of hours cost, at its own rate or the given one."""
    rate = cost_per_hour if worked.cost_per_hour is None else worked.cost_per_hour
    return round_money(worked.hours * rate, currency)


def drive_rate(drive: Drive) -> Decimal:
    """Cost of one mile or kilometre.

    Raises:
        NotOnFile: no rate was given and the year has none on file.
    """
    return mileage_rate_usd_per_mi(drive.date.year) if drive.rate is None else drive.rate


def drive_cost(drive: Drive, currency: str) -> Decimal:
    """What one drive cost.

    Raises:
        NotOnFile: as `drive_rate`.
    """
    return round_money(drive.distance * drive_rate(drive), currency)
