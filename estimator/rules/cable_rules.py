"""Is the cable protected in the wood, and is enough of it left free at each box."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.route.records import RunPath
from estimator.rules.facts import Facts, found
from estimator.rules.records import Finding
from estimator.tables.facts import cable_limits
from estimator.takeoff.amounts import Units, units_of
from estimator.takeoff.counts import members
from estimator.takeoff.records import RunCount

PLATES = "protection-plates"
FREE = "free-conductor"


def protection_plates(facts: Facts) -> Iterator[Finding]:
    """Hold the hole's edge distance against the limit; the plates themselves are taken off."""
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


def _depth_unknown(path: RunPath) -> bool:
    return any(
        leg.depth_in is None
        for leg in path.legs
        if leg.method != "exposed" and (members(leg) or leg.plate_holes)
    )


def free_conductor(facts: Facts) -> Iterator[Finding]:
    """Hold the tail left at each box against the free length the edition wants.

    The least tail is the free length, the sheath left inside, and for a small box what must
    reach beyond the opening; the depth to the face comes from the survey where it was measured.
    """
    if facts.edition is None:
        return
    limits = cable_limits(facts.edition)
    law = (facts.edition, limits["where_free"])
    least_in = Fraction(limits["free_conductor_in"]) + Fraction(limits["sheath_in"])
    units = units_of(facts.survey.job.units)
    for order in facts.takeoff.cable:
        for cut in order.cuts:
            tail_in = cut.tails_in / 2
            figures = f"tail {units.say_unit(tail_in)} at each box, least {units.say(least_in)}"
            subject = f"run {cut.run_id}"
            if tail_in < least_in:
                remedy = "Leave a longer tail: set tail for the run or the shop."
                yield found(FREE, subject, "fail", figures, law, remedy)
            else:
                yield found(FREE, subject, "pass", figures, law)
