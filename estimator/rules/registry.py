"""Every rule under its id; a module of rules puts its functions here as it loads."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from estimator.rules.facts import Facts
from estimator.rules.records import Finding

Rule = Callable[[Facts], Iterator[Finding]]

FUNCTIONS: dict[str, Rule] = {}


def rule(rule_id: str) -> Callable[[Rule], Rule]:
    """Enter a function as the rule with this id; the id has its row in rules.csv.

    Raises:
        ValueError: the id is taken.
    """

    def enter(function: Rule) -> Rule:
        if rule_id in FUNCTIONS:
            raise ValueError(f"two functions for the rule {rule_id}")
        FUNCTIONS[rule_id] = function
        return function

    return enter
