"""Do the wires fit the box, as Rule 12-3034 of the Canadian code counts them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.rules.box_rules import judged
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.tables.box_fill import CANADA_RULE, FillRules, canada_fill_rules
from estimator.takeoff.records import BoxCount


@rule(CANADA_RULE)
def box_fill_canada(facts: Facts) -> Iterator[Finding]:
    """Hold each box's wires against its volume in millilitres; equality fits."""
    rules = canada_fill_rules()
    for count in facts.takeoff.boxes:
        yield judged(facts, count, rules, _cite(facts, count, rules))


def _cite(facts: Facts, count: BoxCount, rules: FillRules) -> str:
    """The code by name; says so where a figure used was not read in a source."""
    used = {size for size, _ in count.conductors}
    if count.clamps != "no":
        used.add("clamps")
    found = facts.electrical("canada-device")
    if used & rules.from_memory:
        found = replace(found, confidence="memory")
    return facts.cite(found)
