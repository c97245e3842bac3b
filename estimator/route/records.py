"""A run as it goes: straight legs, each with what it passes.

Typed legs and drawn walls both end here, so everything after this works on one form.
Lengths are exact fractions of an inch.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from estimator.survey.electrical import Method, Run
from estimator.survey.place import Member

Go = Literal["up", "down", "along", "across", "through"]


@dataclass(frozen=True, slots=True)
class Crossed:
    """Members of one kind that a leg passes.

    Attributes:
        edge_in: edge of the hole to the nearest face where that was stated, else None.
        member: as the survey lists it; None where it is counted in another way.
    """

    kind: str
    count: int
    edge_in: Fraction | None = None
    member: Member | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Stretch:
    """Where a leg stands when its wall is looked at: the two ends, in the leg's direction.

    Heights are above the finished floor, negative below it; x runs from the wall's left end.
    """

    wall: str
    x1_in: Fraction
    height1_in: Fraction
    x2_in: Fraction
    height2_in: Fraction


@dataclass(frozen=True, slots=True)
class PathLeg:
    """One straight leg.

    Attributes:
        wall: the wall it lies in; None in open space and in the quick form.
        studs: grid studs crossed. assumed: counted from spacing alone.
        crossed: members that are not grid studs; corner and tee members among them.
        wall_plates: wall plates passed by each of `plate_holes` holes.
        depth_in: of the studs; None where nobody knows.
        passes_gap: what stands in the way: "door", "window" or "door and a window"; else empty.
        stretch: where it stands in the view of a wall; None for typed legs and open space.
    """

    go: Go
    length_in: Fraction
    method: Method
    wall: str | None = None
    studs: int = 0
    assumed: bool = False
    crossed: tuple[Crossed, ...] = ()
    corners: int = 0
    obstacles: int = 0
    wall_plates: int = 0
    plate_holes: int = 0
    floor_holes: int = 0
    depth_in: Fraction | None = None
    steel: bool = False
    passes_gap: str = ""
    stretch: Stretch | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class RunPath:
    """One run with its legs in order, from the feeding box on."""

    run: Run
    legs: tuple[PathLeg, ...]

    @property
    def path_in(self) -> Fraction:
        """Sum of the legs, box centre to box centre."""
        return sum((leg.length_in for leg in self.legs), Fraction(0))

    @property
    def level_in(self) -> Fraction:
        """Sum of the legs that do not rise or fall."""
        flat = (leg.length_in for leg in self.legs if leg.go in ("along", "across"))
        return sum(flat, Fraction(0))
