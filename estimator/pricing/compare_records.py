"""What comparing hands to the outputs: columns of doing it yourself and of each hire bid."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

Better = Literal["own", "hire", "same", "unknown"]
ColumnKind = Literal["own", "hire", "this bid"]
LineKind = Literal[
    "parts", "consumables", "tool", "permit", "patch and paint", "rework", "quote", "tax",
    "excluded", "extra", "time",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Taken:
    """A figure to reckon with, and where it is from.

    Attributes:
        value: None where nobody knows it.
        stated: the job states it; else it was taken from somewhere, or is unknown.
        why: where it is from, in words.
    """

    value: Decimal | None
    stated: bool
    why: str


@dataclass(frozen=True, slots=True)
class CostLine:
    """One line of a column, rounded to the minor unit.

    Attributes:
        cash: what is paid out; null where unknown, and then left out of the sum.
        all_in: the same with time, with what stays yours of a tool taken off, and with what a
            mistake may cost, weighed by its chance.
        keep_pct: of a tool, the share of its price that stays yours.
        part: what the bid leaves out; empty for other lines.
        how: how it is worked out, or where it is from.
    """

    kind: LineKind
    name: str
    cash: Decimal | None
    all_in: Decimal | None
    how: str
    keep_pct: Decimal | None = None
    part: str = ""


@dataclass(frozen=True, slots=True)
class Priced:
    """A part of the work priced from this takeoff: hours at the shop's rate, and its materials.

    Attributes:
        part: what a hire bid may leave out. phases: whose hours they are.
        hours: on the shop's basis. items: keys whose cost is in materials.
        amount: None where it cannot be priced.
    """

    part: str
    phases: tuple[str, ...]
    hours: Decimal
    items: tuple[str, ...]
    materials: Decimal
    amount: Decimal | None
    how: str


@dataclass(frozen=True, slots=True)
class CompareColumn:
    """Doing it yourself, or one hire bid.

    Attributes:
        name: who does the work. hours: hours of the owner's.
        cash: what is paid out. all_in: with time and what may go wrong; null where the
            quote is unknown.
        before_time: all in, without the time.
        left_out: lines and items whose price nobody knows; the sums leave them out.
        unstated: parts of the work that the bid says nothing of, with what they would cost
            if they are not in it; in no sum.
    """

    kind: ColumnKind
    name: str
    lines: tuple[CostLine, ...]
    hours: Decimal
    hours_taken: Taken
    cash: Decimal | None
    before_time: Decimal | None
    all_in: Decimal | None
    left_out: tuple[str, ...]
    unstated: tuple[Priced, ...] = ()
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Against:
    """Doing it yourself against one hire bid, all in.

    Attributes:
        by: how much less the better one costs.
        break_even: worth of an hour at which both cost the same: (hire - own, before time) /
            (own hours - hire hours); null where there is none, and `words` says why.
        break_even_low, break_even_high: the same if it takes the most, and the least, of hours.
    """

    hire: str
    better: Better
    by: Decimal | None
    break_even: Decimal | None
    break_even_low: Decimal | None
    break_even_high: Decimal | None
    words: str


@dataclass(frozen=True, slots=True)
class OwnWork:
    """What doing it yourself is reckoned from.

    Attributes:
        tax_pct: sales tax at the counter. bought_phases: phases that somebody else is paid for.
        hours_low, hours_high: what it may take at best and at worst; as `hours` where unstated.
        parts_items, consumable_items: keys of the items whose cost is in these lines.
    """

    pace: Taken
    hours: Taken
    hours_low: Taken
    hours_high: Taken
    tax_pct: Taken
    parts: Taken
    consumables: Taken
    permit: Taken
    patch_paint: Decimal | None
    rework_chance_pct: Taken
    rework_cost: Taken
    bought_phases: tuple[str, ...]
    parts_items: tuple[str, ...]
    consumable_items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Comparison:
    """Doing it yourself against hiring it out.

    Attributes:
        stops: why doing it yourself is not offered; then `own`, `own_column` and `against`
            are empty and no figure of own work is given.
        own_hour: worth of an hour of the owner's.
        assumed: what was taken because the job does not state it, a sentence each.
    """

    stops: tuple[str, ...]
    own_hour: Taken
    own: OwnWork | None
    own_column: CompareColumn | None
    hires: tuple[CompareColumn, ...]
    against: tuple[Against, ...]
    assumed: tuple[str, ...]
