"""Wall plates cut over half their width."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from estimator.route.records import PathLeg, RunPath
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyPart, RemedyTask
from estimator.rules.registry import rule
from estimator.rules.wood_cuts import (
    BORED,
    NOTCHED,
    Bounds,
    Judged,
    Known,
    bears,
    depth_range,
    hole_in,
    together,
)
from estimator.survey.place import Member
from estimator.takeoff.amounts import plural

PLATE = "plate-cut"
_ASK = "Find out whether the wall bears load, and how wide its plates are."


@dataclass(frozen=True, slots=True)
class PlateCut:
    """Holes alike through wall plates: width across the plate, None where nobody measured it."""

    bears: Known
    width_in: Fraction | None
    cut_in: Fraction
    count: int


@rule(PLATE)
def plate_cut(facts: Facts) -> Iterator[Finding]:
    """Hold cuts in wall plates against half their width; a larger one takes a steel tie."""
    cite = facts.cite(facts.building("plate-cut"))
    for path in facts.paths:
        cuts = tuple(_cuts(facts, path))
        judged = [_judge(facts, cut) for cut in cuts]
        if not judged:
            continue
        found = together(facts, (PLATE, f"run {path.run.id}"), judged, cite)
        ties = sum(
            cut.count
            for cut, each in zip(cuts, judged, strict=True)
            if each.verdict == found.verdict
        )
        yield replace(found, remedies=() if found.verdict == "pass" else _ties(ties))


def _ties(count: int) -> tuple[Remedy, ...]:
    return (
        RemedyPart("protection", "plate-tie", Decimal(count), "ea"),
        RemedyTask("rough-in", "fit-plate-tie", Decimal(count), "ea"),
    )


def _cuts(facts: Facts, path: RunPath) -> Iterator[PlateCut]:
    for leg in path.legs:
        if leg.steel or leg.method not in (*BORED, *NOTCHED):
            continue
        standing, size_in = bears(facts.walls.get(leg.wall or "")), hole_in(facts, path)
        if leg.plate_holes:
            yield PlateCut(standing, leg.depth_in, size_in, leg.plate_holes)
        for each in leg.crossed:
            if each.kind == "plate" and each.member is not None:
                yield _listed(each.member, leg, standing, size_in)
            elif each.kind == "plate":
                yield PlateCut(standing, leg.depth_in, size_in, each.count)


def _listed(member: Member, leg: PathLeg, standing: Known, size_in: Fraction) -> PlateCut:
    """A plate that the survey lists, with its own measures where it has them."""
    own_in = [each for each in (member.hole_in, member.notch_depth_in) if each is not None]
    width_in = leg.depth_in if member.depth_in is None else member.depth_in
    return PlateCut(standing, width_in, max(own_in, default=size_in), 1)


def _judge(facts: Facts, cut: PlateCut) -> Judged:
    units, limit = facts.units, facts.building("plate-cut")
    least_in, most_in = depth_range(facts, cut.width_in)
    bounds = Bounds(limit, least_in, limit, most_in)
    said = f"{plural(cut.count, 'hole')} of {units.say_unit(cut.cut_in)} through wall plates"
    figures = f"{said}: {bounds.say(units, cut.cut_in)}"
    verdict = bounds.verdict(cut.cut_in)
    if verdict == "pass":
        return Judged("pass", figures)
    if cut.bears == "no":
        return Judged("pass", f"{said}, in a wall that bears no load")
    if verdict == "unknown" or cut.bears == "unknown":
        return Judged("unknown", figures, _ASK)
    thick = units.say_unit(facts.building("plate-tie").value)
    remedy = (
        f"Fix a galvanized steel tie, at least {thick} thick, across each cut and to the plate "
        "on both sides of it."
    )
    return Judged("fail", figures, remedy)
