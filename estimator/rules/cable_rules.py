"""Is enough of the cable left free at each box."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule

FREE = "free-conductor"


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
