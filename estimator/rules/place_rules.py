"""Zones that keep things away: receptacles and lights at a tub, lights in a closet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.place_facts import OutletKind, outlets, use_of_box
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.tables.facts import NotOnFile
from estimator.tables.limits import Limit
from estimator.tables.place import closet_light, tub_relief

TUB = "tub-zone"
CLOSET = "closet-light"
BATHROOM = "bathroom"
_KEPT_AWAY = ("hanging", "track")


@rule(TUB)
def tub_zone(facts: Facts) -> Iterator[Finding]:
    """Receptacles, hanging lights and fans keep a distance from a tub or shower."""
    for box, kind in outlets(facts):
        if use_of_box(facts, box) == BATHROOM or box.spot.tub_distance_in is not None:
            if kind == "receptacle":
                yield _receptacle(facts, box)
            elif kind == "light":
                yield _light(facts, box, kind)


def _receptacle(facts: Facts, box: Box) -> Finding:
    level, height = facts.electrical("tub-zone-level"), _figure(facts, "tub-zone-height")
    inside, subject = _inside(box, level, height), (TUB, box.id)
    figures, cite = _zone_words(facts, box, level, height), facts.cite(level)
    relief = _relief(facts, box)
    if inside == "no":
        return facts.finding(subject, "pass", figures, cite)
    if relief:
        return facts.finding(subject, "pass", f"{figures}; {relief}", cite)
    if inside == "yes":
        remedy = "Move it out of the zone of the tub or shower."
        return facts.finding(subject, "fail", figures, cite, remedy)
    remedy = "Measure level from the tub or shower, and up from its rim or threshold."
    return facts.finding(subject, "unknown", figures, cite, remedy)


def _figure(facts: Facts, name: str) -> Limit | None:
    """A figure that some editions do not have: the zone then has no top."""
    try:
        return facts.electrical(name)
    except NotOnFile:
        return None


def _inside(box: Box, level: Limit, height: Limit | None) -> YesNo:
    """Whether a box stands in the zone; its edge is outside, right over the tub is inside."""
    distance_in, above_in = box.spot.tub_distance_in, box.spot.above_tub_in
    top = "yes" if height is None else _below(above_in, height.value)
    if distance_in is None:
        return "no" if top == "no" else "unknown"
    if distance_in > 0 and distance_in >= level.value:
        return "no"
    return top


def _below(above_in: Fraction | None, limit_in: Fraction) -> YesNo:
    if above_in is None:
        return "unknown"
    return "yes" if above_in < limit_in else "no"


def _zone_words(facts: Facts, box: Box, level: Limit, height: Limit | None) -> str:
    say = facts.units.say_unit
    distance_in, above_in = box.spot.tub_distance_in, box.spot.above_tub_in
    found = "unknown" if distance_in is None else say(distance_in)
    if height is None:
        return f"{found} from tub or shower; not within it or right above it"
    above = "unknown" if above_in is None else say(above_in)
    return (
        f"{found} from tub or shower, {above} above its rim; the zone is "
        f"{say(level.value)} wide and {say(height.value)} high"
    )


def _relief(facts: Facts, box: Box) -> str:
    """What lets a receptacle stand inside the zone in the edition in force; else empty."""
    spot = box.spot
    held: Mapping[str, bool] = {
        "barrier": spot.tub_barrier == "yes",
        "farthest-wall": spot.farthest_wall == "yes",
        "toilet-seat": spot.appliance == "toilet seat",
    }
    rows = tub_relief(facts.edition or "")
    return next((rows[key]["words"] for key, holds in held.items() if holds and key in rows), "")


def _light(facts: Facts, box: Box, kind: OutletKind) -> Finding:
    level, height = facts.electrical("tub-light-level"), facts.electrical("tub-light-height")
    inside, subject = _inside(box, level, height), (TUB, box.id)
    figures = f"{kind}: {_zone_words(facts, box, level, height)}"
    cite = facts.cite(level)
    if inside == "no":
        return facts.finding(subject, "pass", figures, cite)
    if inside == "unknown":
        remedy = "Measure level from the tub or shower, and up from its rim or threshold."
        return facts.finding(subject, "unknown", figures, cite, remedy)
    if box.spot.luminaire in _KEPT_AWAY or box.spot.fan == "yes":
        remedy = "No hanging or track light and no fan there: choose another or move it."
        return facts.finding(subject, "fail", figures, cite, remedy)
    if box.spot.luminaire == "unknown":
        remedy = "Say which kind of light it is (luminaire = ...)."
        return facts.finding(subject, "unknown", figures, cite, remedy)
    remedy = "Above the tub the light must be listed for damp places, in the spray for wet ones."
    return facts.finding(subject, "note", figures, cite, remedy)


@rule(CLOSET)
def closet_lights(facts: Facts) -> Iterator[Finding]:
    """A light in a clothes closet keeps a distance from where things are stored."""
    for box, kind in outlets(facts):
        if kind == "light" and use_of_box(facts, box) == "closet":
            yield _closet(facts, box)


def _closet(facts: Facts, box: Box) -> Finding:
    subject, clear_in = (CLOSET, box.id), box.spot.storage_clearance_in
    if box.spot.luminaire == "unknown":
        remedy = "Say which light it is (luminaire = ...) and measure from it to the storage."
        figures = f"kind of light unknown, {_clear(facts, clear_in)}"
        return facts.finding(subject, "unknown", figures, facts.law("410.16", "seen"), remedy)
    row = closet_light(box.spot.luminaire)
    if not row["figure"]:
        remedy = "Use an enclosed or a recessed light."
        law = facts.law(row["where"], row["confidence"])
        figures = f"{row['words']} is not for a clothes closet"
        return facts.finding(subject, "fail", figures, law, remedy)
    limit = facts.electrical(row["figure"])
    figures = (
        f"{row['words']}: {_clear(facts, clear_in)}, least {facts.units.say_unit(limit.value)}"
    )
    if clear_in is None:
        remedy = "Measure from the light to the shelf or the clothes."
        return facts.finding(subject, "unknown", figures, facts.cite(limit), remedy)
    if clear_in < limit.value:
        remedy = "Move the light or the shelf, or choose a light that may be nearer."
        return facts.finding(subject, "fail", figures, facts.cite(limit), remedy)
    return facts.finding(subject, "pass", figures, facts.cite(limit))


def _clear(facts: Facts, clear_in: Fraction | None) -> str:
    if clear_in is None:
        return "distance to storage unknown"
    return f"{facts.units.say_unit(clear_in)} to storage"
