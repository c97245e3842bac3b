"""Parts, work and findings of two bids side by side, and what differs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from estimator.pricing.change_records import ChangedLine, Kind, Recheck
from estimator.pricing.hours import hours, three_point
from estimator.pricing.records import Bid, LaborLine
from estimator.rules.records import Finding

# Findings that a change is asked about even where nothing moved.
ALWAYS_RECHECKED = ("box-fill", "box-fill-canada", "lead-paint")


@dataclass(slots=True)
class _Sum:
    """One item or task of one bid, summed over the job."""

    description: str = ""
    unit: str = ""
    quantity: Decimal = Decimal(0)
    hours: Decimal = Decimal(0)


def changed_lines(before: Bid, after: Bid) -> tuple[ChangedLine, ...]:
    """Parts and work whose quantity or hours differ, parts first, in the order of the new job."""
    return (
        *_lines("part", _parts(before), _parts(after)),
        *_lines("work", _tasks(before), _tasks(after)),
    )


def _parts(bid: Bid) -> dict[str, _Sum]:
    found: dict[str, _Sum] = {}
    for line in bid.takeoff.parts:
        each = found.setdefault(line.item, _Sum(line.description, line.unit))
        each.quantity += line.quantity
    return found


def _tasks(bid: Bid) -> dict[str, _Sum]:
    found: dict[str, _Sum] = {}
    for line in bid.labor:
        each = found.setdefault(line.task, _Sum(line.description, line.unit))
        each.quantity += line.quantity
        each.hours += _charged(line, bid)
    return found


def _charged(line: LaborLine, bid: Bid) -> Decimal:
    """The hours of one line on the basis of the shop's settings."""
    if bid.books.shop.price.hours_basis == "likely":
        return line.hours_likely
    return three_point(line.hours_low, line.hours_likely, line.hours_high)


def _lines(kind: Kind, before: dict[str, _Sum], after: dict[str, _Sum]) -> Iterator[ChangedLine]:
    for key in dict.fromkeys((*after, *before)):
        old, new = before.get(key, _Sum()), after.get(key, _Sum())
        if (old.quantity, old.hours) == (new.quantity, new.hours):
            continue
        yield ChangedLine(
            kind=kind,
            key=key,
            description=new.description or old.description,
            unit=new.unit or old.unit,
            quantity_before=old.quantity,
            quantity_after=new.quantity,
            hours_before=hours(old.hours),
            hours_after=hours(new.hours),
        )


def rechecks(before: Bid, after: Bid) -> tuple[Recheck, ...]:
    """Findings that say something else now, and those a change is always asked about.

    Those that stop the job come first, then those whose verdict moved.
    """
    old = {each.finding_id: each for each in before.findings}
    new = {each.finding_id: each for each in after.findings}
    found = (
        _recheck(new.get(name) or old[name], old.get(name), new.get(name))
        for name in dict.fromkeys((*new, *old))
        if _differs(old.get(name), new.get(name))
    )
    return tuple(sorted(found, key=_urgency))


def _urgency(each: Recheck) -> tuple[bool, bool]:
    return not each.stops, each.verdict_before == each.verdict_after


def _differs(old: Finding | None, new: Finding | None) -> bool:
    if old is None or new is None or (old.verdict, old.figures) != (new.verdict, new.figures):
        return True
    return new.rule in ALWAYS_RECHECKED


def _recheck(shown: Finding, old: Finding | None, new: Finding | None) -> Recheck:
    return Recheck(
        finding_id=shown.finding_id,
        title=shown.title,
        verdict_before=_verdict(old),
        figures_before=old.figures if old else "",
        verdict_after=_verdict(new),
        figures_after=new.figures if new else "",
        remedy=new.remedy if new else "",
        stops=new is not None and new.stops_the_bid,
    )


def _verdict(finding: Finding | None) -> str:
    if finding is None:
        return ""
    return "put right" if finding.remedied else finding.verdict
