"""Where cable may lie: electrical.md CI-11, CI-13, CI-14, CI-16, CI-17."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.rules.records import RemedyPart
from tests.rules.cable_case import findings, job, one


@pytest.mark.parametrize(
    ("moisture", "verdict"),
    [("dry", "pass"), ("unknown", "unknown"), ("damp", "fail"), ("wet", "fail")],
)
def test_dry_places_only(moisture: str, verdict: str) -> None:
    found = one("cable-place", job(run={"moisture": moisture}))
    assert (found.verdict, found.subject, found.cite) == (verdict, "run 1", "NEC 2023 334.12")


@pytest.mark.parametrize(("air", "verdict"), [("across", "pass"), ("along", "fail")])
def test_return_air_is_crossed_straight(air: str, verdict: str) -> None:
    found = findings("cable-place", job(run={"return_air": air}))[1]
    assert (found.verdict, found.subject) == (verdict, "run 1 return air")
    assert found.cite == "NEC 2023 300.22"


def test_no_air_space_no_finding() -> None:
    assert len(findings("cable-place", job())) == 1


@pytest.mark.parametrize(
    ("edge", "method", "verdict"),
    [
        ("1-1/4 in", "bored", "pass"),
        ("1-3/16 in", "bored", "fail"),
        ("1/2 in", "fished", "pass"),
    ],
)
def test_cable_along_framing(edge: str, method: str, verdict: str) -> None:
    found = one("parallel-cable", job(run={"parallel_edge": edge, "method": method}))
    assert (found.verdict, found.subject) == (verdict, "run 1")


def test_plates_along_the_framing() -> None:
    # 120 in of run, a 16 in plate after the other: 7.5, so 8 (worked by hand)
    found = one("parallel-cable", job(run={"parallel_edge": "1 in", "method": "bored"}))
    plates = RemedyPart("protection", "protection-plate", Decimal(8), "ea")
    assert found.remedies == (plates,)


def test_unmeasured_edge_is_not_asked() -> None:
    assert findings("parallel-cable", job()) == []


@pytest.mark.parametrize(("groove", "verdict"), [("yes", "fail"), ("unknown", "unknown")])
def test_shallow_groove(groove: str, verdict: str) -> None:
    found = one("groove", job(run={"surface_groove": groove}))
    assert (found.verdict, found.cite) == (verdict, "NEC 2023 300.4(F)")


def test_no_groove_no_finding() -> None:
    assert findings("groove", job()) == []


@pytest.mark.parametrize(
    ("edition", "radius", "verdict"),
    [
        ("nec-2023", "2.11 in", "pass"),  # 5 x 0.422 in, the wide side of 12-2
        ("nec-2023", "2.1 in", "fail"),
        ("nec-2020", "0.95 in", "pass"),  # 5 x 0.190 in
        ("nec-2020", "0.94 in", "fail"),
    ],
)
def test_bend(edition: str, radius: str, verdict: str) -> None:
    found = one("bend-radius", job(run={"bend_radius": radius}, job={"edition": edition}))
    assert (found.verdict, found.subject) == (verdict, "run 1")


def test_bend_figures() -> None:
    found = one("bend-radius", job(run={"bend_radius": "3 in"}))
    assert found.figures == "tightest bend 3 in, least 2.11 for cable 0.422 in across"


def test_unmeasured_bend_is_not_asked() -> None:
    assert findings("bend-radius", job()) == []


@pytest.mark.parametrize(
    ("length", "plates"),
    [("136 in", 9), ("128 in", 8), ("128-1/8 in", 9), ("1/2 in", 1)],
)
def test_plates_of_16_in_reach_along_the_framing(length: str, plates: int) -> None:
    """136 in are 8.5 plates of 16 in each, so 9; worked by hand."""
    legs = [{"go": "along", "length": length}]
    raw = job(run={"parallel_edge": "1 in", "method": "bored", "legs": legs})
    part = one("parallel-cable", raw).remedies[0]
    assert part == RemedyPart("protection", "protection-plate", Decimal(plates), "ea")
