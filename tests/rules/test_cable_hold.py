"""Supports and clamps: NEC 334.30 and 314.17 as in electrical.md CI-01 to CI-05."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.registry import FUNCTIONS
from tests.rules.cable_case import facts, job, one

EXPOSED = {"legs": [{"go": "along", "length": "10 ft", "method": "exposed"}]}


def test_a_fished_cable_needs_no_support() -> None:
    found = one("cable-support", job())
    assert (found.verdict, found.cite) == ("pass", "NEC 2023 334.30(B)(1)")


def test_staples_of_an_exposed_run() -> None:
    # box at both ends: 2 staples; 120 - 24 = 96 in between, one more at 54 in or less
    found = one("cable-support", job(run=EXPOSED))
    assert found.verdict == "pass"
    assert (
        found.figures == "3 staples, 12 in from a box (at most 12), then every 54 in (at most 54)"
    )


@pytest.mark.parametrize(
    ("setting", "value_in"), [("staple_spacing_in", "54.5"), ("staple_first_in", "12.5")]
)
def test_a_shop_that_staples_too_far_apart_is_told(setting: str, value_in: str) -> None:
    known = facts(job(run=EXPOSED))
    wide = replace(known.practice, **{setting: Fraction(value_in)})
    (found,) = FUNCTIONS["cable-support"](replace(known, practice=wide))
    assert found.verdict == "note"
    assert found.remedy.startswith("Bring the staple settings")


CLAMP_CASES = [
    ({"clamps": "yes"}, {}, "pass", "the box has clamps"),
    ({"metal": "yes"}, {}, "pass", "metal box without clamps: a connector for each new cable"),
    ({"clamps": "unknown"}, {}, "unknown", "nobody has looked for clamps"),
    ({"metal": "unknown"}, {}, "unknown", "nobody has looked for clamps"),
    ({"gangs": 2, "volume": "32 in3"}, {}, "fail", "plastic, 2 gangs, without clamps"),
    ({}, {"stapled_at": ["old"]}, "pass", "plastic, one gang, no clamps: stapled within 8 in"),
    ({}, {}, "note", "plastic, one gang, no clamps; a fished cable cannot be stapled"),
]


@pytest.mark.parametrize(("old", "run", "verdict", "figures"), CLAMP_CASES)
def test_clamps(old: dict[str, Any], run: dict[str, Any], verdict: str, figures: str) -> None:
    found = one("cable-clamped", job(old=old, run=run))
    assert (found.verdict, found.subject) == (verdict, "old")
    assert found.figures.startswith(figures)


def test_a_replaced_box_brings_its_clamps() -> None:
    known = facts(job(old={"volume": "10 in3"}))
    assert list(FUNCTIONS["cable-clamped"](known)) == []
