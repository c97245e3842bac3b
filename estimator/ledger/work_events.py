"""Events of the work itself: stock drawn and put back, hours, driving."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.ledger.estimated import Closed
from estimator.ledger.event_records import Event, Posting
from estimator.ledger.records import Drive, StockMove, WorkedHours
from estimator.ledger.spent import drive_cost, drive_rate, labor_cost, stock_cost, unit_cost


def work_events(closed: Closed) -> Iterator[Event]:
    """Stock, hours and driving: costs of the job, each against where it comes from."""
    record = closed.file.record
    for at, move in enumerate(record.stock):
        yield _stock(closed, move, f"stock[{at}]")
    for at, worked in enumerate(record.hours):
        yield _hours(closed, worked, f"hours[{at}]")
    for at, drive in enumerate(record.mileage):
        yield _drive(closed, drive, f"mileage[{at}]")


def _stock(closed: Closed, move: StockMove, source: str) -> Event:
    """Truck stock becomes material of the job; what is put back becomes stock again."""
    cost, job = stock_cost(move, closed.currency), closed.file.job
    amount = -cost if move.move == "put back" else cost
    said = f"{move.what}, {move.move}"
    counted = (move.quantity, move.unit, unit_cost(move))
    return Event(
        job=job,
        date=move.date,
        doc_type="stock",
        doc_no="",
        party="",
        party_type="",
        postings=(
            Posting("cost-materials", amount, said, source, job=job, quantity=counted[0],
                    unit=counted[1], unit_cost=counted[2]),
            Posting("stock", -amount, said, source, quantity=counted[0], unit=counted[1],
                    unit_cost=counted[2]),
        ),
        detail=f"{move.what} {move.move} {move.unit}",
    )  # fmt: skip


def _hours(closed: Closed, worked: WorkedHours, source: str) -> Event:
    """Hours at what they cost; payroll, which pays them, posts elsewhere."""
    rate = worked.cost_per_hour
    rate = closed.cost_per_hour if rate is None else rate
    cost, job = labor_cost(worked, rate, closed.currency), closed.file.job
    said = worked.task or worked.phase
    phase = worked.phase or closed.phase_of_task(worked.task)
    return Event(
        job=job,
        date=worked.date,
        doc_type="time",
        doc_no="",
        party=worked.who,
        party_type="worker",
        postings=(
            Posting("cost-labor", cost, said, source, job=job, phase=phase,
                    quantity=worked.hours, unit="h", unit_cost=rate),
            Posting("labor-applied", -cost, said, source, phase=phase),
        ),
        detail=f"{worked.task} {worked.phase}",
    )  # fmt: skip


def _drive(closed: Closed, drive: Drive, source: str) -> Event:
    """Distance at its rate; fuel and the vehicle are booked elsewhere."""
    cost, job = drive_cost(drive, closed.currency), closed.file.job
    said = drive.why or "Driving"
    return Event(
        job=job,
        date=drive.date,
        doc_type="mileage",
        doc_no="",
        party="",
        party_type="",
        postings=(
            Posting("cost-trips", cost, said, source, job=job, phase="travel",
                    quantity=drive.distance, unit=drive.unit, unit_cost=drive_rate(drive)),
            Posting("vehicle-applied", -cost, said, source, phase="travel"),
        ),
        detail=drive.why,
    )  # fmt: skip
