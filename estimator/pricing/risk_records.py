"""What the range of a job hands to the outputs: percentiles, chances, what drives the spread."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.settings_risk import Shape

InputKind = Literal["hours", "risk", "material prices", "waste"]


@dataclass(frozen=True, slots=True)
class RangeInput:
    """One figure that may come out otherwise.

    Attributes:
        name: a task with its place, a risk, or what is bought.
        low, likely, high: hours of a task, or more hours where a risk happens; of prices and
            waste, percent more or less than the books and the list.
        parts_low, parts_likely, parts_high: more cost of parts where a risk happens; else 0.
        chance_pct: of a risk; 100 for what always counts.
        mean, sd: by the closed form of its shape, to six places, chance in it; in hours, or in
            percent.
        swing: labor at its rate and materials at cost, from low to high, all others left alone;
            of a risk, the most it takes.
        source: where the range comes from.
    """

    kind: InputKind
    name: str
    low: Decimal
    likely: Decimal
    high: Decimal
    parts_low: Decimal
    parts_likely: Decimal
    parts_high: Decimal
    chance_pct: Decimal
    mean: Decimal
    sd: Decimal
    swing: Decimal
    source: str


@dataclass(frozen=True, slots=True)
class Spread:
    """How one figure comes out over all draws; P80 is not exceeded in 80 of 100 draws."""

    mean: Decimal
    sd: Decimal
    p10: Decimal
    p50: Decimal
    p80: Decimal
    p90: Decimal


@dataclass(frozen=True, slots=True)
class Level:
    """Hours, and total, that are not exceeded in `pct` of 100 draws; each read by itself."""

    pct: int
    hours: Decimal
    total: Decimal


@dataclass(frozen=True, slots=True)
class Driver:
    """One input and its part in the spread of labor and materials.

    Attributes:
        share_pct: of the variance of labor and materials as sold: the input's covariance with
            them. The shares of all inputs add up to 100, to the rounding.
        line: which of the inputs it is, from 1. swing: of the input.
    """

    line: int
    name: str
    kind: InputKind
    share_pct: Decimal
    swing: Decimal


@dataclass(frozen=True, slots=True)
class PriceRange:
    """How far hours and total of a job may come out otherwise.

    Attributes:
        draws, seed, shape, correlation_pct: how it was drawn.
        hours, total: of the draws. Hours are those of all tasks and risks; the total is the
            price of the job had those hours and materials been known, no contingency in it.
        hours_mean, hours_sd: the same by closed form, without draws, from those of the inputs.
        built_up_mean, built_up_sd: of the built-up price, before any minimum, by closed form.
        likely_hours, likely_total: every input at its likely value and no risk met, added up.
        likely_hours_at_pct, likely_total_at_pct: draws that do not exceed them, in percent.
        bid_total: of the bid, contingency in it. bid_holds_pct: draws that do not exceed it.
        confidence_pct, at_confidence: the total not exceeded in so many draws.
        drivers: inputs by their part in the spread, largest first, eight at most.
        notes: what to know about these figures.
    """

    draws: int
    seed: int
    shape: Shape
    correlation_pct: Decimal
    hours: Spread
    total: Spread
    hours_mean: Decimal
    hours_sd: Decimal
    built_up_mean: Decimal
    built_up_sd: Decimal
    likely_hours: Decimal
    likely_hours_at_pct: Decimal
    likely_total: Decimal
    likely_total_at_pct: Decimal
    bid_total: Decimal
    bid_holds_pct: Decimal
    confidence_pct: Decimal
    at_confidence: Decimal
    levels: tuple[Level, ...]
    drivers: tuple[Driver, ...]
    inputs: tuple[RangeInput, ...]
    notes: tuple[str, ...]
