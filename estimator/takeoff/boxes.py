"""Boxes before and after: wires counted, room compared, a box chosen for each place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from estimator.settings import Practice
from estimator.survey.electrical import Box, Run
from estimator.survey.fields import YesNo
from estimator.survey.records import Survey
from estimator.tables.box_fill import (
    US_RULE,
    FillRules,
    canada_fill_rules,
    has_fill_rules,
    us_fill_rules,
)
from estimator.tables.box_places import usual_device_depth_in
from estimator.takeoff.amounts import exact
from estimator.takeoff.box_choice import choose, counted_clamps, is_fan_box, offered_clamps
from estimator.takeoff.box_need import Holding, Need, need_of
from estimator.takeoff.box_room import added_in3, room_of, volume_in3
from estimator.takeoff.fill import at_least_tenths, roomiest, wires_of
from estimator.takeoff.joints import Joints, Meeting, joints
from estimator.takeoff.records import BoxCount
from estimator.takeoff.stock import BoxOnFile, Stock

# A source nobody has opened is taken to have one cable in and one out.
ASSUMED_CABLES = 2
_CANADA = "CA"
_FILL_FIGURES = "box-fill-"


@dataclass(frozen=True, slots=True)
class BoxPlan:
    """One box of the job: as surveyed, counted, with the box to buy (None: keep or not on file).

    Attributes:
        rule: id of the rule that a larger box is the remedy of.
    """

    box: Box
    count: BoxCount
    to_buy: BoxOnFile | None
    joints: Joints
    new_cables: int
    wire: str
    rule: str

    @property
    def new_device(self) -> bool:
        """True where a device is bought and mounted."""
        return not (self.box.existing and self.box.reuse_plate)


@dataclass(frozen=True, slots=True)
class _Job:
    """What the plan of every box looks at."""

    survey: Survey
    practice: Practice
    stock: Stock
    rules: FillRules | None
    declined: frozenset[str]

    @property
    def rule(self) -> str:
        """The rule that counts here; the US one's name where none does."""
        return self.rules.rule if self.rules is not None else US_RULE


def plan_boxes(survey: Survey, practice: Practice, stock: Stock) -> tuple[BoxPlan, ...]:
    """Plan every box that a run of this survey touches, in the survey's order."""
    declined = frozenset(
        each.finding for each in survey.acceptances if each.decision == "decline remedy"
    )
    job = _Job(survey, practice, stock, rules_for(survey), declined)
    touched = {name for run in survey.runs for name in (run.from_box, run.to_box)}
    return tuple(_plan(box, job) for box in survey.boxes if box.id in touched)


def rules_for(survey: Survey) -> FillRules | None:
    """The counting rules of the job's country and edition; None where there are none on file."""
    job = survey.job
    if job.country == _CANADA:
        return canada_fill_rules()
    if not has_fill_rules(job.edition, job.country):
        return None
    changed = tuple(
        (each.figure, each.value)
        for each in survey.amendments
        if each.change == "figure" and each.figure.startswith(_FILL_FIGURES)
    )
    return us_fill_rules(job.edition, changed)


def existing_cables(box: Box, runs: Iterable[Run]) -> tuple[str, ...]:
    """Cables in the box before the work; assumed ones, of the kind that is added, if not seen."""
    if box.existing and (box.unknown_cables or not box.cables):
        return (added_kind(box, runs),) * ASSUMED_CABLES
    return box.cables


def added_kind(box: Box, runs: Iterable[Run]) -> str:
    """The kind of cable that is added at a box; of several the one that takes most room."""
    return roomiest(run.cable for run in runs if box.id in (run.from_box, run.to_box))


def need_before(survey: Survey, practice: Practice, box: Box, rules: FillRules) -> Need:
    """What an existing box asks for before the work."""
    held = Holding(existing_cables(box, survey.runs), (), box.contents.wire_connector_count)
    return need_of(box, held, counted_clamps(box.clamps, box.metal, practice), rules)


def need_after(survey: Survey, box: Box, count: BoxCount, rules: FillRules) -> Need:
    """What a box asks for after the work, in the box that will be there."""
    return need_of(box, _held(survey, box, len(count.joints)), count.clamps, rules)


def _held(survey: Survey, box: Box, planned_connectors: int) -> Holding:
    """What ends in a box after the work."""
    new = tuple(run.cable for run in survey.runs if box.id in (run.from_box, run.to_box))
    found = box.contents.wire_connector_count or 0
    kept = box.existing and box.reuse_plate
    device_in = None if kept else usual_device_depth_in(box.device)
    held = existing_cables(box, survey.runs)
    return Holding(held, new, max(found, planned_connectors), device_in)


def _plan(box: Box, job: _Job) -> BoxPlan:
    cables_before = len(existing_cables(box, job.survey.runs))
    planned = joints(_meeting(box, job.survey, cables_before, box.metal == "yes"))
    held = _held(job.survey, box, len(planned.held))
    kept: YesNo = counted_clamps(box.clamps, box.metal, job.practice) if box.existing else "yes"
    replace = box.existing and (is_fan_box(box) or _is_too_small(box, held, kept, job))
    to_buy = None
    if replace or not box.existing:
        to_buy = choose(box, held, job.rules, job.practice, job.stock)
    clamps = kept if to_buy is None else offered_clamps(to_buy, job.practice)
    metal = box.metal == "yes" if to_buy is None else to_buy.metal
    made = joints(_meeting(box, job.survey, cables_before, metal))
    after = None if job.rules is None else need_of(box, held, clamps, job.rules)
    wires = wires_of(held.old + held.new)
    count = BoxCount(
        box_id=box.id,
        role=_role(box, job.survey),
        existing=box.existing,
        conductors=wires.by_size,
        grounds=wires.grounds,
        fill_before=_fill_before(box, job),
        fill_after=_fill(after, job.rules),
        fill_sum=_said(after, job.rules),
        volume_in3=_volume_to_be(box, to_buy, job.rules),
        old_volume_in3=volume_in3(box, job.rules) if box.existing else None,
        item=to_buy.item if to_buy is not None else "",
        replaced=replace and to_buy is not None,
        pigtails=made.pigtails,
        joints=made.held,
        depth_in=_depth_to_be(box, to_buy),
        clamps=clamps,
    )
    return BoxPlan(box, count, to_buy, made, len(held.new), wires.largest, job.rule)


def _is_too_small(box: Box, held: Holding, clamps: YesNo, job: _Job) -> bool:
    """True where a larger box is planned: over a known volume, if the open facts turn out badly.

    Equality fits. A box nobody could read, or with a barrier in it, is left to the finding.
    """
    if job.rules is None or f"{job.rule}:{box.id}" in job.declined:
        return False
    room = room_of(box, job.rules)
    if room is None or box.contents.barrier != "none":
        return False
    return not need_of(box, held, clamps, job.rules).fits(room)


def _fill_before(box: Box, job: _Job) -> Decimal | None:
    if not box.existing or job.rules is None:
        return None
    return _fill(need_before(job.survey, job.practice, box, job.rules), job.rules)


def _fill(need: Need | None, rules: FillRules | None) -> Decimal | None:
    """Room taken in cubic inches; None where the code counts in something else, or not at all."""
    taken = None if need is None else need.taken
    if taken is None or rules is None or rules.unit != "in3":
        return None
    return at_least_tenths(exact(taken))


def _said(need: Need | None, rules: FillRules | None) -> str:
    counted = need is not None and rules is not None and rules.unit == "in3"
    return need.said if counted and need is not None else ""


def _volume_to_be(box: Box, to_buy: BoxOnFile | None, rules: FillRules | None) -> Decimal | None:
    """Volume of the box that will be there; its own rings stay only on a box that is new."""
    if to_buy is None:
        return volume_in3(box, rules)
    if to_buy.volume_in3 is None or box.existing:
        return to_buy.volume_in3
    return to_buy.volume_in3 + added_in3(box)


def _depth_to_be(box: Box, to_buy: BoxOnFile | None) -> Fraction | None:
    """Depth of the box that will be there: as measured or asked for, else of the box to buy."""
    if to_buy is None or (box.depth_in is not None and not box.existing):
        return box.depth_in
    return to_buy.depth_in


def _role(box: Box, survey: Survey) -> Literal["source", "through", "end"]:
    feeds_on = any(run.from_box == box.id for run in survey.runs)
    fed = any(run.to_box == box.id for run in survey.runs)
    if feeds_on:
        return "through" if fed else "source"
    return "end"


def _meeting(box: Box, survey: Survey, cables_before: int, metal: bool) -> Meeting:
    """Sort the cables in a box into always live and switched.

    From a switch, a run to a light is switched, any other is live. In a switch box that was
    there before, the first cable is taken to feed it and the others to be switched.
    """
    boxes = {each.id: each for each in survey.boxes}
    feeds = switched = 0
    is_switch = box.device in ("switch", "three-way switch")
    for run in survey.runs:
        if run.to_box == box.id:
            feeds += 1
        elif run.from_box == box.id:
            to_light = boxes[run.to_box].device == "luminaire"
            switched += int(is_switch and to_light)
            feeds += int(not (is_switch and to_light))
    if is_switch and cables_before:
        feeds += 1
        switched += cables_before - 1
    else:
        feeds += cables_before
    return Meeting(box.device, feeds, switched, metal, box.gangs_count)
