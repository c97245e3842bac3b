"""Arc-fault protection of an extension: rows A-05 to A-08, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.problems import InputError
from tests.rules.place_case import (
    EDITIONS,
    finding,
    findings,
    inside,
    job,
    remedy_items,
    run,
    screened,
    verdict,
    worked,
)

RULE = "afci-extension"
E17, E20, E23 = EDITIONS


def of(raw: dict[str, Any]) -> str:
    return verdict(RULE, raw, "circuit")


def joined(length: str, device: str = "none", edition: str = E23) -> dict[str, Any]:
    """Old wire lengthened to another box."""
    legs = [{"go": "along", "length": length}]
    return job("hall", new={"device": device}, edition=edition, runs=[run("old", "new", legs=legs)])


@pytest.mark.parametrize(
    ("length", "want"), [("71 in", "pass"), ("72 in", "pass"), ("72-1/16 in", "fail")]
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_a_05_six_feet_without_a_new_outlet_are_free(edition: str, length: str, want: str) -> None:
    assert of(joined(length, edition=edition)) == want


@pytest.mark.parametrize("device", ["receptacle", "switch", "luminaire"])
def test_a_05_a_new_outlet_never_is(device: str) -> None:
    said = finding(RULE, joined("72 in", device), "circuit")
    assert said.verdict == "fail"
    assert said.figures.endswith("; short wire (72 in) is free only where no outlet is added")


def test_a_05_is_said_of_short_work_alone() -> None:
    long = finding(RULE, joined("73 in", "receptacle"), "circuit").figures
    assert long == "wiring added in hall; no arc-fault protection upstream"
    assert "short wire" not in finding(RULE, joined("73 in"), "circuit").figures


def test_a_05_the_length_is_said() -> None:
    said = finding(RULE, joined("72 in", edition=E20), "circuit")
    assert said.figures == "72 in of new wire and no new outlet; free up to 72 in"
    assert said.cite == "NEC 2020 210.12(D) exception"


def test_a_05_runs_are_added_up() -> None:
    legs = [{"go": "along", "length": "40 in"}]
    more = [{"id": "second", "room": "hall", "device": "none"}]
    runs = [run("old", "new", legs=legs), run("new", "second", legs=legs)]
    assert of(job("hall", new={"device": "none"}, more=more, runs=runs)) == "fail"


@pytest.mark.parametrize(
    ("wire", "length", "words"),
    [
        (
            "14",
            "50 ft",
            "at most 50 ft of size 14 between the two; here 50 ft to the source, within",
        ),
        ("14", "50 ft 1 in", "to the source, over it: such a pair will not do"),
        (
            "12",
            "70 ft",
            "at most 70 ft of size 12 between the two; here 70 ft to the source, within",
        ),
        ("12", "70 ft 1 in", "to the source, over it: such a pair will not do"),
        ("12", "unknown", "at most 70 ft of size 12 between the two; here the length is unknown"),
    ],
)
def test_a_06_wire_from_the_breaker(wire: str, length: str, words: str) -> None:
    raw = inside("bedroom", edition=E20, circuit={"wire": wire, "existing_length": length})
    said = finding(RULE, raw, "home run")
    assert said.figures.startswith("if the arc-fault receptacle relies on a partner breaker: ")
    assert said.figures.endswith(words)
    assert (said.verdict, said.cite) == ("note", "NEC 2020 210.12(A)(3), (4)")
    assert bool(said.remedy) == (length == "unknown")


@pytest.mark.parametrize(
    ("edition", "cite"),
    [
        (E17, "NEC 2017 210.12(A)(3), (4) (from memory: check)"),
        (E23, "NEC 2023 210.12(B) (from memory: check)"),
    ],
)
def test_a_06_editions_not_read_say_so(edition: str, cite: str) -> None:
    assert finding(RULE, inside("bedroom", edition=edition), "home run").cite == cite


@pytest.mark.parametrize("circuit", [{"wire": "10"}, {"wire": "unknown"}])
def test_a_06_no_figure_no_note(circuit: dict[str, str]) -> None:
    assert set(findings(RULE, inside("bedroom", circuit=circuit))) == {"circuit"}


@pytest.mark.parametrize("circuit", [{"protection": ["afci"]}, {"breaker": 30}])
def test_a_06_no_note_where_nothing_is_asked(circuit: dict[str, Any]) -> None:
    assert set(findings(RULE, inside("bedroom", circuit=circuit))) == {"circuit"}


def test_a_07_an_edition_that_is_not_on_file_is_refused() -> None:
    """2026 lets the first switch hold the device; no other edition answers in its place."""
    with pytest.raises(InputError, match="nec-2026"):
        of(inside("bedroom", edition="nec-2026"))


def change(figure: str, value: str) -> dict[str, str]:
    return {
        "rule": RULE, "change": "figure", "figure": figure, "value": value, "reason": "state law"
    }  # fmt: skip


@pytest.mark.parametrize("room", ["kitchen", "laundry"])
def test_a_08_a_state_drops_kitchens_and_laundry(room: str) -> None:
    raw = inside(room, amendments=[change(f"afci-{room}", "0")])
    said = finding(RULE, raw, "circuit")
    assert (said.verdict, said.cite) == ("pass", "local: state law")
    assert of(inside("bedroom", amendments=[change(f"afci-{room}", "0")])) == "fail"


def test_a_08_a_state_adds_a_room() -> None:
    said = finding(RULE, inside("garage", amendments=[change("afci-garage", "1")]), "circuit")
    assert (said.verdict, said.cite) == ("fail", "NEC 2023 210.12(E), local: state law")


@pytest.mark.parametrize(("how", "want"), [("off", None), ("note", "note")])
def test_a_08_a_place_without_the_rule(how: str, want: str | None) -> None:
    amended = {"rule": RULE, "change": how, "reason": "not adopted here"}
    found = screened(inside("bedroom", amendments=[amended]))
    said = found.get("afci-extension:circuit")
    assert (said.verdict if said else None) == want
    assert found["local-amendment:afci-extension"].cite == "local: not adopted here"


def test_a_fail_is_put_right_in_the_takeoff_and_does_not_stop_the_bid() -> None:
    found = worked(inside("bedroom"))
    assert remedy_items(found, "afci-extension:circuit") == [
        "receptacle-afci-20",
        "plate-rectangular-1g",
        "mount-protective-receptacle",
    ]
    assert "afci-extension:circuit" not in found.blocked_by


def test_an_unknown_is_priced_in_the_second_total_alone() -> None:
    raw = inside("bedroom", circuit={"protection": None})
    first, second = worked(raw), worked(raw, bad_case=True)
    assert remedy_items(first, "afci-extension:circuit") == []
    assert len(remedy_items(second, "afci-extension:circuit")) == 3
    assert second.price.total > first.price.total
