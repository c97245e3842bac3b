"""Amounts in the words of a list: 25 pieces are "25", and of a coil one pays per foot."""

from __future__ import annotations

from decimal import ROUND_CEILING, Decimal

from estimator.outputs.text_layout import number
from estimator.pricing.records import PackBought
from estimator.saying import said, several, word

PIECE, APPLICATION = "ea", "application"
COIL, LENGTH = "coil", "length"


def amount_in(quantity: Decimal, unit: str) -> str:
    """So much in its unit; pieces are only counted.

    >>> amount_in(Decimal(25), "ea"), amount_in(Decimal(2), "application")
    ('25', '2 applications')
    """
    shown = number(quantity)
    if unit == PIECE:
        return shown
    if unit == APPLICATION:
        return several(_whole(quantity), "{amount} application", "{amount} applications",
                       amount=shown)  # fmt: skip
    return said("{amount} {unit}", amount=shown, unit=word(unit))


def amount_of(quantity: Decimal, unit: str, what: str) -> str:
    """So much of a thing."""
    if unit == PIECE:
        return said("{count} x {what}", count=number(quantity), what=what)
    if unit == APPLICATION:
        return several(_whole(quantity), "{amount} application: {what}",
                       "{amount} applications: {what}", amount=number(quantity),
                       what=what)  # fmt: skip
    return said("{amount} {unit} {what}", amount=number(quantity), unit=word(unit), what=what)


def _whole(quantity: Decimal) -> int:
    return int(quantity.to_integral_value(ROUND_CEILING))


def cost_with_price(cost: str, price: str, pack: PackBought) -> str:
    """A cost with the price of one: per foot, per coil, per pack or each."""
    if pack.sold_as == LENGTH:
        return said("{cost} ({price} per {unit})", cost=cost, price=price, unit=_step(pack))
    if pack.sold_as == COIL:
        return said("{cost} ({price} per coil)", cost=cost, price=price)
    if pack.pack_size != 1:
        return said("{cost} ({price} per pack)", cost=cost, price=price)
    return said("{cost} ({price} each)", cost=cost, price=price)


def _step(pack: PackBought) -> str:
    """The length that a cut is sold by."""
    return word(pack.unit) if pack.pack_size == 1 else amount_in(pack.pack_size, pack.unit)
