"""Ground wire: its size (CS-20, CS-21) and where there is none (GR-01, LO-13, TR-09)."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import RemedyPart, RemedyTask
from tests.rules.circuit_case import findings, job, one, verdict

SIZE = "ground-size"
SOURCE = "ground-source"


@pytest.mark.parametrize(
    ("breaker_a", "wire", "material", "ground", "expected"),
    [
        (15, "14", "copper", "14", "pass"),
        (15, "14", "copper", "16", "fail"),
        (20, "12", "copper", "12", "pass"),
        (20, "12", "copper", "14", "fail"),
        (30, "10", "copper", "10", "pass"),
        (30, "10", "copper", "12", "fail"),
        (40, "8", "copper", "10", "pass"),
        (40, "8", "copper", "12", "fail"),
        (15, "12", "aluminum", "12", "pass"),
        (15, "12", "aluminum", "14", "fail"),
        (25, "10", "aluminum", "10", "pass"),
        (25, "10", "copper-clad", "12", "fail"),
        (20, "14", "copper", "14", "pass"),
    ],
    ids=str,
)
def test_at_the_table_and_one_size_thinner(
    breaker_a: int, wire: str, material: str, ground: str, expected: str
) -> None:
    """The last row: never larger than the circuit's own wires; the breaker rule fails those."""
    raw = job(breaker=breaker_a, wire=wire, material=material, ground_wire=ground)
    assert verdict(SIZE, raw) == expected


def test_the_words_of_a_ground_too_thin() -> None:
    found = one(SIZE, job(ground_wire="14"))
    assert found.figures == "ground wire 14 AWG, breaker 20 A: least 12 AWG"
    assert found.cite == "NEC 2023 Table 250.122"
    assert found.remedy == "The old ground is too thin. Start from another circuit."
    passed = one(SIZE, job())
    assert passed.figures == "ground wire 12 AWG, breaker 20 A: least 12 AWG"
    assert (passed.cite, passed.remedy) == ("NEC 2023 Table 250.122", "")


@pytest.mark.parametrize(
    ("circuit", "figures"),
    [
        ({"ground_wire": "unknown"}, "ground wire unknown, breaker 20 A"),
        ({"ground_wire": "bare"}, "ground wire bare AWG, breaker 20 A"),
        ({"breaker": "unknown"}, "ground wire 12 AWG, breaker unknown"),
        ({"wire": "unknown"}, "ground wire 12 AWG, breaker 20 A"),
        ({"breaker": 101}, "ground wire 12 AWG, breaker 101 A"),
    ],
    ids=["ground", "no number", "breaker", "wire", "no row"],
)
def test_what_is_not_known(circuit: dict[str, Any], figures: str) -> None:
    found = one(SIZE, job(**circuit))
    assert (found.verdict, found.figures) == ("unknown", figures)
    assert found.remedy.startswith("Look at the bare or green wire in the source box")
    assert found.cite == "NEC 2023 Table 250.122"


@pytest.mark.parametrize(
    ("ground", "expected", "least"),
    [("10", "pass", 10), ("12", "unknown", 10), ("14", "fail", 10)],
)
def test_a_metal_nobody_knows(ground: str, expected: str, least: int) -> None:
    """20 A: 12 AWG of copper, 10 AWG of aluminum; wires of 10 AWG hold either."""
    raw = job(material="unknown", ground_wire=ground, wire="10")
    found = one(SIZE, raw)
    assert found.verdict == expected
    assert f"least {least} AWG" in found.figures
    if expected == "unknown":
        assert found.remedy.startswith("Find out what metal the old wires are")


@pytest.mark.parametrize(
    ("breaker_a", "wire", "ground", "expected"),
    [
        (20, "10", "10", "pass"),
        (20, "10", "12", "unknown"),
        (15, "12", "12", "pass"),
        (15, "12", "14", "unknown"),
        (15, "10", "12", "unknown"),
        (40, "6", "10", "unknown"),
    ],
)
def test_a_ground_grows_with_its_wires(
    breaker_a: int, wire: str, ground: str, expected: str
) -> None:
    """CS-21, by circular mils: 6530 x 10380 / 6530 = 10380 for 10 AWG on 20 A; no mils for 6."""
    found = one(SIZE, job(breaker=breaker_a, wire=wire, ground_wire=ground))
    assert found.verdict == expected
    assert (found.cite == "NEC 2023 250.122(B)") == (expected == "unknown")


def test_the_words_of_a_ground_left_behind() -> None:
    found = one(SIZE, job(wire="10"))
    assert found.figures == (
        "ground wire 12 AWG, breaker 20 A: least 12 AWG; the hot wires are 10 AWG where 12 would do"
    )
    assert found.remedy == (
        "A ground grows with its wires, unless they were made thicker because of heat. Ask why."
    )


def test_wires_of_a_metal_nobody_knows_are_taken_as_copper_here() -> None:
    """15 A, wires 10 AWG: 12 AWG is within the table for any metal, 10 AWG keeps up with copper."""
    circuit = {"breaker": 15, "wire": "10", "material": "unknown"}
    assert one(SIZE, job(**circuit, ground_wire="12")).cite == "NEC 2023 250.122(B)"
    assert verdict(SIZE, job(**circuit, ground_wire="10")) == "pass"


def test_more_ground_than_the_wires_grew_passes() -> None:
    """15 A, wires 12 for 14: asks 4110 x 6530 / 4110 = 6530; 10 AWG has 10380."""
    assert verdict(SIZE, job(breaker=15, wire="12", ground_wire="10")) == "pass"


def test_a_breaker_that_no_wire_on_file_goes_with() -> None:
    """The breaker rule fails it; the ground is within its row."""
    assert verdict(SIZE, job(breaker=60, wire="6", ground_wire="10")) == "pass"


@pytest.mark.parametrize(
    ("circuit", "count"),
    [
        ({"grounded": "no", "ground_wire": "unknown"}, 0),
        ({"grounded": "unknown", "ground_wire": "unknown"}, 0),
        ({"grounded": "unknown"}, 1),
        ({"ground_wire": "unknown"}, 1),
    ],
)
def test_no_ground_has_no_size(circuit: dict[str, Any], count: int) -> None:
    assert len(findings(SIZE, job(**circuit))) == count


@pytest.mark.parametrize(
    ("circuit", "present", "expected"),
    [
        ("yes", "unknown", "pass"), ("yes", "yes", "pass"), ("yes", "no", "fail"),
        ("no", "unknown", "fail"), ("no", "yes", "unknown"), ("no", "no", "fail"),
        ("unknown", "unknown", "unknown"), ("unknown", "yes", "pass"), ("unknown", "no", "fail"),
    ],
)  # fmt: skip
def test_what_was_seen_in_the_box_goes_first(circuit: str, present: str, expected: str) -> None:
    raw = job(grounded=circuit, found={"ground_present": present})
    assert verdict(SOURCE, raw, "old") == expected


def test_a_ground_that_the_circuit_is_said_not_to_have_is_tested() -> None:
    """XT-11: a tie to the neutral in the box looks like a ground and is none."""
    found = one(SOURCE, job(grounded="no", found={"ground_present": "yes"}), "old")
    assert found.figures == ("a ground was seen in the box, and the circuit is said to have none")
    assert "a wire tied to the neutral in the box" in found.remedy
    assert found.cite == "NEC 2023 250.130(C)"


@pytest.mark.parametrize(
    ("to", "words", "cite"),
    [
        ("outlet neutral", "a neutral outside the service equipment", "250.130(C) (worked out)"),
        ("other circuit, other panel", "a circuit of another panel", "250.130(C) (worked out)"),
        (
            "water pipe", "a pipe that is not known to belong to the electrode system",
            "250.130(C) (worked out)",
        ),
        (
            "ground-fault outlet",
            "the ground screw of an outlet that has ground-fault protection and no ground",
            "406.4(D)(2)",
        ),
    ],
    ids=lambda each: f"GR-01 {each}",
)  # fmt: skip
def test_a_ground_led_to_a_place_that_is_none_stops_the_bid(to: str, words: str, cite: str) -> None:
    raw = job(grounded="no", new_ground_to=to, new_ground_length="30 ft")
    found = one(SOURCE, raw, "old")
    assert (found.verdict, found.blocking, found.remedies) == ("fail", True, ())
    assert found.figures == (
        "no ground at the source; a new cable may not start there without a separate ground,"
        f" here to {words}, which is no place for it"
    )
    assert found.cite == f"NEC 2023 {cite}"
    assert found.remedy.startswith("A GFCI does not cure this")


def test_the_words_of_no_ground() -> None:
    found = one(SOURCE, job(grounded="no"), "old")
    assert found.figures == "no ground at the source; a new cable may not start there"
    assert (found.cite, found.blocking) == ("NEC 2023 250.130(C)", True)
    assert found.remedies == ()
    assert found.remedy.startswith("A GFCI does not cure this")
    assert "Never tie grounds together" in found.remedy


def test_a_gfci_upstream_does_not_help() -> None:
    """TR-09: the relief of LO-13 is for replacing, not for extending."""
    assert verdict(SOURCE, job(grounded="no", protection=["gfci"]), "old") == "fail"


def test_the_words_of_the_others() -> None:
    assert one(SOURCE, job(), "old").figures == "the source has a ground"
    found = one(SOURCE, job(grounded="unknown"), "old")
    assert found.figures == "nobody has said whether the source has a ground"
    assert "A three-slot receptacle alone proves nothing." in found.remedy


@pytest.mark.parametrize(
    ("to", "words", "items"),
    [
        ("electrode", "the grounding electrode system", ["ground-clamp"]),
        ("electrode conductor", "the grounding electrode conductor", ["ground-clamp"]),
        ("panel bar", "the ground bar of the panel that feeds the circuit", []),
        ("service neutral", "the neutral, inside the service equipment", []),
        (
            "other circuit, same panel",
            "the ground of another circuit from the same panel",
            ["connector-medium"],
        ),
    ],
)
def test_a_separate_ground_is_priced(to: str, words: str, items: list[str]) -> None:
    """(30 ft + 2 tails of 1 ft) x 1.10 = 35.2 ft, so 36 ft; both ends connected."""
    raw = job(grounded="no", new_ground_to=to, new_ground_length="30 ft")
    found = one(SOURCE, raw, "old")
    assert found.verdict == "fail"
    assert found.figures == (
        "no ground at the source; a new cable may not start there without a separate ground,"
        f" here to {words}"
    )
    assert found.remedy == (
        f"Run a separate ground wire from this box to {words}, before the outlet is used."
    )
    assert found.remedies == (
        RemedyPart("cable", "ground-wire-12", Decimal(36), "ft"),
        *(RemedyPart("joints", item, Decimal(1), "ea") for item in items),
        RemedyTask("rough-in", "pull-ground-wire", Decimal(30), "ft"),
        RemedyTask("terminate", "connect-ground", Decimal(2), "ea"),
    )


def test_a_separate_ground_of_unknown_length_cannot_be_priced() -> None:
    found = one(SOURCE, job(grounded="no", new_ground_to="electrode"), "old")
    assert (found.verdict, found.remedies) == ("fail", ())
    assert found.remedy == (
        "Measure the way of the new ground wire and write new_ground_length, so it is priced."
    )


@pytest.mark.parametrize(
    ("breaker", "cable", "item"),
    [
        (15, "14-2", "ground-wire-14"),
        (15, "12-2", "ground-wire-14"),
        (20, "12-2", "ground-wire-12"),
        (20, "10-2", "ground-wire-12"),
        (20, "14-2", "ground-wire-14"),
        (30, "10-2", "ground-wire-10"),
        ("unknown", "12-2", "ground-wire-12"),
        (101, "10-2", "ground-wire-10"),
    ],
)
def test_the_size_of_a_separate_ground(breaker: int | str, cable: str, item: str) -> None:
    raw = job(
        grounded="no", new_ground_to="panel bar", new_ground_length="10 ft", breaker=breaker,
        run={"cable": cable},
    )  # fmt: skip
    part = one(SOURCE, raw, "old").remedies[0]
    assert isinstance(part, RemedyPart)
    assert part.item == item


@pytest.mark.parametrize("edition", ["nec-2017", "nec-2020"])
def test_editions_are_cited(edition: str) -> None:
    year = edition.removeprefix("nec-")
    assert one(SOURCE, job(edition=edition), "old").cite.startswith(f"NEC {year} 250.130(C)")
    assert one(SIZE, job(edition=edition)).cite.startswith(f"NEC {year} Table 250.122")


@pytest.mark.parametrize("cables", [("14-2", "12-2"), ("12-2", "14-2")])
def test_one_ground_serves_the_thickest_new_cable_whatever_the_order(
    cables: tuple[str, str],
) -> None:
    """Behind 20 A the ground is 12 AWG, as thick as the thickest of the new wires."""
    raw = job(grounded="no", new_ground_to="electrode", new_ground_length="30 ft")
    raw["boxes"].append({"id": "far"})
    ends = zip(("1", "2"), ("new", "far"), cables, strict=True)
    raw["runs"] = [{**raw["runs"][0], "id": run, "to": to, "cable": cable}
                   for run, to, cable in ends]  # fmt: skip
    part = one(SOURCE, raw, "old").remedies[0]
    assert isinstance(part, RemedyPart)
    assert part.item == "ground-wire-12"
