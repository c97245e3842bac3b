"""Zones: receptacles and lights at a tub (LO-07, LO-08), lights in a closet (LO-11)."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.place_case import EDITIONS, finding, findings, job, verdict

E17, E20, E23 = EDITIONS
TUB, CLOSET = "tub-zone", "closet-light"


def bath(level: str, above: str, edition: str = E23, **spot: Any) -> dict[str, Any]:
    where = {"tub_distance": level, "above_tub": above}
    return job("bathroom", new={"spot": where | spot}, edition=edition)


@pytest.mark.parametrize(
    ("edition", "level", "above", "want"),
    [
        # 2017: only within the tub or right above it, at any height.
        (E17, "0 in", "9 ft", "fail"),
        (E17, "0 in", "unknown", "fail"),
        (E17, "1/16 in", "3 ft", "pass"),
        (E17, "unknown", "9 ft", "unknown"),
        # 2020 and 2023: 3 ft level and 8 ft up; the edge itself is outside.
        (E20, "36 in", "3 ft", "pass"),
        (E20, "35-15/16 in", "3 ft", "fail"),
        (E20, "0 in", "0 in", "fail"),
        (E20, "0 in", "95-15/16 in", "fail"),
        (E20, "0 in", "96 in", "pass"),
        (E23, "36 in", "3 ft", "pass"),
        (E23, "35-15/16 in", "3 ft", "fail"),
        (E23, "0 in", "96 in", "pass"),
        (E23, "36 in", "unknown", "pass"),
        (E23, "unknown", "96 in", "pass"),
        (E23, "unknown", "3 ft", "unknown"),
        (E23, "2 ft", "unknown", "unknown"),
        (E23, "unknown", "unknown", "unknown"),
    ],
)
def test_lo_07_zone_by_edition(edition: str, level: str, above: str, want: str) -> None:
    assert verdict(TUB, bath(level, above, edition)) == want


@pytest.mark.parametrize(
    ("edition", "spot", "want"),
    [
        (E20, {"farthest_wall": "yes"}, "pass"),
        (E23, {"farthest_wall": "yes"}, "pass"),
        (E17, {"farthest_wall": "yes"}, "fail"),
        (E23, {"farthest_wall": "unknown"}, "fail"),
        (E20, {"tub_barrier": "yes"}, "fail"),
        (E23, {"tub_barrier": "yes"}, "pass"),
        (E23, {"tub_barrier": "unknown"}, "fail"),
        (E20, {"appliance": "toilet seat"}, "fail"),
        (E23, {"appliance": "toilet seat"}, "pass"),
    ],
)
def test_lo_07_relief_by_edition(edition: str, spot: dict[str, str], want: str) -> None:
    level = "0 in" if edition == E17 else "2 ft"
    assert verdict(TUB, bath(level, "3 ft", edition, **spot)) == want


def test_lo_07_relief_holds_where_nothing_was_measured() -> None:
    said = finding(TUB, bath("unknown", "unknown", tub_barrier="yes"))
    assert said.verdict == "pass"
    assert said.figures.endswith("; a wall or door stands between")


def test_lo_07_no_relief_is_told_where_none_is_needed() -> None:
    assert "wall or door" not in finding(TUB, bath("4 ft", "3 ft", tub_barrier="yes")).figures


@pytest.mark.parametrize(
    ("edition", "words"),
    [
        (E17, "24 in from tub or shower; not within it or right above it"),
        (
            E23,
            "24 in from tub or shower, 36 in above its rim; the zone is 36 in wide and 96 in high",
        ),
    ],
)
def test_lo_07_figures(edition: str, words: str) -> None:
    assert finding(TUB, bath("2 ft", "3 ft", edition)).figures == words


def test_lo_07_a_fail_blocks_and_says_what_to_do() -> None:
    said = finding(TUB, bath("2 ft", "3 ft"))
    assert (said.blocking, said.cite) == (True, "NEC 2023 406.9(C)")
    assert said.remedy == "Move it out of the zone of the tub or shower."


def test_lo_07_missing_measures_are_asked_for() -> None:
    said = finding(TUB, bath("unknown", "unknown"))
    assert said.figures.startswith("unknown from tub or shower, unknown above its rim;")
    assert said.remedy == "Measure level from the tub or shower, and up from its rim or threshold."


@pytest.mark.parametrize(
    ("room", "spot", "want"),
    [
        ("bedroom", {}, ""),
        ("bedroom", {"tub_distance": "2 ft", "above_tub": "1 ft"}, "fail"),
        ("bathroom", {}, "unknown"),
    ],
)
def test_lo_07_bathrooms_and_wherever_a_tub_was_measured(
    room: str, spot: dict[str, str], want: str
) -> None:
    assert verdict(TUB, job(room, new={"spot": spot})) == want


def light(level: str, above: str, kind: str, fan: str = "no") -> dict[str, Any]:
    raw = bath(level, above, luminaire=kind, fan=fan)
    raw["boxes"][1]["device"] = "luminaire"
    return raw


@pytest.mark.parametrize(
    ("level", "above", "kind", "want"),
    [
        ("2 ft", "7 ft", "hanging", "fail"),
        ("2 ft", "7 ft", "track", "fail"),
        ("2 ft", "8 ft", "hanging", "pass"),
        ("3 ft", "7 ft", "track", "pass"),
        ("35-15/16 in", "95-15/16 in", "track", "fail"),
        ("2 ft", "7 ft", "recessed", "note"),
        ("2 ft", "7 ft", "unknown", "unknown"),
        ("unknown", "7 ft", "recessed", "unknown"),
        ("4 ft", "7 ft", "unknown", "pass"),
    ],
)
def test_lo_08_hanging_and_track_lights(level: str, above: str, kind: str, want: str) -> None:
    assert verdict(TUB, light(level, above, kind)) == want


@pytest.mark.parametrize(("fan", "want"), [("yes", "fail"), ("no", "note"), ("unknown", "note")])
def test_lo_08_paddle_fans(fan: str, want: str) -> None:
    assert verdict(TUB, light("2 ft", "7 ft", "enclosed", fan)) == want


@pytest.mark.parametrize(
    ("kind", "level", "words"),
    [
        (
            "hanging",
            "2 ft",
            "No hanging or track light and no fan there: choose another or move it.",
        ),
        ("unknown", "2 ft", "Say which kind of light it is (luminaire = ...)."),
        ("enclosed", "unknown", "Measure level from the tub or shower, and up from its rim or"),
        (
            "enclosed",
            "2 ft",
            "Above the tub the light must be listed for damp places, in the spray",
        ),
    ],
)
def test_lo_08_says_what_to_do(kind: str, level: str, words: str) -> None:
    said = finding(TUB, light(level, "7 ft", kind))
    assert said.remedy.startswith(words)
    assert said.cite == "NEC 2023 410.10(D)"
    assert said.figures.startswith("light: ")


def test_lo_08_switches_are_not_spoken_of() -> None:
    assert findings(TUB, job("bathroom", new={"device": "switch"})) == {}


def closet(kind: str, clear: str, edition: str = E23) -> dict[str, Any]:
    spot = {"luminaire": kind, "storage_clearance": clear}
    return job("closet", new={"device": "luminaire", "spot": spot}, edition=edition)


@pytest.mark.parametrize(
    ("kind", "clear", "want"),
    [
        ("enclosed", "12 in", "pass"),
        ("enclosed", "11-15/16 in", "fail"),
        ("enclosed", "unknown", "unknown"),
        ("recessed", "6 in", "pass"),
        ("recessed", "5-15/16 in", "fail"),
        ("fluorescent", "6 in", "pass"),
        ("fluorescent", "5-15/16 in", "fail"),
        ("fluorescent", "unknown", "unknown"),
        ("open bulb", "36 in", "fail"),
        ("hanging", "36 in", "fail"),
        ("track", "unknown", "fail"),
        ("unknown", "36 in", "unknown"),
        ("unknown", "unknown", "unknown"),
    ],
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_lo_11_closet_lights(edition: str, kind: str, clear: str, want: str) -> None:
    assert verdict(CLOSET, closet(kind, clear, edition)) == want


@pytest.mark.parametrize(
    ("kind", "clear", "figures", "cite"),
    [
        (
            "enclosed",
            "11 in",
            "a surface light with its lamp enclosed: 11 in to storage, least 12 in",
            "NEC 2020 410.16",
        ),
        (
            "recessed",
            "unknown",
            "a recessed light: distance to storage unknown, least 6 in",
            "NEC 2020 410.16",
        ),
        (
            "open bulb",
            "36 in",
            "a light with an open bulb is not for a clothes closet",
            "NEC 2020 410.16 (from memory: check)",
        ),
        ("unknown", "36 in", "kind of light unknown, 36 in to storage", "NEC 2020 410.16"),
    ],
)
def test_lo_11_figures(kind: str, clear: str, figures: str, cite: str) -> None:
    said = finding(CLOSET, closet(kind, clear, E20))
    assert (said.figures, said.cite) == (figures, cite)


@pytest.mark.parametrize(
    ("kind", "clear", "remedy"),
    [
        ("enclosed", "1 in", "Move the light or the shelf, or choose a light that may be nearer."),
        ("enclosed", "unknown", "Measure from the light to the shelf or the clothes."),
        ("hanging", "1 in", "Use an enclosed or a recessed light."),
        (
            "unknown",
            "1 in",
            "Say which light it is (luminaire = ...) and measure from it to the storage.",
        ),
        ("enclosed", "20 in", ""),
    ],
)
def test_lo_11_says_what_to_do(kind: str, clear: str, remedy: str) -> None:
    assert finding(CLOSET, closet(kind, clear)).remedy == remedy


@pytest.mark.parametrize(
    ("room", "device"), [("bedroom", "luminaire"), ("closet", "receptacle"), ("closet", "switch")]
)
def test_lo_11_speaks_of_closet_lights_alone(room: str, device: str) -> None:
    assert findings(CLOSET, job(room, new={"device": device})) == {}
