"""Ways made of a few figures, for what is said of them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from functools import partial
from typing import cast

from estimator.money import show_money
from estimator.pricing.work import Work

DOLLARS = partial(show_money, currency="USD", locale="en_US")


@dataclass(frozen=True)
class Cost:
    labor: Decimal
    materials_listed: Decimal
    unpriced_items: tuple[str, ...] = ()


@dataclass(frozen=True)
class Way:
    price: Cost
    blocked_by: tuple[str, ...] = ()


def way(labor: str, materials: str, *, blocked: str = "", unpriced: str = "") -> Work:
    items = (unpriced,) if unpriced else ()
    cost = Cost(Decimal(labor), Decimal(materials), items)
    return cast(Work, Way(cost, (blocked,) if blocked else ()))
