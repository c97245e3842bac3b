"""What a range means, in words that the sheet and the terminal share."""

from __future__ import annotations

from decimal import Decimal

from estimator.outputs.text_layout import number
from estimator.pricing.risk_records import PriceRange, RangeInput

PERCENT_PLACES = 0
_LOW_PCT = 45
SHAPES = ("triangular", "pert")
_KINDS = {
    "hours": "hours of a task",
    "risk": "may be found",
    "material prices": "prices",
    "waste": "waste",
}


def about_p(pct: Decimal) -> str:
    """Where a figure stands among the draws, such as "P12".

    >>> about_p(Decimal("12.4"))
    'P12'
    """
    return f"P{number(pct, PERCENT_PLACES)}"


def likely_line(spread: PriceRange) -> str:
    """What adding up the likely values gives, and where that stands."""
    skewed = " What can go wrong takes longer than what can go well saves."
    why = skewed if spread.likely_hours_at_pct < _LOW_PCT else ""
    return (
        f"Likely values added up: at about {about_p(spread.likely_total_at_pct)} of the total and "
        f"at about {about_p(spread.likely_hours_at_pct)} of the hours. The middle is P50.{why}"
    )


def how_drawn(spread: PriceRange) -> str:
    """How the figures were found, so that they can be found again."""
    shape = "triangles" if spread.shape == "triangular" else "PERT curves"
    return (
        f"Found by drawing the job {spread.draws:,} times by chance (seed {spread.seed}): hours, "
        f"prices and waste as {shape} from low over likely to high, the hours of the tasks with a "
        f"correlation of {number(spread.correlation_pct)} %, each named risk by its own chance. "
        "Every draw is priced as the bid is, without contingency."
    )


def reading_line() -> str:
    """How a percentile reads."""
    return "P80 is the figure that 80 of 100 such jobs would not exceed; P50 is the middle."


def kind_words(kind: str) -> str:
    """What sort of input it is."""
    return _KINDS[kind]


def chance_words(each: RangeInput) -> str:
    """The chance of a risk."""
    return f"{number(each.chance_pct)} of 100 jobs"
