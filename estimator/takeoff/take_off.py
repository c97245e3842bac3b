"""The takeoff of one survey: parts and tasks with quantities, each with its reason."""

from __future__ import annotations

from decimal import Decimal

from estimator.route.records import RunPath
from estimator.settings import PerWhat, Practice
from estimator.survey.records import Survey
from estimator.tables.compound import in_room_h
from estimator.tables.facts import stud_default, visit_plan
from estimator.takeoff.amounts import trim, units_of
from estimator.takeoff.assumptions import assumptions
from estimator.takeoff.box_lines import box_lines
from estimator.takeoff.boxes import plan_boxes
from estimator.takeoff.cable import cable_orders
from estimator.takeoff.closing import close_up, painted_walls
from estimator.takeoff.closing_lines import (
    closing_parts,
    closing_tasks,
    cutting_lines,
    finish_parts,
    paint_parts,
)
from estimator.takeoff.counts import run_count
from estimator.takeoff.lines import Lines
from estimator.takeoff.openings import Hole, holes, shared_edges
from estimator.takeoff.places import job_conditions
from estimator.takeoff.records import Closing, Takeoff, Visit
from estimator.takeoff.run_lines import (
    cable_lines,
    protection_lines,
    rough_in_lines,
    run_facts,
    set_up_lines,
    trim_parts,
)
from estimator.takeoff.stock import Stock

_ONE_VISIT = "do the whole job"
_PER_WORDS: dict[PerWhat, str] = {
    "job": "job",
    "run": "run of cable",
    "opening": "opening",
    "visible-opening": "opening that is seen",
    "new-box": "new box",
    "plaster-opening": "opening in plaster",
    "paint": "room painted",
}


def take_off(
    survey: Survey, paths: tuple[RunPath, ...], practice: Practice, stock: Stock
) -> Takeoff:
    """Take off one route of a survey.

    Args:
        survey: with the runs and openings of one route only.
        paths: its runs as legs, from `run_paths`.
        practice: the shop's conventions, with what the job overrides.
        stock: boxes and connectors on file.
    """
    units = units_of(survey.job.units)
    depth_in = stud_default(survey.job.units).depth_in
    counts = [run_count(path, practice, depth_in) for path in paths]
    facts = run_facts(survey, paths, counts)
    plans = plan_boxes(survey, practice, stock)
    orders = cable_orders(paths, practice, units)
    listed = holes(survey)
    closing = close_up(survey, practice, listed, shared_edges(survey, listed))
    visits = plan_visits(survey, closing)

    lines = Lines(stock)
    set_up_lines(lines, survey, paths)
    cable_lines(lines, orders, units)
    cutting_lines(lines, survey, listed, units)
    rough_in_lines(lines, facts, units)
    box_lines(lines, survey, plans, stock)
    protection_lines(lines, facts, practice, units)
    trim_parts(lines, facts, practice, units)
    closing_parts(lines, survey, practice, listed, units)
    finish_parts(lines, survey, closing, units)
    paint_parts(lines, survey, practice, closing, units)
    closing_tasks(lines, survey, practice, closing, listed, units)
    _last_lines(lines, survey, practice, visits, listed)
    return Takeoff(
        runs=tuple(counts),
        cable=orders,
        boxes=tuple(plan.count for plan in plans),
        parts=tuple(lines.parts),
        tasks=tuple(lines.tasks),
        closing=closing,
        visits=visits,
        assumptions=assumptions(survey, paths, listed, units),
    )


def plan_visits(survey: Survey, closing: Closing) -> tuple[Visit, ...]:
    """Trips to the job: one, or as many as the compound needs to dry between its coats."""
    plan: tuple[tuple[str, Decimal], ...] = ()
    if closing.visible_openings:
        plan = visit_plan(survey.finish.compound, survey.finish.scope)
        room = survey.finish.room_condition
        plan = tuple((what, in_room_h(wait, room)) for what, wait in plan)
    plan = plan or ((_ONE_VISIT, Decimal(0)),)
    return tuple(Visit(number, what, wait) for number, (what, wait) in enumerate(plan, start=1))


def _last_lines(
    lines: Lines,
    survey: Survey,
    practice: Practice,
    visits: tuple[Visit, ...],
    listed: tuple[Hole, ...],
) -> None:
    """Coming back, cleaning up, and what is used up on the way."""
    here = job_conditions(survey)
    why = ("whole job", f"{len(visits)} visits in all", "visits.csv")
    lines.task("clean-up", "return-visit", (len(visits) - 1, "ea"), why, here)
    lines.task("clean-up", "clean-up", (1, "job"), ("whole job", "once", "common-practice"), here)
    times = _times(survey, listed)
    for used in practice.consumables:
        quantity = trim(used.quantity * times[used.per])
        reason = f"{used.quantity} for each {_PER_WORDS[used.per]}"
        why = ("whole job", reason, "practice.consumables")
        lines.part("consumables", used.item, (quantity, lines.unit_of(used.item)), why)


def _times(survey: Survey, listed: tuple[Hole, ...]) -> dict[PerWhat, int]:
    """How often each thing that a consumable may be counted by occurs in this job."""
    seen = tuple(hole for hole in listed if hole.visible)
    touched = {name for run in survey.runs for name in (run.from_box, run.to_box)}
    plaster = {wall.id for wall in survey.walls if wall.finish == "plaster"}
    painted = survey.finish.scope == "painted" and survey.finish.paint != "none" and bool(seen)
    return {
        "job": 1,
        "run": len(survey.runs),
        "opening": len(listed),
        "visible-opening": len(seen),
        "new-box": sum(not box.existing and box.id in touched for box in survey.boxes),
        "plaster-opening": sum(hole.opening.wall in plaster for hole in listed),
        "paint": len({wall.room for wall in painted_walls(survey, seen)}) if painted else 0,
    }
