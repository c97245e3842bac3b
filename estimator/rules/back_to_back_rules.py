"""Two boxes on opposite faces of one wall: do both fit into the cavity."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.rules.box_place_rules import box_width_in, tape
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Verdict
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.survey.place import Wall
from estimator.tables.facts import lumber_depths_in

RULE = "box-back-to-back"
_WORST_FIRST: tuple[Verdict, ...] = ("fail", "unknown", "note", "pass")
_MEASURE = "Measure where both boxes stand, how deep they are and how deep the studs are."
_MOVE = "Move one of them sideways, up or down, or use shallower boxes."


@rule(RULE)
def box_back_to_back(facts: Facts) -> Iterator[Finding]:
    """Judge every planned box against those on the other face; the worst pair is told."""
    planned = _planned(facts)
    for number, box in enumerate(planned):
        later = {each.id for each in planned[number + 1 :]}
        pairs = [
            _judge(facts, _Pair(facts, box, other, facts.walls[box.wall or ""]))
            for other in _others(facts, box)
            if other.id not in later
        ]
        if pairs:
            yield min(pairs, key=lambda each: _WORST_FIRST.index(each.verdict))


def _planned(facts: Facts) -> list[Box]:
    """Boxes in a wall that are new or get a larger one in their place; the new ones last.

    In order of their names, so that a pair is told of the same box however the survey lists them.
    """
    found = [
        facts.boxes[count.box_id]
        for count in facts.takeoff.boxes
        if (not count.existing or count.replaced) and _in_wall(facts, facts.boxes[count.box_id])
    ]
    return sorted(found, key=lambda box: (not box.existing, box.id))


def _in_wall(facts: Facts, box: Box) -> bool:
    return box.mount == "wall" and box.wall in facts.walls


def _others(facts: Facts, box: Box) -> Iterator[Box]:
    """Boxes on the other face of the same wall that stand there or will."""
    for other in facts.survey.boxes:
        there = other.existing or other.id in facts.boxes
        same_wall = other.wall == box.wall and _in_wall(facts, other)
        if there and same_wall and facts.room_of(other) != facts.room_of(box):
            yield other


@dataclass(frozen=True, slots=True)
class _Pair:
    """Two boxes on the two faces of one wall."""

    facts: Facts
    box: Box
    other: Box
    wall: Wall

    @property
    def across_in(self) -> Fraction | None:
        """Level distance between their centres."""
        return _distance(self.box.x_in, self.other.x_in)

    @property
    def across_asked_in(self) -> Fraction:
        """Level distance at which the boxes pass each other, with the clearance."""
        widths = box_width_in(self.facts, self.box) + box_width_in(self.facts, self.other)
        return widths / 2 + self.facts.electrical("box-clearance").value

    @property
    def is_beside(self) -> bool:
        """True where they pass each other sideways or in height."""
        up_in = _distance(self.box.height_in, self.other.height_in)
        up_asked_in = (
            self.facts.electrical("box-height").value + self.facts.electrical("box-clearance").value
        )
        beside = self.across_in is not None and self.across_in >= self.across_asked_in
        return beside or (up_in is not None and up_in >= up_asked_in)

    @property
    def is_placed(self) -> bool:
        """True where it is known how they stand to each other."""
        places = (self.box.x_in, self.other.x_in, self.box.height_in, self.other.height_in)
        return None not in places

    @property
    def depths_in(self) -> Fraction | None:
        """Depth of both together; None where one is unknown."""
        first, second = _depth_in(self.facts, self.box), _depth_in(self.facts, self.other)
        return None if first is None or second is None else first + second

    @property
    def cavity_in(self) -> Fraction | None:
        """Depth of the studs, as measured or by their nominal size."""
        if self.wall.stud_depth_in is not None:
            return self.wall.stud_depth_in
        return lumber_depths_in().get(self.wall.stud or "")


def _distance(one_in: Fraction | None, other_in: Fraction | None) -> Fraction | None:
    return None if one_in is None or other_in is None else abs(one_in - other_in)


def _depth_in(facts: Facts, box: Box) -> Fraction | None:
    """Depth of the box that will be there, or of one that the job does not touch."""
    planned = {count.box_id: count.depth_in for count in facts.takeoff.boxes}
    return planned.get(box.id, box.depth_in)


def _judge(facts: Facts, pair: _Pair) -> Finding:
    name, cite = (RULE, pair.box.id), facts.cite(facts.electrical("box-clearance"))
    if pair.is_beside:
        return _as_rated(facts, pair, facts.finding(name, "pass", _beside(facts, pair), cite))
    cavity_in, depths_in = pair.cavity_in, pair.depths_in
    if cavity_in is None or depths_in is None:
        figures = f"box {pair.other.id} is on the other face; measures are missing"
        return facts.finding(name, "unknown", figures, cite, _MEASURE)
    figures = (
        f"box {pair.other.id} is on the other face: both {tape(facts, depths_in)} deep in a "
        f"cavity of {tape(facts, cavity_in)}"
    )
    if depths_in <= cavity_in:
        return _as_rated(facts, pair, facts.finding(name, "pass", figures, cite))
    if not pair.is_placed:
        return facts.finding(name, "unknown", figures, cite, _MEASURE)
    figures = f"{figures}; {_beside(facts, pair)}"
    return facts.finding(name, "fail", figures, cite, _MOVE)


def _beside(facts: Facts, pair: _Pair) -> str:
    """How far apart the boxes are and should be, where it is known."""
    if pair.across_in is None:
        return f"box {pair.other.id} on the other face stands higher or lower"
    apart, asked = tape(facts, pair.across_in), tape(facts, pair.across_asked_in)
    return f"box {pair.other.id} on the other face is {apart} to the side, asked {asked}"


def _as_rated(facts: Facts, pair: _Pair, fits: Finding) -> Finding:
    """In a fire-rated wall boxes on the two faces also keep their distance (a US rule)."""
    if facts.edition is None or pair.wall.fire_rated != "yes":
        return fits
    limit = facts.electrical("rated-wall-offset")
    if pair.across_in is not None and pair.across_in >= limit.value:
        return fits
    figures = f"{fits.figures}; in a rated wall {tape(facts, limit.value)} apart is usual"
    remedy = "Ask the building office: keep the distance, or use listed pads or boxes."
    return facts.finding((RULE, pair.box.id), "note", figures, facts.cite(limit), remedy)
