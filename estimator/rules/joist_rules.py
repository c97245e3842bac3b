"""Holes and notches in joists: how deep, how wide, where along the span."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.route.records import PathLeg, RunPath
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.rules.wood_cuts import (
    BORED,
    NOTCHED,
    Bounds,
    Judged,
    allowed,
    hole_in,
    notch_in,
    rounded_down,
    share,
    together,
)
from estimator.survey.place import Member
from estimator.takeoff.amounts import plural

JOIST = "joist-cut"
_MAKER = "Ask the maker of the joists, or a designer, before anything is cut."
_MEASURE = "Measure the depth of the joist."
_SAY_WHERE = "Say how far the notch is from the joist's bearing end, and the span."
_ENGINEERED = "engineered joist: nothing may be cut unless its maker or a designer allows it"


@dataclass(frozen=True, slots=True)
class JoistCut:
    """One joist with what is cut in it; None where nobody knows, or a typed leg cannot say.

    Attributes:
        at_in: from the bearing end to the cut. edge_in: of the hole, to the nearest edge.
    """

    name: str
    engineered: str
    depth_in: Fraction | None
    span_in: Fraction | None
    at_in: Fraction | None
    hole_in: Fraction | None
    edge_in: Fraction | None
    notched: bool
    notch_depth_in: Fraction | None
    notch_length_in: Fraction | None
    thickness_in: Fraction | None
    notch_side: str | None


@rule(JOIST)
def joist_cut(facts: Facts) -> Iterator[Finding]:
    """Hold holes and notches of joists against their shares of depth and span."""
    cite = facts.cite(facts.building("joist-hole"))
    for path in facts.paths:
        judged = [each for cut in _cuts(facts, path) for each in _judge(facts, cut)]
        if judged:
            yield together(facts, (JOIST, f"run {path.run.id}"), judged, cite)


def _cuts(facts: Facts, path: RunPath) -> Iterator[JoistCut]:
    """Joists that the run cuts: as the survey lists them, else as typed for the run."""
    number = 0
    for leg in path.legs:
        for each in leg.crossed if leg.method in (*BORED, *NOTCHED) else ():
            if each.kind == "joist" and each.member is not None:
                number += 1
                yield _listed(facts, path, leg, (number, each.member))
            elif each.kind == "joist":
                yield _typed(facts, path, leg, each.count)


def _listed(facts: Facts, path: RunPath, leg: PathLeg, named: tuple[int, Member]) -> JoistCut:
    number, member = named
    bored = leg.method in BORED or member.hole_in is not None
    return JoistCut(
        name=f"joist {number}",
        engineered=member.engineered,
        depth_in=member.depth_in,
        span_in=member.span_in,
        at_in=member.hole_at_in,
        hole_in=hole_in(facts, path, member) if bored else None,
        edge_in=path.run.edge_in,
        notched=leg.method in NOTCHED or "notch_depth_in" in member.model_fields_set,
        notch_depth_in=notch_in(path, member),
        notch_length_in=member.notch_length_in,
        thickness_in=member.thickness_in,
        notch_side=member.notch_side,
    )


def _typed(facts: Facts, path: RunPath, leg: PathLeg, count: int) -> JoistCut:
    notched = leg.method in NOTCHED
    return JoistCut(
        name=plural(count, "joist"),
        engineered="no",
        depth_in=path.run.joist_depth_in,
        span_in=None,
        at_in=None,
        hole_in=None if notched else hole_in(facts, path),
        edge_in=path.run.edge_in,
        notched=notched,
        notch_depth_in=path.run.notch_depth_in,
        notch_length_in=None,
        thickness_in=None,
        notch_side=None,
    )


def _judge(facts: Facts, cut: JoistCut) -> Iterator[Judged]:
    if cut.engineered == "yes":
        yield Judged("unknown", f"{cut.name}: {_ENGINEERED}", _MAKER)
        return
    if cut.engineered == "unknown":
        figures = f"{cut.name}: nobody has said whether it is solid wood or engineered"
        yield Judged("unknown", figures, f"Look at the joist. {_MAKER}")
    if cut.depth_in is None:
        yield Judged("unknown", f"{cut.name}: its depth is unknown", _MEASURE)
        return
    if cut.hole_in is not None:
        yield _hole(facts, cut, cut.hole_in, cut.depth_in)
    if cut.notched:
        yield _notch_depth(facts, cut, cut.depth_in)
        if not _is_end(cut):
            yield _notch_length(facts, cut, cut.depth_in)
            yield _notch_place(facts, cut)
            yield from _notch_edge(facts, cut)


def most_hole_in(facts: Facts, depth_in: Fraction) -> Fraction:
    """The largest hole in a joist: its share of the depth, and the wood above and below it."""
    by_share_in = share(facts.building("joist-hole")) * depth_in
    return min(by_share_in, depth_in - 2 * facts.building("joist-hole-edge").value)


def _hole(facts: Facts, cut: JoistCut, size_in: Fraction, depth_in: Fraction) -> Judged:
    units, edge = facts.units, facts.building("joist-hole-edge")
    most_in = most_hole_in(facts, depth_in)
    figures = (
        f"{cut.name}, hole {units.say_unit(size_in)}: at most {rounded_down(units, most_in)}"
        f" in {units.say_unit(depth_in)}, {units.say_unit(edge.value)} of wood round it"
    )
    if size_in > most_in:
        return Judged("fail", figures, "Use a smaller bit, or another way.")
    if cut.edge_in is not None:
        left_in = min(cut.edge_in, depth_in - size_in - cut.edge_in)
        if left_in < edge.value:
            figures += f"; {units.say_unit(left_in)} left at an edge"
            return Judged("fail", figures, "Bore at mid depth.")
    remedy = (
        f"Bore at mid depth, {units.say_unit(edge.value)} from other holes and notches. "
        "This is for solid wood: an engineered joist goes by its maker."
    )
    return Judged("pass", figures, remedy)


def _is_end(cut: JoistCut) -> bool:
    """True for a notch at the very end, over the bearing."""
    return cut.at_in == 0


def _notch_depth(facts: Facts, cut: JoistCut, depth_in: Fraction) -> Judged:
    """A share of the depth, larger at the end; not known between the two without a place."""
    units, deep_in = facts.units, cut.notch_depth_in
    inner, end = facts.building("joist-notch"), facts.building("joist-end-notch")
    low = end if _is_end(cut) else inner
    high = end if cut.at_in is None else low
    bounds = Bounds(low, depth_in, high, depth_in)
    if deep_in is None:
        figures = f"{cut.name}: notch at most {allowed(units, low, depth_in)} deep"
        return Judged("unknown", f"{figures}, its depth is unknown", "Say how deep it will be.")
    figures = f"{cut.name}, notch {units.say_unit(deep_in)} deep: {bounds.say(units, deep_in)}"
    verdict = bounds.verdict(deep_in)
    if verdict == "fail":
        return Judged(verdict, figures, "Bore the joist instead, or notch less deep.")
    return Judged(verdict, figures, _SAY_WHERE if verdict == "unknown" else "")


def _notch_length(facts: Facts, cut: JoistCut, depth_in: Fraction) -> Judged:
    units, limit, length_in = facts.units, facts.building("joist-notch-length"), cut.notch_length_in
    most = f"at most {allowed(units, limit, depth_in)}"
    if length_in is None:
        figures = f"{cut.name}: length of the notch unknown, {most}"
        return Judged("unknown", figures, "Say how long the notch will be.")
    figures = f"{cut.name}, notch {units.say_unit(length_in)} long: {most}"
    if length_in <= share(limit) * depth_in:
        return Judged("pass", figures)
    return Judged("fail", figures, "Make the notch shorter, or bore the joist.")


def _notch_place(facts: Facts, cut: JoistCut) -> Judged:
    """No notch in the middle third; one that ends where it begins is outside."""
    if cut.at_in is None or cut.span_in is None or cut.notch_length_in is None:
        figures = f"{cut.name}: whether the notch is in the middle of the span is unknown"
        return Judged("unknown", figures, _SAY_WHERE)
    units, part = facts.units, facts.building("joist-middle").value
    begins_in = cut.span_in * (1 - part) / 2
    ends_in = cut.span_in - begins_in
    figures = (
        f"{cut.name}, notch {units.say_unit(cut.at_in)} from the end: none from "
        f"{units.say(begins_in)} to {units.say_unit(ends_in)}, the middle {part} of the span"
    )
    if cut.at_in + cut.notch_length_in <= begins_in or cut.at_in >= ends_in:
        return Judged("pass", figures)
    return Judged("fail", figures, "Bore the joist instead, or notch nearer to its end.")


def _notch_edge(facts: Facts, cut: JoistCut) -> Iterator[Judged]:
    """A thick joist is not notched on its lower edge, which is drawn apart, but at its ends.

    Typed legs do not place a notch, so theirs are asked about in any case.
    """
    units, limit = facts.units, facts.building("joist-thick")
    thin = cut.thickness_in is not None and cut.thickness_in < limit.value
    if thin or cut.notch_side in ("top", None):
        return
    thick = "unknown" if cut.thickness_in is None else units.say_unit(cut.thickness_in)
    figures = (
        f"{cut.name}, thickness {thick}, notched edge: {cut.notch_side}; no notch in the lower "
        f"edge from {units.say_unit(limit.value)} on"
    )
    if cut.thickness_in is not None and cut.notch_side == "bottom":
        yield Judged("fail", figures, "Notch the upper edge, or bore the joist.")
    else:
        yield Judged("unknown", figures, "Say how thick the joist is and which edge is notched.")
