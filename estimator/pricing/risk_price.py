"""The price build-up over many draws at once: the same steps in the same order as the engine.

Every step is rounded to the minor unit as the engine rounds it. Binary floats stand in for
decimals: a figure less than a millionth of a unit below a half counts as the half, so what is
exactly on it is never lost. At the bid's own hours and materials it gives the bid's own total.
"""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

import numpy as np

from estimator.pricing.records import PriceBuild
from estimator.pricing.risk_draws import Draws
from estimator.settings import TaxRounding

_NEARLY = 1e-6
_HALF = 0.5
_EXACT_PLACES = 5
_LEAVES_STEPS_OUT = ("none", "paid-at-purchase", "materials-sold")
_STEPS_UP = ("minimum", "offer rounding")


class Priced(NamedTuple):
    """Prices of many draws: built up, and the total."""

    built_up: Draws
    total: Draws


class _Parts(NamedTuple):
    """The lines of the price, draw by draw; what never moves has one figure."""

    labor: Draws
    sell: Draws
    overhead: Draws
    profit: Draws
    contingency: Draws
    built_up: Draws
    minimum: Draws
    rounding: Draws


def price_draws(
    build: PriceBuild, hours: Draws, listed: Draws, places: int, contingency: Decimal = Decimal(0)
) -> Priced:
    """Price draws of hours and of the cost of listed materials.

    Args:
        build: the bid's own price; its rates, charges and tax rules are used.
        hours: hours of all tasks, as they would be charged.
        listed: cost of materials, small items not in it.
        places: of the currency's minor unit.
        contingency: what is added to the built-up price; none for draws, whose spread it is for.
    """
    parts = _parts(build, (hours, listed), places, float(contingency))
    before_tax = (
        parts.built_up
        + parts.minimum
        + parts.rounding
        + float(build.allowances_total + build.permit_cost + build.permit_handling)
    )
    return Priced(parts.built_up, before_tax + _tax(build, parts, places))


def _parts(
    build: PriceBuild, drawn: tuple[Draws, Draws], places: int, contingency: float
) -> _Parts:
    hours, listed = drawn
    run = build.supply_run
    labor = rounded((hours + float(run.labor_hours)) * float(build.labor_rate_per_hour), places)
    sell = _sell(build, listed, places)
    base = labor + sell + float(build.trips + run.amount)
    overhead = _share(base, build.overhead_pct, places)
    profit = _share(base + overhead, build.profit_pct, places)
    built_up = rounded(base + overhead + profit + contingency, places)
    offered = np.maximum(built_up, float(build.minimum_charge))
    stepped = _stepped(build, offered)
    return _Parts(
        labor,
        sell,
        overhead,
        profit,
        np.full(1, contingency),
        built_up,
        offered - built_up,
        stepped - offered,
    )


def _sell(build: PriceBuild, listed: Draws, places: int) -> Draws:
    """What the materials are sold for, from what they are listed at."""
    listed = rounded(listed, places)
    shelf = listed + _share(listed, build.small_items_pct, places)
    cost, paid = shelf, _share(shelf, build.purchase_rate_pct, places)
    if build.input_tax:
        cost = rounded(shelf * 100 / (100 + float(build.purchase_rate_pct)), places)
        paid = shelf - cost
    if not build.purchase_tax:
        paid = np.zeros(1)
    before = paid if build.purchase_tax_how == "before-markup" else 0.0
    after = paid if build.purchase_tax_how == "after-markup" else 0.0
    return rounded((cost + before) * (1 + float(build.markup_pct) / 100), places) + after


def _stepped(build: PriceBuild, offered: Draws) -> Draws:
    """The price offered as a multiple of the step, never below the minimum or to nothing."""
    step = float(build.offer_step)
    if not step:
        return offered
    up = np.ceil(offered / step - _NEARLY) * step
    if build.offer_rounding_how == "up":
        return up
    nearest = np.floor(offered / step + _HALF + _NEARLY) * step
    return np.where((nearest < float(build.minimum_charge)) | (nearest <= 0), up, nearest)


def _tax(build: PriceBuild, parts: _Parts, places: int) -> Draws:
    """The tax charged to the customer, on the invoice or line by line."""
    tax = build.tax_build
    share, factor = float(tax.share_pct) / 100, float(tax.factor_pct) / 100
    lines = _taxed(build, parts, places)
    if tax.basis == "line":
        bases = (rounded(line * share, places) for line in lines)
        return sum((rounded(base * factor, places, tax.rounding) for base in bases), np.zeros(1))
    whole = np.maximum(sum(lines, np.zeros(1)), 0)
    return rounded(rounded(whole * share, places) * factor, places, tax.rounding)


def _taxed(build: PriceBuild, parts: _Parts, places: int) -> list[Draws]:
    """The lines that are taxed: of one that moves, as much of it as is taxed in the bid."""
    known = {line.name: line.amount for line in build.tax_build.lines}
    at_rest = 0.0 if build.tax_build.mode in _LEAVES_STEPS_OUT else 1.0
    lines: list[Draws] = []
    for name, (moving, here) in _moving(build, parts).items():
        amount = known.pop(name, None)
        resting = at_rest if name in _STEPS_UP else 0.0
        part = float(amount) / float(here) if amount and here else resting
        lines.append(rounded(moving * part, places))
    return [*lines, *(np.full(1, float(amount)) for amount in known.values())]


def _moving(build: PriceBuild, parts: _Parts) -> dict[str, tuple[Draws, Decimal]]:
    """The lines that are not the same in every draw, with their amount in the bid."""
    stepped_up = build.offered - build.offer_rounding - build.built_up
    return {
        "labor": (parts.labor, build.labor),
        "materials": (parts.sell, build.materials_sell),
        "overhead": (parts.overhead, build.overhead),
        "profit": (parts.profit, build.profit),
        "contingency": (parts.contingency, build.contingency.amount),
        "minimum": (parts.minimum, stepped_up),
        "offer rounding": (parts.rounding, build.offer_rounding),
    }


def _share(amount: Draws, pct: Decimal, places: int) -> Draws:
    return rounded(amount * (float(pct) / 100), places)


def rounded(amounts: Draws, places: int, how: TaxRounding = "half-up") -> Draws:
    """Round to the minor unit; an amount below zero as its opposite would be.

    >>> rounded(np.array([169.425, 2.675, -2.675]), 2)
    array([169.43,   2.68,  -2.68])
    """
    units = np.abs(amounts) * 10**places
    if how == "down":
        whole = np.floor(units + _NEARLY)
    elif how == "half-even":
        whole = np.rint(np.round(units, _EXACT_PLACES))
    else:
        whole = np.floor(units + _HALF + _NEARLY)
    signed: Draws = np.copysign(whole / 10**places, amounts)
    return signed
