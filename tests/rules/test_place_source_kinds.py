"""A circuit of which nobody said what it is for: worked out, asked, or refused whatever it is."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.place_facts import outlets
from estimator.rules.source_class import KINDS, possible_kinds
from estimator.rules.source_conditions import SeenCircuit
from tests.rules.place_case import facts, finding, job, run, verdict

RULE = "source-class"
FIND = (
    "Turn the breaker off, write down everything that goes dead and the breaker's number; then "
    "say what the circuit is for (kind = ...)."
)


def unsaid(room: str, breaker: int | str = 20, **circuit: Any) -> dict[str, Any]:
    return job(room, circuit={"kind": "unknown", "breaker": breaker} | circuit)


@pytest.mark.parametrize(
    ("room", "breaker", "serves", "want"),
    [
        # Kitchen receptacles hang on a 20 A small-appliance circuit; is this one?
        ("kitchen", 20, ["kitchen"], "unknown"),
        ("kitchen", 20, [], "unknown"),
        # No kitchen circuit has 15 A, whatever this one is for.
        ("kitchen", 15, ["kitchen"], "fail"),
        ("laundry", 15, [], "fail"),
        ("bathroom", 20, ["bathroom"], "unknown"),
        ("laundry", 20, ["laundry"], "unknown"),
        ("garage", 20, ["garage"], "unknown"),
        # A bathroom on the circuit of a kitchen: refused as either kind.
        ("bathroom", 20, ["kitchen"], "fail"),
        # A living room: a general circuit may, a kitchen's may not.
        ("living room", 20, ["kitchen"], "unknown"),
        ("bedroom", 20, [], "unknown"),
        ("bedroom", 15, [], "unknown"),
        # It serves a bedroom, so it is no kitchen, bathroom, laundry or garage circuit.
        ("bedroom", 20, ["bedroom"], "pass"),
        ("bedroom", 15, ["bedroom"], "pass"),
        ("bedroom", 20, ["bedroom", "kitchen"], "pass"),
        # A 10 A lighting circuit serves bedrooms as well.
        ("bedroom", "unknown", ["bedroom"], "unknown"),
        # A thing that is no room says nothing.
        ("bedroom", 20, ["furnace"], "unknown"),
        ("bedroom", 20, ["furnace", "hall"], "pass"),
        # A breaker that no kind has.
        ("bedroom", 40, ["bedroom"], "unknown"),
    ],
)
def test_what_the_survey_lets_one_say(
    room: str, breaker: int | str, serves: list[str], want: str
) -> None:
    assert verdict(RULE, unsaid(room, breaker, serves=serves)) == want


@pytest.mark.parametrize(
    ("circuit", "want"),
    [
        (SeenCircuit("laundry", 15), ("laundry",)),
        (SeenCircuit("unknown", 20, ("kitchen",)), ("general", "small appliance")),
        (SeenCircuit("unknown", 15, ("kitchen",)), ("general",)),
        (SeenCircuit("unknown", 20, ("bathroom",)), ("general", "bathrooms", "one bathroom")),
        (SeenCircuit("unknown", 20, ("garage", "outdoors")), ("general", "garage")),
        (SeenCircuit("unknown", 10), ("individual", "other dwelling", "ten ampere")),
        (SeenCircuit("unknown", 15), ("general", "individual", "other dwelling")),
        (SeenCircuit("unknown", 40, ("bedroom",)), KINDS),
        (SeenCircuit("unknown"), KINDS),
    ],
)
def test_kinds_that_a_circuit_may_be(circuit: SeenCircuit, want: tuple[str, ...]) -> None:
    assert possible_kinds(circuit, facts(job())) == want


def test_10_a_is_no_kind_before_2023() -> None:
    circuit = SeenCircuit("unknown", None, ("bedroom",))
    assert possible_kinds(circuit, facts(job())) == ("general", "ten ampere")
    assert possible_kinds(circuit, facts(job(edition="nec-2020"))) == ("general",)


def test_an_open_kind_says_what_each_would_mean() -> None:
    said = finding(RULE, unsaid("living room", serves=["kitchen"]))
    assert said.figures == (
        "a circuit of unknown kind, 20 A; new receptacle in living room: as a general circuit "
        "(lights and receptacles) it may feed it, as a small-appliance circuit (kitchen, pantry, "
        "dining) it may not"
    )
    assert (said.remedy, said.cite) == (FIND, "NEC 2023 210.52(B)(2)")


def test_a_long_list_of_kinds_is_not_read_out() -> None:
    said = finding(RULE, unsaid("bedroom", "unknown"))
    assert said.figures == (
        "a circuit of unknown kind, breaker unknown; new receptacle in bedroom: as a general "
        "circuit (lights and receptacles) it may feed it, as a small-appliance circuit (kitchen, "
        "pantry, dining) or bathroom circuit (receptacles of several bathrooms) or circuit kept "
        "for something else it may not"
    )


def test_a_kind_that_was_worked_out_says_so() -> None:
    said = finding(RULE, unsaid("bedroom", serves=["bedroom", "hall"]))
    assert said.figures == (
        "general circuit (lights and receptacles), 20 A, worked out from the rooms it serves "
        "(bedroom, hall); new receptacle in bedroom: nothing there needs a circuit of its own"
    )
    assert (said.verdict, said.cite) == ("pass", "NEC 2023 210.11 (worked out)")


def test_a_kind_may_be_open_in_three_ways() -> None:
    """A heater in a bathroom: nobody has added up what is fastened in place."""
    raw = unsaid("bath", serves=["bath"])
    raw["rooms"] = [{"id": "bath", "use": "bathroom"}]
    raw["boxes"][1] |= {"device": "none", "spot": {"appliance": "other"}}
    assert finding(RULE, raw).figures.endswith(
        "as a general circuit (lights and receptacles) it may feed it, as a circuit of one "
        "bathroom alone nobody can say yet, as a bathroom circuit (receptacles of several "
        "bathrooms) it may not"
    )


def test_a_kind_may_be_open_with_none_that_refuses() -> None:
    """A light in a garage of nobody knows how many vehicles."""
    raw = unsaid("garage", serves=["garage"])
    raw["boxes"][1]["device"] = "luminaire"
    said = finding(RULE, raw)
    assert (said.verdict, said.remedy) == ("unknown", FIND)
    assert said.figures.endswith(
        "as a general circuit (lights and receptacles) it may feed it, as a garage circuit nobody "
        "can say yet"
    )


@pytest.mark.parametrize(
    ("kind", "room", "want"),
    [
        ("general", "den", "pass"),
        ("laundry", "den", "fail"),
        ("small appliance", "kitchen", "pass"),
    ],
)
def test_an_outlet_that_no_old_box_feeds_is_judged_by_the_circuit(
    kind: str, room: str, want: str
) -> None:
    more = [{"id": "second", "room": room}]
    raw = job(circuit={"kind": kind}, more=more, runs=[run("new", "second")])
    assert verdict(RULE, raw, "second") == want


@pytest.mark.parametrize(
    ("kind", "device", "want"),
    [
        ("general", "luminaire", "pass"),
        ("general", "receptacle", "unknown"),
        ("garage", "luminaire", "unknown"),
        ("small appliance", "luminaire", "fail"),
        ("small appliance", "receptacle", "unknown"),
    ],
)
def test_a_room_of_unknown_use(kind: str, device: str, want: str) -> None:
    raw = job("that room", new={"device": device}, circuit={"kind": kind})
    assert verdict(RULE, raw) == want


def test_a_room_of_unknown_use_is_asked_about() -> None:
    said = finding(RULE, job("that room"))
    assert said.figures.endswith(
        "new receptacle in that room (its use is unknown): that hangs on what the room is used for"
    )
    assert said.remedy == "Say what the room is used for (use = ...)."


def test_a_listed_room_is_said_with_its_use() -> None:
    raw = job("blue", rooms=[{"id": "blue", "use": "bedroom"}])
    assert "new receptacle in blue (bedroom): nothing there" in finding(RULE, raw).figures


@pytest.mark.parametrize(
    ("new", "kind"),
    [
        ({}, "receptacle"),
        ({"device": "gfci receptacle"}, "receptacle"),
        ({"device": "wet receptacle"}, "receptacle"),
        ({"device": "switch"}, "switch"),
        ({"device": "three-way switch"}, "switch"),
        ({"device": "luminaire"}, "light"),
        ({"device": "none", "spot": {"appliance": "other"}}, "fixed appliance"),
        ({"spot": {"appliance": "hood"}}, "fixed appliance"),
        ({"spot": {"appliance": "other"}}, "receptacle"),
    ],
)
def test_kinds_of_outlets(new: dict[str, Any], kind: str) -> None:
    ((box, found),) = outlets(facts(job(new=new)))
    assert (box.id, found) == ("new", kind)
