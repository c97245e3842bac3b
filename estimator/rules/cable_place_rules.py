"""Where cable may lie: dry places, out of ducts, away from faces and grooves, gently bent."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from math import ceil

from estimator.rules.facts import Facts
from estimator.rules.records import Finding, RemedyPart
from estimator.rules.registry import rule
from estimator.survey.electrical import Run
from estimator.tables.cable import cable_size
from estimator.tables.limits import confidence_words

PLACE = "cable-place"
PARALLEL = "parallel-cable"
GROOVE = "groove"
BEND = "bend-radius"
_PLATE_REACH_IN = 16


@rule(PLACE)
def cable_place(facts: Facts) -> Iterator[Finding]:
    """Keep this kind of cable dry, and out of the air stream except straight across."""
    for run in facts.survey.runs:
        yield _dry(facts, run)
        if run.return_air != "none":
            yield _air(facts, run)


def _dry(facts: Facts, run: Run) -> Finding:
    subject, law = (PLACE, f"run {run.id}"), facts.law("334.12")
    if run.moisture == "dry":
        return facts.finding(subject, "pass", "dry all along, as surveyed", law)
    if run.moisture == "unknown":
        remedy = "Look for stains, bare earth and outside walls along the way."
        return facts.finding(subject, "unknown", "nobody has said whether it is dry", law, remedy)
    figures = f"a {run.moisture} place; nonmetallic-sheathed cable belongs in dry ones"
    remedy = "Take a dry way, or have a wiring method for such places planned."
    return facts.finding(subject, "fail", figures, law, remedy)


def _air(facts: Facts, run: Run) -> Finding:
    subject, law = (PLACE, f"run {run.id} return air"), facts.law("300.22")
    if run.return_air == "across":
        figures = "crosses a return-air space straight, across its long side"
        return facts.finding(subject, "pass", figures, law)
    figures = "runs along a return-air space"
    return facts.finding(subject, "fail", figures, law, "Cross such a space straight, or avoid it.")


@rule(PARALLEL)
def parallel_cable(facts: Facts) -> Iterator[Finding]:
    """Hold the distance of a cable along framing to the face; a fished cable is exempt."""
    limit = facts.electrical("parallel-edge")
    units = facts.units
    for run in facts.survey.runs:
        if run.parallel_edge_in is None:
            continue
        subject = (PARALLEL, f"run {run.id}")
        edge = f"{units.say_unit(run.parallel_edge_in)} to the face"
        figures = f"{edge}, limit {units.say_unit(limit.value)}"
        if run.method == "fished":
            figures = f"{edge}; fished in a finished wall"
            yield facts.finding(subject, "pass", figures, facts.law("300.4(D) Ex 2"))
        elif run.parallel_edge_in >= limit.value:
            yield facts.finding(subject, "pass", figures, facts.cite(limit))
        else:
            plates = ceil(_level_in(facts, run) / _PLATE_REACH_IN)
            parts = (RemedyPart("protection", "protection-plate", Decimal(plates), "ea"),)
            remedy = "Steel plates or a sleeve along it, or move it deeper."
            yield facts.finding(subject, "fail", figures, facts.cite(limit), remedy, parts)


def _level_in(facts: Facts, run: Run) -> int:
    path = next(path for path in facts.paths if path.run.id == run.id)
    return max(1, ceil(path.path_in))


@rule(GROOVE)
def groove(facts: Facts) -> Iterator[Finding]:
    """A shallow groove behind the finish needs steel, or free depth, for its whole length."""
    limit = facts.electrical("groove-clear")
    for run in facts.survey.runs:
        if run.surface_groove == "no":
            continue
        subject = (GROOVE, f"run {run.id}")
        depth = facts.units.say_unit(limit.value)
        if run.surface_groove == "unknown":
            remedy = "See whether the cable lies in a groove or behind full studs."
            figures = "nobody has said whether it lies in a shallow groove"
            yield facts.finding(subject, "unknown", figures, facts.cite(limit), remedy)
        else:
            figures = f"in a shallow groove: steel or {depth} of free depth all along"
            remedy = "Bore the studs instead, or cover the groove with steel all along."
            yield facts.finding(subject, "fail", figures, facts.cite(limit), remedy)


@rule(BEND)
def bend_radius(facts: Facts) -> Iterator[Finding]:
    """Hold the tightest bend against five cable diameters.

    For a flat cable the 2023 edition counts the wide side; before it the thin one is taken.
    """
    limit = facts.electrical("bend-diameters")
    units = facts.units
    for run in facts.survey.runs:
        size = cable_size(run.cable)
        if run.bend_radius_in is None or size is None:
            continue
        across_in = size.width_in if facts.edition == "nec-2023" else size.thickness_in
        least_in = limit.value * across_in
        subject = (BEND, f"run {run.id}")
        figures = (
            f"tightest bend {units.say_unit(run.bend_radius_in)}, least {units.say(least_in)}"
            f" for cable {units.say_unit(across_in)} across{confidence_words(size.confidence)}"
        )
        if run.bend_radius_in >= least_in:
            yield facts.finding(subject, "pass", figures, facts.cite(limit))
        else:
            remedy = "Drill the hole further from the box, so that the cable bends gently."
            yield facts.finding(subject, "fail", figures, facts.cite(limit), remedy)
