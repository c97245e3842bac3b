"""Cable: one cut a run, one order a kind, rounded up once."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.measures import ceil_to_step
from estimator.route.records import RunPath
from estimator.settings import Practice
from estimator.tables.facts import cable_kinds
from estimator.takeoff.amounts import Units
from estimator.takeoff.records import CableCut, CableOrder

_ENDS = 2


def cable_cut(path: RunPath, practice: Practice) -> CableCut:
    """Cut for one run: path, extras at corners and obstacles, a tail at each box."""
    run = path.run
    tail_in = practice.tail_in if run.tail_in is None else run.tail_in
    corner_in = practice.corner_extra_in if run.corner_extra_in is None else run.corner_extra_in
    obstacle_in = (
        practice.obstacle_extra_in if run.obstacle_extra_in is None else run.obstacle_extra_in
    )
    corners_in = corner_in * sum(leg.corners for leg in path.legs)
    obstacles_in = obstacle_in * sum(leg.obstacles for leg in path.legs)
    tails_in = _ENDS * max(tail_in, practice.tail_floor_in)
    path_in = path.path_in
    cut_in = path_in + corners_in + obstacles_in + tails_in
    return CableCut(
        run.id, run.from_box, run.to_box, path_in, corners_in, obstacles_in, tails_in, cut_in
    )


def cable_orders(
    paths: tuple[RunPath, ...], practice: Practice, units: Units
) -> tuple[CableOrder, ...]:
    """One order for each kind of cable, in the order the runs name them."""
    cuts: dict[str, list[CableCut]] = {}
    for path in paths:
        cuts.setdefault(path.run.cable, []).append(cable_cut(path, practice))
    return tuple(_order(kind, tuple(each), practice, units) for kind, each in cuts.items())


def _order(kind: str, cuts: tuple[CableCut, ...], practice: Practice, units: Units) -> CableOrder:
    total_in = sum((cut.cut_in for cut in cuts), Fraction(0))
    allowance = 1 + Fraction(practice.allowance_pct) / 100
    order_in = ceil_to_step(total_in * allowance, practice.order_step_in)
    return CableOrder(
        item=cable_kinds()[kind].item,
        kind=kind,
        cuts=cuts,
        cuts_in=total_in,
        allowance_pct=Decimal(practice.allowance_pct),
        with_allowance_in=total_in * allowance,
        step_in=practice.order_step_in,
        order_in=order_in,
        order=units.lengths(order_in),
        unit=units.length,
    )
