"""The tables of places: every key means something, every row has its source and confidence."""

from __future__ import annotations

from collections.abc import Callable
from typing import get_args

import pytest

from estimator.rules.place_facts import OUTLET_KINDS
from estimator.rules.source_conditions import CONDITIONS
from estimator.survey.electrical import CircuitKind, Device, Spot
from estimator.survey.place import RoomUse
from estimator.tables.facts import NotOnFile, editions, rows, sources
from estimator.tables.limits import figures_on_file
from estimator.tables.place import (
    arc_fault_clause,
    arc_fault_room,
    closet_light,
    cord_path,
    device_traits,
    ground_fault_places,
    island_receptacles,
    outlet_measure,
    receptacle_for,
    room_trait,
    tub_relief,
)
from estimator.tables.source_class import circuit_classes, source_row

# Each table with the columns that its rows are sorted by and that no two rows share.
KEYS = {
    "afci_extension": ("edition",),
    "afci_rooms": ("room", "edition"),
    "circuit_classes": ("circuit",),
    "closet_lights": ("luminaire",),
    "cord_paths": ("edition",),
    "device_traits": ("device",),
    "gfci_places": ("edition", "place"),
    "island_receptacles": ("edition",),
    "limits_place": ("figure", "edition"),
    "outlet_measures": ("room",),
    "room_traits": ("room", "trait", "edition"),
    "source_class": ("circuit", "room", "outlet", "edition"),
    "tub_relief": ("edition", "relief"),
}
TABLES = pytest.mark.parametrize("table", sorted(KEYS))
CONFIDENCES = {"seen", "memory", "inferred", "common practice"}
USES, KINDS, DEVICES = set(get_args(RoomUse)), set(get_args(CircuitKind)), set(get_args(Device))
SPECIAL = {"multiwire", "ungrounded"}


@TABLES
def test_rows_are_sorted_and_no_key_is_there_twice(table: str) -> None:
    keys = [tuple(row[column] for column in KEYS[table]) for row in rows(table)]
    assert keys == sorted(set(keys))


@TABLES
def test_every_row_has_its_source_and_confidence(table: str) -> None:
    assert {row["source"] for row in rows(table)} <= set(sources())
    assert {row["confidence"] for row in rows(table)} <= CONFIDENCES


@TABLES
def test_every_edition_is_on_file(table: str) -> None:
    named = {row["edition"] for row in rows(table) if "edition" in row}
    assert named <= {"all", *editions()}


def test_the_matrix_speaks_of_what_a_survey_can_say() -> None:
    found = rows("source_class")
    assert {row["circuit"] for row in found} == (KINDS - {"unknown"}) | SPECIAL
    assert {row["room"] for row in found} <= {"any"} | USES
    assert {row["outlet"] for row in found} <= {"any", *OUTLET_KINDS}
    assert {row["answer"] for row in found} == {"allowed", "refused", "only"}


def test_only_means_under_a_condition_that_is_known() -> None:
    known = set(CONDITIONS) | {"tie-and-pigtail", "separate-ground"}
    for row in rows("source_class"):
        assert bool(row["condition"]) == (row["answer"] == "only"), row
        assert set(row["condition"].split()) <= known


def test_every_row_of_the_reference_is_there() -> None:
    assert {row["row"] for row in rows("source_class")} == {f"XT-{n:02d}" for n in range(1, 12)}


def test_every_reason_is_in_words() -> None:
    assert all(len(row["reason"].split()) >= 5 for row in rows("source_class"))


@pytest.mark.parametrize(
    ("circuit", "room", "outlet", "edition", "answer"),
    [
        # The closest row: room before outlet before edition.
        ("garage", "garage", "receptacle", "nec-2023", "allowed"),
        ("garage", "garage", "light", "nec-2023", "only"),
        ("garage", "garage", "light", "nec-2020", "refused"),
        ("garage", "hall", "light", "nec-2023", "refused"),
        ("general", "bathroom", "receptacle", "nec-2017", "refused"),
        ("general", "bathroom", "receptacle", "nec-2020", "only"),
        ("general", "bathroom", "light", "nec-2017", "allowed"),
        ("ten ampere", "hall", "light", "nec-2023", "allowed"),
        ("ten ampere", "hall", "light", "nec-2020", "refused"),
    ],
)
def test_the_closest_row_answers(
    circuit: str, room: str, outlet: str, edition: str, answer: str
) -> None:
    assert source_row(circuit, room, outlet, edition).answer == answer


def test_conditions_are_read_one_by_one() -> None:
    row = source_row("one bathroom", "bathroom", "fixed appliance", "nec-2023")
    assert (row.row, row.conditions) == ("XT-03", ("same-bath", "fixed-share"))
    assert (row.where, row.confidence) == ("210.11(C)(3), 210.23", "seen")


def test_every_kind_of_circuit_has_its_class() -> None:
    assert set(circuit_classes()) == KINDS - {"unknown"}


@pytest.mark.parametrize(
    ("kind", "ratings", "exact", "rooms"),
    [
        ("general", {15, 20}, False, True),
        ("small appliance", {20}, True, True),
        ("bathrooms", {20}, True, True),
        ("one bathroom", {20}, True, True),
        ("laundry", {20}, True, True),
        ("garage", {20}, True, True),
        ("ten ampere", {10}, True, True),
        ("individual", {10, 15, 20, 30, 40, 50}, False, False),
        ("other dwelling", {10, 15, 20, 30, 40, 50}, False, False),
    ],
)
def test_ratings_of_each_kind(kind: str, ratings: set[int], exact: bool, rooms: bool) -> None:
    found = circuit_classes()[kind]
    assert {a for a in (10, 15, 20, 30, 40, 50) if found.takes(a)} == ratings
    assert (found.takes(None), found.is_exact, found.served_rooms) == (True, exact, rooms)


@pytest.mark.parametrize(
    ("edition", "count"), [("nec-2017", 11), ("nec-2020", 13), ("nec-2023", 14)]
)
def test_places_of_each_edition(edition: str, count: int) -> None:
    """2017: ten places; 2020 adds basements and damp places; 2023 has twelve.

    Accessory buildings stand with garages and, from 2020, finished basements with unfinished
    ones in the code's list, and are rows of their own here.
    """
    own_rows = 1 if edition == "nec-2017" else 2
    assert len(ground_fault_places(edition, "receptacle")) == count
    assert count - own_rows == {"nec-2017": 10, "nec-2020": 11, "nec-2023": 12}[edition]


def test_a_place_is_found_by_something_that_exists() -> None:
    for row in rows("gfci_places"):
        if row["match"] in ("use", "counter"):
            assert row["value"] in USES, row
        elif row["match"] in ("sink", "tub"):
            assert row["value"] in figures_on_file(), row
        else:
            assert row["match"] in ("moisture", "food"), row


def test_larger_receptacles_are_left_out_in_2017_alone() -> None:
    most = {
        edition: {place.most_a for place in ground_fault_places(edition, "receptacle")}
        for edition in ("nec-2017", "nec-2020", "nec-2023")
    }
    assert most == {"nec-2017": {20}, "nec-2020": {None}, "nec-2023": {None}}


def test_every_use_is_listed_for_arc_fault_or_not() -> None:
    assert {row["room"] for row in rows("afci_rooms")} == USES
    assert {row["listed"] for row in rows("afci_rooms")} == {"yes", "no", "ask"}


def test_every_device_has_its_traits() -> None:
    assert {row["device"] for row in rows("device_traits")} == DEVICES


@pytest.mark.parametrize("weather", ["dry", "damp", "wet"])
@pytest.mark.parametrize("ground_fault", [True, False])
def test_a_receptacle_for_every_place(weather: str, ground_fault: bool) -> None:
    traits = device_traits(receptacle_for(weather, ground_fault))
    assert traits.is_receptacle and not traits.is_switch and not traits.arc_fault
    assert (traits.weather, traits.ground_fault) == (weather, ground_fault)


def test_every_device_can_be_bought_in_the_us() -> None:
    assert {row["device"] for row in rows("devices") if row["units"] == "us"} == DEVICES


def test_every_light_of_the_survey_has_its_clearance() -> None:
    lights = set(get_args(Spot.model_fields["luminaire"].annotation)) - {"unknown"}
    assert {row["luminaire"] for row in rows("closet_lights")} == lights
    figures = {row["figure"] for row in rows("closet_lights")} - {""}
    assert figures <= set(figures_on_file())


def test_rooms_of_every_trait_exist() -> None:
    assert {row["room"] for row in rows("room_traits")} <= USES
    assert {row["room"] for row in rows("outlet_measures")} <= USES
    assert {row["figure"] for row in rows("outlet_measures")} <= set(figures_on_file())


@pytest.mark.parametrize(
    ("use", "edition", "found"),
    [("laundry", "nec-2023", True), ("laundry", "nec-2020", False), ("hall", "nec-2017", True)],
)
def test_a_trait_may_hang_on_the_edition(use: str, edition: str, found: bool) -> None:
    assert (room_trait(use, "light on a switch", edition) is not None) == found


@pytest.mark.parametrize("edition", ["nec-2017", "nec-2020", "nec-2023"])
def test_each_edition_has_its_single_rows(edition: str) -> None:
    readers = (arc_fault_clause, cord_path, island_receptacles)
    assert [reader(edition)["edition"] for reader in readers] == [edition] * 3


def test_reliefs_by_edition() -> None:
    found = {edition: set(tub_relief(edition)) for edition in ("nec-2017", "nec-2020", "nec-2023")}
    assert found == {
        "nec-2017": set(),
        "nec-2020": {"farthest-wall"},
        "nec-2023": {"farthest-wall", "barrier", "toilet-seat"},
    }


@pytest.mark.parametrize(
    ("ask", "key", "on_file"),
    [
        (lambda: source_row("boiler", "hall", "light", "nec-2023"), "boiler", "general"),
        (lambda: arc_fault_clause("nec-2026"), "nec-2026", "nec-2023"),
        (lambda: arc_fault_room("ballroom", "nec-2023"), "ballroom", "bedroom"),
        (lambda: closet_light("candle"), "candle", "recessed"),
        (lambda: device_traits("bell"), "bell", "switch"),
        (lambda: receptacle_for("under water", False), "under water", "damp, dry, wet"),
    ],
)
def test_what_is_not_on_file_lists_what_is(
    ask: Callable[[], object], key: str, on_file: str
) -> None:
    with pytest.raises(NotOnFile, match=f"'{key}' is not on file; .*{on_file}"):
        ask()


def test_an_edition_without_a_row_of_its_own_takes_that_for_all() -> None:
    assert arc_fault_room("bedroom", "nec-2017")["edition"] == "all"


def test_a_room_without_a_measure_has_none() -> None:
    assert outlet_measure("bedroom") is None
