"""Circuit rules, word for word, where the other tests look at a part of what is said."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import RemedyPart
from tests.rules.circuit_case import findings, job, one
from tests.rules.told import Told, told

WIRE = "breaker-wire"
HEAT = "ampacity-adjustment"
LOAD = "circuit-load"
RATING = "receptacle-rating"
OVERCURRENT = "NEC 2023 240.4(D)"
THICKER = (
    "Use 12-2 cable behind a 20 A breaker. A receptacle for fewer amperes does not change that;"
    " the wire counts."
)
LONG = {"bundled": 5, "bundled_length": "25 in"}
Raw = dict[str, Any]


def test_a_breaker_smaller_than_any_branch_circuit() -> None:
    assert told(one(WIRE, job(breaker=5))) == Told(
        "fail",
        "breaker 5 A, least 10 A for a branch circuit",
        "NEC 2023 Table 210.24",
        "Read the breaker again; this edition knows no smaller branch circuit.",
    )


@pytest.mark.parametrize(
    ("breaker", "verdict", "said", "remedy"),
    [
        (20, "fail", "20 A", THICKER),
        ("unknown", "unknown", "unknown", f"Read the number on the breaker. {THICKER}"),
    ],
)
def test_a_new_cable_too_thin(breaker: Any, verdict: str, said: str, remedy: str) -> None:
    figures = f"new 14-2 cable, 14 AWG copper: breaker {said}, at most 15 A"
    found = one(WIRE, job(run={"cable": "14-2"}, breaker=breaker), "run 1")
    assert told(found) == Told(verdict, figures, OVERCURRENT, remedy)


def test_no_cable_on_file_is_thick_enough() -> None:
    # 8 AWG takes 40 A, and 10-2, the thickest cable on file, takes 30 A
    found = one(WIRE, job(breaker=40, wire="8"), "run 1")
    assert found.remedy == "The old wire is too thin or the breaker too large: see the circuit."
    assert found.remedies == ()


def test_a_metal_nobody_has_looked_at() -> None:
    found = one("wire-material", job(material="unknown"))
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 110.14")


def test_heat_with_a_breaker_nobody_read() -> None:
    # 10 wires that carry current: 50 % of 30 A
    found = one(HEAT, job(run=LONG, breaker="unknown"), "run 1")
    assert told(found) == Told(
        "unknown",
        "10 wires that carry current, 86 F: 30 A x 50 % x 1 = 15 A; breaker unknown",
        "NEC 2023 Table 310.15(C)(1)",
        "Read the number on the breaker.",
    )


def test_heat_at_worst() -> None:
    found = one(HEAT, job(run={"cables_in_hole": 5}), "run 1")
    sum_ = "30 A x 50 % x 1 = 15 A"
    assert found.figures == (f"at worst 10 wires that carry current, 86 F: {sum_}; breaker 20 A")


@pytest.mark.parametrize(
    "run",
    [
        {"bundled": 2, "bundled_length": "1 in", "in_insulation": "yes"},
        {"cables_in_hole": 2, "hole_sealed": "yes"},
    ],
)
def test_two_cables_in_insulation_or_a_hole_are_not_more_than_two(run: Raw) -> None:
    assert one(HEAT, job(run=run), "run 1").figures.startswith("2 wires that carry current")


def test_two_loads_too_large_each_say_what_to_do() -> None:
    # 17 A is over 80 % of 20 A; 12 + 5 + 4 + 0 is over 20 A
    loads: Raw = {"largest_portable": 17, "load": 12, "fixed": 5, "other_load": 4, "continuous": 0}
    assert told(one(LOAD, job(**loads))).remedy == (
        "Too much for a shared circuit: this load wants a circuit of its own."
        " More than the breaker carries: use another circuit, or a new one."
    )


def alone(single: str) -> Raw:
    """The only receptacle of an individual circuit; its other two boxes hold none."""
    new = {"contents": {"single_receptacle": single}, "device_rating": 15}
    raw = job(new=new, old={"device": "none"}, kind="individual")
    raw["boxes"].append({"id": "light", "device": "luminaire"})
    legs = [{"go": "along", "length": "6 ft"}]
    raw["runs"].append({"id": "2", "from": "new", "to": "light", "cable": "12-2", "legs": legs})
    return raw


def test_alone_on_its_circuit_beside_boxes_without_a_receptacle() -> None:
    assert told(one(RATING, alone("yes"), "new")) == Told(
        "fail",
        "15 A receptacle, breaker 20 A; alone on its circuit it is rated for 100 % of the breaker",
        "NEC 2023 210.21(B)(1)",
        "Fit a receptacle with the rating of the breaker, or a duplex.",
    )


def test_perhaps_alone() -> None:
    found = one(RATING, alone("unknown"), "new")
    assert found.remedy == (
        "Find out whether the circuit feeds this one single receptacle and nothing else."
    )
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 210.21(B)(1)")


def test_subjects_of_the_breaker_rule() -> None:
    assert list(findings(WIRE, job())) == ["circuit", "run 1"]


SOURCE, TERMINALS = "ground-source", "terminals"
NO_GROUND = "no ground at the source; a new cable may not start there"
CHOICES = (
    'A GFCI does not cure this: the relief marked "no equipment ground" is for replacing a'
    " receptacle, not for adding one. Run a separate ground to the electrode system, its"
    " conductor, the panel's ground bar, the neutral inside the service equipment or another"
    " circuit of the same panel (set new_ground_to and new_ground_length), or have a new circuit"
    " priced. Never tie grounds together between outlets that have only a GFCI."
)
WAYS = "NEC 2023 250.130(C)"


def test_no_ground_and_no_way_chosen() -> None:
    found = one(SOURCE, job(grounded="no"), "old")
    assert told(found) == Told("fail", NO_GROUND, WAYS, CHOICES)


def test_a_separate_ground_without_a_length() -> None:
    found = one(SOURCE, job(grounded="no", new_ground_to="electrode"), "old")
    assert told(found) == Told(
        "fail",
        f"{NO_GROUND} without a separate ground, here to the grounding electrode system",
        WAYS,
        "Measure the way of the new ground wire and write new_ground_length, so it is priced.",
    )


def test_nobody_has_looked_for_a_ground() -> None:
    assert told(one(SOURCE, job(grounded="unknown"), "old")) == Told(
        "unknown",
        "nobody has said whether the source has a ground",
        WAYS,
        "With the power off, look for a bare or green wire in the box; then test hot to ground with"
        " a meter. A three-slot receptacle alone proves nothing.",
    )


def test_a_separate_ground_just_over_a_foot_takes_the_next() -> None:
    # (969 + 2 x 12 in) x 1.10 = 1092.3 in, which is 91 ft and 0.3 in: 92 ft are ordered
    raw = job(grounded="no", new_ground_to="panel bar", new_ground_length="969 in")
    wire = one(SOURCE, raw, "old").remedies[0]
    assert wire == RemedyPart("cable", "ground-wire-12", Decimal(92), "ft")


def test_a_ground_wire_of_unknown_size() -> None:
    assert told(one("ground-size", job(ground_wire="unknown"))) == Told(
        "unknown",
        "ground wire unknown, breaker 20 A",
        "NEC 2023 Table 250.122",
        "Look at the bare or green wire in the source box, at the other wires and at the breaker;"
        ' write sizes such as "14".',
    )


def test_terminals_nobody_has_looked_at() -> None:
    raw = job(found={"wires_per_screw": "unknown", "push_in_terminals": "unknown"})
    found = one(TERMINALS, raw, "old")
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 110.14")
    assert found.figures == (
        "wires under one screw: not counted, at most 1; push-in terminals: not looked at;"
        " 3 connectors and 3 pigtails here in the takeoff"
    )
    assert found.remedy == (
        "With the power off, draw the device out: count wires under each screw, look behind it."
    )


def test_what_to_look_at_where_the_metal_is_unknown() -> None:
    assert one("wire-material", job(material="unknown")).remedy == (
        "Scrape nothing; look at a cut end with the power off. Copper is reddish, aluminum is grey,"
        " copper-clad is reddish outside and grey within. Read the cable's jacket too."
    )


def test_aluminum_is_not_joined_with_ordinary_connectors() -> None:
    assert one("wire-material", job(material="aluminum")).remedy == (
        "Do not join new copper to it with ordinary connectors. A joint needs a connector listed"
        " for aluminum with copper, a device must be marked CO/ALR, and CPSC prefers special"
        " compression splices at every connection. Have a specialist quote, or start from another"
        " circuit that is copper."
    )


OFF = "Turn both breakers off: the shared white is live while either hot is on."


@pytest.mark.parametrize(
    ("circuit", "remedy"),
    [
        (
            {"multiwire": "unknown"},
            "Look in the source box and in the panel for a red and a black that share one white. If"
            " they do, look for a handle tie, measure from hot to hot and see whether the whites"
            " are joined with a pigtail.",
        ),
        (
            {"multiwire": "yes", "hots_on_two_legs": "no"},
            "Both hots are on one leg, so the white carries the sum of them. Have the breakers set"
            " on different legs before anything is added.",
        ),
        (
            {
                "multiwire": "yes",
                "hots_on_two_legs": "yes",
                "handle_tie": "yes",
                "neutral_pigtailed": "no",
                "new_on_hot": "black",
            },
            "Join the whites in a connector with a pigtail to the device, so that taking the device"
            f" out never opens the neutral; the pigtail is in the takeoff. {OFF}",
        ),
    ],
)
def test_two_hots_on_one_white(circuit: Raw, remedy: str) -> None:
    raw = job(old={"cables": ["12-3", "12-2"]}, **circuit)
    assert one("multiwire", raw).remedy == remedy
