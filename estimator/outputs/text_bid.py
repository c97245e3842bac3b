"""The short summary of a bid for the terminal."""

from __future__ import annotations

from decimal import Decimal

from estimator.outputs.calendar_words import days_line
from estimator.outputs.finding_words import counts, held_against, included
from estimator.outputs.text_check import finding_lines
from estimator.outputs.text_job import (
    assumption_lines,
    caution_lines,
    money,
    title_lines,
    unpriced_lines,
    ways_lines,
)
from estimator.outputs.text_layout import counted, heading, number, pairs, wrapped
from estimator.outputs.text_price import price_rows, unsaid_lines
from estimator.pricing.calendar import plan_calendar
from estimator.pricing.calendar_records import VisitDays
from estimator.pricing.records import Bid, RouteOption

HOURS_PLACES = 2


def bid_summary(bid: Bid) -> list[str]:
    """Say the price, the time, what to buy, what was found and what was assumed."""
    return [
        *title_lines(bid),
        "",
        *pairs(_rows(bid)),
        *_because_of_checks(bid),
        *ways_lines(bid, _way),
        *_findings(bid),
        *assumption_lines(bid.assumptions),
        *unpriced_lines(bid),
        *unsaid_lines(bid),
        *caution_lines(),
    ]


def _rows(bid: Bid) -> list[tuple[str, str]]:
    """Set out price, time and shopping, each with its name."""
    rest = [
        ("Hours", _hours(bid)),
        ("Visits", _visits(bid)),
        ("Time", _days(bid)),
        ("To buy", _to_buy(bid)),
    ]
    return [*_version(bid), *price_rows(bid), *rest]


def _version(bid: Bid) -> list[tuple[str, str]]:
    """Which version this is and why there is one, where the job lists any."""
    if not bid.versions:
        return []
    last = bid.versions[-1]
    return [("Version", f"{last.number}: {last.why}")]


def _hours(bid: Bid) -> str:
    hours = bid.hours
    return f"{_shown(hours.charged)} charged, {_shown(hours.low)} to {_shown(hours.high)} possible"


def _shown(hours: Decimal) -> str:
    return number(hours, HOURS_PLACES)


def _visits(bid: Bid) -> str:
    visits = bid.takeoff.visits
    waits = [visit for visit in visits if visit.wait_after_h]
    drying = f", with {counted(len(waits), 'wait')} for drying between" if waits else ""
    return f"{len(visits)}{drying}"


def _days(bid: Bid) -> str:
    """Working days, and the days that each visit falls on."""
    calendar = plan_calendar(bid)
    on = ", ".join(_on(visit) for visit in calendar.visits)
    return f"{days_line(calendar, bid.survey.job.locale)} Visits on {on}."


def _on(visit: VisitDays) -> str:
    last = f" to {visit.last_day}" if visit.days > 1 else ""
    return f"day {visit.first_day}{last}"


def _to_buy(bid: Bid) -> str:
    bought = [line for line in bid.shopping if line.packs]
    return f"{counted(len(bought), 'item')}, see estimator shopping-list"


def _way(bid: Bid, option: RouteOption) -> list[str]:
    chosen = " (this bid)" if option.chosen else ""
    said = (
        f"{option.route}{chosen}: {money(bid, option.total)}, {_shown(option.hours)} h, "
        f"{option.order_text}, {counted(option.members, 'member')} crossed; {option.why}"
    )
    return wrapped(said, first=f"{option.rank:>2}. ")


def _because_of_checks(bid: Bid) -> list[str]:
    """Say what is in the price because of the checks."""
    items = [line for each in included(bid) for line in wrapped(each, first="- ", rest="  ")]
    return [*heading("Included because of the checks"), *items] if items else []


def _findings(bid: Bid) -> list[str]:
    """Show the fails in full; what is not known stands among the assumptions."""
    fails = [finding for finding in bid.findings if finding.verdict == "fail"]
    lines = [line for finding in fails for line in finding_lines(finding)]
    said = f"{counts(bid.findings)} What to do about each: estimator check."
    held = held_against(bid.survey.job)
    return [*heading("Checks"), *lines, *wrapped(said), *wrapped(held)]
