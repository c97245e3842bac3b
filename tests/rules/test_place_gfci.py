"""Ground-fault protection by place and edition: rows GF-01 to GF-08, worked by hand."""

from __future__ import annotations

import pytest

from estimator.rules.protection import ground_fault_need
from tests.rules.place_case import EDITIONS, at, facts, finding, job, verdict

RULE = "gfci-place"
E17, E20, E23 = EDITIONS


@pytest.mark.parametrize(
    "room",
    ["bathroom", "garage", "accessory building", "outdoors", "crawlspace", "unfinished basement",
     "boathouse", "laundry"],
)  # fmt: skip
@pytest.mark.parametrize("edition", EDITIONS)
def test_gf_01_places_of_every_edition(edition: str, room: str) -> None:
    assert verdict(RULE, at(room, edition)) == "fail"


@pytest.mark.parametrize(
    ("spot", "want"),
    [
        ({"sink_distance": "72 in"}, "fail"),
        ({"sink_distance": "72-1/16 in"}, "pass"),
        ({"sink_distance": "unknown"}, "unknown"),
        ({"tub_distance": "72 in"}, "fail"),
        ({"tub_distance": "72-1/16 in"}, "pass"),
        ({"tub_distance": "unknown"}, "unknown"),
    ],
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_gf_01_within_6_ft_of_water(edition: str, spot: dict[str, str], want: str) -> None:
    assert verdict(RULE, at("bedroom", edition, **spot)) == want


@pytest.mark.parametrize(
    ("edition", "counter", "want"),
    [
        (E17, "yes", "fail"),
        (E17, "no", "pass"),
        (E17, "unknown", "unknown"),
        (E20, "yes", "fail"),
        (E20, "no", "pass"),
        (E23, "yes", "fail"),
        (E23, "no", "fail"),
        (E23, "unknown", "fail"),
    ],
    ids=lambda value: value,
)
def test_gf_01_and_gf_03_kitchen_counters_then_all_of_the_kitchen(
    edition: str, counter: str, want: str
) -> None:
    assert verdict(RULE, at("kitchen", edition, countertop=counter)) == want


@pytest.mark.parametrize("edition", EDITIONS)
def test_gf_01_a_counter_elsewhere_is_no_kitchen_counter(edition: str) -> None:
    assert verdict(RULE, at("office", edition, countertop="yes")) == "pass"


@pytest.mark.parametrize(
    ("edition", "rating", "want"), [(E17, 20, "fail"), (E17, 30, "pass"), (E20, 30, "fail")]
)
def test_gf_01_and_gf_02_amperes(edition: str, rating: int, want: str) -> None:
    """A receptacle of 30 A is not on file to buy, so it is looked up alone."""
    known = facts(at("garage", edition))
    box = known.new_boxes[0].model_copy(update={"device_rating_a": rating})
    assert (ground_fault_need(known, box).needed == "yes") == (want == "fail")


@pytest.mark.parametrize(("edition", "want"), [(E17, "pass"), (E20, "fail"), (E23, "fail")])
def test_gf_02_finished_basements_from_2020(edition: str, want: str) -> None:
    assert verdict(RULE, at("finished basement", edition)) == want


@pytest.mark.parametrize(
    ("edition", "moisture", "want"),
    [
        (E17, "damp", "pass"),
        (E20, "damp", "fail"),
        (E20, "wet", "fail"),
        (E23, "damp", "fail"),
        (E23, "dry", "pass"),
    ],
)
def test_gf_02_damp_and_wet_places_indoors_from_2020(
    edition: str, moisture: str, want: str
) -> None:
    assert verdict(RULE, at("sunroom", edition, moisture=moisture)) == want


@pytest.mark.parametrize(
    ("room", "want"), [("sunroom", "pass"), ("hall", "pass"), ("other", "unknown")]
)
def test_gf_02_a_room_where_people_live_is_dry_where_nobody_says_otherwise(
    room: str, want: str
) -> None:
    assert verdict(RULE, at(room, moisture="unknown")) == want


@pytest.mark.parametrize(
    ("edition", "food", "want"),
    [(E20, "yes", "pass"), (E23, "yes", "fail"), (E23, "no", "pass"), (E23, "unknown", "unknown")],
)
def test_gf_03_areas_where_food_is_prepared_from_2023(edition: str, food: str, want: str) -> None:
    raw = at("recreation room", edition)
    raw["rooms"] = [{"id": "recreation room", "use": "recreation room", "food_preparation": food}]
    assert verdict(RULE, raw) == want


@pytest.mark.parametrize("edition", EDITIONS)
def test_gf_04_crawl_space_lights(edition: str) -> None:
    raw = job("crawlspace", new={"device": "luminaire"}, edition=edition)
    said = finding(RULE, raw)
    assert (said.verdict, said.figures) == (
        "fail",
        "crawlspace: a crawl space; no ground-fault protection upstream",
    )
    where = "210.8(E) (from memory: check)" if edition == E17 else "210.8(C)"
    assert said.cite == f"NEC {edition[-4:]} {where}"


@pytest.mark.parametrize("room", ["bathroom", "bedroom", "garage", "outdoors", "attic"])
def test_gf_04_other_lights_are_not_spoken_of(room: str) -> None:
    assert verdict(RULE, job(room, new={"device": "luminaire"})) == ""


@pytest.mark.parametrize(
    ("edition", "breaker", "want"),
    [(E17, 20, ""), (E20, 20, "fail"), (E23, 20, "fail"), (E20, 50, "fail"), (E20, 60, ""),
     (E20, "unknown", "fail")],
)  # fmt: skip
def test_gf_05_outdoor_outlets_of_machines(edition: str, breaker: int | str, want: str) -> None:
    new = {"device": "none", "spot": {"appliance": "other"}}
    raw = job("outdoors", new=new, edition=edition, circuit={"breaker": breaker})
    assert verdict(RULE, raw) == want


@pytest.mark.parametrize(
    ("edition", "words"),
    [
        (E17, "not through a wall, floor, ceiling, door or fixed barrier"),
        (E20, "not through a wall, floor, ceiling, window or fixed barrier; a door does not stop"),
        (E23, "not through a wall, floor, ceiling, window or fixed barrier; a door does not stop"),
    ],
)
def test_gf_06_how_the_distance_is_measured(edition: str, words: str) -> None:
    said = finding(RULE, at("bedroom", edition, sink_distance="unknown"))
    assert words in said.remedy
    assert said.remedy.startswith("Measure along the cord, not through a wall, floor, ceiling, ")
    assert said.remedy.endswith('. If the room has none near, say so (sink_or_tub = "no").')


@pytest.mark.parametrize(
    ("reach", "want"), [("yes", "pass"), ("no", "fail"), ("unknown", "unknown")]
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_gf_07_the_device_is_easy_to_reach(edition: str, reach: str, want: str) -> None:
    raw = at("bathroom", edition, readily_accessible=reach)
    raw["boxes"][1]["device"] = "gfci receptacle"
    assert verdict(RULE, raw) == want


def test_gf_07_says_so_in_words() -> None:
    raw = at("bathroom", readily_accessible="no")
    raw["boxes"][1]["device"] = "gfci receptacle"
    said = finding(RULE, raw)
    assert said.figures.endswith(
        "box new holds a ground-fault receptacle, which is not easy to reach"
    )
    assert said.remedy == "Put the ground-fault device where its buttons are easy to reach."
    assert said.cite == "NEC 2023 210.8"
    raw["boxes"][1]["spot"]["readily_accessible"] = "unknown"
    said = finding(RULE, raw)
    assert said.figures.endswith("box new holds a ground-fault receptacle; can it be reached?")
    assert said.remedy == (
        "Say whether the ground-fault device is easy to reach (readily_accessible = ...)."
    )


def test_gf_08_a_class_a_device_trips_at_4_to_6_ma() -> None:
    """5 mA plus or minus 1, as the trade note prints it."""
    assert finding(RULE, at("bathroom")).remedy == (
        "Fit a ground-fault receptacle (Class A, trips at 4 to 6 mA) where it is easy to reach; "
        "what it feeds hangs on its LOAD side."
    )
