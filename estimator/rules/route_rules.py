"""Can the cable go that way at all."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule

GAP = "way-blocked"
ACCESS = "level-access"
_GEOMETRY = "the survey's own measures"


@rule(GAP)
def way_blocked(facts: Facts) -> Iterator[Finding]:
    """A run inside a wall cannot cross a door or window, only go over or under it."""
    for path in facts.paths:
        gaps = sorted({leg.passes_gap for leg in path.legs if leg.passes_gap})
        if gaps:
            figures = f"the level part meets a {' and a '.join(gaps)}"
            remedy = "Go over the header, under the sill, or another way round."
            yield facts.finding((GAP, f"run {path.run.id}"), "fail", figures, _GEOMETRY, remedy)


@rule(ACCESS)
def level_access(facts: Facts) -> Iterator[Finding]:
    """A run by the attic or crawlspace needs a way in."""
    access = {level.kind: level.accessible for level in facts.survey.levels}
    for path in facts.paths:
        level = path.run.level
        if level is None or access[level] == "yes":
            continue
        subject = f"run {path.run.id}"
        if access[level] == "no":
            remedy = "Choose another way, or make an access opening and survey it."
            figures = f"the {level} cannot be entered"
            yield facts.finding((ACCESS, subject), "fail", figures, _GEOMETRY, remedy)
        else:
            figures = f"nobody has said whether the {level} can be entered"
            yield facts.finding(
                (ACCESS, subject), "unknown", figures, _GEOMETRY, "Look for the hatch."
            )
