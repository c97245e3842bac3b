"""What every list for the terminal says of its job: title, assumptions, what has no price."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal

from estimator.guide.title_words import title_of
from estimator.language import ENGLISH, Language
from estimator.money import show_money
from estimator.outputs.text_layout import heading, wrapped
from estimator.pricing.records import Bid, RouteOption
from estimator.saying import said
from estimator.takeoff.records import Assumption

CAUTION = (
    "Turn the power off and prove it dead before you open anything. Local code, the inspector "
    "and licensed practice decide; this is an estimate."
)
UNMEASURED = "Not measured, so assumed"
LEFT = "Found, and left as it is"


def title_lines(bid: Bid, language: Language = ENGLISH) -> list[str]:
    """Say which job this is."""
    job = bid.survey.job
    named = said(
        "{title} (job {job}, {customer})",
        title=title_of(bid.survey),
        job=job.id,
        customer=job.customer,
    )
    return wrapped(language.say(named))


def caution_lines() -> list[str]:
    """Say what no estimate may leave out."""
    return ["", *wrapped(CAUTION)]


def money(bid: Bid, amount: Decimal) -> str:
    """Show money in the currency of the books and the locale of the job."""
    return show_money(amount, bid.books.shop.currency, bid.survey.job.locale)


def assumption_lines(assumptions: Sequence[Assumption]) -> list[str]:
    """List what nobody measured, with what was taken in its place; then what was left as it is."""
    lines: list[str] = []
    for title, decided in ((UNMEASURED, False), (LEFT, True)):
        listed = [each for each in assumptions if each.decided == decided]
        shown = [line for each in listed for line in _assumption(each)]
        lines += [*heading(title), *shown] if shown else []
    return lines


def _assumption(each: Assumption) -> list[str]:
    price = " (moves the price)" if each.moves_price else ""
    if each.in_second_total:
        price = " (in the second total)"
    checks = f" [{', '.join(each.findings)}]" if each.findings else ""
    return wrapped(f"{each.about}: {each.taken}{price}{checks}", first=f"{each.number:>2}. ")


def unpriced_lines(bid: Bid, language: Language = ENGLISH) -> list[str]:
    """List the items without a price; the total leaves them out."""
    items = bid.price.unpriced_items
    if not items:
        return []
    without = said("The total leaves these out. Give them a price in materials.csv:")
    return [
        *heading(language.say(said("Price unknown"))),
        *wrapped(language.say(without)),
        *(line for item in items for line in _item(language.say(item))),
    ]


def _item(item: str) -> list[str]:
    return wrapped(item, first="  ")


def ways_lines(bid: Bid, way: Callable[[Bid, RouteOption], list[str]]) -> list[str]:
    """Every way of a survey that has several, best first; `way` says what there is to one."""
    if len(bid.routes) == 1:
        return []
    lines = [line for option in bid.routes for line in way(bid, option)]
    return [*heading("Ways, best first"), *lines]
