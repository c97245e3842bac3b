"""Is enough of the cable left free at each box."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule

FREE = "free-conductor"


_SHORT = "Leave a longer tail, or lengthen short old wires with pigtails."
_MEASURE = "Measure from the end of the sheath to the face of the box, or leave a longer tail."


@rule(FREE)
def free_conductor(facts: Facts) -> Iterator[Finding]:
    """Hold the cable left at each box, new and old, against the free length wanted there.

    The least tail is the free length and the sheath left inside. The conductors also reach past
    the face of the box; where nobody measured how deep the sheath ends, the depth of the box is
    the most that it can be.
    """
    for order in facts.takeoff.cable:
        for cut in order.cuts:
            ends = [_least_tail_in(facts, end) for end in (cut.from_box, cut.to_box)]
            asked = max(low for low, _ in ends), max(high for _, high in ends)
            yield _judge_free(facts, f"run {cut.run_id}", cut.tails_in / 2, asked)
    sheath_in = facts.electrical("sheath-inside").value
    for box in facts.boxes.values():
        free_in = box.contents.free_in
        if free_in is not None:
            low_in, high_in = _least_tail_in(facts, box.id)
            yield _judge_free(facts, box.id, free_in, (low_in - sheath_in, high_in - sheath_in))


def _least_tail_in(facts: Facts, box_id: str) -> tuple[Fraction, Fraction]:
    """The least tail at a box, and the least that is enough whatever nobody measured."""
    free_in, sheath_in = (
        facts.electrical(each).value for each in ("free-conductor", "sheath-inside")
    )
    beyond_in = facts.electrical("free-beyond-opening").value
    shown_in = facts.boxes[box_id].contents.sheath_to_face_in
    if shown_in is not None:
        asked_in = max(free_in, shown_in + beyond_in) + sheath_in
        return asked_in, asked_in
    depths_in = {count.box_id: count.depth_in for count in facts.takeoff.boxes}
    deepest_in = depths_in[box_id] or facts.electrical("box-deepest").value
    return free_in + sheath_in, max(free_in, deepest_in + beyond_in) + sheath_in


def _judge_free(
    facts: Facts, subject: str, left_in: Fraction, asked_in: tuple[Fraction, Fraction]
) -> Finding:
    units, cite = facts.units, facts.cite(facts.electrical("free-conductor"))
    (least_in, enough_in), name = asked_in, (FREE, subject)
    figures = f"{units.say_unit(left_in)} left, least {units.say_unit(least_in)}"
    if left_in >= enough_in:
        return facts.finding(name, "pass", figures, cite)
    if left_in < least_in:
        return facts.finding(name, "fail", figures, cite, _SHORT)
    figures = f"{figures}, and {units.say_unit(enough_in)} for a box as deep as this one may be"
    return facts.finding(name, "unknown", figures, cite, _MEASURE)
