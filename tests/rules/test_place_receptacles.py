"""Tamper- and weather-resistant receptacles, and replaced ones: rows LO-09, LO-10, LO-12, LO-13."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.receptacle_rules import _free_of_shutters
from estimator.rules.records import RemedyChange
from tests.rules.place_case import EDITIONS, facts, finding, findings, job, run, verdict, worked

E17, E20, E23 = EDITIONS
TAMPER, WEATHER, REPLACED = "tamper-resistant", "weather-resistant", "replaced-receptacle"


@pytest.mark.parametrize("room", ["bedroom", "garage", "accessory building", "outdoors"])
@pytest.mark.parametrize("edition", EDITIONS)
def test_lo_09_new_receptacles_have_shutters(edition: str, room: str) -> None:
    said = finding(TAMPER, job(room, edition=edition))
    assert (said.verdict, said.blocking) == ("note", False)
    assert said.figures == "asked for up to 66 in above the floor"
    assert said.remedy == "Buy the tamper-resistant kind (marked TR)."


@pytest.mark.parametrize(
    ("edition", "cite"),
    [
        (E17, "NEC 2017 406.12 (from memory: check)"),
        (E20, "NEC 2020 406.12"),
        (E23, "NEC 2023 406.12 (from memory: check)"),
    ],
)
def test_lo_09_is_cited_by_edition(edition: str, cite: str) -> None:
    assert finding(TAMPER, job(edition=edition)).cite == cite


@pytest.mark.parametrize(
    ("new", "want"),
    [
        ({"height": "66 in"}, "note"),
        ({"height": "66-1/16 in"}, "pass"),
        ({"height": "unknown"}, "note"),
        ({"spot": {"behind_appliance": "yes"}}, "pass"),
        ({"spot": {"behind_appliance": "unknown"}}, "note"),
        ({"device_rating": 20}, "note"),
        ({"device": "switch"}, ""),
        ({"device": "luminaire", "height": "90 in"}, ""),
    ],
)
def test_lo_09_what_is_free_of_them(new: dict[str, Any], want: str) -> None:
    assert verdict(TAMPER, job(new=new)) == want


@pytest.mark.parametrize(
    ("new", "words"),
    [
        ({"height": "6 ft"}, "not asked for: 72 in above the floor, over 66 in"),
        (
            {"spot": {"behind_appliance": "yes"}},
            "not asked for: in the space of one appliance that is not easily moved",
        ),
    ],
)
def test_lo_09_says_why_it_is_free(new: dict[str, Any], words: str) -> None:
    assert finding(TAMPER, job(new=new)).figures == words


@pytest.mark.parametrize(("rating", "words"), [(20, ""), (30, "rated 30 A, over 20 A")])
def test_lo_09_larger_receptacles_are_free(rating: int, words: str) -> None:
    """A receptacle of 30 A is not on file to buy, so it is looked up alone."""
    known = facts(job())
    box = known.new_boxes[0].model_copy(update={"device_rating_a": rating})
    assert _free_of_shutters(known, box) == words


def outdoors(moisture: str = "wet", device: str = "receptacle", **circuit: Any) -> dict[str, Any]:
    """Outdoors, with ground-fault protection upstream unless a test says otherwise."""
    new = {"device": device, "spot": {"moisture": moisture}}
    return job("outdoors", new=new, circuit={"protection": ["gfci"]} | circuit)


@pytest.mark.parametrize(
    ("moisture", "device", "want"),
    [
        ("damp", "receptacle", "fail"),
        ("damp", "damp receptacle", "pass"),
        ("damp", "wet receptacle", "pass"),
        ("damp", "damp gfci receptacle", "pass"),
        ("wet", "receptacle", "fail"),
        ("wet", "gfci receptacle", "fail"),
        ("wet", "damp receptacle", "fail"),
        ("wet", "wet receptacle", "pass"),
        ("wet", "wet gfci receptacle", "pass"),
        ("dry", "receptacle", "pass"),
        # Outdoors is wet where nobody says otherwise.
        ("unknown", "receptacle", "fail"),
        ("unknown", "damp receptacle", "fail"),
        ("unknown", "wet receptacle", "pass"),
    ],
)
def test_lo_10_damp_and_wet_places(moisture: str, device: str, want: str) -> None:
    assert verdict(WEATHER, outdoors(moisture, device)) == want


@pytest.mark.parametrize(
    ("moisture", "device", "cite", "words"),
    [
        ("damp", "damp receptacle", "NEC 2023 406.9(A)", "a cover that is tight when closed"),
        ("wet", "wet receptacle", "NEC 2023 406.9(B)", "an extra-duty cover that is tight with a"),
        ("unknown", "wet receptacle", "NEC 2023 406.9(B)", "an extra-duty cover that is tight"),
    ],
)
def test_lo_10_device_and_cover(moisture: str, device: str, cite: str, words: str) -> None:
    said = finding(WEATHER, outdoors(moisture))
    assert said.remedies == (RemedyChange("device", "new", device),)
    assert (said.cite, words in said.remedy, said.blocking) == (cite, True, True)


def test_lo_10_figures_name_place_and_device() -> None:
    said = finding(WEATHER, outdoors("wet", "damp receptacle"))
    assert said.figures == "outdoors: a wet place, the device is for damp places"


@pytest.mark.parametrize(
    ("room", "moisture", "want"),
    [
        ("bedroom", "unknown", ""),
        ("bedroom", "dry", "pass"),
        ("bedroom", "damp", "fail"),
        ("unfinished basement", "unknown", "unknown"),
        ("crawlspace", "unknown", "unknown"),
        ("other", "unknown", "unknown"),
    ],
)
def test_lo_10_indoors(room: str, moisture: str, want: str) -> None:
    assert verdict(WEATHER, job(room, new={"spot": {"moisture": moisture}})) == want


def test_lo_10_a_dry_place_is_told() -> None:
    said = finding(WEATHER, job(new={"spot": {"moisture": "dry"}}))
    assert (said.figures, said.cite) == ("a dry place", "NEC 2023 406.9")


def test_lo_10_an_unknown_place_is_asked_for() -> None:
    said = finding(WEATHER, job("unfinished basement"))
    assert said.figures == "unfinished basement: nobody has said whether it is damp or wet"
    assert said.remedy.startswith("Say so (moisture = ...). A damp place asks for a weather-")
    assert (said.cite, said.remedies) == ("NEC 2023 406.9(A), (B)", ())


def test_lo_10_a_wet_device_is_right_anywhere() -> None:
    assert findings(WEATHER, job("other", new={"device": "wet receptacle"})) == {}


@pytest.mark.parametrize(
    ("protection", "planned", "want"),
    [
        ([], "receptacle", "wet gfci receptacle"),
        (["gfci"], "receptacle", "wet receptacle"),
        (["gfci"], "gfci receptacle", "wet gfci receptacle"),
        (None, "receptacle", "wet receptacle"),
    ],
)
def test_lo_10_with_ground_fault_protection_in_one_device(
    protection: list[str] | None, planned: str, want: str
) -> None:
    said = finding(WEATHER, outdoors("wet", planned, protection=protection))
    assert said.remedies == (RemedyChange("device", "new", want),)


def test_lo_10_a_second_outlet_behind_the_first_needs_no_ground_fault_device() -> None:
    raw = outdoors(protection=[])
    raw["boxes"].append({"id": "second", "room": "outdoors", "spot": {"moisture": "wet"}})
    raw["runs"].append(run("new", "second"))
    assert finding(WEATHER, raw, "second").remedies == (
        RemedyChange("device", "second", "wet receptacle"),
    )


def test_lo_10_a_declined_ground_fault_device_is_not_slipped_in() -> None:
    decline = {"finding": "gfci-place:new", "reason": "later", "decision": "decline remedy"}
    raw = outdoors(protection=[]) | {"acceptances": [decline]}
    assert finding(WEATHER, raw).remedies == (RemedyChange("device", "new", "wet receptacle"),)


def test_lo_10_a_place_that_asks_for_no_ground_fault_device() -> None:
    water = {"moisture": "wet", "sink_distance": "9 ft", "tub_distance": "9 ft"}
    raw = job("attic", new={"spot": water}, edition=E17)
    assert finding(WEATHER, raw).remedies == (RemedyChange("device", "new", "wet receptacle"),)


@pytest.mark.parametrize(
    ("moisture", "protection", "items"),
    [
        ("damp", ["gfci"], {"receptacle-weather-15", "cover-damp-1g"}),
        ("wet", ["gfci"], {"receptacle-weather-15", "cover-wet-1g"}),
        ("damp", [], {"receptacle-gfci-weather-15", "cover-damp-1g"}),
        ("wet", [], {"receptacle-gfci-weather-15", "cover-wet-1g"}),
    ],
)
def test_lo_10_what_is_bought(moisture: str, protection: list[str], items: set[str]) -> None:
    found = worked(outdoors(moisture, protection=protection))
    at_new = [line for line in found.takeoff.parts if line.where == "box new"]
    assert {line.item for line in at_new if line.group == "devices"} == items
    assert not found.price.unpriced_items


def test_lo_10_in_the_second_total_one_device_does_both() -> None:
    found = worked(outdoors(protection=None), bad_case=True)
    devices = {line.item for line in found.takeoff.parts if line.where == "box new"}
    assert {"receptacle-gfci-weather-15", "cover-wet-1g"} <= devices


def replaced(room: str = "hall", edition: str = E23, **circuit: Any) -> dict[str, Any]:
    old = {"room": room, "reuse_plate": False}
    return job(old=old, circuit=circuit, edition=edition)


def test_lo_12_a_replaced_receptacle_must_be_what_is_asked_today() -> None:
    said = finding(REPLACED, replaced("kitchen"), "old")
    assert said.figures == (
        "its receptacle is replaced, so it must be: of the grounding type, ground-fault protected "
        "(a kitchen), arc-fault protected (short wire does not free it), tamper-resistant"
    )
    assert (said.verdict, said.cite) == ("note", "NEC 2023 406.4(D)")


@pytest.mark.parametrize(
    ("room", "words"),
    [
        (
            "bathroom",
            "of the grounding type, ground-fault protected (a bathroom), tamper-resistant",
        ),
        (
            "outdoors",
            "of the grounding type, ground-fault protected (outdoors), tamper-resistant, "
            "weather-resistant",
        ),
    ],
)
def test_lo_12_goes_by_the_place(room: str, words: str) -> None:
    figures = finding(REPLACED, replaced(room), "old").figures
    assert figures == f"its receptacle is replaced, so it must be: {words}"


def test_lo_12_a_high_one_far_from_water_needs_less() -> None:
    raw = replaced("garage")
    raw["boxes"][0] |= {"height": "7 ft"}
    raw["amendments"] = [
        {"rule": "gfci-place", "change": "figure", "figure": "gfci-garages", "value": "0",
         "reason": "x"}
    ]  # fmt: skip
    raw["boxes"][0]["spot"] = {"sink_distance": "9 ft", "tub_distance": "9 ft", "moisture": "dry"}
    figures = finding(REPLACED, raw, "old").figures
    assert figures == "its receptacle is replaced, so it must be: of the grounding type"


@pytest.mark.parametrize(
    ("old", "found"),
    [
        ({}, False),
        ({"reuse_plate": False, "device": "switch"}, False),
        ({"reuse_plate": False}, True),
    ],
)
def test_lo_12_speaks_of_replaced_receptacles_alone(old: dict[str, Any], found: bool) -> None:
    assert bool(findings(REPLACED, job(old=old))) == found


@pytest.mark.parametrize(
    ("grounded", "words"),
    [
        ("yes", "be: of the grounding type, "),
        ("unknown", "be: of the grounding type where there is a ground, "),
        (
            "no",
            "be: without a ground: of the two-slot type, or a ground-fault one marked "
            '"no equipment ground", or three-slot behind one with both marks, and no ground wire '
            "between them, ",
        ),
    ],
)
def test_lo_13_with_and_without_a_ground(grounded: str, words: str) -> None:
    assert words in finding(REPLACED, replaced(grounded=grounded), "old").figures
