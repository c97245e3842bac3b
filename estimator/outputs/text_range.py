"""The range of a job for the terminal: percentiles, what the bid is worth, what drives it."""

from __future__ import annotations

from decimal import Decimal

from estimator.outputs.range_words import (
    about_p,
    chance_words,
    how_drawn,
    kind_words,
    likely_line,
    reading_line,
)
from estimator.outputs.text_job import caution_lines, money, title_lines, unpriced_lines
from estimator.outputs.text_layout import heading, number, pairs, wrapped
from estimator.pricing.records import Bid
from estimator.pricing.risk_records import Driver, PriceRange, RangeInput

HOURS_PLACES = 2
_HOURS, _TOTAL = 10, 18


def range_text(bid: Bid, spread: PriceRange) -> list[str]:
    """Say how far hours and total may come out otherwise, and why."""
    return [
        *title_lines(bid),
        *heading("Hours and total"),
        *_table(bid, spread),
        "",
        *wrapped(reading_line()),
        *heading("What that means"),
        *pairs(_meaning(bid, spread)),
        "",
        *wrapped(likely_line(spread)),
        *heading("What drives the spread, most first"),
        *(line for each in spread.drivers for line in _driver(bid, each)),
        *_risks(bid, spread),
        *heading("How it was found"),
        *wrapped(how_drawn(spread)),
        *(line for note in spread.notes for line in wrapped(note, first="- ", rest="  ")),
        *unpriced_lines(bid),
        *caution_lines(),
    ]


def _table(bid: Bid, spread: PriceRange) -> list[str]:
    hours, total = spread.hours, spread.total
    rows = (
        ("10 of 100 jobs need at most  P10", hours.p10, total.p10),
        ("50 of 100 (the middle)       P50", hours.p50, total.p50),
        ("80 of 100                    P80", hours.p80, total.p80),
        ("90 of 100                    P90", hours.p90, total.p90),
        ("mean", hours.mean, total.mean),
        ("standard deviation", hours.sd, total.sd),
    )
    width = max(len(label) for label, _, _ in rows)
    head = f"{'':<{width}}{'hours':>{_HOURS}}{'total':>{_TOTAL}}"
    return [head, *(_row(bid, label, width, figures) for label, *figures in rows)]


def _row(bid: Bid, label: str, width: int, figures: list[Decimal]) -> str:
    hours, total = figures
    shown = f"{hours:.{HOURS_PLACES}f}"
    return f"{label:<{width}}{shown:>{_HOURS}}{money(bid, total):>{_TOTAL}}"


def _meaning(bid: Bid, spread: PriceRange) -> list[tuple[str, str]]:
    sure = f"Enough in {number(spread.confidence_pct)} of 100"
    more = spread.at_confidence - spread.bid_total
    gap = f"{money(bid, abs(more))} {'more' if more > 0 else 'less'} than the bid"
    holds = f"{money(bid, spread.bid_total)}, enough in {number(spread.bid_holds_pct)} of 100 jobs"
    likely = (
        f"{number(spread.likely_hours, HOURS_PLACES)} h and {money(bid, spread.likely_total)}, "
        f"at about {about_p(spread.likely_total_at_pct)}"
    )
    return [
        ("The bid", holds),
        (sure, f"{money(bid, spread.at_confidence)}, {gap if more else 'the bid itself'}"),
        ("Likely values added up", likely),
    ]


def _driver(bid: Bid, each: Driver) -> list[str]:
    said = f"{each.name}: {kind_words(each.kind)}, moves the cost by up to {money(bid, each.swing)}"
    return wrapped(said, first=f"{number(each.share_pct, 1):>5} %  ")


def _risks(bid: Bid, spread: PriceRange) -> list[str]:
    """What may be found, as it was counted."""
    risks = [each for each in spread.inputs if each.kind == "risk"]
    if not risks:
        return []
    lines = (line for each in risks for line in wrapped(_risk(bid, each), first="- ", rest="  "))
    return [*heading("What may be found, as it was counted"), *lines]


def _risk(bid: Bid, each: RangeInput) -> str:
    hours = " / ".join(number(end, HOURS_PLACES) for end in (each.low, each.likely, each.high))
    parts = ""
    if each.parts_high:
        ends = (each.parts_low, each.parts_likely, each.parts_high)
        parts = f", parts {' / '.join(money(bid, end) for end in ends)}"
    return f"{each.name}: {chance_words(each)}, {hours} h{parts} ({each.source})"
