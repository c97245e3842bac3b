"""Can the cable go that way at all."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.route.members import stands_at
from estimator.route.records import PathLeg
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule

GAP = "way-blocked"
ACCESS = "level-access"
_GEOMETRY = "the survey's own measures"


@rule(GAP)
def way_blocked(facts: Facts) -> Iterator[Finding]:
    """A run inside a wall cannot cross a door or window, only go over or under it.

    One whose place in the wall nobody measured is asked about where it is as high as the run.
    """
    for path in facts.paths:
        gaps = sorted({leg.passes_gap for leg in path.legs if leg.passes_gap})
        if gaps:
            figures = f"the level part meets a {' and a '.join(gaps)}"
            remedy = "Go over the header, under the sill, or another way round."
            yield facts.finding((GAP, f"run {path.run.id}"), "fail", figures, _GEOMETRY, remedy)
        elif unplaced := sorted({name for leg in path.legs for name in _unplaced(facts, leg)}):
            stand = "stands" if len(unplaced) == 1 else "stand"
            figures = f"nobody has said where the {' and the '.join(unplaced)} {stand}"
            remedy = "Measure from the wall's left end to its left edge (left = ...)."
            yield facts.finding((GAP, f"run {path.run.id}"), "unknown", figures, _GEOMETRY, remedy)


def _unplaced(facts: Facts, leg: PathLeg) -> Iterator[str]:
    """Doors and windows of unknown place that a level leg inside their wall may meet."""
    if leg.go != "along" or leg.wall is None or leg.stretch is None:
        return
    for kind, gaps in (("door", facts.survey.doors), ("window", facts.survey.windows)):
        for gap in gaps:
            unknown = gap.wall == leg.wall and gap.left_in is None
            if unknown and stands_at(gap, leg.stretch.height1_in):
                yield f"{kind} in wall {gap.wall}"


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
