"""A neutral in the box of a new lighting switch."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts
from estimator.rules.place_facts import has_trait, use_of_box
from estimator.rules.records import Finding, Remedy, RemedyChange
from estimator.rules.registry import rule
from estimator.survey.electrical import Box, Run
from estimator.tables.facts import cable_kinds
from estimator.tables.place import device_traits

RULE = "switch-neutral"
_WITH_NEUTRAL_COUNT = 3
_THREE_WAY = "three-way switch"
_FREE = (
    "Free of it: a switch of a receptacle, an automatic one, a room that another switch sees "
    "whole, or a box that a cable can be fished to later without opening the finish."
)


@rule(RULE)
def switch_neutral(facts: Facts) -> Iterator[Finding]:
    """Look for a neutral at each new switch of a room where people live, a bath or a hall."""
    for box in facts.new_boxes:
        asked = has_trait(facts, use_of_box(facts, box), "neutral at switch")
        if asked and device_traits(box.device).is_switch:
            runs = [run for run in facts.survey.runs if box.id in (run.from_box, run.to_box)]
            yield _judge(facts, box, runs)


def _judge(facts: Facts, box: Box, runs: list[Run]) -> Finding:
    subject, law = (RULE, box.id), facts.law("404.2(C)", "seen")
    if box.device == _THREE_WAY:
        figures = "a three-way switch: whether a neutral is among its wires is not known"
        remedy = f"Plan the wires so that a neutral is in the box. {_FREE}"
        return facts.finding(subject, "unknown", figures, law, remedy)
    if len(runs) > 1:
        figures = f"{len(runs)} cables meet there, so the neutral of the feed is in the box"
        return facts.finding(subject, "pass", figures, law)
    count = cable_kinds()[runs[0].cable].insulated_count
    figures = f"one cable of {count} wires ends there"
    if count >= _WITH_NEUTRAL_COUNT:
        return facts.finding(subject, "pass", f"{figures}: one of them is a neutral", law)
    remedy = f"Run a cable with {_WITH_NEUTRAL_COUNT} wires to it. {_FREE}"
    figures = f"{figures}: a hot and its return, no neutral"
    return facts.finding(subject, "fail", figures, law, remedy, _remedies(runs[0]))


def _remedies(run: Run) -> tuple[Remedy, ...]:
    """The same cable with one more wire, where it is on file."""
    now = cable_kinds()[run.cable]
    for kind in cable_kinds().values():
        same = (kind.units, kind.wire) == (now.units, now.wire)
        if same and kind.insulated_count == _WITH_NEUTRAL_COUNT:
            return (RemedyChange("cable", run.id, kind.kind),)
    return ()
