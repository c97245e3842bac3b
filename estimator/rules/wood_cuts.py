"""What a run cuts in wood, the limits of a cut where facts are missing, and how they are said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from estimator.measures import MM_PER_IN, to_decimal
from estimator.route.records import PathLeg, RunPath
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Verdict
from estimator.survey.electrical import Method
from estimator.survey.place import Member, Wall
from estimator.tables.limits import Limit
from estimator.takeoff.amounts import Units, trim

Known = Literal["yes", "no", "unknown"]
WALL_PLATE = "wall plate"
BORED: tuple[Method, ...] = ("bored", "fished")
NOTCHED: tuple[Method, ...] = ("notched",)
# Members that are judged as something else than a stud; every other kind stands upright.
_NOT_STUDS = (WALL_PLATE, "plate", "block", "nog", "joist")
_WORST_FIRST: tuple[Verdict, ...] = ("fail", "unknown", "note", "pass")
_SIXTEENTHS = 16
_PERCENT = "%"
_PLACES = 4


@dataclass(frozen=True, slots=True)
class Judged:
    """The answer for one cut, before the answers of a whole run are put together."""

    verdict: Verdict
    figures: str
    remedy: str = ""


@dataclass(frozen=True, slots=True)
class Holes:
    """Members of one kind that a leg passes, each with a hole as far from its face.

    Attributes:
        edge_in: edge of the hole to the nearest face as stated; None: the hole is centred.
        member: as the survey lists it, with measures of its own; None for the others.
    """

    kind: str
    count: int
    edge_in: Fraction | None
    member: Member | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """What the limits of a stud hang on, and what is cut in it: None where nobody knows."""

    bears: Known
    doubled: Known
    wood: Known
    depth_in: Fraction | None
    edge_in: Fraction | None
    hole_in: Fraction
    notch_in: Fraction | None


@dataclass(frozen=True, slots=True)
class StudCut:
    """Studs that a run cuts alike: how many in all, and how many one after another."""

    standing: Standing
    count: int
    in_a_row_count: int


@dataclass(frozen=True, slots=True)
class Bounds:
    """The least and the most that a cut may take, whatever the missing facts turn out to be."""

    low: Limit
    low_depth_in: Fraction
    high: Limit
    high_depth_in: Fraction

    @property
    def low_in(self) -> Fraction:
        """A cut no larger than this is within the limit in any case."""
        return share(self.low) * self.low_depth_in

    @property
    def high_in(self) -> Fraction:
        """A cut larger than this is over the limit in any case."""
        return share(self.high) * self.high_depth_in

    def verdict(self, cut_in: Fraction) -> Verdict:
        """Pass within the least, fail over the most, unknown between; equality passes."""
        if cut_in <= self.low_in:
            return "pass"
        return "fail" if cut_in > self.high_in else "unknown"

    def say(self, units: Units, cut_in: Fraction) -> str:
        """The limit that decides for this cut, or both where neither does."""
        low = allowed(units, self.low, self.low_depth_in)
        high = allowed(units, self.high, self.high_depth_in)
        verdict = self.verdict(cut_in)
        if verdict == "unknown":
            return f"at most {low} or {high}, depending on what is not known"
        return f"at most {low if verdict == 'pass' else high}"


def share(limit: Limit) -> Fraction:
    """A limit as a share of the depth: 40 % is 2/5."""
    return limit.value / 100 if limit.unit == _PERCENT else limit.value


def allowed(units: Units, limit: Limit, depth_in: Fraction) -> str:
    """A share of a depth as a length, rounded down, with its sum: "1-3/8 in (40 % of 3.5 in)"."""
    most = rounded_down(units, share(limit) * depth_in)
    said = f"{trim(to_decimal(limit.value, _PLACES))} %" if limit.unit == _PERCENT else limit.value
    return f"{most} ({said} of {units.say_unit(depth_in)})"


def rounded_down(units: Units, length_in: Fraction) -> str:
    """A limit as read on a tape: down to 1/16 in, or to the whole millimetre."""
    if units.system == "metric":
        return f"{floor(length_in * MM_PER_IN)} mm"
    whole, rest = divmod(Fraction(floor(length_in * _SIXTEENTHS), _SIXTEENTHS), 1)
    if not rest:
        return f"{whole} in"
    return f"{whole}-{rest} in" if whole else f"{rest} in"


def bears(wall: Wall | None) -> Known:
    """Whether the limits of a bearing wall hold; an exterior wall counts as one."""
    if wall is None:
        return "unknown"
    if "yes" in (wall.bearing, wall.exterior):
        return "yes"
    return "no" if wall.bearing == wall.exterior == "no" else "unknown"


def hole_in(facts: Facts, path: RunPath, member: Member | None = None) -> Fraction:
    """Diameter of a hole: the member's own, else the run's, else the shop's."""
    if member is not None and member.hole_in is not None:
        return member.hole_in
    return facts.practice.hole_in if path.run.hole_in is None else path.run.hole_in


def notch_in(path: RunPath, member: Member | None) -> Fraction | None:
    """Depth of a notch: the member's own, else the run's; None where nobody knows."""
    if member is not None and member.notch_depth_in is not None:
        return member.notch_depth_in
    return path.run.notch_depth_in


def depth_range(facts: Facts, depth_in: Fraction | None) -> tuple[Fraction, Fraction]:
    """Least and most depth of a stud that nobody measured; the measured one twice."""
    if depth_in is not None:
        return depth_in, depth_in
    return facts.building("stud-depth-least").value, facts.building("stud-depth-most").value


def holes(path: RunPath, leg: PathLeg) -> Iterator[Holes]:
    """Members of one leg with the stated edge distance, wall plates last."""
    run_edge_in = path.run.edge_in
    yield Holes("stud", leg.studs, run_edge_in)
    for each in leg.crossed:
        edge_in = run_edge_in if each.edge_in is None else each.edge_in
        yield Holes(each.kind, each.count, edge_in, each.member)
    yield Holes(WALL_PLATE, leg.plate_holes, run_edge_in)


def stud_cuts(facts: Facts, path: RunPath, methods: Sequence[Method]) -> tuple[StudCut, ...]:
    """Wooden studs that the run cuts by these methods; those that stand alike together."""
    found: dict[Standing, tuple[int, int]] = {}
    for leg in path.legs:
        if leg.steel or leg.method not in methods:
            continue
        uprights = [each for each in holes(path, leg) if each.kind not in _NOT_STUDS]
        row = path.run.doubled_in_a_row_count or sum(each.count for each in uprights)
        for each in uprights:
            if each.count:
                standing = _standing(facts, path, leg, each)
                count, in_a_row = found.get(standing, (0, 0))
                found[standing] = (count + each.count, max(in_a_row, row))
    return tuple(StudCut(standing, *counts) for standing, counts in found.items())


def _standing(facts: Facts, path: RunPath, leg: PathLeg, each: Holes) -> Standing:
    wall = facts.walls.get(leg.wall or "")
    doubled: Known = "yes" if path.run.doubled_in_a_row_count else "unknown"
    if wall is not None:
        doubled = wall.doubled_studs
    return Standing(
        bears=bears(wall),
        doubled=doubled,
        wood="yes" if wall is None or wall.framing == "wood" else "unknown",
        depth_in=leg.depth_in,
        edge_in=each.edge_in,
        hole_in=hole_in(facts, path, each.member),
        notch_in=notch_in(path, each.member),
    )


def merged(judged: Sequence[Judged]) -> Judged:
    """One answer for several: the worst verdict, its remedies, all figures worst first."""
    ordered = sorted(judged, key=lambda each: _WORST_FIRST.index(each.verdict))
    verdict = ordered[0].verdict
    figures = "; ".join(dict.fromkeys(each.figures for each in ordered))
    remedies = dict.fromkeys(each.remedy for each in ordered if each.verdict == verdict)
    return Judged(verdict, figures, " ".join(filter(None, remedies)))


def together(facts: Facts, name: tuple[str, str], judged: Sequence[Judged], cite: str) -> Finding:
    """One finding for all that a run cuts."""
    whole = merged(judged)
    return facts.finding(name, whole.verdict, whole.figures, cite, whole.remedy)
