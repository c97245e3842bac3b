"""How much room the wires of one box take, by the edition's counting."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from estimator.survey.electrical import Device
from estimator.tables.facts import FillRules, cable_kinds

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


def wires_of(cables: Iterable[str]) -> Wires:
    """The wires that cables of these kinds bring: one ground with each."""
    by_size = Counter[str]()
    grounds = 0
    for name in cables:
        kind = cable_kinds()[name]
        by_size[kind.wire] += kind.insulated_count
        grounds += 1
    return Wires(tuple(sorted(by_size.items())), grounds)


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
    extras = [Decimal(device_count), Decimal(rules.clamp_count if clamps else 0)]
    extras.append(_ground_count(wires.grounds, rules))
    if len(wires.by_size) == 1:
        terms = [Decimal(wires.by_size[0][1]), extras[2], extras[0], extras[1]]
        total_in3 = sum(terms, Decimal(0)) * largest_in3
        said = " + ".join(f"{term.normalize():f}" for term in terms if term)
        return total_in3, f"({said}) x {largest_in3} = {_said(total_in3)}"
    total_in3 = sum(
        (count * rules.volume_in3[wire] for wire, count in wires.by_size), Decimal(0)
    ) + largest_in3 * sum(extras, Decimal(0))
    parts = [f"{count} x {rules.volume_in3[wire]}" for wire, count in wires.by_size]
    extra = sum(extras, Decimal(0))
    return total_in3, f"{' + '.join(parts)} + {extra:f} x {largest_in3} = {_said(total_in3)}"


def _said(amount_in3: Decimal) -> str:
    """Cubic inches for a sentence; exact, with at least one decimal."""
    plain = amount_in3.normalize()
    text = f"{plain:f}"
    return text if "." in text else f"{text}.0"


def _ground_count(grounds: int, rules: FillRules) -> Decimal:
    """One allowance for the grounds, and a share more for each above those it covers."""
    if grounds == 0:
        return Decimal(0)
    if rules.grounds_free_count == 0:
        return Decimal(1)
    return 1 + rules.extra_ground_share * max(0, grounds - rules.grounds_free_count)
