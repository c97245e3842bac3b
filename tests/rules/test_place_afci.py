"""Arc-fault protection of an extension: rows A-01 to A-08, worked by hand."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import RemedyPart, RemedyTask
from tests.rules.place_case import (
    EDITIONS,
    finding,
    findings,
    inside,
    job,
    remedy_items,
    run,
    verdict,
    worked,
)

RULE = "afci-extension"
E17, E20, E23 = EDITIONS
FIT = (
    "Fit an outlet-type arc-fault receptacle at the first receptacle of the circuit (find it "
    "first); that is what is priced. The other way is an arc-fault breaker, put in by a licensed "
    'electrician: write afci_by = "breaker" to price that.'
)
IN_PANEL = (
    "Have an arc-fault breaker to suit the panel put in by a licensed electrician; breaker and "
    "hours are what is priced. The other way is an outlet-type arc-fault receptacle at the first "
    'receptacle of the circuit: write afci_by = "receptacle" to price that.'
)
LOOK = "Look at the breaker for a test button and the word arc-fault or AFCI."
REMEDIES = (
    RemedyPart("devices", "receptacle-afci-20", Decimal(1), "ea"),
    RemedyPart("devices", "plate-rectangular-1g", Decimal(1), "ea"),
    RemedyTask("terminate", "mount-protective-receptacle", Decimal(1), "ea"),
)


def of(raw: dict[str, Any]) -> str:
    return verdict(RULE, raw, "circuit")


@pytest.mark.parametrize(
    "room",
    ["kitchen", "family room", "dining room", "living room", "library", "den", "bedroom",
     "sunroom", "recreation room", "closet", "hall", "laundry"],
)  # fmt: skip
@pytest.mark.parametrize("edition", EDITIONS)
def test_a_01_listed_rooms(edition: str, room: str) -> None:
    assert of(inside(room, edition=edition)) == "fail"


@pytest.mark.parametrize("room", ["office", "pantry", "finished basement"])
def test_a_01_similar_rooms(room: str) -> None:
    assert of(inside(room)) == "fail"


@pytest.mark.parametrize(
    "new",
    [
        {"device": "switch"},
        {"device": "three-way switch"},
        {"device": "luminaire"},
        {"device": "none", "spot": {"appliance": "other"}},
        {"device": "afci receptacle"},
    ],
)
def test_a_01_outlets_and_devices_of_every_kind(new: dict[str, Any]) -> None:
    assert of(inside("bedroom", new)) == "fail"


@pytest.mark.parametrize(
    ("edition", "breaker", "want"),
    [
        (E17, 15, "fail"),
        (E17, 20, "fail"),
        (E17, 10, "pass"),
        (E20, 10, "pass"),
        (E23, 10, "fail"),
        (E23, 9, "pass"),
        (E23, 21, "pass"),
        (E20, 30, "pass"),
        (E20, "unknown", "unknown"),
    ],
)
def test_a_02_ratings_by_edition(edition: str, breaker: int | str, want: str) -> None:
    assert of(inside("bedroom", edition=edition, circuit={"breaker": breaker})) == want


def test_a_02_a_larger_circuit_is_told_apart() -> None:
    said = finding(RULE, inside("bedroom", circuit={"breaker": 30}), "circuit")
    assert said.figures == "breaker 30 A; asked of 10 to 20 A"
    assert said.cite == "NEC 2023 210.12"


@pytest.mark.parametrize(
    "room",
    ["bathroom", "garage", "outdoors", "unfinished basement", "attic", "crawlspace", "boathouse"],
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_a_03_rooms_that_are_not_listed(edition: str, room: str) -> None:
    said = finding(RULE, inside(room, edition=edition), "circuit")
    assert (said.verdict, said.figures) == (
        "pass",
        f"no room of this work is on the list ({room})",
    )
    assert said.cite == f"NEC {edition[-4:]} 210.12(A) (worked out)"


@pytest.mark.parametrize("room", ["other", "accessory building", "that room"])
def test_a_03_rooms_that_the_list_leaves_open(room: str) -> None:
    said = finding(RULE, inside(room), "circuit")
    assert said.verdict == "unknown"
    assert said.figures.startswith("may be a listed room: ")
    assert said.remedy == (
        f"Say what the room is used for, and ask the inspector if it is listed. {FIT}"
    )


@pytest.mark.parametrize(
    ("edition", "where"),
    [(E17, "NEC 2017 210.12(D)"), (E20, "NEC 2020 210.12(D)"), (E23, "NEC 2023 210.12(E)")],
)
def test_a_04_an_extension_is_protected(edition: str, where: str) -> None:
    said = finding(RULE, inside("bedroom", edition=edition), "circuit")
    assert (said.verdict, said.cite, said.remedy) == ("fail", where, FIT)
    assert said.figures == "wiring added in bedroom; no arc-fault protection upstream"
    assert said.remedies == REMEDIES
    assert said.blocking


def test_a_04_the_room_of_the_source_counts_as_well() -> None:
    said = finding(RULE, job("bathroom", old={"room": "bedroom"}), "circuit")
    assert said.verdict == "fail"
    assert said.figures.startswith("wiring added in bedroom;")


def test_a_04_every_listed_room_is_named_once() -> None:
    more = [{"id": "second", "room": "den"}]
    raw = job("den", more=more, runs=[run("old", "new"), run("new", "second")])
    assert finding(RULE, raw, "circuit").figures.startswith("wiring added in hall, den;")


@pytest.mark.parametrize(
    ("protection", "want"),
    [(["afci"], "pass"), (["gfci", "afci"], "pass"), (["gfci"], "fail"), ([], "fail"),
     (None, "unknown")],
)  # fmt: skip
def test_a_04_protection_upstream_counts(protection: list[str] | None, want: str) -> None:
    assert of(inside("bedroom", circuit={"protection": protection})) == want


def test_a_04_what_is_there_is_said() -> None:
    said = finding(RULE, inside("bedroom", circuit={"protection": ["afci"]}), "circuit")
    assert said.figures == "wiring added in bedroom; arc-fault protection upstream"
    assert said.cite == "NEC 2023 210.12(E)"


def test_a_04_nobody_looked_is_unknown_with_its_price() -> None:
    said = finding(RULE, inside("bedroom", circuit={"protection": None}), "circuit")
    assert said.figures.endswith("; nobody has looked for arc-fault protection upstream")
    assert said.remedy == f"{LOOK} {FIT}"
    assert said.remedies == REMEDIES


def test_a_04_all_that_is_missing_is_asked_for() -> None:
    circuit = {"protection": None, "breaker": "unknown"}
    said = finding(RULE, inside("other", circuit=circuit), "circuit")
    ask = "Say what the room is used for, and ask the inspector if it is listed."
    assert said.remedy == f"{ask} Read the number on the breaker. {LOOK} {FIT}"


@pytest.mark.parametrize("protection", [None, [], ["gfci"]])
def test_a_04_a_device_in_the_source_counts_where_it_is_the_first(
    protection: list[str] | None,
) -> None:
    raw = inside("bedroom", old={"device": "afci receptacle"}, circuit={"protection": protection})
    said = finding(RULE, raw, "circuit")
    assert said.verdict == "unknown"
    assert said.figures == "wiring added in bedroom; box old holds an arc-fault receptacle"
    assert said.remedy == "It counts where it is the first receptacle of the circuit: find out."
    assert said.remedies == REMEDIES


@pytest.mark.parametrize(
    ("breaker", "item"), [(15, "receptacle-afci-15"), (20, "receptacle-afci-20")]
)
def test_a_04_the_device_fits_the_breaker(breaker: int, item: str) -> None:
    part = finding(RULE, inside("bedroom", circuit={"breaker": breaker}), "circuit").remedies[0]
    assert isinstance(part, RemedyPart)
    assert part.item == item


BREAKER = (
    RemedyPart("devices", "afci-breaker", Decimal(1), "ea"),
    RemedyTask("terminate", "fit-afci-breaker", Decimal(1), "ea"),
)


@pytest.mark.parametrize(("protection", "want"), [([], "fail"), (None, "unknown")])
def test_a_04_a_breaker_is_priced_where_the_job_says_so(
    protection: list[str] | None, want: str
) -> None:
    """A-04 allows both ways; the second is a licensed electrician's work, and says so."""
    raw = inside("bedroom", circuit={"protection": protection, "afci_by": "breaker"})
    said = finding(RULE, raw, "circuit")
    assert (said.verdict, said.remedies) == (want, BREAKER)
    assert said.remedy.endswith(IN_PANEL)


def test_a_04_the_breaker_and_its_work_are_in_the_price() -> None:
    """The breaker at the cheaper supplier, $46.50, and 0.75 hours of work that names its trade."""
    work = worked(inside("bedroom", circuit={"afci_by": "breaker"}))
    assert remedy_items(work, "afci-extension:circuit") == ["afci-breaker", "fit-afci-breaker"]
    (bought,) = (line for line in work.shopping if line.item == "afci-breaker")
    (done,) = (line for line in work.labor if line.task == "fit-afci-breaker")
    assert (bought.cost, done.hours_likely) == (Decimal("46.50"), Decimal("0.75"))
    assert done.description.startswith("Licensed electrician: ")
    assert "afci-extension:circuit" not in work.blocked_by


def test_a_06_has_nothing_to_say_of_a_breaker() -> None:
    assert set(findings(RULE, inside("bedroom", circuit={"afci_by": "breaker"}))) == {"circuit"}
