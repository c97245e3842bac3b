"""Does the breaker protect the wire, old and new, and what metal is the old wire."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyChange
from estimator.rules.registry import rule
from estimator.survey.electrical import CircuitKind, Run
from estimator.tables.facts import CableKind, NotOnFile, cable_kinds
from estimator.tables.limits import Limit

RULE = "breaker-wire"
METAL = "wire-material"
CIRCUIT = "circuit"
COPPER = "copper"
MATERIALS = (COPPER, "aluminum", "copper-clad")
# Circuits that the rules require at 20 A; a smaller breaker is no way out for them.
REQUIRED: tuple[CircuitKind, ...] = (
    "small appliance", "bathrooms", "one bathroom", "laundry", "garage",
)  # fmt: skip
_LOOK = "Look at the wire in the source box and at the breaker; every wire on the circuit counts."
_WHICH_METAL = "Find out what metal it is; aluminum carries less (see the finding wire-material)."
_METAL_LOOK = (
    "Scrape nothing; look at a cut end with the power off. Copper is reddish, aluminum is grey,"
    " copper-clad is reddish outside and grey within. Read the cable's jacket too."
)
_SPECIAL = (
    "Do not join new copper to it with ordinary connectors. A joint needs a connector listed for"
    " aluminum with copper, a device must be marked CO/ALR, and CPSC prefers special"
    " compression splices at every connection. Have a specialist quote, or start from another"
    " circuit that is copper."
)


@rule(RULE)
def breaker_wire(facts: Facts) -> Iterator[Finding]:
    """Hold the breaker against the old wire and against the cable of each new run."""
    yield _old(facts)
    for run in facts.survey.runs:
        yield _new(facts, run)


def breaker_limit(facts: Facts, wire: str, material: str) -> Limit | None:
    """The largest breaker for a wire, amperes; None where no figure is on file."""
    try:
        return facts.electrical(f"breaker-{wire}-{material}")
    except NotOnFile:
        return None


def is_no_branch_circuit(facts: Facts) -> bool:
    """True for a breaker smaller than any branch circuit's, which this rule fails, once."""
    breaker_a = facts.survey.circuit.breaker_a
    least_a = facts.electrical("breaker-least").value
    return breaker_a is not None and breaker_a < least_a and facts.is_in_force(RULE)


def _old(facts: Facts) -> Finding:
    """The smallest wire of the circuit as it stands."""
    circuit, name = facts.survey.circuit, (RULE, CIRCUIT)
    least_a, least_wire = facts.electrical("breaker-least"), facts.electrical("branch-wire-least")
    if circuit.breaker_a is not None and circuit.breaker_a < least_a.value:
        figures = f"breaker {circuit.breaker_a} A, least {least_a.value} A for a branch circuit"
        remedy = "Read the breaker again; this edition knows no smaller branch circuit."
        return facts.finding(name, "fail", figures, facts.cite(least_a), remedy)
    if circuit.wire is not None and awg(circuit.wire) > least_wire.value:
        figures = f"the smallest old wire is {circuit.wire} AWG, least {least_wire.value} AWG"
        remedy = "Wire this thin may feed no outlet. Start from another circuit."
        return facts.finding(name, "fail", figures, facts.cite(least_wire), remedy)
    return _old_against_breaker(facts)


def awg(wire: str) -> int:
    """The size as a number, larger for thinner; 0 for text that is no AWG number."""
    return int(wire) if wire.isdecimal() else 0


def _old_against_breaker(facts: Facts) -> Finding:
    circuit, name = facts.survey.circuit, (RULE, CIRCUIT)
    breaker_a, wire = circuit.breaker_a, circuit.wire
    metals = MATERIALS if circuit.material == "unknown" else (circuit.material,)
    limits = [breaker_limit(facts, wire or "", metal) for metal in metals]
    found = [each for each in limits if each is not None]
    said = circuit.material if circuit.material != "unknown" else "of a metal not known"
    if not found:
        what = "is unknown" if wire is None else f"has no figure on file: {wire} {said}"
        figures = f"the smallest old wire {what}; breaker {amperes(breaker_a)}"
        law = facts.cite(facts.electrical("breaker-12-copper"))
        return facts.finding(name, "unknown", figures, law, f'{_LOOK} Write a size such as "12".')
    most = max(found, key=lambda each: each.value)
    figures = (
        f"the smallest old wire, {wire} AWG {said}: breaker {amperes(breaker_a)},"
        f" at most {most.value} A{'' if len(metals) == 1 else ' if it is copper'}"
    )
    cite = facts.cite(most)
    if breaker_a is None:
        return facts.finding(name, "unknown", figures, cite, "Read the number on the breaker.")
    if breaker_a > most.value:
        return facts.finding(name, "fail", figures, cite, _old_remedy(facts, most))
    if len(found) < len(metals) or breaker_a > min(each.value for each in found):
        return facts.finding(name, "unknown", figures, cite, _WHICH_METAL)
    return facts.finding(name, "pass", figures, cite)


def _old_remedy(facts: Facts, most: Limit) -> str:
    kind, needed = facts.survey.circuit.kind, facts.electrical("required-breaker")
    change = f"Have the breaker changed to {most.value} A by someone who may work in the panel"
    too_small = most.value < needed.value
    if kind in REQUIRED and too_small:
        return (
            f"The circuit ({kind}) must be {needed.value} A ({facts.cite(needed)}), so a smaller"
            " breaker is no way out: the thin wire has to be replaced. Start from another circuit."
        )
    if kind == "unknown" and too_small:
        return (
            f"{change}, unless this circuit is one that must be {needed.value} A (kitchen,"
            " bathroom, laundry, garage); there the thin wire has to be replaced."
        )
    return f"{change}, or start from another circuit. New thick cable does not cure old thin wire."


def _new(facts: Facts, run: Run) -> Finding:
    """The cable of one new run, which is copper."""
    kind, breaker_a = cable_kinds()[run.cable], facts.survey.circuit.breaker_a
    name, limit = (RULE, f"run {run.id}"), breaker_limit(facts, kind.wire, COPPER)
    if limit is None:
        figures = f"new {run.cable} cable: no figure on file for size {kind.wire}"
        law = facts.cite(facts.electrical("breaker-12-copper"))
        return facts.finding(name, "unknown", figures, law, "Choose a cable with an AWG size.")
    figures = (
        f"new {run.cable} cable, {kind.wire} AWG copper: breaker {amperes(breaker_a)},"
        f" at most {limit.value} A"
    )
    cite = facts.cite(limit)
    if breaker_a is not None and breaker_a <= limit.value:
        return facts.finding(name, "pass", figures, cite)
    remedies, words = _thicker(facts, run, kind)
    if breaker_a is None:
        words = f"Read the number on the breaker. {words}".strip()
        return facts.finding(name, "unknown", figures, cite, words, remedies)
    words = words or "The old wire is too thin or the breaker too large: see the circuit."
    return facts.finding(name, "fail", figures, cite, words, remedies)


def _thicker(facts: Facts, run: Run, kind: CableKind) -> tuple[tuple[Remedy, ...], str]:
    """The thinnest cable that goes with the breaker; none where the old wire fails as well.

    A breaker nobody has read is taken to be the 20 A of the required circuits.
    """
    breaker_a = facts.survey.circuit.breaker_a or facts.electrical("required-breaker").value
    if _old(facts).verdict == "fail" or _holds(facts, kind, breaker_a):
        return (), ""
    for name, each in sorted(cable_kinds().items(), key=lambda named: -awg(named[1].wire)):
        alike = (each.units, each.insulated_count) == (kind.units, kind.insulated_count)
        if alike and _holds(facts, each, breaker_a):
            words = (
                f"Use {name} cable behind a {breaker_a} A breaker. A receptacle for fewer amperes"
                " does not change that; the wire counts."
            )
            return (RemedyChange("cable", run.id, name),), words
    return (), ""


def _holds(facts: Facts, kind: CableKind, breaker_a: int | Fraction) -> bool:
    limit = breaker_limit(facts, kind.wire, COPPER)
    return limit is not None and breaker_a <= limit.value


def amperes(breaker_a: int | None) -> str:
    """A rating in words."""
    return "unknown" if breaker_a is None else f"{breaker_a} A"


@rule(METAL)
def wire_material(facts: Facts) -> Iterator[Finding]:
    """Refuse to join new copper to old aluminum without somebody deciding how."""
    metal, name = facts.survey.circuit.material, (METAL, CIRCUIT)
    law = facts.cite(facts.electrical("wires-per-terminal"))
    years = _years(facts)
    if metal == COPPER:
        yield facts.finding(name, "pass", "the old wire is copper, as the new cable is", law)
    elif metal == "unknown":
        figures = f"the metal of the old wire is unknown; {years}"
        yield facts.finding(name, "unknown", figures, law, _METAL_LOOK)
    else:
        figures = f"the old wire is {metal}, the new cable is copper; {years}"
        yield facts.finding(name, "fail", figures, law, _SPECIAL)


def _years(facts: Facts) -> str:
    """How common aluminum is in a house of that year, by the commission's figures."""
    first, last = facts.electrical("aluminum-from"), facts.electrical("aluminum-to")
    homes, built = facts.electrical("aluminum-homes"), facts.survey.job.year_built
    usual = (
        f"about {int(homes.value):,} homes of {first.value} to {last.value} have aluminum"
        f" ({facts.cite(homes)})"
    )
    if built is None:
        return f"{usual}; the year of this house is unknown"
    within = "within" if first.value <= built <= last.value else "outside"
    return f"{usual}; this house is of {built}, {within} those years"
