"""How a box is counted: room each wire takes, allowances by code, the standard metal boxes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Literal

from estimator.tables.facts import Row, editions, rows
from estimator.tables.limits import limit

US_RULE = "box-fill"
CANADA_RULE = "box-fill-canada"
CANADA = "canada"
_MEMORY = "memory"
_BARRIERS = ("metal", "nonmetallic")
_MOST = "most_"
Amended = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Counts:
    """Allowances, in conductors.

    Attributes:
        clamps: all inner cable clamps together. stud, hickey: each kind.
        device: each gang that a device takes. loop, passing: each unbroken wire.
        grounds: the ground wires, as many as `grounds_free` (0: any number).
        extra_ground: each ground wire above those. isolated_grounds: a set apart from the rest
            (0: they count with the rest). bonding_jumper: ground wires that one counts as.
        terminal_block: each. connector_pair: each two wire connectors.
        canopy_wires: wires thinner than `canopy_below` that a canopy may bring for nothing.
    """

    clamps: Decimal
    stud: Decimal
    hickey: Decimal
    device: Decimal
    loop: Decimal
    passing: Decimal
    grounds: Decimal
    grounds_free: Decimal
    extra_ground: Decimal
    isolated_grounds: Decimal
    bonding_jumper: Decimal
    terminal_block: Decimal
    connector_pair: Decimal
    canopy_wires: Decimal


@dataclass(frozen=True, slots=True, eq=False)
class FillRules:
    """How one code counts a box; one record a code, compared by identity.

    Attributes:
        rule: id of the rule that judges by it. unit: of every volume here, "in3" or "mL".
        volume: room one conductor takes, by wire size.
        barrier: room an unmarked barrier takes, by what it is made of; empty: not on file.
        thin_below: wire size that `Counts.canopy_wires` is about.
        deep_over_cm, deep_per_cm: a device deeper than the first takes the second for each
            centimetre, in the place of its allowance; None where depth does not matter.
        table_boxes: an unmarked metal box may be looked up in the standard boxes.
        from_memory: wire sizes whose room was not read in a source, and "clamps" likewise.
    """

    rule: Literal["box-fill", "box-fill-canada"]
    unit: Literal["in3", "mL"]
    volume: Mapping[str, Decimal]
    counts: Counts
    barrier: Mapping[str, Decimal]
    thin_below: str
    deep_over_cm: Fraction | None
    deep_per_cm: Fraction | None
    table_boxes: bool
    from_memory: frozenset[str]


@cache
def us_fill_rules(edition: str, amended: Amended = ()) -> FillRules:
    """How an edition of the US code counts, with local changes of its figures.

    Args:
        edition: its key, such as "nec-2023".
        amended: figure and value of each change, such as ("box-fill-clamps", "0").

    Raises:
        NotOnFile: an edition without rows; the message lists those on file.
    """
    changed = dict(amended)

    def figure(name: str) -> Decimal:
        key = f"box-fill-{name}"
        return _decimal(Fraction(changed.get(key) or limit(key, edition).value))

    counts = {each.name: figure(each.name.replace("_", "-")) for each in fields(Counts)}
    sizes = [row for row in rows("wire_volume") if row["edition"] == edition]
    return FillRules(
        rule="box-fill",
        unit="in3",
        volume={row["wire"]: Decimal(row["volume_in3"]) for row in sizes},
        counts=Counts(**counts),
        barrier={kind: figure(f"barrier-{kind}") for kind in _BARRIERS},
        thin_below=str(figure("canopy-below")),
        deep_over_cm=None,
        deep_per_cm=None,
        table_boxes=True,
        from_memory=_remembered(sizes),
    )


@cache
def canada_fill_rules() -> FillRules:
    """How Rule 12-3034 counts; one set, whatever the job's edition (ce-code, ce-guide)."""
    counts = {each.name: _decimal(_canada(each.name)) for each in fields(Counts)}
    sizes = rows("canada_wire_volume")
    clamps = limit(f"{CANADA}-clamps", CANADA).confidence
    return FillRules(
        rule="box-fill-canada",
        unit="mL",
        volume={row["wire"]: Decimal(row["volume_ml"]) for row in sizes},
        counts=Counts(**counts),
        barrier={},
        thin_below="",
        deep_over_cm=_canada("deep_device_over"),
        deep_per_cm=_canada("deep_device"),
        table_boxes=False,
        from_memory=_remembered(sizes) | ({"clamps"} if clamps == _MEMORY else set()),
    )


def _canada(name: str) -> Fraction:
    return limit(f"{CANADA}-{name.replace('_', '-')}", CANADA).value


def _decimal(exact: Fraction) -> Decimal:
    return Decimal(exact.numerator) / Decimal(exact.denominator)


def _remembered(sizes: tuple[Row, ...] | list[Row]) -> frozenset[str]:
    return frozenset(row["wire"] for row in sizes if row["confidence"] == _MEMORY)


def has_fill_rules(edition: str, country: str) -> bool:
    """True where an edition is on file and belongs to the country."""
    row = editions().get(edition)
    return row is not None and row["country"] == country


@dataclass(frozen=True, slots=True)
class StandardBox:
    """One row of the standard metal boxes, for boxes without a mark.

    Attributes:
        per_gang: the volume is that of one gang; sections are put together.
        most: conductors of one size that fit where nothing else is in the box.
    """

    box: str
    description: str
    volume_in3: Decimal
    volume_cm3: int
    per_gang: bool
    most: Mapping[str, int]


@cache
def standard_boxes() -> Mapping[str, StandardBox]:
    """Standard metal boxes by their id (nec-2023, Table 314.16(A))."""
    return {row["box"]: _standard_box(row) for row in rows("standard_boxes")}


def _standard_box(row: Row) -> StandardBox:
    most = {key.removeprefix(_MOST): int(row[key]) for key in row if key.startswith(_MOST)}
    return StandardBox(
        row["box"],
        row["description"],
        Decimal(row["volume_in3"]),
        int(row["volume_cm3"]),
        row["per_gang"] == "yes",
        most,
    )
