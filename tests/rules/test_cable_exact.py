"""Cable rules, word for word: every branch's verdict, figures, citation and remedy."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.registry import FUNCTIONS
from tests.rules.cable_case import facts, findings, job, one
from tests.rules.told import Told, told

EXPOSED = {"legs": [{"go": "along", "length": "10 ft", "method": "exposed"}]}
Raw = dict[str, Any]
CLAMP = "NEC 2023 314.17(B)(2) Ex"
SUPPORT = "NEC 2023 334.30"
DRY = "NEC 2023 334.12"
AIR = "NEC 2023 300.22"
EDGE = "NEC 2023 300.4(D)"
GROOVE = "NEC 2023 300.4(F)"
BEND = "NEC 2023 334.24"
FREE = "NEC 2023 300.14"
DROP = "NEC 2023 210.19 note"
DEEPER = "Steel plates or a sleeve along it, or move it deeper."
GENTLY = "Drill the hole further from the box, so that the cable bends gently."
LONGER = "Leave a longer tail, or lengthen short old wires with pigtails."
PACE = "Pace off the old wire from the panel, and ask what will be plugged in."
CLAMPS: list[tuple[Raw, Raw, Told]] = [
    ({"clamps": "yes"}, {}, Told("pass", "the box has clamps", CLAMP)),
    (
        {"metal": "yes"},
        {},
        Told(
            "pass",
            "metal box without clamps: a connector for each new cable is in the takeoff",
            CLAMP,
        ),
    ),
    (
        {"clamps": "unknown"},
        {},
        Told(
            "unknown",
            "nobody has looked for clamps",
            CLAMP,
            "Look inside: clamps or not, metal or plastic.",
        ),
    ),
    (
        {"gangs": 2, "volume": "32 in3"},
        {},
        Told(
            "fail",
            "plastic, 2 gangs, without clamps",
            CLAMP,
            "Replace it by a box with clamps: a larger plastic box must clamp its cables.",
        ),
    ),
    (
        {},
        {"stapled_at": ["old"]},
        Told(
            "pass",
            "plastic, one gang, no clamps: stapled within 8 in along the cable",
            CLAMP,
            "Staple within 8 in along the cable.",
        ),
    ),
    (
        {},
        {},
        Told(
            "note",
            "plastic, one gang, no clamps; a fished cable cannot be stapled within 8 in along"
            " the cable",
            CLAMP,
            "Ask your inspector, or plan a box with clamps there.",
        ),
    ),
]


@pytest.mark.parametrize(("old", "run", "want"), CLAMPS)
def test_clamps(old: Raw, run: Raw, want: Told) -> None:
    assert told(one("cable-clamped", job(old=old, run=run))) == want


def test_a_staple_counts_at_its_own_box_alone() -> None:
    found = one("cable-clamped", job(run={"stapled_at": ["new"]}))
    assert found.verdict == "note"


def test_a_fished_cable_is_held_by_the_framing() -> None:
    words = "fished or bored all the way: the framing holds it"
    assert told(one("cable-support", job())) == Told("pass", words, "NEC 2023 334.30(B)(1)")


def test_staples() -> None:
    # 3 staples as in test_cable_hold
    words = "3 staples, 12 in from a box (at most 12), then every 54 in (at most 54)"
    assert told(one("cable-support", job(run=EXPOSED))) == Told("pass", words, SUPPORT)


def test_staples_too_far_apart() -> None:
    known = facts(job(run=EXPOSED))
    wide = replace(known.practice, staple_spacing_in=Fraction("54.5"))
    (found,) = FUNCTIONS["cable-support"](replace(known, practice=wide))
    words = "3 staples, 12 in from a box (at most 12), then every 54.5 in (at most 54)"
    remedy = "Bring the staple settings of the shop down to the limits."
    assert told(found) == Told("note", words, SUPPORT, remedy)


def test_each_run_has_its_own_answer() -> None:
    raw = job()
    raw["boxes"].append({"id": "far"})
    raw["runs"].append(
        {**deepcopy(raw["runs"][0]), **EXPOSED, "id": "2", "from": "new", "to": "far"}
    )
    found = {each.subject: each.cite for each in findings("cable-support", raw)}
    assert found == {"run 1": "NEC 2023 334.30(B)(1)", "run 2": SUPPORT}


PLACES = [
    ("dry", Told("pass", "dry all along, as surveyed", DRY)),
    (
        "unknown",
        Told(
            "unknown",
            "nobody has said whether it is dry",
            DRY,
            "Look for stains, bare earth and outside walls along the way.",
        ),
    ),
    (
        "damp",
        Told(
            "fail",
            "a damp place; nonmetallic-sheathed cable belongs in dry ones",
            DRY,
            "Take a dry way, or have a wiring method for such places planned.",
        ),
    ),
]


@pytest.mark.parametrize(("moisture", "want"), PLACES)
def test_dry_or_not(moisture: str, want: Told) -> None:
    assert told(one("cable-place", job(run={"moisture": moisture}))) == want


@pytest.mark.parametrize(
    ("air", "want"),
    [
        (
            "across",
            Told("pass", "crosses a return-air space straight, across its long side", AIR),
        ),
        (
            "along",
            Told(
                "fail",
                "runs along a return-air space",
                AIR,
                "Cross such a space straight, or avoid it.",
            ),
        ),
    ],
)
def test_return_air(air: str, want: Told) -> None:
    assert told(findings("cable-place", job(run={"return_air": air}))[1]) == want


@pytest.mark.parametrize(
    ("edge", "method", "want"),
    [
        ("1-1/4 in", "bored", Told("pass", "1.25 in to the face, limit 1.25 in", EDGE)),
        ("1 in", "bored", Told("fail", "1 in to the face, limit 1.25 in", EDGE, DEEPER)),
        (
            "1 in",
            "fished",
            Told("pass", "1 in to the face; fished in a finished wall", f"{EDGE} Ex 2"),
        ),
    ],
)
def test_along_framing(edge: str, method: str, want: Told) -> None:
    assert told(one("parallel-cable", job(run={"parallel_edge": edge, "method": method}))) == want


@pytest.mark.parametrize(
    ("groove", "want"),
    [
        (
            "unknown",
            Told(
                "unknown",
                "nobody has said whether it lies in a shallow groove",
                GROOVE,
                "See whether the cable lies in a groove or behind full studs.",
            ),
        ),
        (
            "yes",
            Told(
                "fail",
                "in a shallow groove: steel or 1.25 in of free depth all along",
                GROOVE,
                "Bore the studs instead, or cover the groove with steel all along.",
            ),
        ),
    ],
)
def test_grooves(groove: str, want: Told) -> None:
    found = one("groove", job(run={"surface_groove": groove}))
    assert (found.subject, told(found)) == ("run 1", want)


@pytest.mark.parametrize(
    ("radius", "want"),
    [
        # 5 x 0.422 in, the wide side of 12-2
        ("3 in", Told("pass", "tightest bend 3 in, least 2.11 for cable 0.422 in across", BEND)),
        (
            "2 in",
            Told("fail", "tightest bend 2 in, least 2.11 for cable 0.422 in across", BEND, GENTLY),
        ),
    ],
)
def test_bends(radius: str, want: Told) -> None:
    assert told(one("bend-radius", job(run={"bend_radius": radius}))) == want


def second_run(rule: str, key: str, first: str, second: str) -> list[str]:
    """Subjects of a rule about two runs, one from the other's end."""
    raw = job(run={key: first, "method": "bored"})
    raw["boxes"].append({"id": "far"})
    raw["runs"].append({**deepcopy(raw["runs"][0]), "id": "2", "from": "new", "to": "far"})
    raw["runs"][1][key] = second
    return [each.subject for each in findings(rule, raw)]


@pytest.mark.parametrize(
    ("rule", "key", "none", "some"),
    [
        ("parallel-cable", "parallel_edge", "unknown", "2 in"),
        ("groove", "surface_groove", "no", "yes"),
        ("bend-radius", "bend_radius", "unknown", "3 in"),
    ],
)
def test_a_run_without_the_measure_does_not_hide_the_next(
    rule: str, key: str, none: str, some: str
) -> None:
    assert second_run(rule, key, none, some) == ["run 2"]


def test_free_conductors() -> None:
    # 6 in free and 1/4 in of sheath at each end; a tail of 12 in at each box
    assert told(one("free-conductor", job())) == Told("pass", "12 in left, least 6.25 in", FREE)


def test_free_conductors_too_short() -> None:
    found = one("free-conductor", job(run={"tail": "6 in"}))
    assert told(found) == Told("fail", "6 in left, least 6.25 in", FREE, LONGER)


def test_short_old_wires() -> None:
    found = findings("free-conductor", job(old={"contents": {"free": "5 in"}}))[1]
    assert told(found) == Told("fail", "5 in left, least 6 in", FREE, LONGER)


def test_voltage_drop_within_the_advice() -> None:
    # 2 x 60 ft x 10 A x 1.93 / 1000 = 2.316 V of 120 V: 1.93 %
    found = one("voltage-drop", job(circuit={"load": 10, "material": "copper"}))
    assert told(found) == Told("pass", "2.3 V, 1.9 %, advice 3 %", DROP)


def test_voltage_drop_over_the_advice() -> None:
    # 2 x 60 ft x 16 A x 1.93 / 1000 = 3.7056 V: 3.088 %
    remedy = "Thicker cable on the new run, or a source nearer to the panel."
    assert told(one("voltage-drop", job(circuit={"material": "copper"}))) == Told(
        "note", "3.7 V, 3.1 %, advice 3 %", DROP, remedy
    )


def test_voltage_drop_not_worked_out() -> None:
    found = one("voltage-drop", job(circuit={"load": "unknown"}))
    assert told(found) == Told("note", "not worked out: the load", DROP, PACE)
