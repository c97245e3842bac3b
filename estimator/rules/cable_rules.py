"""Is the cable protected in the wood, and is enough of it left free at each box."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache

from estimator.route.records import RunPath
from estimator.rules.facts import Facts, found
from estimator.rules.records import Finding
from estimator.tables.facts import cable_limits, stud_default
from estimator.takeoff.amounts import Units, units_of
from estimator.takeoff.counts import members, run_count
from estimator.takeoff.records import CableCut, RunCount

PLATES = "protection-plates"
FREE = "free-conductor"


def protection_plates(facts: Facts) -> Iterator[Finding]:
    """Hold the plates in the takeoff against those that the edition's own limit asks for."""
    if facts.edition is None:
        return
    limits = cable_limits(facts.edition)
    law = (facts.edition, limits["where_hole"])
    limit_in = Fraction(limits["hole_edge_in"])
    units = units_of(facts.survey.job.units)
    for path, count in zip(facts.paths, facts.takeoff.runs, strict=True):
        if count.bored or count.notched or count.plate_holes:
            yield _judge_plates(path, count, limit_in, units, law, facts)


def _judge_plates(
    path: RunPath,
    count: RunCount,
    limit_in: Fraction,
    units: Units,
    law: tuple[str, str],
    facts: Facts,
) -> Finding:
    subject = f"run {count.run_id}"
    least = _plates_by(limit_in, path, count, facts)
    if count.protection_plates < least:
        figures = f"{count.protection_plates} plates in the takeoff, {least} needed"
        remedy = f"Set practice.plate_edge to {units.say_unit(limit_in)}."
        return found(PLATES, subject, "fail", figures, law, remedy)
    if _depth_unknown(path):
        remedy = "Measure the depth of the studs (open a box and probe, or look in the attic)."
        figures = f"{count.protection_plates} plates if the studs are of the usual depth"
        return found(PLATES, subject, "unknown", figures, law, remedy)
    if count.notched:
        figures = f"{count.notched} notches, {count.protection_plates} plates in the takeoff"
        return found(PLATES, subject, "pass", figures, law, "Plate over every notch.")
    hole_in = facts.practice.hole_in if path.run.hole_in is None else path.run.hole_in
    figures = (
        f"hole {units.say_unit(hole_in)}, limit {units.say(limit_in)} to the face: "
        f"{count.protection_plates} plates in the takeoff"
    )
    remedy = "Put a steel plate over each." if count.protection_plates else ""
    return found(PLATES, subject, "pass", figures, law, remedy)


def _plates_by(limit_in: Fraction, path: RunPath, count: RunCount, facts: Facts) -> int:
    """Plates that a limit asks for, where the shop's own limit is less strict."""
    if facts.practice.plate_edge_in >= limit_in:
        return count.protection_plates
    strict = replace(facts.practice, plate_edge_in=limit_in)
    depth_in = stud_default(facts.survey.job.units).depth_in
    return run_count(path, strict, depth_in).protection_plates


def _depth_unknown(path: RunPath) -> bool:
    return any(
        leg.depth_in is None
        for leg in path.legs
        if leg.method != "exposed" and (members(leg) or leg.plate_holes)
    )


def free_conductor(facts: Facts) -> Iterator[Finding]:
    """Hold the tail left at each box against the free length the edition wants.

    The least tail is the sheath left inside and the free length: what the edition wants, or
    what a deep box takes to reach beyond its opening. A depth nobody measured asks for no more.
    """
    if facts.edition is None:
        return
    limits = _lengths_in(facts.edition)
    law = (facts.edition, cable_limits(facts.edition)["where_free"])
    units = units_of(facts.survey.job.units)
    for order in facts.takeoff.cable:
        for cut in order.cuts:
            tail_in, least_in = cut.tails_in / 2, _least_tail_in(cut, limits, facts)
            figures = f"tail {units.say_unit(tail_in)} at each box, least {units.say(least_in)}"
            subject = f"run {cut.run_id}"
            if tail_in < least_in:
                remedy = "Leave a longer tail: set tail for the run or the shop."
                yield found(FREE, subject, "fail", figures, law, remedy)
            else:
                yield found(FREE, subject, "pass", figures, law)


@cache
def _lengths_in(edition: str) -> Mapping[str, Fraction]:
    limits = cable_limits(edition)
    return {name: Fraction(limits[name]) for name in limits if name.endswith("_in")}


def _least_tail_in(cut: CableCut, limits: Mapping[str, Fraction], facts: Facts) -> Fraction:
    """Least tail at the deeper of the two boxes; the opening of a device box counts as small."""
    ends = (cut.from_box, cut.to_box)
    depths = [box.depth_in for box in facts.survey.boxes if box.id in ends]
    deepest_in = max((depth for depth in depths if depth is not None), default=Fraction(0))
    sheath_in = limits["sheath_in"]
    reach_in = deepest_in - sheath_in + limits["beyond_opening_in"]
    return max(limits["free_conductor_in"], reach_in) + sheath_in
