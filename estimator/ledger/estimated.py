"""The estimate that a closed job is held against: typed, or worked out from its job file."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from estimator.catalog.records import Books
from estimator.ledger.comparison import Estimate, EstimatedItem, EstimatedTask
from estimator.ledger.reader import CloseOutFile
from estimator.ledger.records import Deposit, TypedEstimate
from estimator.money import round_money
from estimator.pricing.hours import three_point
from estimator.pricing.rate_builder import build_rate
from estimator.pricing.records import Bid
from estimator.settings import Shop

WHOLE_JOB = "whole job"
TYPED = "typed"
_ZERO = Decimal(0)
SUPPLY_RUN = "supply run"


@dataclass(frozen=True, slots=True)
class Closed:
    """A close-out file with the books it goes by, and the bid where it names a job file."""

    file: CloseOutFile
    books: Books
    bid: Bid | None

    @property
    def currency(self) -> str:
        """Of every amount in the file."""
        return self.books.shop.currency

    @property
    def cost_per_hour(self) -> Decimal:
        """What an hour costs the shop: as the file says, else by the shop's settings."""
        stated = self.file.record.close_out.labor_cost_per_hour
        return own_cost_per_hour(self.books.shop) if stated is None else stated

    @property
    def customer(self) -> str:
        """Who pays: as the file says, else as the job file does."""
        named = self.file.record.close_out.customer
        return named or (self.bid.survey.job.customer if self.bid else "")

    @property
    def title(self) -> str:
        """Short name of the job: as the file says, else as the job file does."""
        named = self.file.record.close_out.title
        return named or (self.bid.survey.job.title if self.bid else "")

    @property
    def locale(self) -> str:
        """How money and dates are shown: as the job file says, else as the close-out does."""
        return self.bid.survey.job.locale if self.bid else self.file.record.close_out.locale

    def phase_of_task(self, task: str) -> str:
        """Phase of a task in the estimate; empty where it has none."""
        lines = self.bid.labor if self.bid else ()
        return next((line.phase for line in lines if line.task == task), "")


def own_cost_per_hour(shop: Shop) -> Decimal:
    """What an hour costs a shop: the number it states, else the wage with its burden.

    Overhead and profit are not in it, nor are hours that nobody pays for.
    """
    stated = shop.ledger.labor_cost_per_hour
    return build_rate(shop.rate, shop.currency).burdened if stated is None else stated


def estimate_of(closed: Closed) -> Estimate:
    """The estimate of a closed job."""
    typed = closed.file.record.estimate
    if closed.bid is not None:
        return _from_bid(closed, closed.bid)
    if typed is None:
        raise ValueError("a close-out names a job file or types its estimate")
    return _from_typed(closed, typed)


def _from_typed(closed: Closed, typed: TypedEstimate) -> Estimate:
    """The estimate as typed; deposit and caps are of the price with the tax on top of it."""
    head, currency = closed.file.record.close_out, closed.currency
    price = round_money(typed.price, currency)
    total = price + round_money(typed.tax, currency)
    phases = tuple((each.phase, each.hours) for each in typed.phases)
    asked, cap = _deposit(closed, total, _ZERO)
    whole = ((WHOLE_JOB, typed.labor_hours),) if typed.labor_hours else ()
    return Estimate(
        job=head.job,
        title=closed.title,
        customer=closed.customer,
        currency=currency,
        locale=closed.locale,
        source=TYPED,
        price=price,
        total=total,
        materials=round_money(typed.materials, currency),
        hours=typed.labor_hours,
        by_phase=phases or whole,
        cost_per_hour=closed.cost_per_hour,
        permit=round_money(typed.permit, currency),
        other=round_money(typed.other, currency),
        deposit=asked,
        deposit_cap=cap,
        items=(),
        tasks=(),
    )


def _deposit(closed: Closed, total: Decimal, asked: Decimal) -> tuple[Decimal, Decimal | None]:
    """Deposit asked and the lesser of the caps that the user set."""
    stated = closed.file.record.deposit
    if stated is None:
        return asked, None
    asked = round_money(total * stated.asked_pct / 100, closed.currency)
    return asked, _cap(stated, total, closed.currency)


def _cap(stated: Deposit, total: Decimal, currency: str) -> Decimal | None:
    caps = []
    if stated.cap_pct is not None:
        caps.append(round_money(total * stated.cap_pct / 100, currency))
    if stated.cap_amount is not None:
        caps.append(round_money(stated.cap_amount, currency))
    return min(caps, default=None)


def _from_bid(closed: Closed, bid: Bid) -> Estimate:
    """The estimate as the bid has it, its hours at what they cost."""
    head, price = closed.file.record.close_out, bid.price
    asked, cap = _deposit(closed, price.total, price.deposit)
    cap = price.payment.cap if closed.file.record.deposit is None else cap
    return Estimate(
        job=head.job,
        title=closed.title,
        customer=closed.customer,
        currency=closed.currency,
        locale=closed.locale,
        source=head.estimate or "",
        price=price.before_tax,
        total=price.total,
        materials=price.materials_cost + price.purchase_tax + _allowed(bid, ("materials",)),
        hours=bid.hours.charged + price.supply_run.hours,
        by_phase=tuple(_phases(bid)),
        cost_per_hour=closed.cost_per_hour,
        permit=price.permit_cost,
        other=_allowed(bid, ("labor", "other")),
        deposit=asked,
        deposit_cap=cap,
        items=tuple(
            EstimatedItem(line.item, line.description, line.unit, line.need, line.cost)
            for line in bid.shopping
        ),
        tasks=tuple(_tasks(bid)),
    )


def _allowed(bid: Bid, kinds: tuple[str, ...]) -> Decimal:
    """Sums set aside for what was not chosen; they are settled at cost."""
    amounts = (each.amount for each in bid.price.allowances if each.kind in kinds)
    return sum(amounts, _ZERO)


def _phases(bid: Bid) -> Iterator[tuple[str, Decimal]]:
    """Hours of each phase; what the job states beyond them is the whole job's.

    Hours are on the same basis as those charged; the millionths that rounding leaves go to the
    last phase.
    """
    lines = {line.phase: [_ZERO, _ZERO, _ZERO] for line in bid.labor}
    for line in bid.labor:
        for at, each in enumerate((line.hours_low, line.hours_likely, line.hours_high)):
            lines[line.phase][at] += each
    expected = bid.hours.basis == "expected"
    found = {
        phase: three_point(low, likely, high) if expected else likely
        for phase, (low, likely, high) in lines.items()
    }
    rest = bid.hours.charged - sum(found.values(), _ZERO)
    if rest and bid.hours.basis != "override" and found:
        last = list(found)[-1]
        found[last], rest = found[last] + rest, _ZERO
    yield from found.items()
    if rest:
        yield WHOLE_JOB, rest
    if bid.price.supply_run.hours:
        yield SUPPLY_RUN, bid.price.supply_run.hours


def _tasks(bid: Bid) -> Iterator[EstimatedTask]:
    """Each task once, over all its lines."""
    names = dict.fromkeys(line.task for line in bid.labor)
    for task in names:
        lines = [line for line in bid.labor if line.task == task]
        yield EstimatedTask(
            task=task,
            phase=lines[0].phase,
            quantity=sum((line.quantity for line in lines), _ZERO),
            weighted_quantity=sum((line.quantity * line.factor for line in lines), _ZERO),
            hours=sum((line.hours_likely for line in lines), _ZERO),
        )
