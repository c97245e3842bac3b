"""Cable in framing: plates over near holes, hole beside notch, steel studs, bore or notch."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.route.records import RunPath
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, RemedyPart
from estimator.rules.registry import rule
from estimator.rules.stud_rules import hole_bounds, notch_bounds
from estimator.rules.wood_cuts import (
    BORED,
    NOTCHED,
    Bounds,
    StudCut,
    allowed,
    depth_range,
    hole_in,
    holes,
    stud_cuts,
)
from estimator.survey.electrical import Method
from estimator.tables.limits import Limit
from estimator.takeoff.amounts import plural, trim
from estimator.takeoff.counts import faces_at_risk, members
from estimator.takeoff.records import RunCount

PLATES = "protection-plates"
BOTH = "hole-and-notch"
STEEL = "steel-studs"
CHOICE = "bore-or-notch"
_ALL_CUTS: tuple[Method, ...] = (*BORED, *NOTCHED)
_MEASURE = "Measure the depth of the studs (open a box and probe, or look in the attic)."


@rule(PLATES)
def protection_plates(facts: Facts) -> Iterator[Finding]:
    """Hold each hole's distance to each face against the limit, and count the plates for it.

    A shop that plates less than the limit asks gets the missing plates as the remedy.
    """
    limit = facts.electrical("hole-edge")
    for path, count in zip(facts.paths, facts.takeoff.runs, strict=True):
        if count.bored or count.notched or count.plate_holes:
            yield _judge_plates(facts, path, count, limit)


def _judge_plates(facts: Facts, path: RunPath, count: RunCount, limit: Limit) -> Finding:
    name, cite = (PLATES, f"run {count.run_id}"), facts.cite(limit)
    needed = _plates_needed(facts, path, limit)
    missing = needed - count.protection_plates
    parts = (RemedyPart("protection", "protection-plate", Decimal(missing), "ea"),)
    if _depth_unknown(path):
        figures = f"{count.protection_plates} plates if the studs are of the usual depth"
        # Drawn walls are set to slim studs for the second total; typed legs have none to set.
        typed = parts if path.run.legs and missing > 0 else ()
        return facts.finding(name, "unknown", figures, cite, _MEASURE, typed)
    figures = _plate_figures(facts, path, count, limit)
    if missing > 0:
        remedy = f"Put a steel plate over each face at risk: {needed} in all."
        return facts.finding(name, "fail", f"{figures}, {needed} needed", cite, remedy, parts)
    if count.notched:
        return facts.finding(name, "pass", figures, cite, "Plate over every notch.")
    remedy = "Put a steel plate over each." if count.protection_plates else ""
    return facts.finding(name, "pass", figures, cite, remedy)


def _plate_figures(facts: Facts, path: RunPath, count: RunCount, limit: Limit) -> str:
    units, plates = facts.units, f"{count.protection_plates} plates in the takeoff"
    if count.notched:
        return f"{count.notched} notches, {plates}"
    size = units.say_unit(hole_in(facts, path))
    return f"hole {size}, limit {units.say_unit(limit.value)} to the face: {plates}"


def _plates_needed(facts: Facts, path: RunPath, limit: Limit) -> int:
    """One plate for each face that a hole comes too near to, one for each notch.

    Studs of unknown depth are taken as the slimmest.
    """
    needed = 0
    for leg in path.legs:
        least_in = depth_range(facts, leg.depth_in)[0]
        if leg.method in NOTCHED:
            needed += members(leg)
        elif leg.method in BORED:
            needed += sum(
                each.count
                * faces_at_risk(
                    least_in, hole_in(facts, path, each.member), each.edge_in, limit.value
                )
                for each in holes(path, leg)
            )
    return needed


def _depth_unknown(path: RunPath) -> bool:
    return any(
        leg.depth_in is None
        for leg in path.legs
        if leg.method != "exposed" and (members(leg) or leg.plate_holes)
    )


@rule(BOTH)
def hole_and_notch(facts: Facts) -> Iterator[Finding]:
    """No hole at the section where a member is notched or cut."""
    cite = facts.cite(facts.building("stud-hole-edge"))
    for path, count in zip(facts.paths, facts.takeoff.runs, strict=True):
        if not (count.bored or count.notched):
            continue
        name = (BOTH, f"run {path.run.id}")
        if path.run.hole_and_notch == "no":
            figures = "no hole at the section of a notch or cut, as surveyed"
            yield facts.finding(name, "pass", figures, cite)
        elif path.run.hole_and_notch == "yes":
            figures = "a hole at the section of a notch or cut"
            yield facts.finding(name, "fail", figures, cite, "Bore above or below the notch.")
        else:
            figures = "nobody has said whether holes meet notches"
            remedy = "Look at the members for old notches and cuts before boring."
            yield facts.finding(name, "unknown", figures, cite, remedy)


@rule(STEEL)
def steel_studs(facts: Facts) -> Iterator[Finding]:
    """A bushing in every hole of a steel stud before the cable goes in, steel where screws go."""
    cite, units = facts.law("300.4(B)"), facts.units
    thick = units.say_unit(facts.electrical("steel-plate").value)
    for path in facts.paths:
        name = (STEEL, f"run {path.run.id}")
        steel = sum(members(leg) for leg in path.legs if leg.steel)
        unsure = sum(members(leg) for leg in path.legs if _may_be_steel(facts, leg.wall))
        if unsure:
            part = RemedyPart("protection", "stud-bushing", Decimal(unsure), "ea")
            figures = f"{plural(unsure, 'member')} of wood or steel, nobody has said which"
            remedy = "Find out with a magnet; each hole in steel gets a bushing."
            yield facts.finding(name, "unknown", figures, cite, remedy, (part,))
        elif steel:
            figures = f"{plural(steel, 'steel stud')}, a bushing for each in the takeoff"
            remedy = (
                "Put the bushings in before the cable, and steel at least "
                f"{thick} thick where screws could reach it."
            )
            yield facts.finding(name, "pass", figures, cite, remedy)


def _may_be_steel(facts: Facts, wall_id: str | None) -> bool:
    wall = facts.walls.get(wall_id or "")
    return wall is not None and wall.framing == "unknown"


@rule(CHOICE)
def bore_or_notch(facts: Facts) -> Iterator[Finding]:
    """Compare boring and notching for a run behind trim: hours, plates and limits of each."""
    cite = facts.cite(facts.building("stud-notch-bearing"))
    for path in facts.paths:
        cuts = stud_cuts(facts, path, _ALL_CUTS)
        behind_trim = path.run.way == "trim" or bool(path.run.trim_length_in)
        if behind_trim and cuts:
            name = (CHOICE, f"run {path.run.id}")
            figures = f"{_bored_words(facts, path, cuts)}; {_notched_words(facts, cuts)}"
            yield facts.finding(name, "note", figures, cite, _quicker(facts, cuts))


def _bored_words(facts: Facts, path: RunPath, cuts: tuple[StudCut, ...]) -> str:
    size_in, limit = hole_in(facts, path), facts.electrical("hole-edge")
    plates = 0
    for cut in cuts:
        least_in = depth_range(facts, cut.standing.depth_in)[0]
        edge_in = cut.standing.edge_in
        plates += cut.count * faces_at_risk(least_in, size_in, edge_in, limit.value)
    up_to = "up to " if any(cut.standing.depth_in is None for cut in cuts) else ""
    least = _tightest(tuple(hole_bounds(facts, cut) for cut in cuts))
    most = allowed(facts.units, least.low, least.low_depth_in)
    said = f"{up_to}{plural(plates, 'plate')}, hole at most {most}"
    hours = _hours_words(facts, cuts, "bore-member")
    return f"bored {facts.units.say_unit(size_in)}: {hours}, {said}"


def _notched_words(facts: Facts, cuts: tuple[StudCut, ...]) -> str:
    least = _tightest(tuple(notch_bounds(facts, cut) for cut in cuts))
    most = allowed(facts.units, least.low, least.low_depth_in)
    hours = _hours_words(facts, cuts, "notch-member")
    return f"notched: {hours}, {plural(_studs(cuts), 'plate')}, notch at most {most} deep"


def _tightest(bounds: tuple[Bounds, ...]) -> Bounds:
    return min(bounds, key=lambda each: each.low_in)


def _studs(cuts: tuple[StudCut, ...]) -> int:
    return sum(cut.count for cut in cuts)


def _hours(facts: Facts, cuts: tuple[StudCut, ...], task: str) -> Decimal | None:
    """Likely hours by the labor book, before the factors of the place; None without a row."""
    each = facts.hours_each.get(task)
    return None if each is None else trim(each * _studs(cuts))


def _hours_words(facts: Facts, cuts: tuple[StudCut, ...], task: str) -> str:
    hours = _hours(facts, cuts, task)
    studs = plural(_studs(cuts), "stud")
    if hours is None:
        return f"{studs}, hours not in the book"
    return f"{studs}, {hours} {'hour' if hours == 1 else 'hours'}"


def _quicker(facts: Facts, cuts: tuple[StudCut, ...]) -> str:
    bored, notched = (_hours(facts, cuts, task) for task in ("bore-member", "notch-member"))
    if bored is None or notched is None or bored == notched:
        return "A stud may lose more of its depth to a hole in the middle than to a notch."
    way = "Boring" if bored < notched else "Notching"
    return f"{way} takes fewer hours here; a notch takes a plate at every stud."
