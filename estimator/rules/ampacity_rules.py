"""Wire that runs hot: cables in a bundle or in one sealed hole, and warm places."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.rules.circuit_rules import amperes
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Run
from estimator.tables.circuit import adjustment, ambient_factor, ampacity, hottest_f, usual_f
from estimator.tables.facts import cable_kinds
from estimator.tables.limits import Limit
from estimator.takeoff.amounts import exact

RULE = "ampacity-adjustment"


@dataclass(frozen=True, slots=True)
class _Case:
    """How warm one run may get: wires that carry current together, and the air, degrees F."""

    wires_count: int
    ambient_f: Decimal


@dataclass(frozen=True, slots=True)
class _Amperes:
    """What the wire may carry in one case, with the sum in words and the rule behind it."""

    value: Fraction
    said: str
    cite: str


@rule(RULE)
def ampacity_adjustment(facts: Facts) -> Iterator[Finding]:
    """Hold what each new cable may carry where it lies against the breaker.

    Says nothing of a wire that is too thin wherever it lies; the breaker rule does.
    """
    breaker_a = facts.survey.circuit.breaker_a
    for run in facts.survey.runs:
        cap = _column(facts, run, "cable-sheath-cap")
        if cap is not None and (breaker_a is None or breaker_a <= cap.value):
            yield _judge(facts, run, breaker_a)


def _column(facts: Facts, run: Run, figure: str) -> Limit | None:
    """The ampacity of the run's wire in the column of so many degrees C."""
    rating_c = int(facts.electrical(figure).value)
    return ampacity(cable_kinds()[run.cable].wire, rating_c, facts.edition or "")


def _judge(facts: Facts, run: Run, breaker_a: int | None) -> Finding:
    name, (best, worst) = (RULE, f"run {run.id}"), _cases(facts, run)
    least, most = _carries(facts, run, worst), _carries(facts, run, best)
    if least is None or most is None:
        figures = (
            f"{worst.ambient_f} F; no factor is on file above {hottest_f(facts.edition or '')} F"
        )
        cite = facts.cite(facts.electrical("cable-sheath-cap"))
        remedy = "Keep the cable out of a place this hot, or ask a licensed electrician."
        return facts.finding(name, "unknown", figures, cite, remedy)
    if breaker_a is None:
        figures = f"{least.said}; breaker unknown"
        return facts.finding(
            name, "unknown", figures, least.cite, "Read the number on the breaker."
        )
    if least.value >= breaker_a:
        return facts.finding(
            name, "pass", f"{least.said}; breaker {amperes(breaker_a)}", least.cite
        )
    if most.value < breaker_a:
        figures = f"{most.said}; breaker {amperes(breaker_a)}"
        return facts.finding(name, "fail", figures, most.cite, _spread(facts))
    figures = f"at worst {least.said}; breaker {amperes(breaker_a)}"
    return facts.finding(name, "unknown", figures, least.cite, _look(facts))


def _spread(facts: Facts) -> str:
    units = facts.units
    return (
        f"Spread the cables: at most {units.say_unit(facts.electrical('bundle-length').value)} side"
        f" by side, and at most {facts.electrical('sealed-hole-cables').value} in a hole that gets"
        " sealed or lies in insulation. Keep them out of hot places, or use thicker cable."
    )


def _look(facts: Facts) -> str:
    return (
        "Find out how far the cables lie side by side, whether the hole is sealed or in insulation,"
        f" how hot the place gets, and whether red and black share one white. {_spread(facts)}"
    )


def _carries(facts: Facts, run: Run, case: _Case) -> _Amperes | None:
    """Start at the insulation's column, take off for company and heat, end at the sheath's cap."""
    edition = facts.edition or ""
    start, cap = _column(facts, run, "cable-insulation"), _column(facts, run, "cable-sheath-cap")
    share, factor = adjustment(case.wires_count, edition), ambient_factor(case.ambient_f, edition)
    if start is None or cap is None or factor is None:
        return None
    sum_a = start.value * share.value / 100 * factor.value
    said = (
        f"{case.wires_count} wires that carry current, {case.ambient_f} F: {start.value} A x"
        f" {share.value} % x {exact(factor.value)} = {exact(sum_a)} A"
    )
    if sum_a > cap.value:
        said = f"{said}, no more than {cap.value} A"
    rules = [each for each, plain in ((share, 100), (factor, 1)) if each.value != plain]
    cites = dict.fromkeys(
        facts.cite(each) for each in rules or [facts.electrical("cable-sheath-cap")]
    )
    return _Amperes(min(sum_a, cap.value), said, "; ".join(cites))


def _cases(facts: Facts, run: Run) -> tuple[_Case, _Case]:
    """The coolest and the warmest that the run may be, by what nobody knows of it."""
    groups = list(_groups(facts, run))
    each = int(facts.electrical("cable-current-wires").value)
    own = _own_wires(facts, run, each)
    sure = max((count for count, is_sure in groups if is_sure), default=1)
    possible = max((count for count, _ in groups), default=1)
    coolest_f, warmest_f = _air_f(facts, run)
    return (
        _Case(own[0] + each * (sure - 1), coolest_f),
        _Case(own[1] + each * (possible - 1), warmest_f),
    )


def _own_wires(facts: Facts, run: Run, each: int) -> tuple[int, int]:
    """Wires of the run's own cable that carry current, fewest and most.

    The white of a three-wire cable on two legs carries only the difference; on one leg, or
    behind a three-way switch, all three may count.
    """
    insulated = cable_kinds()[run.cable].insulated_count
    by_legs = {"yes": (each, each), "no": (insulated, insulated), "unknown": (each, insulated)}
    return by_legs[facts.survey.circuit.multiwire]


def _groups(facts: Facts, run: Run) -> Iterator[tuple[int, bool]]:
    """Cables that warm each other, this one among them, and whether that is sure."""
    most, packed = facts.electrical("sealed-hole-cables").value, run.in_insulation
    length_in = run.bundled_length_in
    if length_in is None or length_in > facts.electrical("bundle-length").value:
        yield run.bundled_count, length_in is not None
    if run.bundled_count > most and packed != "no":
        yield run.bundled_count, packed == "yes"
    sealed = "yes" if _is_sealed_here(facts, run) else run.hole_sealed
    if run.cables_in_hole_count > most and sealed != "no":
        yield run.cables_in_hole_count, sealed == "yes"


def _is_sealed_here(facts: Facts, run: Run) -> bool:
    """True where this job itself seals holes of the run."""
    return any(count.run_id == run.id and count.sealant for count in facts.takeoff.runs)


def _air_f(facts: Facts, run: Run) -> tuple[Decimal, Decimal]:
    """Coolest and warmest air round the run; an attic nobody measured may be very hot."""
    edition, stated_f = facts.edition or "", facts.survey.circuit.ambient_f
    if stated_f is not None:
        return stated_f, stated_f
    warmest_f = hottest_f(edition) if run.level == "attic" else usual_f(edition)
    return usual_f(edition), warmest_f
