"""Boxes before and after: wires counted, room compared, a box chosen for each place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.survey.electrical import Box, Run
from estimator.survey.records import Survey
from estimator.tables.facts import FillRules, editions, fill_rules
from estimator.takeoff.fill import Wires, fill_in3, wires_of
from estimator.takeoff.joints import Joints, Meeting, joints
from estimator.takeoff.records import BoxCount
from estimator.takeoff.stock import BoxOnFile, Stock

BOX_FILL = "box-fill"
# A source nobody has opened is taken to have one cable in and one out.
ASSUMED_CABLES = 2
_MOUNTS = {"wall": "old-work", "ceiling": "ceiling-old-work"}


@dataclass(frozen=True, slots=True)
class BoxPlan:
    """One box of the job: as surveyed, counted, with the box to buy (None: keep or not on file)."""

    box: Box
    count: BoxCount
    to_buy: BoxOnFile | None
    joints: Joints
    new_cables: int
    wire: str

    @property
    def new_device(self) -> bool:
        """True where a device is bought and mounted."""
        return not (self.box.existing and self.box.reuse_plate)


def plan_boxes(survey: Survey, stock: Stock) -> tuple[BoxPlan, ...]:
    """Plan every box that a run of this survey touches, in the survey's order."""
    rules = rules_for(survey)
    declined = {each.finding for each in survey.acceptances if each.decision == "decline remedy"}
    touched = {name for run in survey.runs for name in (run.from_box, run.to_box)}
    return tuple(
        _plan(box, survey, stock, rules, f"{BOX_FILL}:{box.id}" in declined)
        for box in survey.boxes
        if box.id in touched
    )


def rules_for(survey: Survey) -> FillRules | None:
    """The counting rules of the job's edition; None outside the country they belong to."""
    edition = survey.job.edition
    on_file = editions().get(edition)
    if on_file is None or on_file["country"] != survey.job.country:
        return None
    return fill_rules(edition)


def existing_cables(box: Box, runs: Iterable[Run]) -> tuple[str, ...]:
    """Cables in the box before the work; assumed ones, of the kind that is added, if not seen."""
    if box.existing and (box.unknown_cables or not box.cables):
        added = next(run.cable for run in runs if box.id in (run.from_box, run.to_box))
        return (added,) * ASSUMED_CABLES
    return box.cables


def _plan(
    box: Box, survey: Survey, stock: Stock, rules: FillRules | None, declined: bool
) -> BoxPlan:
    before = existing_cables(box, survey.runs)
    new = tuple(run.cable for run in survey.runs if box.id in (run.from_box, run.to_box))
    wires = wires_of(before + new)
    kept_clamps = box.clamps != "no" if box.existing else True
    fill_before = _fill(box, wires_of(before), kept_clamps, rules) if box.existing else None
    fill_after, said = _fill_said(box, wires, kept_clamps, rules)
    too_small = _is_too_small(box, fill_after)
    replaced = box.existing and too_small and not declined
    to_buy = _choose(box, wires, rules, stock) if replaced or not box.existing else None
    replaced = replaced and to_buy is not None
    if to_buy is not None:
        fill_after, said = _fill_said(box, wires, to_buy.clamps, rules)
    metal = to_buy.metal if to_buy is not None else box.metal == "yes"
    made = joints(_meeting(box, survey, len(before), metal))
    count = BoxCount(
        box_id=box.id,
        role=_role(box, survey),
        existing=box.existing,
        conductors=wires.by_size,
        grounds=wires.grounds,
        fill_before=fill_before,
        fill_after=fill_after,
        fill_sum=said,
        volume_in3=to_buy.volume_in3 if to_buy is not None else box.volume_in3,
        old_volume_in3=box.volume_in3 if box.existing else None,
        item=to_buy.item if to_buy is not None else "",
        replaced=replaced,
        pigtails=made.pigtails,
        joints=made.held,
    )
    return BoxPlan(box, count, to_buy, made, len(new), wires.largest)


def _fill(box: Box, wires: Wires, clamps: bool, rules: FillRules | None) -> Decimal | None:
    return _fill_said(box, wires, clamps, rules)[0]


def _fill_said(
    box: Box, wires: Wires, clamps: bool, rules: FillRules | None
) -> tuple[Decimal | None, str]:
    if rules is None:
        return None, ""
    return fill_in3(wires, box.device, box.gangs_count, clamps, rules)


def _is_too_small(box: Box, fill_in3: Decimal | None) -> bool:
    """True where the fill is over a known volume; equality fits, an unread box is not judged."""
    if fill_in3 is None or box.volume_in3 is None:
        return False
    return fill_in3 > box.volume_in3


def _choose(box: Box, wires: Wires, rules: FillRules | None, stock: Stock) -> BoxOnFile | None:
    """The smallest box on file that fits the place, the stated volume and the wires.

    A box without a volume holds nothing that has to be counted.
    """
    asked_in3 = (box.replacement_volume_in3 if box.existing else box.volume_in3) or Decimal(0)
    metal = box.metal == "yes" and not box.existing
    for offer in stock.boxes:
        fits = (offer.mount, offer.gangs_count) == (_MOUNTS[box.mount], box.gangs_count)
        if not fits or offer.metal != metal:
            continue
        need_in3 = max(asked_in3, _fill(box, wires, offer.clamps, rules) or Decimal(0))
        if need_in3 <= (offer.volume_in3 or Decimal(0)):
            return offer
    return None


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
