"""How a box sits in the wall: its depth, the surface, the gap round it, and that it is reached."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import write_length
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyPart, RemedyTask
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.takeoff.records import BoxCount

SETBACK = "box-setback"
GAP = "box-gap"
BURIED = "box-buried"
_MOST_EXTENDER_GANGS = 2
_REACH = "314.29"
_EXTEND = "Fit a box extender, or take the box out and mount it flush with the surface."
_EARS = "Set its ears to the real thickness of the plaster, and see that its wings reach that far."
_FILL = "Fill the gap round the box with patch compound."


@rule(SETBACK)
def box_setback(facts: Facts) -> Iterator[Finding]:
    """Hold how far a box's edge lies behind the surface against what the surface allows."""
    for box, count in _boxes(facts):
        if box.contents.setback_in is not None:
            yield _judge_setback(facts, box, box.contents.setback_in)
        elif box.existing and not count.replaced:
            most, cite = _most_behind(facts, box)
            figures = f"nobody has measured it; {most}"
            remedy = "With the cover off, measure from the surface back to the edge of the box."
            yield facts.finding((SETBACK, box.id), "unknown", figures, cite, remedy)
        else:
            yield _to_be_set(facts, box)


def tape(facts: Facts, length_in: Fraction) -> str:
    """A length as a tape measure shows it, exact: "15/16 in", "2 3/4 in", "70 mm"."""
    return write_length(length_in, facts.units.system)


def _boxes(facts: Facts) -> Iterator[tuple[Box, BoxCount]]:
    for count in facts.takeoff.boxes:
        yield facts.boxes[count.box_id], count


def _judge_setback(facts: Facts, box: Box, setback_in: Fraction) -> Finding:
    burns, plain = facts.electrical("box-setback-combustible"), facts.electrical("box-setback")
    surface = surface_burns(facts, box)
    limit = burns if surface == "yes" else plain
    name = (SETBACK, box.id)
    figures = f"{tape(facts, setback_in)} behind the surface, at most {tape(facts, limit.value)}"
    if setback_in > limit.value:
        words, parts = _extender(box)
        return facts.finding(name, "fail", figures, facts.cite(limit), words, parts)
    if surface == "unknown" and setback_in > burns.value:
        figures = f"{figures}, and {tape(facts, burns.value)} if the surface is wood"
        remedy = "Look what the surface is made of: gypsum or plaster, or wood that burns."
        return facts.finding(name, "unknown", figures, facts.cite(limit), remedy)
    return facts.finding(name, "pass", figures, facts.cite(limit))


def _extender(box: Box) -> tuple[str, tuple[Remedy, ...]]:
    """A box extender with its work; words alone where none is made for so many gangs."""
    if box.gangs_count > _MOST_EXTENDER_GANGS:
        return "Take the box out and mount it flush with the surface.", ()
    one = Decimal(1)
    part = RemedyPart("boxes", f"extender-{box.gangs_count}g", one, "ea")
    return _EXTEND, (part, RemedyTask("terminate", "fit-box-extender", one, "ea"))


def surface_burns(facts: Facts, box: Box) -> str:
    """Whether the surface a box stands in burns; unknown where nobody has said what it is."""
    wall = facts.walls.get(box.wall or "")
    if wall is None or box.mount == "ceiling":
        return "unknown"
    if wall.combustible_finish == "no" and wall.finish == "unknown":
        return "unknown"
    return wall.combustible_finish


def _in_plaster(facts: Facts, box: Box) -> bool:
    wall = facts.walls.get(box.wall or "")
    return box.mount == "wall" and wall is not None and wall.finish == "plaster"


def _most_behind(facts: Facts, box: Box) -> tuple[str, str]:
    """How far behind the surface a box may sit, for all that the surface may be; and the source."""
    burns, plain = facts.electrical("box-setback-combustible"), facts.electrical("box-setback")
    surface = surface_burns(facts, box)
    limit = burns if surface == "yes" else plain
    words = f"at most {tape(facts, limit.value)} behind the surface"
    if surface == "unknown":
        words = f"{words}, and {tape(facts, burns.value)} if the surface is wood"
    return words, facts.cite(limit)


def _to_be_set(facts: Facts, box: Box) -> Finding:
    """A box that this job sets: how it has to sit; in plaster its wings must reach round that."""
    most, cite = _most_behind(facts, box)
    figures, remedy = f"to be set by this job: {most}", "Set it flush with the finished surface."
    if _in_plaster(facts, box):
        words, source = _plaster(facts, box)
        figures, cite = f"{figures}; {words}", f"{cite}; {source}"
        remedy = f"{remedy} {_EARS}"
    return facts.finding((SETBACK, box.id), "note", figures, cite, remedy)


def _plaster(facts: Facts, box: Box) -> tuple[str, str]:
    """How thick plaster and lath are, in words, and where that comes from."""
    least, most = facts.electrical("plaster-thick-least"), facts.electrical("plaster-thick-most")
    measured_in = facts.walls[box.wall or ""].finish_thickness_in
    words = f"plaster is usually {tape(facts, least.value)} to {tape(facts, most.value)} thick"
    if measured_in is not None:
        words = f"{words}; measured {tape(facts, measured_in)}"
    return words, facts.cite(least)


@rule(GAP)
def box_gap(facts: Facts) -> Iterator[Finding]:
    """Hold the gap round a box in gypsum or plaster against the most that may stay open."""
    limit = facts.electrical(GAP)
    for box, count in _boxes(facts):
        name, gap_in = (GAP, box.id), box.contents.gap_in
        if surface_burns(facts, box) == "yes":
            continue
        if gap_in is None:
            yield _gap_unmeasured(facts, name, box.existing and not count.replaced)
            continue
        figures = f"gap {tape(facts, gap_in)} at its widest, at most {tape(facts, limit.value)}"
        if gap_in > limit.value:
            fill = _fill_gap(facts, box)
            yield facts.finding(name, "fail", figures, facts.cite(limit), _FILL, fill)
        else:
            yield facts.finding(name, "pass", figures, facts.cite(limit))


def _gap_unmeasured(facts: Facts, name: tuple[str, str], stays: bool) -> Finding:
    """An old box is measured; for one that this job sets the figure to keep is said."""
    limit = facts.electrical(GAP)
    most, cite = f"at most {tape(facts, limit.value)}", facts.cite(limit)
    if stays:
        remedy = "With the cover off, measure the widest gap beside the box."
        return facts.finding(name, "unknown", f"nobody has measured it; {most}", cite, remedy)
    figures = f"to be cut by this job: {most} left open round the box"
    remedy = "Trace the box itself and cut on the inside of the line; fill what is wider."
    return facts.finding(name, "note", figures, cite, remedy)


def _fill_gap(facts: Facts, box: Box) -> tuple[Remedy, ...]:
    """Compound for a seam all round the box, by the shop's amount for a length of seam."""
    width_in, height_in = box_width_in(facts, box), facts.electrical("box-height").value
    compound_in3 = 2 * (width_in + height_in) * facts.practice.compound_in3_per_in
    quantity = facts.units.volumes(compound_in3)
    return (
        RemedyPart("closing", "compound-setting", quantity, facts.units.volume),
        RemedyTask("close", "fill-box-gap", Decimal(1), "ea"),
    )


def box_width_in(facts: Facts, box: Box) -> Fraction:
    """Width of a device box of so many gangs."""
    pitch_in = facts.electrical("box-gang-pitch").value
    return facts.electrical("box-width").value + (box.gangs_count - 1) * pitch_in


@rule(BURIED)
def box_buried(facts: Facts) -> Iterator[Finding]:
    """A box stays within reach, with a cover."""
    for box in facts.boxes.values():
        name, law = (BURIED, box.id), facts.law(_REACH)
        if box.contents.buried == "yes":
            remedy = "Move the box or its cover to where it can be reached, or take it out."
            figures = "the finish would cover it"
            yield facts.finding(name, "fail", figures, law, remedy)
        elif box.contents.buried == "unknown":
            remedy = "Make sure that the box keeps a cover that can be reached."
            figures = "nobody has said whether the finish would cover it"
            yield facts.finding(name, "unknown", figures, law, remedy)
        else:
            yield facts.finding(name, "pass", "it stays within reach, with a cover", law)
