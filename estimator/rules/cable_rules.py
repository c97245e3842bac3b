"""Is the cable protected in the wood, and is enough of it left free at each box."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

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
    """Hold the cable left at each box, new and old, against the free length wanted there.

    The least tail is the free length and the sheath left inside. In a box with a small opening
    the conductors also reach past its face; that depth counts where it was measured.
    """
    for order in facts.takeoff.cable:
        for cut in order.cuts:
            least_in = max(_least_tail_in(facts, cut.from_box), _least_tail_in(facts, cut.to_box))
            yield _judge_free(facts, f"run {cut.run_id}", cut.tails_in / 2, least_in)
    for box in facts.boxes.values():
        free_in = box.contents.free_in
        if free_in is not None:
            sheath_in = facts.electrical("sheath-inside").value
            yield _judge_free(facts, box.id, free_in, _least_tail_in(facts, box.id) - sheath_in)


def _least_tail_in(facts: Facts, box_id: str) -> Fraction:
    free_in = facts.electrical("free-conductor").value
    depth_in = facts.boxes[box_id].contents.sheath_to_face_in
    if depth_in is not None:
        free_in = max(free_in, depth_in + facts.electrical("free-beyond-opening").value)
    return free_in + facts.electrical("sheath-inside").value


def _judge_free(facts: Facts, subject: str, left_in: Fraction, least_in: Fraction) -> Finding:
    units, cite = facts.units, facts.cite(facts.electrical("free-conductor"))
    figures = f"{units.say_unit(left_in)} left, least {units.say(least_in)}"
    if left_in >= least_in:
        return facts.finding((FREE, subject), "pass", figures, cite)
    remedy = "Leave a longer tail, or lengthen short old wires with pigtails."
    return facts.finding((FREE, subject), "fail", figures, cite, remedy)
