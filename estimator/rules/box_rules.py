"""Do the wires fit the box: before the work and after it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.saying import Saying, listed, said
from estimator.survey.electrical import Box
from estimator.tables.box_fill import US_RULE, FillRules
from estimator.takeoff.amounts import exact
from estimator.takeoff.box_choice import is_fan_box
from estimator.takeoff.box_need import Need
from estimator.takeoff.box_room import room_in, room_of
from estimator.takeoff.boxes import need_after, need_before, rules_for
from estimator.takeoff.fill import at_least_tenths
from estimator.takeoff.records import BoxCount

_WHERE = "314.16"
_REPLACED = "The old box is replaced by a larger one; box and hours are in the takeoff."
_FOR_A_FAN = "The old box makes way for one made for paddle fans; it is in the takeoff."
_OPEN_IT = "Open the box with the circuit off and count the cables."
_READ_STAMP = (
    "Read the volume stamped inside the box, or measure an unmarked metal box and name its row "
    "of the standard boxes (table_box); without it nobody can say."
)
_PLASTIC = (
    "A plastic box without a mark has no volume to count on. Find the mark, or plan a box "
    "that has one."
)
_DECLINED = "Replace the box by a larger one, or start from another box."
_TOO_FULL = (
    "No box on file for this place is large enough: use a two-gang box, or set a separate box "
    "beside it and join the wires there."
)
_NOT_ON_FILE = (
    "Put a larger box in the materials book, use two gangs, or set a separate box beside it."
)
_BARRIER = "Plan a box with more room on that side of the barrier, or a separate box."


@rule(US_RULE)
def box_fill(facts: Facts) -> Iterator[Finding]:
    """Hold each box's wires against its volume; equality fits, there is no tolerance."""
    rules = rules_for(facts.survey)
    if rules is not None:
        for count in facts.takeoff.boxes:
            yield judged(facts, count, rules, facts.law(_WHERE))


@dataclass(frozen=True, slots=True)
class _Case:
    """One box as it is judged.

    Attributes:
        room: what it has, in the unit of the rules; None where nobody knows.
        unseen: an existing box whose cables nobody has counted.
    """

    box: Box
    count: BoxCount
    rules: FillRules
    before: Need | None
    after: Need
    room: Fraction | None
    unseen: bool

    @property
    def figures(self) -> Saying:
        """What is compared, in words."""
        unit, taken = self.rules.unit, self.after.said
        if self.taken_before:
            before = self.taken_before
            taken = said(
                "before {before} {unit}, after {after}", before=before, unit=unit, after=taken
            )
        if self.room is None:
            return said("{taken} {unit}; its volume is unknown", taken=taken, unit=unit)
        return self._looked_up(
            said("{taken} of {room} {unit}", taken=taken, room=_show(self.room), unit=unit)
        )

    @property
    def taken_before(self) -> str:
        """Room taken before the work; empty for a new box and where there is no figure."""
        taken = None if self.before is None else self.before.taken
        return "" if taken is None else _show(taken)

    def _looked_up(self, words: Saying) -> Saying:
        """Add where the volume comes from, if not from a mark, and what adds nothing to it."""
        inside = self.box.contents
        if self.count.item:
            return words
        if self.box.volume_in3 is None and inside.table_box is not None:
            words = said("{figures} (standard box {row})", figures=words, row=inside.table_box)
        if None in inside.added_volumes_in3:
            words = listed((words, said("a ring or cover without a mark adds nothing")), "; ")
        return words


def judged(facts: Facts, count: BoxCount, rules: FillRules, cite: str) -> Finding:
    """Judge one box by the counting of one code."""
    box = facts.boxes[count.box_id]
    before = need_before(facts.survey, facts.practice, box, rules) if box.existing else None
    after = need_after(facts.survey, box, count, rules)
    unseen = box.existing and (box.unknown_cables or not box.cables)
    case = _Case(box, count, rules, before, after, _room(box, count, rules), unseen)
    name = (rules.rule, count.box_id)
    if after.missing:
        figures = f"no figure without knowing {', and '.join(after.missing)}"
        remedy = "Look into the box with the circuit off, and put it in the survey."
        return facts.finding(name, "unknown", figures, cite, remedy)
    if count.replaced and case.room is not None:
        return _replaced(facts, case, case.room, cite)
    if case.room is None and not count.existing and not count.item:
        figures = said("{taken} {unit}; no box on file holds it", taken=after.said, unit=rules.unit)
        return facts.finding(name, "fail", figures, cite, _NOT_ON_FILE)
    if case.room is None:
        remedy = _PLASTIC if box.metal == "no" else _READ_STAMP
        return facts.finding(name, "unknown", case.figures, cite, remedy)
    if unseen:
        return facts.finding(name, "unknown", _assumed(case.figures), cite, _OPEN_IT)
    return _compared(facts, case, case.room, cite)


def _compared(facts: Facts, case: _Case, room: Fraction, cite: str) -> Finding:
    """Judge a box of known room and counted wires."""
    name = (case.rules.rule, case.box.id)
    if case.after.fits(room):
        return facts.finding(name, "pass", case.figures, cite)
    if case.after.is_over(room):
        return facts.finding(name, "fail", case.figures, cite, _too_full(facts, case))
    figures = listed((case.figures, said("at most")))
    remedy = f"Look {', and '.join(case.after.open)}: it may fit."
    return facts.finding(name, "unknown", figures, cite, remedy)


def _replaced(facts: Facts, case: _Case, room: Fraction, cite: str) -> Finding:
    """The finding of an old box that gets another in its place.

    One that was too small is put right: the plan has its remedy already. One that only makes way
    for a fan box was not over its limit.
    """
    count, unit = case.count, case.rules.unit
    old, before = room_of(case.box, case.rules), case.taken_before
    figures: Saying = said(
        "old box: {old} {unit} for {before} before the work; new box: {after} of {room} {unit}",
        old="" if old is None else _show(old),
        unit=unit,
        before=before or said("what is in it"),
        after=case.after.said,
        room=_show(room),
    )
    name = (case.rules.rule, count.box_id)
    for_a_fan = is_fan_box(case.box)
    words = _FOR_A_FAN if for_a_fan else _REPLACED
    if case.unseen:
        return facts.finding(name, "unknown", _assumed(figures), cite, f"{_OPEN_IT} {words}")
    if for_a_fan:
        return facts.finding(name, "pass", figures, cite, words)
    return replace(facts.finding(name, "fail", figures, cite, words), remedied=True)


def _assumed(figures: Saying) -> Saying:
    return listed((figures, said("cables assumed")))


def _too_full(facts: Facts, case: _Case) -> str:
    """What to do about a box that is over, in words."""
    if not case.count.existing:
        return _NOT_ON_FILE
    if case.box.contents.barrier != "none":
        return _BARRIER
    name = f"{case.rules.rule}:{case.box.id}"
    declined = any(
        each.finding == name and each.decision == "decline remedy"
        for each in facts.survey.acceptances
    )
    return _DECLINED if declined else _TOO_FULL


def _room(box: Box, count: BoxCount, rules: FillRules) -> Fraction | None:
    """Room of the box that will be there; one is bought only if the book has its volume."""
    if not count.item:
        return room_of(box, rules)
    return None if count.volume_in3 is None else room_in(count.volume_in3, rules)


def _show(amount: Fraction) -> str:
    return str(at_least_tenths(exact(amount)))
