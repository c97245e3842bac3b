"""How much room the wires of one space take, by the counting of one code."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.measures import CM_PER_IN
from estimator.saying import said
from estimator.tables.box_fill import FillRules
from estimator.tables.facts import cable_kinds
from estimator.takeoff.amounts import exact, trim

_FILLS_KEPT = 4096
_TENTH = Decimal("0.1")
_PAIR = 2


@dataclass(frozen=True, slots=True)
class Wires:
    """What the cables that end in a box bring.

    Attributes:
        by_size: insulated conductors by wire size. grounds: one with each cable.
        largest: the thickest size among them; empty where there are no cables.
        ground_wire: the thickest ground. A cable's ground is of the size of its other wires.
    """

    by_size: tuple[tuple[str, int], ...]
    grounds: int
    largest: str = ""
    ground_wire: str = ""


@lru_cache(maxsize=_FILLS_KEPT)
def wires_of(cables: tuple[str, ...]) -> Wires:
    """The wires that cables of these kinds bring: one ground with each."""
    by_size = Counter[str]()
    for name in cables:
        kind = cable_kinds()[name]
        by_size[kind.wire] += kind.insulated_count
    largest = _thickest(cables)
    return Wires(tuple(sorted(by_size.items())), len(cables), largest, largest)


def _thickest(cables: tuple[str, ...]) -> str:
    """The thickest wire; in AWG the smaller number, in mm2 the larger one."""
    kinds = [cable_kinds()[name] for name in cables]
    if not kinds:
        return ""
    pick = min if kinds[0].units == "us" else max
    return pick((kind.wire for kind in kinds), key=float)


def roomiest(cables: Iterable[str]) -> str:
    """The kind that takes most room in a box: most wires, then the thickest; never by order."""
    kinds = [cable_kinds()[name] for name in sorted(cables)]
    most = max(kind.insulated_count for kind in kinds)
    full = {kind.wire: kind.kind for kind in kinds if kind.insulated_count == most}
    return full[_thickest(tuple(full.values()))]


@dataclass(frozen=True, slots=True)
class Inside:
    """What else takes room in one space of a box, as it is to be counted.

    Attributes:
        device_gangs: gangs that devices take. device_wire: the thickest wire on a device.
        device_depth_in: behind the strap; counted where the code asks for it.
        clamps: inner clamps are there and counted. loops, passing: unbroken wires.
        through_wire: their size. fixture_wires: of a luminaire, by size.
        terminal_blocks: the thickest wire on each. connectors: wire connectors.
    """

    device_gangs: int = 0
    device_wire: str = ""
    device_depth_in: Fraction | None = None
    clamps: bool = False
    stud: bool = False
    hickey: bool = False
    loops: int = 0
    passing: int = 0
    through_wire: str = ""
    fixture_wires: tuple[tuple[str, int], ...] = ()
    canopy: bool = False
    terminal_blocks: tuple[str, ...] = ()
    isolated_grounds: int = 0
    bonding_jumpers: int = 0
    connectors: int = 0


@dataclass(frozen=True, slots=True)
class Fill:
    """Room taken, in the unit of the code, not rounded; and the sum in words."""

    total: Fraction
    said: str


# An allowance in conductors, and the wire size it is counted at.
_Term = tuple[Decimal, str]


@lru_cache(maxsize=_FILLS_KEPT)
def fill_of(wires: Wires, inside: Inside, rules: FillRules) -> Fill:
    """Room taken by the wires and by what else is there; pigtails and connectors are free (US).

    Raises:
        KeyError: a wire size without a row; sizes are never interpolated.
    Source: 314.16(B) of the edition, or Rule 12-3034: the figures of `rules`.
    """
    conductors = [term for term in _conductors(wires, inside, rules) if term[0]]
    if not conductors:
        return Fill(Fraction(0), said("no wires"))
    thickest = max((size for _, size in conductors), key=rules.volume.__getitem__)
    allowances = _allowances(wires, inside, rules, thickest)
    terms = [*conductors, *(term for term in allowances if term[0])]
    total, words = _add_up(terms, rules)
    deep = _deep_device(inside, rules)
    if deep:
        words = f"{words} + {_show(deep)}"
    total += deep
    return Fill(total, f"{words} = {_show(total)}")


def _conductors(wires: Wires, inside: Inside, rules: FillRules) -> Iterator[_Term]:
    """Conductors, each at its own size."""
    for size, count in wires.by_size:
        yield Decimal(count), size
    counts = rules.counts
    through = inside.loops * counts.loop + inside.passing * counts.passing
    if through:
        yield through, inside.through_wire
    free = _free_fixture_wires(inside, rules)
    for size, count in inside.fixture_wires:
        if size not in free:
            yield Decimal(count), size


def _free_fixture_wires(inside: Inside, rules: FillRules) -> frozenset[str]:
    """Sizes that a canopy brings for nothing: thin ones, where they are few enough."""
    if not inside.canopy or not rules.thin_below:
        return frozenset()
    least = rules.volume[rules.thin_below]
    thin = {size: count for size, count in inside.fixture_wires if rules.volume[size] < least}
    few = sum(thin.values()) <= rules.counts.canopy_wires
    return frozenset(thin) if few else frozenset()


def _allowances(wires: Wires, inside: Inside, rules: FillRules, thickest: str) -> Iterator[_Term]:
    """Allowances, each at the size that the code names."""
    counts = rules.counts
    yield ground_count(wires.grounds, inside, rules), wires.ground_wire or thickest
    if not _is_deep(inside, rules):
        yield inside.device_gangs * counts.device, inside.device_wire or thickest
    yield inside.clamps * counts.clamps, thickest
    yield inside.stud * counts.stud, thickest
    yield inside.hickey * counts.hickey, thickest
    for size in inside.terminal_blocks:
        yield counts.terminal_block, size
    yield inside.connectors // _PAIR * counts.connector_pair, thickest


def ground_count(grounds: int, inside: Inside, rules: FillRules) -> Decimal:
    """Allowances for the ground wires: one for so many, a share for each above; none for none."""
    counts = rules.counts
    counted = grounds + int(inside.bonding_jumpers * counts.bonding_jumper)
    apart = counts.isolated_grounds if inside.isolated_grounds else Decimal(0)
    if not apart:
        counted += inside.isolated_grounds
    if not counted:
        return apart
    above = max(Decimal(0), counted - counts.grounds_free)
    return apart + counts.grounds + counts.extra_ground * above


def _is_deep(inside: Inside, rules: FillRules) -> bool:
    return bool(_deep_device(inside, rules))


def _deep_device(inside: Inside, rules: FillRules) -> Fraction:
    """Room of a device that is too deep for the plain allowance."""
    if rules.deep_over_cm is None or rules.deep_per_cm is None or not inside.device_gangs:
        return Fraction(0)
    depth_cm = (inside.device_depth_in or Fraction(0)) * CM_PER_IN
    return rules.deep_per_cm * depth_cm if depth_cm > rules.deep_over_cm else Fraction(0)


def _add_up(terms: list[_Term], rules: FillRules) -> tuple[Fraction, str]:
    """The sum and its words, one group for each wire size, thickest last."""
    by_size: dict[str, list[Decimal]] = {}
    for count, size in terms:
        by_size.setdefault(size, []).append(count)
    parts, total = [], Fraction(0)
    for size in sorted(by_size, key=lambda each: (rules.volume[each], each)):
        volume = rules.volume[size]
        total += Fraction(sum(by_size[size], Decimal(0)) * volume)
        parts.append(f"({' + '.join(f'{trim(each)}' for each in by_size[size])}) x {volume}")
    return total, " + ".join(parts)


def _show(amount: Fraction) -> str:
    return str(at_least_tenths(exact(amount)))


def at_least_tenths(amount: Decimal) -> Decimal:
    """The same number with one decimal, or more where it has more: 18.0, 15.75."""
    tenths = amount.quantize(_TENTH)
    return tenths if tenths == amount else trim(amount)
