"""Sizes of cable and resistance of wire."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from estimator.tables.facts import rows


@dataclass(frozen=True, slots=True)
class CableSize:
    """Outside of a flat cable, inches."""

    width_in: Fraction
    thickness_in: Fraction
    confidence: str


@cache
def cable_size(kind: str) -> CableSize | None:
    """Outside measures of a kind of cable; None where none is on file."""
    for row in rows("cable_sizes"):
        if row["kind"] == kind:
            width, thickness = Fraction(row["width_in"]), Fraction(row["thickness_in"])
            return CableSize(width, thickness, row["confidence"])
    return None


@dataclass(frozen=True, slots=True)
class WireResistance:
    """Solid uncoated wire at 75 C, direct current."""

    ohm_per_kft: Fraction
    where: str
    confidence: str


@cache
def wire_resistance(wire: str, material: str) -> WireResistance | None:
    """Resistance of one size of one metal; None where none is on file, never another metal's.

    Sizes are never interpolated.
    """
    for row in rows("wire_resistance"):
        if (row["material"], row["wire"]) == (material, wire):
            return WireResistance(Fraction(row["ohm_per_kft"]), row["where"], row["confidence"])
    return None
