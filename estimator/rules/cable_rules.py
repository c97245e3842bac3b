"""Is the cable protected in the wood, and is enough of it left free at each box."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.route.records import RunPath
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.tables.limits import Limit
from estimator.takeoff.counts import members
from estimator.takeoff.records import RunCount

PLATES = "protection-plates"
FREE = "free-conductor"


@rule(PLATES)
def protection_plates(facts: Facts) -> Iterator[Finding]:
    """Hold the hole's edge distance against the limit; the plates themselves are taken off."""
    limit = facts.electrical("hole-edge")
    for path, count in zip(facts.paths, facts.takeoff.runs, strict=True):
        if count.bored or count.notched or count.plate_holes:
            yield _judge_plates(facts, path, count, limit)


def _judge_plates(facts: Facts, path: RunPath, count: RunCount, limit: Limit) -> Finding:
    subject, cite, units = (PLATES, f"run {count.run_id}"), facts.cite(limit), facts.units
    if _depth_unknown(path):
        remedy = "Measure the depth of the studs (open a box and probe, or look in the attic)."
        figures = f"{count.protection_plates} plates if the studs are of the usual depth"
        return facts.finding(subject, "unknown", figures, cite, remedy)
    if count.notched:
        figures = f"{count.notched} notches, {count.protection_plates} plates in the takeoff"
        return facts.finding(subject, "pass", figures, cite, "Plate over every notch.")
    hole_in = facts.practice.hole_in if path.run.hole_in is None else path.run.hole_in
    figures = (
        f"hole {units.say_unit(hole_in)}, limit {units.say(limit.value)} to the face: "
        f"{count.protection_plates} plates in the takeoff"
    )
    remedy = "Put a steel plate over each." if count.protection_plates else ""
    return facts.finding(subject, "pass", figures, cite, remedy)


def _depth_unknown(path: RunPath) -> bool:
    return any(
        leg.depth_in is None
        for leg in path.legs
        if leg.method != "exposed" and (members(leg) or leg.plate_holes)
    )


@rule(FREE)
def free_conductor(facts: Facts) -> Iterator[Finding]:
    """Hold the tail left at each box against the free length the edition wants.

    The least tail is the free length and the sheath left inside the box.
    """
    free = facts.electrical("free-conductor")
    least_in = free.value + facts.electrical("sheath-inside").value
    units, cite = facts.units, facts.cite(free)
    for order in facts.takeoff.cable:
        for cut in order.cuts:
            tail_in = cut.tails_in / 2
            figures = f"tail {units.say_unit(tail_in)} at each box, least {units.say(least_in)}"
            subject = (FREE, f"run {cut.run_id}")
            if tail_in < least_in:
                remedy = "Leave a longer tail: set tail for the run or the shop."
                yield facts.finding(subject, "fail", figures, cite, remedy)
            else:
                yield facts.finding(subject, "pass", figures, cite)
