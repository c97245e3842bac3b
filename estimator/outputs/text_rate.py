"""The labor rate for the terminal: every step from the wage to the price of an hour."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from estimator.measures import to_decimal
from estimator.money import margin_from_markup, show_money
from estimator.outputs.text_layout import GAP, heading, number, wrapped
from estimator.pricing.price_records import RateBuild
from estimator.pricing.rate_builder import build_rate
from estimator.settings import Shop

PERCENT_PLACES = 2
LOCALE = "en_US"
_NOT_COUNTED = (
    "Material, trips and the permit are not in it: they are charged apart. Change these figures "
    'in [rate] of shop.toml; labor_rate_per_hour = "built" there uses the result.'
)
Line = tuple[str, str, str]


def rate_text(shop: Shop) -> list[str]:
    """Say what an hour costs, what it must be sold for, and what the books charge now."""
    built = build_rate(shop.rate, shop.currency)
    return [
        *heading("Labor rate, built up")[1:],
        *_columns(_lines(built, shop)),
        "",
        *wrapped(_same(built)),
        *wrapped(_charged(built, shop)),
        *wrapped(_NOT_COUNTED),
    ]


def added_pct(built: RateBuild) -> Decimal:
    """What the rate adds to the cost of a billable hour, in percent of that cost."""
    cost = built.cost_per_hour
    return 100 * (built.rate - cost) / cost if cost else Decimal(0)


def _lines(built: RateBuild, shop: Shop) -> Sequence[Line]:
    """Each step: its name, its figure and the sum behind it."""

    def money(amount: Decimal) -> str:
        return show_money(amount, shop.currency, LOCALE)

    return (
        ("Wage", money(built.wage_per_hour), "for one hour of one person"),
        ("Burden", f"{number(built.burden_pct)} %", f"of {built.burden_base}"),
        ("Wage with burden", money(built.burdened), "wage x (1 + burden)"),
        ("Paid hours", number(built.paid_hours), "in a year"),
        ("Billable", f"{number(built.billable_pct)} %", "of them, paid by customers"),
        ("Billable hours", number(built.billable_hours), "paid hours x billable"),
        ("Pay", money(built.labor_per_hour), "wage with burden x paid / billable hours"),
        ("Overhead in a year", money(built.overhead_per_year), ""),
        ("Overhead", money(built.overhead_per_hour), "that / billable hours"),
        ("Cost", money(built.cost_per_hour), "of a billable hour: pay + overhead"),
        ("Profit", f"{number(built.profit_margin_pct)} %", "of the rate, a margin"),
        ("Rate", money(built.rate), "cost / (1 - profit)"),
    )


def _columns(lines: Sequence[Line]) -> list[str]:
    """Names on the left, figures under each other, the sums on the right."""
    name = max(len(line[0]) for line in lines)
    figure = max(len(line[1]) for line in lines)
    return [
        f"{first:<{name}}{GAP}{second:>{figure}}{GAP}{third}".rstrip()
        for first, second, third in lines
    ]


def _same(built: RateBuild) -> str:
    """The step from cost to rate as a markup and as a margin."""
    markup_pct = added_pct(built)
    margin_pct = to_decimal(margin_from_markup(markup_pct), PERCENT_PLACES)
    shown = to_decimal(markup_pct, PERCENT_PLACES)
    return f"From cost to rate: a markup of {shown} %, which is a margin of {margin_pct} %."


def _charged(built: RateBuild, shop: Shop) -> str:
    """Which rate the books charge now."""
    stated = shop.price.labor_rate_per_hour
    if stated is None:
        return "Your books charge this rate."
    rate, own = (show_money(each, shop.currency, LOCALE) for each in (built.rate, stated))
    return f"Your books state {own} for an hour; built up it is {rate}."
