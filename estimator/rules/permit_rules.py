"""Before the wall is closed and after: permit, inspection, tests."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.rules.facts import Facts
from estimator.rules.house_rules import caution_for, noted
from estimator.rules.records import Finding, RemedyTask
from estimator.rules.registry import rule
from estimator.takeoff.amounts import plural

PERMIT = "permit"
TESTS = "tests-after"


@rule(PERMIT)
def permit(facts: Facts) -> Iterator[Finding]:
    """Whether the office wants a permit, and an inspection before the wall is closed."""
    house, told = facts.survey.house, caution_for(facts, PERMIT)
    name = (PERMIT, "job")
    if house.permit == "needed":
        yield noted(facts, name, "a permit is needed", PERMIT)
    elif house.permit == "not needed":
        yield facts.finding(name, "pass", "no permit is needed, as surveyed", told.cite)
    else:
        figures = "nobody has said whether a permit is needed"
        yield facts.finding(name, "unknown", figures, told.cite, told.text)
    if house.permit != "not needed" or house.inspection_before_closing == "yes":
        yield _inspection(facts)


def _inspection(facts: Facts) -> Finding:
    """An inspection before closing takes one more visit than the takeoff has."""
    name, told = (PERMIT, "inspection"), caution_for(facts, "inspection")
    visit = (RemedyTask("close", "return-visit", Decimal(1), "ea"),)
    before = facts.survey.house.inspection_before_closing
    if before == "no":
        return facts.finding(name, "pass", "no inspection before closing, as surveyed", told.cite)
    if before == "yes":
        figures = "an inspection before closing; no visit for it in the plan"
        return facts.finding(name, "fail", figures, told.cite, told.text, visit)
    figures = "nobody has said whether an inspection comes before closing"
    return facts.finding(name, "unknown", figures, told.cite, told.text, visit)


@rule(TESTS)
def tests_after(facts: Facts) -> Iterator[Finding]:
    """What is tested when all is connected, and what a plug-in tester cannot see."""
    keys = ["tests-limits"] + ["no-ground"] * (facts.survey.circuit.grounded != "yes")
    told = [caution_for(facts, key).text for key in (TESTS, *keys)]
    figures = f"{plural(len(facts.new_boxes), 'new outlet')}, and every outlet beyond"
    cite = caution_for(facts, "tests-limits").cite
    yield facts.finding((TESTS, "job"), "note", figures, cite, " ".join(told))
