"""How much room the wires of one box take, by the edition's counting."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from estimator.survey.electrical import Device
from estimator.tables.facts import FillRules, cable_kinds
from estimator.takeoff.amounts import trim

_FILLS_KEPT = 4096
_TENTH = Decimal("0.1")
_NO_YOKE: tuple[Device, ...] = ("luminaire", "none")


@dataclass(frozen=True, slots=True)
class Wires:
    """Insulated conductors that end in a box by wire size, and its equipment grounds."""

    by_size: tuple[tuple[str, int], ...]
    grounds: int

    @property
    def largest(self) -> str:
        """The thickest wire in the box; sizes are AWG, where the smaller number is thicker."""
        return min((wire for wire, _ in self.by_size), key=float)


@lru_cache(maxsize=_FILLS_KEPT)
def wires_of(cables: tuple[str, ...]) -> Wires:
    """The wires that cables of these kinds bring: one ground with each."""
    by_size = Counter[str]()
    grounds = 0
    for name in cables:
        kind = cable_kinds()[name]
        by_size[kind.wire] += kind.insulated_count
        grounds += 1
    return Wires(tuple(sorted(by_size.items())), grounds)


@lru_cache(maxsize=_FILLS_KEPT)
def fill_in3(
    wires: Wires, device: Device, gangs_count: int, clamps: bool, rules: FillRules
) -> tuple[Decimal, str]:
    """Volume taken in cubic inches, and the sum as text.

    Each insulated conductor counts once at its own size; a device, the internal clamps and
    the grounds together count at the largest size in the box. Not rounded; pigtails are free.

    Raises:
        KeyError: a wire size without a row; sizes are never interpolated.
    Source: nec-2023, 314.16(B); the edition's row in fill_rules.csv.
    """
    if not wires.by_size:
        return Decimal(0), "no wires"
    largest_in3 = rules.volume_in3[wires.largest]
    device_count = 0 if device in _NO_YOKE else rules.device_count_per_gang * gangs_count
    allowances = (
        _ground_count(wires.grounds, rules),
        Decimal(device_count),
        Decimal(rules.clamp_count if clamps else 0),
    )
    extra = sum(allowances, Decimal(0))
    wires_in3 = sum((count * rules.volume_in3[wire] for wire, count in wires.by_size), Decimal(0))
    total_in3 = at_least_tenths(wires_in3 + extra * largest_in3)
    if len(wires.by_size) == 1:
        terms = (Decimal(wires.by_size[0][1]), *allowances)
        said = " + ".join(f"{trim(term)}" for term in terms if term)
        return total_in3, f"({said}) x {largest_in3} = {total_in3}"
    parts = " + ".join(f"{count} x {rules.volume_in3[wire]}" for wire, count in wires.by_size)
    return total_in3, f"{parts} + {trim(extra)} x {largest_in3} = {total_in3}"


def at_least_tenths(amount: Decimal) -> Decimal:
    """The same number with one decimal, or more where it has more: 18.0, 15.75."""
    tenths = amount.quantize(_TENTH)
    return tenths if tenths == amount else trim(amount)


def _ground_count(grounds: int, rules: FillRules) -> Decimal:
    """One allowance for the grounds, and a share more for each above those it covers."""
    if grounds == 0:
        return Decimal(0)
    if rules.grounds_free_count == 0:
        return Decimal(1)
    return 1 + rules.extra_ground_share * max(0, grounds - rules.grounds_free_count)
