"""Ground-fault protection that is there already, what is missing, and local changes."""

from __future__ import annotations

import pytest

from tests.rules.place_case import EDITIONS, at, finding, findings, job, screened, verdict

RULE = "gfci-place"
E20, E23 = EDITIONS[1:]


@pytest.mark.parametrize(
    ("protection", "want"),
    [(["gfci"], "pass"), (["afci", "gfci"], "pass"), (["afci"], "fail"), ([], "fail"),
     (None, "unknown")],
)  # fmt: skip
def test_protection_upstream_counts(protection: list[str] | None, want: str) -> None:
    raw = at("bathroom")
    raw["circuit"]["protection"] = protection
    assert verdict(RULE, raw) == want


@pytest.mark.parametrize(
    ("protection", "words"),
    [
        (["gfci"], "bathroom: a bathroom; ground-fault protection upstream"),
        ([], "bathroom: a bathroom; no ground-fault protection upstream"),
        (None, "bathroom: a bathroom; nobody has looked for ground-fault protection upstream"),
    ],
)
def test_figures_name_the_place_and_what_was_found(
    protection: list[str] | None, words: str
) -> None:
    raw = at("bathroom")
    raw["circuit"]["protection"] = protection
    said = finding(RULE, raw)
    assert (said.figures, said.cite) == (words, "NEC 2023 210.8(A)")


def test_nobody_looked_is_asked_for() -> None:
    raw = at("bathroom")
    raw["circuit"]["protection"] = None
    assert finding(RULE, raw).remedy.startswith(
        "Look for a test button on the breaker and upstream. If none: fit a ground-fault recept"
    )


def test_a_protected_outlet_passes_wherever_it_stands() -> None:
    raw = job("that room", circuit={"protection": ["gfci"]})
    said = finding(RULE, raw)
    assert said.verdict == "pass"
    assert "nobody has said what the room is used for; ground-fault" in said.figures


@pytest.mark.parametrize("device", ["gfci receptacle", "wet gfci receptacle"])
def test_a_device_in_the_source_box_counts(device: str) -> None:
    raw = at("bathroom")
    raw["boxes"][0]["device"] = device
    said = finding(RULE, raw)
    assert (said.verdict, said.figures) == (
        "pass",
        "bathroom: a bathroom; box old holds a ground-fault receptacle",
    )


def test_the_distance_is_said() -> None:
    said = finding(RULE, at("bedroom", sink_distance="5 ft"))
    assert (
        said.figures
        == "bedroom: near a sink: 60 in, within 72 in; no ground-fault protection upstream"
    )


def test_a_room_without_water_near_needs_no_measure() -> None:
    raw = job("bedroom", rooms=[{"id": "bedroom", "use": "bedroom", "sink_or_tub": "no"}])
    said = finding(RULE, raw)
    assert (said.verdict, said.figures) == ("pass", "bedroom: not a place that asks for it")
    assert said.cite == "NEC 2023 210.8"


@pytest.mark.parametrize("water", ["yes", "unknown"])
def test_a_room_with_water_near_is_measured(water: str) -> None:
    raw = job("bedroom", rooms=[{"id": "bedroom", "use": "bedroom", "sink_or_tub": water}])
    assert verdict(RULE, raw) == "unknown"


@pytest.mark.parametrize(
    ("spot", "words"),
    [
        ({"sink_distance": "unknown"}, "whether a sink is within 72 in"),
        ({"tub_distance": "unknown"}, "whether a tub or shower is within 72 in"),
        (
            {"sink_distance": "unknown", "tub_distance": "unknown"},
            "whether a sink, tub or shower is within 72 in",
        ),
    ],
)
def test_what_is_missing_is_named(spot: dict[str, str], words: str) -> None:
    said = finding(RULE, at("bedroom", **spot))
    assert said.figures.startswith(f"bedroom: nobody has said {words};")


@pytest.mark.parametrize(
    ("room", "edition", "spot", "words"),
    [
        ("kitchen", E20, {"countertop": "unknown"}, "whether it serves the counter"),
        ("other", E23, {"moisture": "unknown"}, "whether the place is damp or wet"),
    ],
)
def test_what_is_missing_is_asked_for(
    room: str, edition: str, spot: dict[str, str], words: str
) -> None:
    said = finding(RULE, at(room, edition, **spot))
    assert said.figures.startswith(f"{room}: nobody has said {words};")
    assert said.remedy.startswith("Say so. Where the place asks for it: fit a ground-fault")


def test_a_room_of_unknown_use_is_asked_for() -> None:
    said = finding(RULE, at("that room"))
    assert said.verdict == "unknown"
    assert said.figures == (
        "that room (its use is unknown): nobody has said what the room is used for; no "
        "ground-fault protection upstream"
    )
    assert said.remedy.startswith("Say what the room is used for (use = ...). Where the place")


def test_a_receptacle_for_a_machine_is_a_receptacle() -> None:
    assert verdict(RULE, at("kitchen", appliance="dishwasher")) == "fail"


def test_switches_are_not_spoken_of() -> None:
    assert findings(RULE, job("bathroom", new={"device": "switch"})) == {}


@pytest.mark.parametrize("value", ["0", "no"])
def test_a_place_may_be_dropped_locally(value: str) -> None:
    raw = at("laundry")
    change = {"rule": RULE, "change": "figure", "figure": "gfci-laundry areas", "value": value}
    raw["amendments"] = [change | {"reason": "county ordinance 7"}]
    assert verdict(RULE, raw) == "pass"
    assert screened(raw)["local-amendment:gfci-laundry areas"].cite == "local: county ordinance 7"


@pytest.mark.parametrize(
    ("figure", "value", "want"),
    [
        ("gfci-laundry areas", "1", "fail"),
        ("gfci-garages", "0", "fail"),
        ("gfci-sink", "0", "fail"),
    ],
)
def test_another_local_change_leaves_it(figure: str, value: str, want: str) -> None:
    raw = at("laundry")
    change = {"rule": RULE, "change": "figure", "figure": figure, "value": value, "reason": "x"}
    raw["amendments"] = [change]
    assert verdict(RULE, raw) == want


def test_a_local_distance_goes_before_the_book() -> None:
    change = {"rule": RULE, "change": "figure", "figure": "gfci-sink", "value": "48", "reason": "x"}
    raw = at("bedroom", sink_distance="49 in")
    assert verdict(RULE, raw) == "fail"
    assert verdict(RULE, raw | {"amendments": [change]}) == "pass"
