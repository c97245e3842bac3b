"""How single values become JSON: exact, without floats, and as the schema says."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Literal

import pytest

from estimator.outputs.json_shape import record_schema, shape_of, write_amount, write_exact


@pytest.mark.parametrize(
    ("amount", "want"),
    [("225.00", "225.00"), ("0", "0"), ("1E+2", "100"), ("1E-7", "0.0000001"), ("-8.50", "-8.50")],
)
def test_an_amount_keeps_its_digits(amount: str, want: str) -> None:
    assert write_amount(Decimal(amount)) == want


@pytest.mark.parametrize(
    ("amount", "want"),
    [
        (Fraction(657, 2), "328.5"),
        (Fraction(119), "119"),
        (Fraction(1, 3), "1/3"),
        (Fraction(19000, 127), "19000/127"),  # 3.8 m in inches
        (Fraction(-1, 16), "-0.0625"),
    ],
)
def test_a_fraction_is_written_exactly(amount: Fraction, want: str) -> None:
    assert write_exact(amount) == want
    assert Fraction(want) == amount


@dataclass(frozen=True)
class Sample:
    """A record of every kind of field.

    Attributes:
        path_in: how long. patch_in2, box_in3: None where unknown.
        kind: one of two.
    """

    path_in: Fraction
    patch_in2: Fraction | None
    box_in3: Fraction | None
    kind: Literal["a", "b"]
    rooms_in2: tuple[tuple[str, Fraction], ...]
    on: date


SAMPLE = Sample(
    Fraction(19000, 127), None, Fraction(18), "a", (("hall", Fraction(144)),), date(2026, 3, 2)
)


def test_a_measure_names_its_unit_in_us_jobs() -> None:
    written = shape_of(Sample, "").write(SAMPLE, "us")
    assert written == {
        "path_length": {"exact": "19000/127", "unit": "in", "shown": "12'-5 5/8\""},
        "patch_area": None,
        "box_volume": {"exact": "18", "unit": "in3", "shown": "18 in3"},
        "kind": "a",
        "rooms_area": {"hall": {"exact": "144", "unit": "in2", "shown": "1 ft2"}},
        "on": "2026-03-02",
    }


def test_a_metric_job_has_millimetres_alone() -> None:
    """3.8 m is 3800 mm; 18 in3 is 18 x 25.4^3 = 294 967.152 mm3, worked by hand."""
    written = shape_of(Sample, "").write(SAMPLE, "metric")
    assert isinstance(written, dict)
    assert written["path_length"] == {"exact": "3800", "unit": "mm", "shown": "3800 mm"}
    assert written["box_volume"] == {"exact": "294967.152", "unit": "mm3", "shown": "295 cm3"}


def test_the_schema_carries_the_words_of_the_record() -> None:
    schema = record_schema(Sample)
    assert schema["description"] == "A record of every kind of field."
    assert schema["properties"]["path_length"]["description"] == "how long."
    assert schema["properties"]["patch_area"]["description"] == "null where unknown."
    assert schema["properties"]["kind"] == {"enum": ["a", "b"], "description": "one of two."}
    assert schema["required"] == list(schema["properties"])


def test_a_float_has_no_way_into_a_document() -> None:
    with pytest.raises(TypeError, match="rate: no JSON is defined"):
        shape_of(float, "rate")
