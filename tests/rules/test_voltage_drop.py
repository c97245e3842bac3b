"""Voltage drop: Chapter 9 Table 8 as in electrical.md section 4, and wire by ASTM B258."""

from __future__ import annotations

from fractions import Fraction
from math import pi
from typing import Any

import pytest

from estimator.rules.voltage_rules import drop_volts
from estimator.tables.cable import wire_resistance
from estimator.tables.facts import rows
from tests.rules.cable_case import findings, job, one

# IACS copper at 20 C, ohm metre (ASTM B258 and the 100 % IACS figure, electrical.md section 4)
RESISTIVITY = 1.7241e-8
COPPER_PER_C = 0.00393
# Aluminum of 61 % IACS (ASTM B233), 0.00403 for each degree: CRC Handbook figures from memory
ALUMINUM_IACS, ALUMINUM_PER_C = 0.61, 0.00403
TAKEN = ", with the old wire taken as copper: its metal is unknown"
M_PER_KFT = 304.8
M_PER_IN = 0.0254


@pytest.mark.parametrize(
    "row", rows("wire_resistance"), ids=lambda r: f"{r['material']} {r['wire']}"
)
def test_circular_mils_by_astm_b258(row: dict[str, str]) -> None:
    mils = 5 * 92 ** ((36 - int(row["wire"])) / 39)
    assert round(mils**2 / int(row["circular_mils"]), 2) == 1.0


@pytest.mark.parametrize("awg", [14, 12, 10, 8])
@pytest.mark.parametrize(
    ("metal", "conducts", "per_c"),
    [("copper", 1, COPPER_PER_C), ("aluminum", ALUMINUM_IACS, ALUMINUM_PER_C)],
)
def test_resistance_by_geometry_at_75_c(
    metal: str, conducts: float, per_c: float, awg: int
) -> None:
    diameter_m = 0.005 * 92 ** ((36 - awg) / 39) * M_PER_IN
    ohm_20 = RESISTIVITY / conducts * M_PER_KFT / (pi * diameter_m**2 / 4)
    ohm_75 = ohm_20 * (1 + per_c * 55)
    on_file = wire_resistance(str(awg), metal)
    assert on_file is not None
    assert abs(float(on_file.ohm_per_kft) / ohm_75 - 1) < 0.01


@pytest.mark.parametrize(
    ("ohm_per_kft", "load_a", "length_ft", "volts"),
    [
        # Texas DOT highway illumination manual: loop 0.001308 ohm a foot is 0.654 ohm/kft one way
        ("0.654", "1.04", 200, "0.2720640"),
        # worked by hand: 2 x 50 ft x 16 A x 1.93 / 1000
        ("1.93", "16", 50, "3.088"),
    ],
)
def test_two_wire_drop(ohm_per_kft: str, load_a: str, length_ft: int, volts: str) -> None:
    found = drop_volts(Fraction(length_ft), Fraction(ohm_per_kft), Fraction(load_a))
    assert found == Fraction(volts)


def test_old_and_new_length_are_added() -> None:
    # 50 ft old and 10 ft new, 12 AWG, 16 A: 2 x 60 x 16 x 1.93 / 1000 = 3.7056 V, 3.088 %
    found = one("voltage-drop", job())
    assert (found.verdict, found.subject) == ("note", "new")
    assert found.figures == f"3.7 V, 3.1 %, advice 3 %{TAKEN}"
    assert found.remedy.startswith("Thicker cable")
    assert not found.blocking


def test_within_the_advice() -> None:
    found = one("voltage-drop", job(circuit={"load": 10, "material": "copper"}))
    assert (found.verdict, found.figures) == ("pass", "2.3 V, 1.9 %, advice 3 %")


def test_old_aluminum_has_its_own_resistance() -> None:
    # 50 ft of 12 AWG aluminum and 10 ft of copper, 10 A:
    # 2 x 50 x 10 x 3.18 / 1000 + 2 x 10 x 10 x 1.93 / 1000 = 3.566 V; copper's would be 2.3 V
    found = one("voltage-drop", job(circuit={"load": 10, "material": "aluminum"}))
    assert (found.verdict, found.figures) == ("pass", "3.6 V, 3.0 %, advice 3 %")


def test_aluminum_over_the_advice_where_copper_is_within() -> None:
    # 2 x 50 x 11 x 3.18 / 1000 + 2 x 10 x 11 x 1.93 / 1000 = 3.9226 V; copper's would be 2.5 V
    found = one("voltage-drop", job(circuit={"load": 11, "material": "aluminum"}))
    assert (found.verdict, found.figures) == ("note", "3.9 V, 3.3 %, advice 3 %")


def test_copper_clad_has_no_figure_on_file() -> None:
    found = one("voltage-drop", job(circuit={"material": "copper-clad"}))
    assert found.verdict == "unknown"
    assert found.figures == "not worked out: the resistance of copper-clad wire on file"
    assert found.remedy.startswith("Ask its maker")


def test_exactly_at_the_advice_passes() -> None:
    # 3.6 V / (2 x 60 ft x 1.93 / 1000) = 3000/193 A
    length_ft = Fraction(3600) / (2 * 15 * Fraction("1.93")) - 10
    old = f"{length_ft.numerator}/{length_ft.denominator} ft"
    found = one("voltage-drop", job(circuit={"load": 15, "existing_length": old}))
    assert found.verdict == "pass"


@pytest.mark.parametrize(
    ("circuit", "missing"),
    [
        ({"existing_length": "unknown"}, "the length of the old wire"),
        ({"load": "unknown"}, "the load"),
        ({"wire": "unknown"}, "the size of the old wire"),
        ({"wire": "6"}, "the resistance of a wire size on file"),
        ({"wire": "unknown", "load": "unknown"}, "the load, the size of the old wire"),
    ],
)
def test_what_is_not_known_is_named(circuit: dict[str, Any], missing: str) -> None:
    found = one("voltage-drop", job(circuit=circuit))
    assert (found.verdict, found.figures) == ("note", f"not worked out: {missing}")


def test_a_chain_of_new_boxes_adds_each_run() -> None:
    raw = job(circuit={"load": 10})
    raw["boxes"].append({"id": "far"})
    raw["runs"].append({**raw["runs"][0], "id": "2", "from": "new", "to": "far"})
    found = {each.subject: each.figures for each in findings("voltage-drop", raw)}
    # far: 2 x (50 + 10 + 10) x 10 x 1.93 / 1000 = 2.702 V
    assert found == {
        "new": f"2.3 V, 1.9 %, advice 3 %{TAKEN}",
        "far": f"2.7 V, 2.3 %, advice 3 %{TAKEN}",
    }
