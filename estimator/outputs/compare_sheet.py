"""The Compare sheet: the ways of the survey against each other, and doing it yourself."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import (
    Cell,
    Row,
    Sheet,
    figure_only,
    formula,
    line_number,
    number,
    words,
)
from estimator.outputs.draft import Draft
from estimator.pricing.records import RouteOption

NAME = "Compare"
WIDTHS = "7 36 15 52 9 18 10 12 10 14"
AREA_PLACES = 3
_SIX = 6
_HOURS = looks.figure(looks.HOURS)
OWN_HEADERS = ("Line", "Figure", "Amount", "How it is worked out")
NO_HOURS = "no hours"
NOTHING = "nothing"
FIRST_TIME = "first-time"
OWN_WORK_NOTES = (
    "Ask the permit office first whether an owner may do this work, and the insurer what it asks.",
    "Tools, a permit, a mistake put right and the time for shopping are not in these figures.",
    "Work you do yourself carries no workmanship promise, and may have to be named when you sell.",
)


def write_compare(draft: Draft) -> Sheet:
    """Write the sheet: routes where the survey has any, then hiring against doing it yourself."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Compare: one way against another, and doing it yourself")
    if draft.bid.routes:
        sheet.section("Ways for the cable, best first")
        routes = sorted(draft.bid.routes, key=lambda route: route.rank)
        rows = [_route(draft, route) for route in routes]
        sheet.table("Ways", _route_headers(draft), rows)
    sheet.section("Hiring, or doing it yourself")
    sheet.table("Own_work", OWN_HEADERS, _own_rows(draft, sheet))
    sheet.skip()
    for note in OWN_WORK_NOTES:
        sheet.note(note)
    return sheet


def _route_headers(draft: Draft) -> tuple[str, ...]:
    unit = draft.area(Fraction(0))[1]
    return (
        "Rank", "Way", "Total", "What stands against it", "Chosen", "Cable to order", "Members",
        f"Openings, {unit}", "Hours", "Cost",
    )  # fmt: skip


def _route(draft: Draft, route: RouteOption) -> Row:
    """One way; the total of the chosen one follows the price build-up."""
    opening, _ = draft.area(route.opening_in2)
    money = looks.figure(looks.MONEY)
    live = route.chosen and route.total == draft.bid.price.total
    total = formula("bid_total", route.total) if live else figure_only(route.total)
    return [
        line_number(route.rank), words(route.route), total._replace(look=money),
        words("; ".join(route.blocked_by) or NOTHING), words("yes" if route.chosen else "no"),
        words(route.order_text), figure_only(route.members),
        figure_only(to_decimal(opening, AREA_PLACES)),
        figure_only(route.hours)._replace(look=looks.figure(looks.HOURS)),
        figure_only(route.cost)._replace(look=money),
    ]  # fmt: skip


def _own_rows(draft: Draft, sheet: Sheet) -> Iterator[Row]:
    """What the bid costs, what the parts cost, and from which worth of an hour hiring pays."""
    price, hours = draft.bid.price, draft.bid.hours.likely
    rest = price.total - price.materials_cost
    first = sheet.next_row
    lines = [
        ("Hire: the whole bid", draft.money("bid_total", price.total), "total of this bid"),
        (
            "Parts, if you buy them",
            draft.money("materials_cost", price.materials_cost),
            "what they cost, small items included, before any tax on them",
        ),
        (
            "Everything else in the bid",
            draft.money(f"C{first}-C{first + 1}", rest),
            "labor, trips, markup, permit and tax: what hiring adds to the parts",
        ),
        ("Hours of work, likely", formula("hours_likely", hours, _HOURS), "one person, used to it"),
        (
            "Worth of an hour at which both cost the same",
            _even(draft, (f"C{first + 2}", rest), (f"C{first + 3}", hours)),
            "everything else / hours; hiring pays if an hour of yours is worth more",
        ),
    ]
    factor = draft.bid.books.shop.conditions.get(FIRST_TIME)
    if factor is not None:
        lines += _first_time(draft, first, (rest, hours, factor))
    for at, (what, amount, how) in enumerate(lines, start=1):
        yield [line_number(at), words(what), amount, words(how)]


def _first_time(
    draft: Draft, first: int, figures: tuple[Decimal, Decimal, Decimal]
) -> list[tuple[str, Cell, str]]:
    """The same for somebody who does such work for the first time and takes longer."""
    rest, hours, factor = figures
    longer = to_decimal(hours * factor, _SIX)
    slow = formula(f"ROUND(C{first + 3}*C{first + 5},{_SIX})", longer, _HOURS)
    even = _even(draft, (f"C{first + 2}", rest), (f"C{first + 6}", longer))
    return [
        ("Factor for the first time", number(factor), "setting conditions.first-time of the shop"),
        ("Hours of work, the first time", slow, "likely hours x factor"),
        ("Worth of an hour, the first time", even, "everything else / these hours"),
    ]


def _even(draft: Draft, rest: tuple[str, Decimal], hours: tuple[str, Decimal]) -> Cell:
    """Divide what hiring adds by the hours it saves; in words where there are none."""
    ratio = draft.round_to(f"{rest[0]}/{hours[0]}")
    text = f'IF({hours[0]}=0,"{NO_HOURS}",{ratio})'
    if not hours[1]:
        return formula(text, NO_HOURS)
    worth = to_decimal(Fraction(rest[1]) / Fraction(hours[1]), draft.formats.places)
    return draft.money(text, worth)
