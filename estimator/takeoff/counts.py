"""What each run crosses, and the plates, staples and sealant that follow from it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache, partial
from math import ceil

from estimator.route.records import PathLeg, RunPath
from estimator.settings import Practice
from estimator.takeoff.records import RunCount

_SIZES_KEPT = 1024
# A cable through one of these leaves one fire-stopped space for another.
_SEALED_KINDS = ("plate", "block")


def run_count(path: RunPath, practice: Practice, depth_if_unknown_in: Fraction) -> RunCount:
    """Count one run from its legs."""
    legs = path.legs
    listed = Counter[str]()
    for leg in legs:
        for crossed in leg.crossed:
            listed[crossed.kind] += crossed.count
    return RunCount(
        run_id=path.run.id,
        way=path.run.way or "typed",
        path_in=path.path_in,
        studs=sum(leg.studs for leg in legs),
        listed=tuple(sorted(listed.items())),
        corners=sum(leg.corners for leg in legs),
        obstacles=sum(leg.obstacles for leg in legs),
        plates_pierced=sum(leg.wall_plates for leg in legs),
        plate_holes=sum(leg.plate_holes for leg in legs),
        floor_holes=sum(leg.floor_holes for leg in legs),
        bored=sum(members(leg) for leg in legs if leg.method in ("bored", "fished")),
        notched=sum(members(leg) for leg in legs if leg.method == "notched"),
        protection_plates=sum(
            _protection_plates(path, leg, practice, depth_if_unknown_in) for leg in legs
        ),
        staples=_staples(path, practice),
        sealant=sum(_sealed(leg) for leg in legs),
        assumed=any(leg.assumed for leg in legs),
    )


def members(leg: PathLeg) -> int:
    """Grid studs and listed members that one leg passes, wall plates apart."""
    return leg.studs + sum(crossed.count for crossed in leg.crossed)


@lru_cache(maxsize=_SIZES_KEPT)
def faces_at_risk(
    depth_in: Fraction, hole_in: Fraction, edge_in: Fraction | None, limit_in: Fraction
) -> int:
    """Faces of a member that a hole comes nearer to than the limit.

    A hole without a stated edge is centred. Exactly at the limit is not at risk.

    >>> faces_at_risk(Fraction(7, 2), Fraction(3, 4), None, Fraction(5, 4))
    0
    """
    near_in = (depth_in - hole_in) / 2 if edge_in is None else edge_in
    far_in = depth_in - hole_in - near_in
    return sum(side_in < limit_in for side_in in (near_in, far_in))


def _protection_plates(
    path: RunPath, leg: PathLeg, practice: Practice, depth_if_unknown_in: Fraction
) -> int:
    each = partial(plates_each, path, leg, practice, depth_if_unknown_in)
    plated = [(leg.studs, each(None)), *((one.count, each(one.edge_in)) for one in leg.crossed)]
    if leg.method != "notched":
        plated.append((leg.plate_holes, each(None)))
    return sum(count * faces for count, faces in plated)


def plates_each(
    path: RunPath,
    leg: PathLeg,
    practice: Practice,
    depth_if_unknown_in: Fraction,
    edge_in: Fraction | None,
) -> int:
    """Protection plates that one member passed by a leg gets: one a face at risk, one a notch.

    `edge_in` is from the hole to the nearest face, where that was stated for this member.
    """
    if leg.method == "notched":
        return 1
    if leg.method == "exposed":
        return 0
    always = practice.plate_behind_trim_always and _behind_trim(path)
    depth_in = depth_if_unknown_in if leg.depth_in is None else leg.depth_in
    hole_in = practice.hole_in if path.run.hole_in is None else path.run.hole_in
    near_in = path.run.edge_in if edge_in is None else edge_in
    return max(faces_at_risk(depth_in, hole_in, near_in, practice.plate_edge_in), int(always))


def _behind_trim(path: RunPath) -> bool:
    """A run drawn behind trim, or typed with trim that comes off for it."""
    run = path.run
    return run.way == "trim" if run.way else bool(run.trim_length_in)


def _sealed(leg: PathLeg) -> int:
    """Holes to seal: through wall plates, floors and fire blocks."""
    blocks = sum(each.count for each in leg.crossed if each.kind in _SEALED_KINDS)
    return leg.plate_holes + leg.floor_holes + blocks


def _staples(path: RunPath, practice: Practice) -> int:
    """Staples beside boxes in an opened wall, and along every exposed stretch."""
    stretches = sum(
        _stretch_staples(length_in, box_ends, practice)
        for length_in, box_ends in exposed_stretches(path.legs)
    )
    return len(path.run.stapled_at) + stretches


def exposed_stretches(legs: Iterable[PathLeg]) -> list[tuple[Fraction, int]]:
    """Length of each exposed stretch, and how many of its two ends are boxes."""
    listed = tuple(legs)
    stretches: list[tuple[Fraction, int]] = []
    length_in, starts_at_box = Fraction(0), False
    for number, leg in enumerate(listed):
        if leg.method != "exposed":
            continue
        if number == 0 or listed[number - 1].method != "exposed":
            length_in, starts_at_box = Fraction(0), number == 0
        length_in += leg.length_in
        last = number == len(listed) - 1
        if last or listed[number + 1].method != "exposed":
            stretches.append((length_in, int(starts_at_box) + int(last)))
    return stretches


def _stretch_staples(length_in: Fraction, box_ends: int, practice: Practice) -> int:
    """One within reach of each box, then no further apart than the spacing.

    An end at a bored hole is a support; the shop may choose to staple there as well.
    """
    at_holes = 0 if practice.hole_end_supports else 2 - box_ends
    between_in = length_in - box_ends * practice.staple_first_in
    between = max(0, ceil(between_in / practice.staple_spacing_in) - 1)
    return box_ends + at_holes + between
