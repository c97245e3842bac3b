"""Do the wires fit the box."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts, found
from estimator.rules.records import Finding
from estimator.takeoff.records import BoxCount

RULE = "box-fill"
_WHERE = "314.16"


def box_fill(facts: Facts) -> Iterator[Finding]:
    """Hold each box's wires against its volume; equality fits, there is no tolerance."""
    if facts.edition is None:
        return
    for box in facts.takeoff.boxes:
        yield _judge(box, _unseen(facts, box), (facts.edition, _WHERE))


def _unseen(facts: Facts, box: BoxCount) -> bool:
    """True for an existing box whose cables nobody has counted."""
    surveyed = next(each for each in facts.survey.boxes if each.id == box.box_id)
    return surveyed.existing and (surveyed.unknown_cables or not surveyed.cables)


def _judge(box: BoxCount, unseen: bool, law: tuple[str, str]) -> Finding:
    name = box.box_id
    if box.replaced:
        return _judge_replaced(box, unseen, law)
    figures = f"{box.fill_sum} in3"
    if box.volume_in3 is None and not box.existing:
        remedy = "Put a larger box in the materials book, or use two gangs."
        return found(RULE, name, "fail", f"{figures}; no box on file holds it", law, remedy)
    if box.volume_in3 is None:
        remedy = "Read the volume stamped inside the box; without it nobody can say."
        return found(RULE, name, "unknown", f"{figures}; its volume is unknown", law, remedy)
    figures = f"{figures} of {box.volume_in3} in3"
    if unseen:
        remedy = "Open the box with the circuit off and count the cables."
        return found(RULE, name, "unknown", f"{figures}, cables assumed", law, remedy)
    if box.fill_after is not None and box.fill_after > box.volume_in3:
        remedy = "Replace the box by a larger one, or start from another box."
        return found(RULE, name, "fail", figures, law, remedy)
    return found(RULE, name, "pass", figures, law)


def _judge_replaced(box: BoxCount, unseen: bool, law: tuple[str, str]) -> Finding:
    figures = (
        f"old box: {box.old_volume_in3} in3 for {box.fill_before} before the work; "
        f"new box: {box.fill_sum} of {box.volume_in3} in3"
    )
    remedy = "The old box is replaced by a larger one; box and hours are in the takeoff."
    if unseen:
        remedy += " Open the old box with the circuit off and count the cables."
        return found(RULE, box.box_id, "unknown", f"{figures}, cables assumed", law, remedy)
    return found(RULE, box.box_id, "pass", figures, law, remedy)
