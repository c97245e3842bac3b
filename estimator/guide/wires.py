"""Sizes of wire and kinds of cable to choose from, in either system of units."""

from __future__ import annotations

from collections.abc import Mapping

from estimator.guide.questions import UNKNOWN
from estimator.tables.facts import cable_kinds

# Usual wire behind a breaker, largest breaker first; only a stand-in until somebody looks.
_BY_BREAKER_A = {"us": ((21, "10"), (16, "12"), (0, "14")), "metric": ((0, "2.5"),)}
_TWO_WIRES = 2


def wires(units: str) -> Mapping[str, str]:
    """Every size of wire that a cable on file has, thinnest first, each with its unit."""
    sizes = {kind.wire for kind in cable_kinds().values() if kind.units == units}
    if units == "metric":
        return {size: f"{size} mm2" for size in sorted(sizes, key=float)}
    return {size: f"{size} AWG" for size in sorted(sizes, reverse=True)}


def wire_of(breaker: str, units: str) -> str:
    """The usual wire behind a breaker; the thinnest where the breaker is unknown."""
    rows = _BY_BREAKER_A[units]
    amperes = 0 if breaker in ("", UNKNOWN) else int(breaker)
    return next(wire for least, wire in rows if amperes >= least)


def cable_of(wire: str, units: str) -> str:
    """The kind of cable with two insulated wires of a size; the first on file where none fits."""
    size = wire.removesuffix("mm2").strip()
    kinds = [kind for kind in cable_kinds().values() if kind.units == units]
    fitting = [kind for kind in kinds if kind.insulated_count == _TWO_WIRES and kind.wire == size]
    return (fitting or kinds)[0].kind
