"""Which members, obstacles and gaps a straight leg meets inside one wall."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil, floor

from estimator.route.records import Crossed
from estimator.survey.place import Gap, Member, Obstacle, Tee, Wall
from estimator.survey.records import Survey
from estimator.tables.facts import lumber_depths_in, stud_default


@dataclass(frozen=True, slots=True)
class WallFrame:
    """One wall with everything that stands in it."""

    wall: Wall
    depth_in: Fraction | None
    gaps: tuple[tuple[str, Gap], ...]
    members: tuple[Member, ...]
    tees: tuple[Tee, ...]
    obstacles: tuple[Obstacle, ...]
    default_spacing_in: Fraction


@dataclass(slots=True)
class Met:
    """What one leg meets."""

    studs: int = 0
    assumed: bool = False
    crossed: list[Crossed] = field(default_factory=list)
    obstacles: int = 0
    passes_gap: str = ""


def frames(survey: Survey) -> dict[str, WallFrame]:
    """Sort what the survey lists by the wall it stands in."""
    spacing_in = stud_default(survey.job.units).spacing_in
    return {wall.id: _frame(survey, wall, spacing_in) for wall in survey.walls}


def _frame(survey: Survey, wall: Wall, spacing_in: Fraction) -> WallFrame:
    doors = (("door", gap) for gap in survey.doors if gap.wall == wall.id)
    windows = (("window", gap) for gap in survey.windows if gap.wall == wall.id)
    return WallFrame(
        wall,
        stud_depth_in(wall),
        (*doors, *windows),
        tuple(each for each in survey.members if each.wall == wall.id),
        tuple(each for each in survey.tees if each.wall == wall.id),
        tuple(each for each in survey.obstacles if each.wall == wall.id),
        spacing_in,
    )


def stud_depth_in(wall: Wall) -> Fraction | None:
    """Measured depth, else that of the nominal size; None where neither is known."""
    if wall.stud_depth_in is not None:
        return wall.stud_depth_in
    return lumber_depths_in().get(wall.stud or "")


def level_leg(frame: WallFrame, x1_in: Fraction, x2_in: Fraction, height_in: Fraction) -> Met:
    """What a level leg from x1 to x2 at a height meets; ends do not count as crossed."""
    low, high = min(x1_in, x2_in), max(x1_in, x2_in)
    met = Met()
    spans = [span for span in map(_span, frame.gaps) if span[1] > low and span[0] < high]
    grid = _grid_studs(frame, low, high)
    if grid is None:
        met.studs = ceil((high - low) / (frame.wall.spacing_in or frame.default_spacing_in))
        met.assumed = True
        grid = []
    met.studs += sum(1 for x in grid if not any(left < x < right for left, right, _ in spans))
    for left, right, (kind, gap) in spans:
        _meet_gap(met, kind, gap, height_in)
        inside = [x for x in grid if left < x < right]
        met.crossed.extend(_gap_members(gap, inside, (low, high), height_in))
    met.crossed.extend(_upright_members(frame.members, (low, high), height_in))
    for tee in frame.tees:
        if tee.members_count and low < tee.at_in < high:
            met.crossed.append(Crossed("tee stud", tee.members_count, tee.edge_in))
    met.obstacles = sum(
        each.left_in < high and each.right_in > low and each.bottom_in < height_in < each.top_in
        for each in frame.obstacles
    )
    return met


def upright_leg(frame: WallFrame, x_in: Fraction, h1_in: Fraction, h2_in: Fraction) -> Met:
    """What an upright leg at x from one height to another meets; ends do not count."""
    low, high = min(h1_in, h2_in), max(h1_in, h2_in)
    met = Met()
    for member in frame.members:
        height = member.height_in
        if height is not None and low < height < high and _within(member, x_in):
            met.crossed.append(Crossed(member.kind, 1, member=member))
    met.obstacles = sum(
        each.left_in < x_in < each.right_in and each.bottom_in < high and each.top_in > low
        for each in frame.obstacles
    )
    return met


def _grid_studs(frame: WallFrame, low: Fraction, high: Fraction) -> list[Fraction] | None:
    """Centres of grid studs strictly between low and high; None where the layout is unknown."""
    first, step = frame.wall.layout_from_in, frame.wall.spacing_in
    if first is None or step is None:
        return None
    start = floor((low - first) / step) + 1
    stop = ceil((high - first) / step)
    return [first + number * step for number in range(start, stop)]


def _span(named: tuple[str, Gap]) -> tuple[Fraction, Fraction, tuple[str, Gap]]:
    """Left and right of a gap; a gap whose place is unknown has no span."""
    left = named[1].left_in
    if left is None:
        return Fraction(0), Fraction(0), named
    return left, left + named[1].width_in, named


def _top(gap: Gap) -> Fraction:
    """Where wall begins again above a gap."""
    if gap.header_top_in is not None:
        return gap.header_top_in
    return (gap.bottom_in or Fraction(0)) + gap.height_in


def stands_at(gap: Gap, height_in: Fraction) -> bool:
    """Say whether there is no wall at a height of a gap: its sill counts, its top does not."""
    return (gap.bottom_in or Fraction(0)) <= height_in < _top(gap)


def _meet_gap(met: Met, kind: str, gap: Gap, height_in: Fraction) -> None:
    if stands_at(gap, height_in) and kind not in met.passes_gap:
        met.passes_gap += f" and a {kind}" if met.passes_gap else kind


def _gap_members(
    gap: Gap, grid: list[Fraction], ends: tuple[Fraction, Fraction], height_in: Fraction
) -> Iterator[Crossed]:
    """Kings at any height; jacks below the header; cripples above it or below the sill."""
    low, high = ends
    yield from _some("king", gap.kings_in, low, high)
    bottom = gap.bottom_in or Fraction(0)
    if height_in < bottom + gap.height_in:
        yield from _some("jack", gap.jacks_in, low, high)
    if height_in >= _top(gap) or height_in < bottom:
        cripples = grid if gap.cripples_in is None else gap.cripples_in
        yield from _some("cripple", cripples, low, high)


def _some(
    kind: str, places: Iterable[Fraction], low: Fraction, high: Fraction
) -> Iterator[Crossed]:
    count = sum(low < x < high for x in places)
    if count:
        yield Crossed(kind, count)


def _upright_members(
    members: tuple[Member, ...], ends: tuple[Fraction, Fraction], height_in: Fraction
) -> Iterator[Crossed]:
    for member in members:
        x_in = member.at_in
        if x_in is not None and ends[0] < x_in < ends[1] and _within(member, height_in):
            yield Crossed(member.kind, 1, member=member)


def _within(member: Member, place_in: Fraction) -> bool:
    """True where the member reaches; an end that was not measured is taken to reach."""
    after_start = member.from_in is None or member.from_in <= place_in
    return after_start and (member.to_in is None or place_in <= member.to_in)
