"""The ways of the survey against each other, on the Compare sheet: best first, each with why."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import (
    Row,
    Sheet,
    figure_only,
    formula,
    line_number,
    number,
    words,
)
from estimator.outputs.draft import Draft, price
from estimator.pricing.records import FindingCounts, RouteOption

AREA_PLACES = 3
NO_FINDINGS = "none"
NOTE = (
    "Cost: hours x labor rate + materials, before small items, markup and trips. The reasons and "
    "ranks are as worked out; they do not follow what is changed in the sheet."
)


def write_ways(draft: Draft, sheet: Sheet) -> None:
    """Write the table; the cost of each way follows its hours, its materials and the rate."""
    sheet.section("Ways for the cable, best first")
    routes = sorted(draft.bid.routes, key=lambda route: route.rank)
    sheet.table("Ways", _headers(draft), (_way(draft, sheet, route) for route in routes))
    sheet.note(NOTE)


def _headers(draft: Draft) -> tuple[str, ...]:
    unit = draft.area(Fraction(0))[1]
    return (
        "Rank", "Way", "Cost", "Total", "Why it has this rank", "Findings", "Cable to order",
        "Members", "Openings", f"Openings, {unit}", "Hours", "Materials",
    )  # fmt: skip


def _way(draft: Draft, sheet: Sheet, route: RouteOption) -> Row:
    """One way; the total of the chosen one follows the price build-up."""
    row = sheet.next_row
    opening, _ = draft.area(route.opening_in2)
    money = looks.figure(looks.MONEY)
    live = route.chosen and route.total == draft.bid.price.total
    total = formula("bid_total", route.total) if live else figure_only(route.total)
    cost = f"{draft.round_to(f'K{row}*labor_rate')}+L{row}"
    chosen = " (this bid)" if route.chosen else ""
    return [
        line_number(route.rank), words(f"{route.route}{chosen}"),
        draft.money(cost, route.cost), total._replace(look=money),
        words(route.why), words(counted_findings(route.findings, route.blocked_by)),
        words(route.order_text), figure_only(route.members), figure_only(route.openings),
        figure_only(to_decimal(opening, AREA_PLACES)),
        number(route.hours, looks.entry(looks.HOURS)), price(route.materials),
    ]  # fmt: skip


def counted_findings(counts: FindingCounts, blocked_by: Sequence[str]) -> str:
    """How many findings of each kind that is not a pass, and which of them block."""
    said = {
        "failed": counts.failed,
        "put right": counts.put_right,
        "accepted": counts.accepted,
        "not known": counts.unknown,
        "to note": counts.notes,
    }
    parts = [f"{count} {what}" for what, count in said.items() if count]
    blocked = [f"blocked by {', '.join(blocked_by)}"] if blocked_by else []
    return "; ".join([", ".join(parts) or NO_FINDINGS, *blocked])
