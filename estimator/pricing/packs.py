"""Whole packs at least cost: which packs of an item to buy, and why these."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from math import gcd, lcm

from estimator.pricing._pack_search import Pack, cheapest_counts
from estimator.saying import listed, said, several

KEPT_CHOICES = 1 << 13
"""Choices kept for asking again: many jobs need the same few parts."""


@dataclass(frozen=True, slots=True)
class PackOffer:
    """One way to buy an item: `pack_size` units of it for `price`, from one supplier.

    Raises:
        ValueError: a size that is not above zero, or a price below zero.
    """

    offer_id: str
    supplier: str
    pack_size: Decimal
    price: Decimal

    def __post_init__(self) -> None:
        """Refuse what would make a free or an endless purchase."""
        if not (self.pack_size.is_finite() and self.pack_size > 0):
            raise ValueError(f"offer {self.offer_id}: a pack of {self.pack_size} holds nothing")
        if not (self.price.is_finite() and self.price >= 0):
            raise ValueError(f"offer {self.offer_id}: {self.price} is not a price")


@dataclass(frozen=True, slots=True)
class PackChoice:
    """The packs to buy.

    Attributes:
        packs: each offer with its count, largest pack first; empty if nothing is needed.
        cost: what they cost together, not rounded.
        bought: units in them together, at least the need.
        why: the reason in plain words, money without a currency sign.
    """

    packs: tuple[tuple[PackOffer, int], ...]
    cost: Decimal
    bought: Decimal
    why: str


NOTHING = PackChoice((), Decimal(0), Decimal(0), said("nothing needed"))
ONLY_PACK = said("the only pack on file")


def choose_packs(need: Decimal, offers: Sequence[PackOffer]) -> PackChoice:
    """Choose whole packs that cover the need at least cost.

    The answer is exact, whatever the sizes and the need (see _pack_search.py). Ties go to
    fewer packs, then fewer suppliers, then less left over, then the first offer_id. The order
    of the offers does not matter.

    Args:
        need: units needed, 0 or more, in the unit of the pack sizes; may be a fraction.
        offers: every way to buy the item; missing prices are the caller's to handle.

    Raises:
        ValueError: a need below zero or not a number, or something needed and no offer.

    >>> ten = PackOffer("box-10", "North", Decimal(10), Decimal("1.80"))
    >>> one = PackOffer("single", "North", Decimal(1), Decimal("0.25"))
    >>> choose_packs(Decimal(8), [one, ten]).why
    '1 pack of 10 at 1.80 costs less than 8 packs of 1 (2.00)'
    """
    if not (need.is_finite() and need >= 0):
        raise ValueError(f"{need} is not a number of units to buy")
    if need == 0:
        return NOTHING
    if not offers:
        raise ValueError(f"{need} needed, and no pack is on file")
    return _choose(need, tuple(offers), _places(offers))


def _places(offers: Sequence[PackOffer]) -> int:
    """Decimal places to show money with: as many as the longest price."""
    return max(0, *(-int(offer.price.as_tuple().exponent) for offer in offers))


@lru_cache(maxsize=KEPT_CHOICES)
def _choose(need: Decimal, offers: tuple[PackOffer, ...], places: int) -> PackChoice:
    """Choose, and keep the answer; `places` is here so that it shows prices as they came."""
    listed = sorted(set(offers), key=_listing)
    units, packs = _in_whole_numbers(need, listed, places)
    counts = cheapest_counts(units, packs)
    taken = [(offer, count) for offer, count in zip(listed, counts, strict=True) if count]
    taken.sort(key=lambda line: -line[0].pack_size)
    chosen = _Purchase(tuple(taken))
    one_kind = [
        _Purchase(((offer, -(-units // pack.size)),))
        for offer, pack in zip(listed, packs, strict=True)
    ]
    why = _why(chosen, one_kind, _Words(places, len({offer.supplier for offer in listed}) > 1))
    return PackChoice(chosen.lines, Decimal(f"{chosen.cost:.{places}f}"), chosen.bought, why)


def _listing(offer: PackOffer) -> tuple[str, str, Decimal, Decimal]:
    return (offer.offer_id, offer.supplier, offer.pack_size, offer.price)


def _in_whole_numbers(
    need: Decimal, offers: Sequence[PackOffer], places: int
) -> tuple[int, list[Pack]]:
    """Ask the same without fractions: units of the sizes' common divisor, smallest coin."""
    sizes = [offer.pack_size.as_integer_ratio() for offer in offers]
    parts = lcm(*(below for _, below in sizes))
    whole = [above * (parts // below) for above, below in sizes]
    unit = gcd(*whole)
    above, below = need.as_integer_ratio()
    suppliers = {name: at for at, name in enumerate(sorted({offer.supplier for offer in offers}))}
    packs = [
        Pack(size // unit, _coins(offer.price, places), suppliers[offer.supplier])
        for size, offer in zip(whole, offers, strict=True)
    ]
    return -(-above * parts // (below * unit)), packs


def _coins(price: Decimal, places: int) -> int:
    """Count the price in units of its last decimal place."""
    above, below = price.as_integer_ratio()
    return int(above * 10**places // below)


@dataclass(frozen=True, slots=True)
class _Purchase:
    """Offers with counts, and the sums that go with them."""

    lines: tuple[tuple[PackOffer, int], ...]

    @property
    def cost(self) -> Decimal:
        return sum((offer.price * count for offer, count in self.lines), Decimal(0))

    @property
    def bought(self) -> Decimal:
        units = sum((offer.pack_size * count for offer, count in self.lines), Decimal(0))
        return Decimal(_plain(units))

    @property
    def pack_count(self) -> int:
        return sum(count for _, count in self.lines)


@dataclass(frozen=True, slots=True)
class _Words:
    """How a purchase reads: decimal places of money, and whether suppliers are named."""

    places: int
    named: bool

    def money(self, price: Decimal) -> str:
        return f"{price:.{self.places}f}"

    def line(self, offer: PackOffer, count: int) -> str:
        size = _plain(offer.pack_size)
        packs = several(count, "{count} pack of {size}", "{count} packs of {size}", size=size)
        if not self.named:
            return packs
        return said("{packs} from {supplier}", packs=packs, supplier=offer.supplier)

    def purchase(self, chosen: _Purchase) -> str:
        """List the packs with their prices."""
        parts = [
            said("{packs} at {price}", packs=self.line(*line), price=self.money(line[0].price))
            for line in chosen.lines
        ]
        *first, last = parts
        return said("{first} and {last}", first=listed(first), last=last) if first else last


def _why(chosen: _Purchase, one_kind: Sequence[_Purchase], say: _Words) -> str:
    """Set this purchase beside the best one that keeps to one kind of pack."""
    if len(one_kind) == 1:
        return ONLY_PACK
    other = min(
        (purchase for purchase in one_kind if purchase.lines != chosen.lines),
        key=lambda purchase: (purchase.cost, purchase.pack_count, purchase.bought),
    )
    if other.cost == chosen.cost:
        return _same(chosen, other, say)
    return _less(chosen, other, say)


def _less(chosen: _Purchase, other: _Purchase, say: _Words) -> str:
    """The sum is left out where one price already is the sum."""
    packs, instead = say.purchase(chosen), say.line(*other.lines[0])
    if chosen.pack_count == 1:
        return said(
            "{packs} costs less than {instead} ({price})",
            packs=packs, instead=instead, price=say.money(other.cost),
        )  # fmt: skip
    return said(
        "{packs} cost {cost}, less than {instead} ({price})",
        packs=packs, cost=say.money(chosen.cost), instead=instead, price=say.money(other.cost),
    )  # fmt: skip


def _same(chosen: _Purchase, other: _Purchase, say: _Words) -> str:
    packs, instead = say.purchase(chosen), say.line(*other.lines[0])
    price, reason = say.money(other.cost), _tie_reason(chosen, other)
    if chosen.pack_count == 1:
        return said(
            "{packs} costs the same as {instead} ({price}), {reason}",
            packs=packs, instead=instead, price=price, reason=reason,
        )  # fmt: skip
    return said(
        "{packs} cost {cost} the same as {instead} ({price}), {reason}",
        packs=packs, cost=say.money(chosen.cost), instead=instead, price=price, reason=reason,
    )  # fmt: skip


def _tie_reason(chosen: _Purchase, other: _Purchase) -> str:
    """Say what decided between two purchases of one cost."""
    if chosen.pack_count != other.pack_count:
        return said("in fewer packs")
    if chosen.bought != other.bought:
        return said("with less left over")
    return said("and stands first on the list")


def _plain(number: Decimal) -> str:
    """Write the number without an exponent or closing zeros."""
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
