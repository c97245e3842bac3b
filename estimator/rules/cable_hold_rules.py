"""Is the cable held: supports along it, and a clamp or a staple at each box."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.takeoff.counts import exposed_stretches

SUPPORT = "cable-support"
CLAMPED = "cable-clamped"


@rule(SUPPORT)
def cable_support(facts: Facts) -> Iterator[Finding]:
    """Hold the shop's staple spacing against the limit; a fished cable needs none."""
    spacing, first = facts.electrical("support-spacing"), facts.electrical("support-first")
    units, practice = facts.units, facts.practice
    for path, count in zip(facts.paths, facts.takeoff.runs, strict=True):
        subject = (SUPPORT, f"run {path.run.id}")
        if not exposed_stretches(path.legs):
            figures = "fished or bored all the way: the framing holds it"
            yield facts.finding(subject, "pass", figures, facts.law("334.30(B)(1)"))
            continue
        figures = (
            f"{count.staples} staples, {units.say_unit(practice.staple_first_in)} from a box "
            f"(at most {units.say(first.value)}), then every "
            f"{units.say_unit(practice.staple_spacing_in)} (at most {units.say(spacing.value)})"
        )
        too_far = practice.staple_spacing_in > spacing.value
        if too_far or practice.staple_first_in > first.value:
            remedy = "Bring the staple settings of the shop down to the limits."
            yield facts.finding(subject, "note", figures, facts.cite(spacing), remedy)
        else:
            yield facts.finding(subject, "pass", figures, facts.cite(spacing))


@rule(CLAMPED)
def cable_clamped(facts: Facts) -> Iterator[Finding]:
    """See that each new cable is held where it enters an existing box.

    A new old-work box clamps its cables. A metal box gets a connector in the takeoff. A
    nonmetallic box without clamps needs a staple close by, which a fished cable cannot have.
    """
    stapled = {name for run in facts.survey.runs for name in run.stapled_at}
    replaced = {box.box_id for box in facts.takeoff.boxes if box.replaced}
    for box in facts.boxes.values():
        if box.existing and box.id not in replaced:
            yield _clamped(facts, box, box.id in stapled)


def _clamped(facts: Facts, box: Box, stapled: bool) -> Finding:
    subject, reach = (CLAMPED, box.id), facts.electrical("clamp-sheath-reach")
    law = facts.cite(reach)
    if box.clamps == "yes":
        return facts.finding(subject, "pass", "the box has clamps", law)
    if box.metal == "yes" and box.clamps == "no":
        figures = "metal box without clamps: a connector for each new cable is in the takeoff"
        return facts.finding(subject, "pass", figures, law)
    if "unknown" in (box.clamps, box.metal):
        remedy = "Look inside: clamps or not, metal or plastic."
        return facts.finding(subject, "unknown", "nobody has looked for clamps", law, remedy)
    within = f"{facts.units.say_unit(reach.value)} along the cable"
    if box.gangs_count > 1:
        remedy = "Replace it by a box with clamps: a larger plastic box must clamp its cables."
        figures = f"plastic, {box.gangs_count} gangs, without clamps"
        return facts.finding(subject, "fail", figures, law, remedy)
    if stapled:
        figures = f"plastic, one gang, no clamps: stapled within {within}"
        return facts.finding(subject, "pass", figures, law, f"Staple within {within}.")
    figures = f"plastic, one gang, no clamps; a fished cable cannot be stapled within {within}"
    remedy = "Ask your inspector, or plan a box with clamps there."
    return facts.finding(subject, "note", figures, law, remedy)
