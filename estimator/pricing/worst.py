"""The second total: the same job if every unknown that moves the price turns out badly."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from estimator.saying import said
from estimator.survey.electrical import Box
from estimator.survey.place import Wall
from estimator.survey.records import Survey
from estimator.tables.box_fill import FillRules
from estimator.tables.facts import lumber_depths_in
from estimator.takeoff.box_room import volume_in3
from estimator.takeoff.boxes import added_kind, rules_for
from estimator.takeoff.records import Fact

# The facts of assumptions that the second total sets to their dear side, where they are surveyed.
DEAR_FACTS: frozenset[Fact] = frozenset(
    ("occupied", "insulated", "finish", "stud depth", "cables", "volume")
)
_SLIM_STUD = "2x3"
_BAD_CASE_CABLES = 3


def if_it_turns_out_badly(survey: Survey) -> tuple[Survey, tuple[str, ...]]:
    """A survey with the unknowns that have a dear side set to it, and what was set."""
    facts: list[str] = []
    walls = tuple(_wall(wall, facts) for wall in survey.walls)
    touched = {name for run in survey.runs for name in (run.from_box, run.to_box)}
    rules = rules_for(survey)
    boxes = tuple(
        _box(box, added_kind(box, survey.runs), rules, facts)
        if box.existing and box.id in touched
        else box
        for box in survey.boxes
    )
    changes: dict[str, Any] = {"walls": walls, "boxes": boxes}
    if survey.job.occupied == "unknown":
        facts.append(said("the rooms are lived in"))
        changes["job"] = survey.job.model_copy(update={"occupied": "yes"})
    if not facts:
        return survey, ()
    return survey.model_copy(update=changes), tuple(facts)


def _wall(wall: Wall, facts: list[str]) -> Wall:
    changes: dict[str, Any] = {}
    if wall.exterior == "yes" and wall.insulated == "unknown":
        facts.append(said("wall {wall} is insulated", wall=wall.id))
        changes["insulated"] = "yes"
    if wall.finish == "unknown":
        facts.append(said("wall {wall} is plaster", wall=wall.id))
        changes["finish"] = "plaster"
    if wall.stud is None and wall.stud_depth_in is None:
        facts.append(said("the studs of wall {wall} are slim", wall=wall.id))
        changes["stud_depth_in"] = lumber_depths_in()[_SLIM_STUD]
    return wall.model_copy(update=changes) if changes else wall


def _box(box: Box, kind: str, rules: FillRules | None, facts: list[str]) -> Box:
    changes: dict[str, Any] = {}
    if box.unknown_cables or not box.cables:
        facts.append(
            said("box {box} has {cables} cables in it", box=box.id, cables=_BAD_CASE_CABLES)
        )
        changes |= {"cables": (kind,) * _BAD_CASE_CABLES, "unknown_cables": False}
    if rules is not None and volume_in3(box, rules) is None:
        facts.append(said("box {box} is too small and is replaced", box=box.id))
        changes["volume_in3"] = Decimal(0)
    return box.model_copy(update=changes) if changes else box
