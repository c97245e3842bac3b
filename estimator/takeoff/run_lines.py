"""Part and task lines of the runs: cable, holes, plates, staples, sealant, pulling, trim."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from estimator.route.records import PathLeg, RunPath
from estimator.settings import Practice
from estimator.survey.records import Survey
from estimator.takeoff.amounts import Units, plural
from estimator.takeoff.counts import exposed_stretches, members
from estimator.takeoff.lines import Lines
from estimator.takeoff.places import job_conditions, wall_conditions
from estimator.takeoff.records import CableCut, CableOrder, RunCount

_STAPLE = {"us": "cable-staple", "metric": "cable-clip"}
_ENDS = 2


@dataclass(frozen=True, slots=True)
class RunFacts:
    """One run with all that was worked out for it."""

    path: RunPath
    count: RunCount
    where: str
    conditions: tuple[str, ...]


def run_facts(survey: Survey, paths: tuple[RunPath, ...], counts: list[RunCount]) -> list[RunFacts]:
    """Put paths and counts together, with where each run is in words."""
    facts = []
    for path, count in zip(paths, counts, strict=True):
        walls = dict.fromkeys(leg.wall for leg in path.legs if leg.wall) or path.run.walls
        conditions = tuple(
            dict.fromkeys(each for wall in walls for each in wall_conditions(survey, wall))
        )
        where = f"run {path.run.id}, {path.run.from_box} to {path.run.to_box}"
        facts.append(RunFacts(path, count, where, conditions or job_conditions(survey)))
    return facts


def cable_lines(lines: Lines, orders: tuple[CableOrder, ...], units: Units) -> None:
    """One line for each kind of cable, with path, tails, allowance and rounding apart."""
    for order in orders:
        cuts = "; ".join(f"{cut.run_id}: {_cut_sum(cut, units)}" for cut in order.cuts)
        small = units.say_unit(order.with_allowance_in)
        summed = units.add_up(cut.cut_in for cut in order.cuts)
        summed = f"({summed})" if len(order.cuts) > 1 else summed
        reason = (
            f"{cuts}; {summed}"
            f" x {1 + order.allowance_pct / 100} = {small}, up to {order.order} {order.unit}"
        )
        where = ", ".join(f"run {cut.run_id}" for cut in order.cuts)
        why = (where, reason, "practice.tail, practice.allowance_pct, practice.order_step")
        lines.part("cable", order.item, (order.order, order.unit), why)


def _cut_sum(cut: CableCut, units: Units) -> str:
    """Path, extras and tails of one cut as a sum in small units."""
    said = f"path {units.say(cut.path_in)}"
    if cut.corner_extra_in:
        said += f" + corners {units.say(cut.corner_extra_in)}"
    if cut.obstacle_extra_in:
        said += f" + obstacles {units.say(cut.obstacle_extra_in)}"
    said += f" + tails {units.say(cut.tails_in)}"
    return f"{said} = {units.say_unit(cut.cut_in)}"


def protection_lines(lines: Lines, facts: list[RunFacts], practice: Practice, units: Units) -> None:
    """Plates, bushings, staples and sealant, run by run."""
    for fact in facts:
        count, where = fact.count, fact.where
        lines.part(
            "protection",
            "protection-plate",
            (count.protection_plates, "ea"),
            (where, _plate_reason(fact, practice, units), "practice.plate_edge"),
        )
        steel = sum(members(leg) for leg in fact.path.legs if leg.steel)
        reason = f"steel studs crossed: {steel}, one bushing a hole"
        lines.part("protection", "stud-bushing", (steel, "ea"), (where, reason, "common-practice"))
        lines.part(
            "protection",
            _STAPLE[units.system],
            (count.staples, "ea"),
            (where, _staple_reason(fact, units), "practice.staple_spacing"),
        )
        reason = "one for each hole through a wall plate, floor or fire block"
        lines.part(
            "protection",
            "firestop-sealant",
            (count.sealant, "application"),
            (where, reason, "design: one a penetration"),
        )


def _plate_reason(fact: RunFacts, practice: Practice, units: Units) -> str:
    if fact.path.run.method == "notched":
        return "one over every notch"
    limit = units.say_unit(practice.plate_edge_in)
    return f"holes nearer than {limit} to a face: one plate for each face at risk"


def _staple_reason(fact: RunFacts, units: Units) -> str:
    said = []
    at_boxes = len(fact.path.run.stapled_at)
    if at_boxes:
        said.append(f"opened wall, beside a box: {at_boxes}")
    lengths = [length_in for length_in, _ in exposed_stretches(fact.path.legs)]
    if lengths:
        said.append(f"exposed stretch of {units.add_up(lengths)} {units.small}")
    return "; ".join(said)


def set_up_lines(lines: Lines, survey: Survey, paths: tuple[RunPath, ...]) -> None:
    """Arrive, find the circuit and prove it dead; make each level that is used ready."""
    here = job_conditions(survey)
    why = ("whole job", "once", "common-practice")
    lines.task("set-up", "set-up", (1, "job"), why, here)
    lines.task("set-up", "identify-circuit", (1, "job"), why, here)
    levels = dict.fromkeys(path.run.level for path in paths if path.run.level)
    for level in levels:
        lines.task("set-up", f"set-up-{level}", (1, "job"), (level, "once", "common-practice"))


def rough_in_lines(lines: Lines, facts: list[RunFacts], units: Units) -> None:
    """Trim off and on, holes, notches, fishing and pulling for each run."""
    for fact in facts:
        _hole_lines(lines, fact)
        _pull_lines(lines, fact, units)
        _trim_lines(lines, fact, units)
        why = (fact.where, "both ends", "common-practice")
        lines.task("terminate", "cable-end", (_ENDS, "ea"), why, fact.conditions)


def _hole_lines(lines: Lines, fact: RunFacts) -> None:
    count, listed = fact.count, dict(fact.count.listed)
    crossed = [plural(count.studs, "grid stud") + (" (assumed)" if count.assumed else "")]
    crossed += [plural(number, kind) for kind, number in listed.items()]
    reason = " + ".join(crossed)
    for task, number, why in (
        ("bore-member", count.bored, reason),
        ("notch-member", count.notched, reason),
        (
            "bore-plate",
            count.plate_holes,
            f"{count.plates_pierced} plates, one hole through each set",
        ),
        ("bore-floor", count.floor_holes, "one at each place the cable goes through the floor"),
    ):
        source = "geometry of the run"
        lines.task("rough-in", task, (number, "ea"), (fact.where, why, source), fact.conditions)


def _pull_lines(lines: Lines, fact: RunFacts, units: Units) -> None:
    legs = fact.path.legs
    drops = [leg for leg in legs if leg.go in ("up", "down") and leg.method != "exposed"]
    reason = f"rises and drops: {units.add_up(leg.length_in for leg in drops)} {units.small}"
    why = (fact.where, reason, "geometry of the run")
    lines.task("rough-in", "fish-drop", (len(drops), "ea"), why, fact.conditions)
    level = [leg for leg in legs if leg not in drops]
    for task, methods in (
        ("fish-horizontal", ("fished",)),
        ("pull-bored", ("bored", "notched")),
        ("pull-exposed", ("exposed",)),
    ):
        _pull_line(lines, fact, units, task, [leg for leg in level if leg.method in methods])


def _pull_line(lines: Lines, fact: RunFacts, units: Units, task: str, legs: list[PathLeg]) -> None:
    total_in = sum((leg.length_in for leg in legs), Fraction(0))
    reason = f"level legs: {_sum_said([leg.length_in for leg in legs], units)}"
    why = (fact.where, reason, "geometry of the run")
    amount = (units.lengths(total_in), units.length)
    lines.task("rough-in", task, amount, why, fact.conditions)


def _sum_said(lengths_in: list[Fraction], units: Units) -> str:
    """A sum with its result, or the one length alone."""
    total = units.say_unit(sum(lengths_in, Fraction(0)))
    return total if len(lengths_in) <= 1 else f"{units.add_up(lengths_in)} = {total}"


def trim_in(path: RunPath) -> Fraction:
    """Baseboard taken off: as stated, else the level part of a run behind trim."""
    if path.run.trim_length_in is not None:
        return path.run.trim_length_in
    return path.level_in if path.run.way == "trim" else Fraction(0)


def _trim_lines(lines: Lines, fact: RunFacts, units: Units) -> None:
    length_in = trim_in(fact.path)
    why = (fact.where, f"baseboard off and on: {units.say_unit(length_in)}", "survey")
    amount = (units.lengths(length_in), units.length)
    lines.task("rough-in", "trim-off-on", amount, why, fact.conditions)
    caulk_in = fact.path.run.caulk_length_in or Fraction(0)
    why = (fact.where, f"along the baseboard: {units.say_unit(caulk_in)}", "survey")
    amount = (units.lengths(caulk_in), units.length)
    lines.task("paint", "caulk-trim", amount, why, fact.conditions)


def trim_parts(lines: Lines, facts: list[RunFacts], practice: Practice, units: Units) -> None:
    """Nails and caulk for the baseboard that goes back."""
    for fact in facts:
        length_in = trim_in(fact.path)
        feet = length_in / _IN_PER_FT
        nails = -(-feet * Fraction(practice.trim_nails_per_ft) // 1)
        per = units.say_per(practice.trim_nails_per_ft)
        reason = f"{units.say_unit(length_in)} of baseboard, {per}"
        why = (fact.where, reason, "practice.trim_nails_per_ft")
        lines.part("closing", "nail-finish", (int(nails), "ea"), why)
        caulk_in = fact.path.run.caulk_length_in or Fraction(0)
        why = (fact.where, f"{units.say_unit(caulk_in)} of baseboard", "survey")
        lines.part("closing", "caulk", (units.lengths(caulk_in), units.length), why)


_IN_PER_FT = 12
