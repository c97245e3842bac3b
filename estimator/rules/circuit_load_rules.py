"""What the circuit carries: plug-in, fixed and continuous loads, and the sum of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.rules.circuit_rules import CIRCUIT
from estimator.rules.facts import Facts
from estimator.rules.rating_rules import rating_a
from estimator.rules.records import Finding, Verdict
from estimator.rules.registry import rule
from estimator.tables.circuit import receptacle_load
from estimator.tables.place import device_traits
from estimator.takeoff.amounts import exact

RULE = "circuit-load"
_WORST_FIRST: tuple[Verdict, ...] = ("fail", "unknown", "pass")


@dataclass(frozen=True, slots=True)
class _Part:
    """One comparison of the loads; the finding joins them."""

    verdict: Verdict
    figures: str
    cite: str
    remedy: str = ""


@rule(RULE)
def circuit_load(facts: Facts) -> Iterator[Finding]:
    """Hold the loads that were stated against the breaker; one note where none was."""
    circuit, name = facts.survey.circuit, (RULE, CIRCUIT)
    stated = (*_by_name(facts).values(), circuit.largest_portable_a)
    if all(each is None for each in stated):
        yield _nothing_stated(facts)
    elif circuit.breaker_a is None:
        figures, cite = "loads were stated; the breaker is unknown", _total_cite(facts)
        yield facts.finding(name, "unknown", figures, cite, "Read the number on the breaker.")
    else:
        yield _joined(facts, tuple(_parts(facts, circuit.breaker_a)))


def _by_name(facts: Facts) -> dict[str, Decimal | None]:
    """The loads that add up, amperes; the largest plug-in load is in one of them."""
    circuit = facts.survey.circuit
    return {
        "new outlet": circuit.load_a,
        "fixed": circuit.fixed_a,
        "other": circuit.other_a,
        "continuous": circuit.continuous_a,
    }


def _nothing_stated(facts: Facts) -> Finding:
    each = facts.electrical("receptacle-va")
    figures = (
        "no load was stated; a dwelling's general circuit has no set number of receptacles"
        f" ({each.value} {each.unit} for each is not counted there)"
    )
    remedy = "Ask what will be plugged in, and what else the breaker feeds."
    return facts.finding((RULE, CIRCUIT), "note", figures, facts.cite(each), remedy)


def _joined(facts: Facts, parts: tuple[_Part, ...]) -> Finding:
    """The parts as one finding: the worst verdict, with the citations that decide it."""
    worst = min((part.verdict for part in parts), key=_WORST_FIRST.index)
    deciding = [part for part in parts if part.verdict == worst]
    figures = "; ".join(part.figures for part in parts)
    cite = "; ".join(dict.fromkeys(part.cite for part in deciding))
    remedy = " ".join(dict.fromkeys(part.remedy for part in deciding if part.remedy))
    return facts.finding((RULE, CIRCUIT), worst, figures, cite, remedy)


def _parts(facts: Facts, breaker_a: int) -> Iterator[_Part]:
    circuit = facts.survey.circuit
    if circuit.largest_portable_a is not None:
        yield _share(facts, ("largest plug-in load", "portable-share"), circuit.largest_portable_a)
    if circuit.load_a is not None:
        yield from _at_the_receptacle(facts, breaker_a, circuit.load_a)
    if circuit.fixed_a is not None and circuit.kind != "individual":
        yield _share(facts, ("fixed load beside others", "fixed-share"), circuit.fixed_a)
    yield _total(facts, breaker_a)


def _share(facts: Facts, what: tuple[str, str], load_a: Decimal) -> _Part:
    """A load against its share of the breaker."""
    share = facts.electrical(what[1])
    most_a = (facts.survey.circuit.breaker_a or 0) * share.value / 100
    figures = f"{what[0]} {load_a} A, at most {exact(most_a)} A ({share.value} %)"
    if load_a <= most_a:
        return _Part("pass", figures, facts.cite(share))
    remedy = "Too much for a shared circuit: this load wants a circuit of its own."
    return _Part("fail", figures, facts.cite(share), remedy)


def _at_the_receptacle(facts: Facts, breaker_a: int, load_a: Decimal) -> Iterator[_Part]:
    """The load at the new outlet against what a receptacle of that rating may carry."""
    ratings = [
        rating_a(facts, box) for box in facts.new_boxes if device_traits(box.device).is_receptacle
    ]
    for rated_a in sorted({each for each in ratings if each is not None}):
        limit = receptacle_load(breaker_a, rated_a, facts.edition or "")
        if limit is not None:
            figures = (
                f"load at the new outlet {load_a} A, a {rated_a} A receptacle carries"
                f" {limit.value} A"
            )
            verdict: Verdict = "pass" if load_a <= limit.value else "fail"
            remedy = "" if verdict == "pass" else "This load wants a circuit of its own."
            yield _Part(verdict, figures, facts.cite(limit), remedy)


def _total(facts: Facts, breaker_a: int) -> _Part:
    """All loads together, the continuous one with its surplus; equality passes."""
    loads, factor = _by_name(facts), facts.electrical("continuous-share")
    terms = [f"{name} {load_a}" for name, load_a in loads.items() if load_a is not None]
    total_a = sum((Fraction(load_a or 0) for load_a in loads.values()), Fraction(0))
    if loads["continuous"] is not None:
        terms[-1] = f"{factor.value} % x {terms[-1]}"
        total_a += Fraction(loads["continuous"]) * (factor.value / 100 - 1)
    missing = [name for name, load_a in loads.items() if load_a is None]
    figures = f"{' + '.join(terms)} = {exact(total_a)} A of {breaker_a} A"
    if total_a > breaker_a:
        remedy = "More than the breaker carries: use another circuit, or a new one."
        return _Part("fail", figures, _total_cite(facts), remedy)
    if missing:
        figures = f"{figures if terms else 'no sum'}, without: {', '.join(missing)}"
        remedy = "State the other loads too; write 0 where there is none."
        return _Part("unknown", figures, _total_cite(facts), remedy)
    return _Part("pass", figures, _total_cite(facts))


def _total_cite(facts: Facts) -> str:
    return facts.cite(facts.electrical("continuous-share"))
