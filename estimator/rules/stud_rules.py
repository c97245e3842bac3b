"""Notches and holes in studs: how deep, how wide, how near the edge."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.rules.wood_cuts import (
    BORED,
    NOTCHED,
    Bounds,
    Judged,
    StudCut,
    allowed,
    depth_range,
    merged,
    stud_cuts,
    together,
)
from estimator.tables.limits import Limit
from estimator.takeoff.amounts import plural

NOTCH = "stud-notch"
HOLE = "stud-hole"
_WALL = {"yes": "bearing or outside wall", "no": "no load", "unknown": "load not known"}
_ASK_BEARS = "Find out whether the wall bears load: what stands on it, which way the joists run."
_ASK_DEPTH = "Measure the depth of the studs."
_ASK_DOUBLED = "Look whether the studs are doubled."
_ASK_WOOD = "Find out whether the studs are wood or steel; a magnet tells."


@rule(NOTCH)
def stud_notch(facts: Facts) -> Iterator[Finding]:
    """Hold the depth of a run's notches against the share of the stud that may be cut."""
    cite = facts.cite(facts.building("stud-notch-bearing"))
    for path in facts.paths:
        cuts = stud_cuts(facts, path, NOTCHED)
        judged = [if_wood(cut, _notch(facts, cut)) for cut in cuts]
        if judged:
            yield together(facts, (NOTCH, f"run {path.run.id}"), judged, cite)


@rule(HOLE)
def stud_hole(facts: Facts) -> Iterator[Finding]:
    """Hold a run's holes against the share of the stud, and against the wood left at its edge."""
    cite = facts.cite(facts.building("stud-hole-bearing"))
    for path in facts.paths:
        cuts = stud_cuts(facts, path, BORED)
        judged = [if_wood(cut, merged((_size(facts, cut), _edge(facts, cut)))) for cut in cuts]
        if judged:
            yield together(facts, (HOLE, f"run {path.run.id}"), judged, cite)


def notch_bounds(facts: Facts, cut: StudCut) -> Bounds:
    """The least and most depth that a notch may have in these studs."""
    bearing, other = facts.building("stud-notch-bearing"), facts.building("stud-notch-other")
    least_in, most_in = depth_range(facts, cut.standing.depth_in)
    low = other if cut.standing.bears == "no" else bearing
    high = bearing if cut.standing.bears == "yes" else other
    return Bounds(low, least_in, high, most_in)


def hole_bounds(facts: Facts, cut: StudCut) -> Bounds:
    """The least and most diameter that a hole may have in these studs.

    In a bearing wall the larger share holds for doubled studs alone, and for no more of them
    in a row than the table says.
    """
    bearing, other = facts.building("stud-hole-bearing"), facts.building("stud-hole-other")
    standing = cut.standing
    least_in, most_in = depth_range(facts, standing.depth_in)
    few = cut.in_a_row_count <= facts.building("stud-doubled-in-a-row").value
    relieved = few and standing.doubled == "yes"
    may_be_relieved = few and standing.doubled != "no"
    low = other if standing.bears == "no" or relieved else bearing
    high = bearing if standing.bears == "yes" and not may_be_relieved else other
    return Bounds(low, least_in, high, most_in)


def _notch(facts: Facts, cut: StudCut) -> Judged:
    units, bounds = facts.units, notch_bounds(facts, cut)
    said, notch_in = _named(cut, "notched stud"), cut.standing.notch_in
    if notch_in is None:
        least = allowed(units, bounds.low, bounds.low_depth_in)
        figures = f"{said}: depth of the notch unknown, {least} is within in any case"
        return Judged("unknown", figures, "Say how deep the notches will be.")
    figures = f"{said}, {units.say_unit(notch_in)} deep: {bounds.say(units, notch_in)}"
    verdict = bounds.verdict(notch_in)
    if verdict == "fail":
        return Judged(verdict, figures, "Bore the studs instead, or notch less deep.")
    if verdict == "unknown":
        return Judged(verdict, figures, _to_find_out(cut, doubling=False))
    return Judged(verdict, figures + _whatever(cut))


def _size(facts: Facts, cut: StudCut) -> Judged:
    units, bounds, size_in = facts.units, hole_bounds(facts, cut), cut.standing.hole_in
    said = f"{_named(cut, 'bored stud')}, hole {units.say_unit(size_in)}"
    figures = f"{said}: {bounds.say(units, size_in)}"
    verdict = bounds.verdict(size_in)
    if verdict == "fail":
        return Judged(verdict, figures, _smaller(facts, cut))
    if verdict == "unknown":
        return Judged(verdict, figures, _to_find_out(cut, doubling=True))
    return Judged(verdict, figures + _whatever(cut))


def _named(cut: StudCut, word: str) -> str:
    return f"{plural(cut.count, word)} ({_WALL[cut.standing.bears]})"


def _smaller(facts: Facts, cut: StudCut) -> str:
    """What to do about a hole too large, with the relief that doubled studs give."""
    other, most = facts.building("stud-hole-other"), facts.building("stud-doubled-in-a-row")
    words = "Use a smaller bit, or another way."
    depth_in = depth_range(facts, cut.standing.depth_in)[1]
    if cut.standing.hole_in <= Bounds(other, depth_in, other, depth_in).low_in:
        words += f" Doubled studs take a larger hole, no more than {most.value} of them in a row."
    return words


def _edge(facts: Facts, cut: StudCut) -> Judged:
    """Judge the wood left between the hole and the nearest face."""
    limit, units = facts.building("stud-hole-edge"), facts.units
    least_in, most_in = depth_range(facts, cut.standing.depth_in)
    worst_in, best_in = (_left_in(cut, depth_in) for depth_in in (least_in, most_in))
    figures = f"wood left at the edge {units.say_unit(worst_in)}, {_at_least(facts, limit)}"
    if worst_in >= limit.value:
        return Judged("pass", figures)
    if best_in < limit.value:
        remedy = "Bore in the middle of the stud, or use a smaller bit."
        return Judged("fail", figures, remedy)
    return Judged("unknown", f"{figures}, if the studs are slim", _ASK_DEPTH)


def _left_in(cut: StudCut, depth_in: Fraction) -> Fraction:
    """Wood at the nearer face, inches; none where the hole breaks out."""
    size_in, near_in = cut.standing.hole_in, cut.standing.edge_in
    if near_in is None:
        return max(Fraction(0), (depth_in - size_in) / 2)
    return max(Fraction(0), min(near_in, depth_in - size_in - near_in))


def _at_least(facts: Facts, limit: Limit) -> str:
    return f"at least {facts.units.say_unit(limit.value)}"


def if_wood(cut: StudCut, judged: Judged) -> Judged:
    """The answer as it is for wood; not known where nobody knows what the studs are."""
    if cut.standing.wood == "yes":
        return judged
    asked = f"{judged.remedy} {_ASK_WOOD}" if judged.verdict == "unknown" else _ASK_WOOD
    return replace(judged, verdict="unknown", remedy=asked)


def _whatever(cut: StudCut) -> str:
    """What a pass holds in spite of."""
    missing = [
        words
        for words, known in (
            ("the wall bears load or not", cut.standing.bears != "unknown"),
            ("the studs are of any usual depth", cut.standing.depth_in is not None),
        )
        if not known
    ]
    return f", whether {' and whether '.join(missing)}" if missing else ""


def _to_find_out(cut: StudCut, *, doubling: bool) -> str:
    """What to look at, where the verdict hangs on it."""
    standing = cut.standing
    asked = (
        (_ASK_BEARS, standing.bears == "unknown"),
        (_ASK_DEPTH, standing.depth_in is None),
        (_ASK_DOUBLED, doubling and standing.doubled == "unknown" and standing.bears != "no"),
    )
    return " ".join(words for words, missing in asked if missing)
