"""Part and task lines of the boxes: box, device, plate, joints, clamps, terminating, testing."""

from __future__ import annotations

from collections import Counter

from estimator.survey.records import Survey
from estimator.tables.facts import DeviceKind, device_kind
from estimator.takeoff.amounts import plural
from estimator.takeoff.box_choice import is_fan_box
from estimator.takeoff.boxes import BoxPlan
from estimator.takeoff.lines import Lines
from estimator.takeoff.places import wall_conditions
from estimator.takeoff.stock import Stock

_COMMON = "common-practice"
_JOINT_RULE = "common-practice: hot, neutral and ground each join with a pigtail"


def box_lines(lines: Lines, survey: Survey, plans: tuple[BoxPlan, ...], stock: Stock) -> None:
    """Every part and task that a box asks for."""
    for plan in plans:
        _box_part(lines, plan)
    for plan in plans:
        _device_parts(lines, survey, plan)
    for plan in plans:
        _joint_parts(lines, plan, stock)
    for plan in plans:
        _box_tasks(lines, survey, plan)


def _box_part(lines: Lines, plan: BoxPlan) -> None:
    where, count = f"box {plan.box.id}", plan.count
    remedy = _remedy(plan)
    if plan.to_buy is not None:
        reason = _box_reason(plan)
        lines.part("boxes", plan.to_buy.item, (1, "ea"), (where, reason, plan.rule), remedy)
    elif not plan.box.existing:
        reason = f"no box on file holds {count.fill_sum or 'what is asked for'}"
        lines.part("boxes", "box-not-on-file", (1, "ea"), (where, reason, plan.rule))
    clampless = plan.box.clamps == "no" if plan.to_buy is None else not plan.to_buy.clamps
    metal = plan.box.metal == "yes" if plan.to_buy is None else plan.to_buy.metal
    if clampless and metal:
        reason = "metal box without clamps: one for each new cable"
        why = (where, reason, _COMMON)
        lines.part("boxes", "cable-clamp", (plan.new_cables, "ea"), why)


def _remedy(plan: BoxPlan) -> str:
    """The finding that asked for a larger box; a box for a fan is marked with its own."""
    asked = plan.count.replaced and not is_fan_box(plan.box)
    return f"{plan.rule}:{plan.box.id}" if asked else ""


def _box_reason(plan: BoxPlan) -> str:
    count = plan.count
    if not count.fill_sum:
        return "new box" if not count.replaced else "in the place of the old box"
    sized = f"{count.fill_sum} in3 needed, this one holds {count.volume_in3} in3"
    if count.replaced:
        return f"replaces a box of {count.old_volume_in3} in3: {sized}"
    stated = plan.box.volume_in3
    return (
        f"{sized}; the survey asks for {stated} in3" if stated else f"smallest that fits: {sized}"
    )


def _kind(survey: Survey, plan: BoxPlan) -> DeviceKind:
    return device_kind(plan.box.device, survey.job.units, plan.box.device_rating_a)


def _device_parts(lines: Lines, survey: Survey, plan: BoxPlan) -> None:
    if not plan.new_device:
        return
    kind = _kind(survey, plan)
    where, gangs = f"box {plan.box.id}", plan.box.gangs_count
    if kind.item:
        reason = "one at each new outlet" if gangs == 1 else f"one in each of {gangs} gangs"
        lines.part("devices", kind.item, (gangs, "ea"), (where, reason, _COMMON))
    if kind.plate_item:
        item = kind.plate_item if gangs == 1 else f"plate-{gangs}g"
        lines.part("devices", item, (1, "ea"), (where, "one cover for each box", _COMMON))


def _joint_parts(lines: Lines, plan: BoxPlan, stock: Stock) -> None:
    """Pigtails, and the connectors sized by the conductors each of them holds."""
    where, made = f"box {plan.box.id}", plan.joints
    cables = plan.count.grounds
    meet = f"{plural(cables, 'cable')} at a {plan.box.device}"
    reason = f"{meet}: {plural(made.pigtails, 'pigtail')}"
    pigtail = f"pigtail-{plan.wire}"
    lines.part("joints", pigtail, (made.pigtails, "ea"), (where, reason, _JOINT_RULE))
    screw = (where, "a metal box is grounded by its own pigtail", _COMMON)
    screws = 0 if plan.box.existing else made.box_pigtails
    lines.part("joints", "ground-pigtail-screw", (screws, "ea"), screw)
    for count, number in sorted(Counter(made.held).items()):
        found = stock.connector_for(plan.wire, count)
        item = found.item if found else f"connector-for-{count}x{plan.wire}"
        reason = f"{plural(number, 'joint')} of {count} conductors of size {plan.wire}"
        lines.part("joints", item, (number, "ea"), (where, reason, _JOINT_RULE))


def _replacing(lines: Lines, plan: BoxPlan, where: str, here: tuple[str, ...]) -> None:
    """The work of a box in the place of an old one."""
    fan = is_fan_box(plan.box)
    reason = "a box made for paddle fans takes its place" if fan else "the old box is too small"
    why = (where, reason, plan.rule)
    lines.task("rough-in", "replace-box", (1, "ea"), why, here, _remedy(plan))
    if fan:
        lines.task("rough-in", "fit-fan-box", (1, "ea"), why, here)


def _box_tasks(lines: Lines, survey: Survey, plan: BoxPlan) -> None:
    here = wall_conditions(survey, plan.box.wall)
    where = f"box {plan.box.id}"
    if plan.box.existing:
        why = (where, "a cable is added to it", _COMMON)
        lines.task("rough-in", "open-source-box", (1, "ea"), why, here)
    else:
        why = (where, "new box", _COMMON)
        lines.task("rough-in", "cut-box-opening", (1, "ea"), why, here)
        fit = "fit-fan-box" if is_fan_box(plan.box) else "fit-box"
        lines.task("rough-in", fit, (1, "ea"), why, here)
    if plan.count.replaced:
        _replacing(lines, plan, where, here)
    joints = len(plan.count.joints)
    lines.task("terminate", "make-joint", (joints, "ea"), (where, "wire connectors", _COMMON), here)
    mount = _kind(survey, plan).task if plan.new_device else ""
    if mount:
        why = (where, "new outlet", _COMMON)
        lines.task("terminate", mount, (plan.box.gangs_count, "ea"), why, here)
    why = (where, "polarity, ground and trip test after the work", _COMMON)
    lines.task("test", "test-outlet", (1, "ea"), why, here)
