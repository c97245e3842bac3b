"""All existing boxes ranked as sources: circuit first, then the room, then protection to add."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.source_ranking import RankedSource, ranked_sources
from tests.rules.place_case import facts, finding, findings, job, run

RULE = "source-class"
MORE = [
    {"id": "hall box", "existing": True, "room": "hall", "circuit_kind": "general"},
    {"id": "bed box", "existing": True, "room": "bedroom", "circuit_kind": "general"},
    {"id": "den box", "existing": True, "room": "den"},
    {"id": "fridge", "existing": True, "room": "kitchen", "circuit_kind": "individual"},
]


def kitchen_to_bedroom(**tables: Any) -> dict[str, Any]:
    """A bedroom receptacle planned on the kitchen's circuit, with other boxes about."""
    tables = {"old": {"room": "kitchen"}, "more": MORE} | tables
    circuit = {"kind": "small appliance"} | tables.pop("circuit", {})
    return job("bedroom", circuit=circuit, **tables)


def order(raw: dict[str, Any]) -> list[tuple[int, str, str]]:
    return [(each.rank, each.source_id, each.standing) for each in ranked_sources(facts(raw))]


def test_circuit_first_then_the_same_room_then_the_order_of_the_survey() -> None:
    assert order(kitchen_to_bedroom()) == [
        (1, "bed box", "allowed"),
        (2, "hall box", "allowed"),
        (3, "den box", "unknown"),
        (4, "old", "refused"),
        (5, "fridge", "refused"),
    ]


def by_id(raw: dict[str, Any]) -> dict[str, RankedSource]:
    return {each.source_id: each for each in ranked_sources(facts(raw))}


def test_the_chosen_one_and_the_room_are_marked() -> None:
    found = by_id(kitchen_to_bedroom())
    assert [name for name, each in found.items() if each.chosen] == ["old"]
    assert [name for name, each in found.items() if each.same_room] == ["bed box"]
    assert {each.outlet_id for each in found.values()} == {"new"}


def test_reasons_are_in_words() -> None:
    found = by_id(kitchen_to_bedroom())
    assert found["bed box"].reasons == (
        "nothing there needs a circuit of its own",
        "in the same room",
        "ground-fault protection is not known to be there",
        "arc-fault protection is not known to be there",
    )
    assert found["old"].reasons[:2] == (
        "it is kept for receptacles of the kitchen, pantry and dining room; nothing in another "
        "room may hang on it",
        "in another room: kitchen",
    )


@pytest.mark.parametrize(
    ("room", "old", "protection", "want"),
    [
        ("bathroom", {}, ["gfci"], ()),
        ("bathroom", {}, [], ("ground-fault",)),
        ("bathroom", {"device": "gfci receptacle"}, [], ()),
        ("bedroom", {}, ["afci", "gfci"], ()),
        ("bedroom", {}, ["afci"], ("ground-fault",)),
        ("bedroom", {}, ["gfci"], ("arc-fault",)),
        ("kitchen", {}, [], ("ground-fault", "arc-fault")),
        ("other", {}, ["gfci"], ("arc-fault",)),
    ],
)
def test_protection_that_is_missing(
    room: str, old: dict[str, Any], protection: list[str], want: tuple[str, ...]
) -> None:
    raw = job(room, old=old, circuit={"protection": protection})
    assert by_id(raw)["old"].missing == want


def test_less_to_add_goes_before_the_order_of_the_survey() -> None:
    first = {"id": "first", "existing": True, "room": "den", "circuit_kind": "general"}
    raw = job(circuit={"protection": ["afci", "gfci"]}, old={"room": "den"}, more=[first])
    raw["boxes"].reverse()
    assert [name for _, name, _ in order(raw)] == ["old", "first"]


@pytest.mark.parametrize(
    ("old", "want"),
    [
        ({}, "refused"),
        ({"circuit_kind": "small appliance"}, "refused"),
        ({"circuit_kind": "general"}, "allowed"),
        ({"circuit_kind": "unknown"}, "unknown"),
    ],
)
def test_a_box_may_say_which_circuit_it_hangs_on(old: dict[str, Any], want: str) -> None:
    raw = kitchen_to_bedroom(old={"room": "kitchen"} | old)
    assert by_id(raw)["old"].standing == want


def test_a_box_on_another_circuit_of_the_same_kind_has_a_breaker_of_its_own() -> None:
    """Nobody has read its number, so a circuit that must be 20 A is still open."""
    more = [{"id": "b", "existing": True, "room": "laundry", "circuit_kind": "laundry"}]
    raw = job("laundry", circuit={"kind": "laundry"}, more=more)
    found = by_id(raw)
    assert (found["old"].standing, found["b"].standing) == ("allowed", "unknown")


def test_a_refusal_names_the_first_box_that_may_feed_it() -> None:
    assert finding(RULE, kitchen_to_bedroom()).remedy == "Feed it from box bed box instead."


def test_a_refusal_names_a_box_to_ask_about() -> None:
    said = finding(RULE, kitchen_to_bedroom(more=MORE[2:]))
    assert said.remedy == "Feed it from another circuit; find out which one box den box hangs on."


def test_one_note_ranks_the_boxes_where_the_chosen_one_is_refused() -> None:
    said = finding(RULE, kitchen_to_bedroom(more=MORE[1:3]), "job")
    assert (said.verdict, said.blocking) == ("note", False)
    assert said.figures == (
        "for new: 1. bed box may feed it (nothing there needs a circuit of its own; in the same "
        "room; ground-fault protection is not known to be there; arc-fault protection is not "
        "known to be there); 2. den box ask first (as a general circuit (lights and receptacles) "
        "it may feed it, as a small-appliance circuit (kitchen, pantry, dining) or bathroom "
        "circuit (receptacles of several bathrooms) or circuit kept for something else it may "
        "not; in another room: den; ground-fault protection is not known to be there; arc-fault "
        "protection is not known to be there); 3. old may not feed it (it is kept for receptacles "
        "of the kitchen, pantry and dining room; nothing in another room may hang on it; in "
        "another room: kitchen; ground-fault protection is not known to be there; arc-fault "
        "protection is not known to be there)"
    )
    assert (
        said.remedy
        == "Trace the circuit of a box before you feed from it; its room proves nothing."
    )
    assert said.cite == "NEC 2023 210.11 (worked out)"


def test_one_note_speaks_of_every_refused_outlet() -> None:
    more = [{"id": "second", "room": "den"}]
    raw = kitchen_to_bedroom(more=more, runs=[run("old", "new"), run("new", "second")])
    figures = findings(RULE, raw)["job"].figures
    assert figures.startswith("for new: 1. old may not feed it (")
    assert "; for second: 1. old may not feed it (" in figures


def test_no_note_where_nothing_is_refused() -> None:
    assert set(findings(RULE, job(more=MORE))) == {"new"}


def test_outlets_of_a_chain_have_the_source_at_its_head() -> None:
    raw = job(
        more=[{"id": "second", "room": "den"}], runs=[run("old", "new"), run("new", "second")]
    )
    assert [each.chosen for each in ranked_sources(facts(raw))] == [True, True]


@pytest.mark.parametrize(
    ("box", "new", "reason"),
    [
        ({"contents": {"always_live": "no"}}, {}, "it dies with a switch"),
        ({"device": "switch", "contents": {"neutral_bundle": "no"}}, {}, "no neutral in it"),
        ({"contents": {"ground_present": "no"}}, {}, "there is no ground wire: "),
        ({"contents": {"always_live": "no"}}, {"device": "luminaire"}, ""),
        ({"device": "switch", "contents": {"neutral_bundle": "no"}}, {"device": "switch"}, ""),
        ({"device": "switch", "contents": {"neutral_bundle": "unknown"}}, {}, ""),
    ],
)
def test_a_box_that_is_known_to_be_no_source_is_not_named(
    box: dict[str, Any], new: dict[str, Any], reason: str
) -> None:
    """TR-06, TR-09, TR-10: a box of a fitting circuit may still be none to start from."""
    raw = kitchen_to_bedroom(more=[MORE[0] | {"room": "bedroom"} | box], new=new)
    found = by_id(raw)["hall box"]
    assert found.standing == ("refused" if reason else "allowed")
    assert [each for each in found.reasons if reason and each.startswith(reason)] == (
        [found.reasons[2]] if reason else []
    )


@pytest.mark.parametrize(
    ("ground", "present", "want"),
    [
        ("none", "unknown", "refused"),
        ("panel bar", "unknown", "allowed"),
        ("water pipe", "unknown", "refused"),
        ("none", "yes", "allowed"),
    ],
)
def test_a_circuit_without_a_ground_is_no_source_unless_one_is_planned(
    ground: str, present: str, want: str
) -> None:
    """XT-11."""
    circuit = {"grounded": "no", "new_ground_to": ground}
    raw = job(circuit=circuit, old={"contents": {"ground_present": present}})
    assert by_id(raw)["old"].standing == want
    other = MORE[1] | {"contents": {}}
    assert by_id(job(circuit=circuit, more=[other]))["bed box"].standing == "allowed"


@pytest.mark.parametrize(
    ("tie", "hot", "holds"),
    [
        ("yes", "black", "(so it is here)"),
        ("no", "black", "(so it is not here)"),
        ("unknown", "black", "(nobody has looked here)"),
        ("yes", "unknown", "(nobody has looked here)"),
    ],
)
def test_two_hots_on_one_white_are_said(tie: str, hot: str, holds: str) -> None:
    """XT-10: it may feed on, under conditions."""
    circuit = {"multiwire": "yes", "handle_tie": tie, "neutral_pigtailed": "yes",
               "new_on_hot": hot}  # fmt: skip
    found = by_id(job(circuit=circuit, more=MORE[1:2]))
    assert found["old"].standing == "allowed"
    said = [each for each in found["old"].reasons if each.startswith("two hots share")]
    assert said and said[0].endswith(f"which hot you add to {holds}")
    assert not [each for each in found["bed box"].reasons if each.startswith("two hots")]
