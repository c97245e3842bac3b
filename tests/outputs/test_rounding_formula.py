"""Rounding of tax as a formula of the sheet: half up, down and half to even, by LibreOffice.

Products are written as products, so that the binary figure behind them is the one that a
spreadsheet meets: 2.675 is a little less than it looks, 1.15 x 0.10 too.
"""

from __future__ import annotations

from functools import cache
from io import BytesIO

import pytest
from openpyxl import Workbook

from estimator.outputs.rounding import rounded_as_named
from tests.outputs.spreadsheet import opened, reckoned

# What is rounded, its places, and what it must be: half up, down, half to even. By hand; E9 to
# E13 are the worked vectors of the rounding rules (SSUTA 324, HMRC VAT guide, binary traps).
CASES = [
    ("10.50*0.07", 2, (0.74, 0.73, 0.74)),  # E11: 0.735
    ("0.07*0.0625", 2, (0.00, 0.00, 0.00)),  # E11: 0.004375
    ("0.08*0.0625", 2, (0.01, 0.00, 0.00)),  # E11: 0.005
    ("1.00*0.0449", 2, (0.04, 0.04, 0.04)),
    ("1.00*0.0450", 2, (0.05, 0.04, 0.04)),  # 0.045: four is even
    ("1.15*0.10", 2, (0.12, 0.11, 0.12)),  # E12: 0.115
    ("2.675", 2, (2.68, 2.67, 2.68)),  # E12
    ("2.665", 2, (2.67, 2.66, 2.66)),
    ("4.97*0.0725", 2, (0.36, 0.36, 0.36)),  # E9: 0.360325
    ("12.49*0.0725", 2, (0.91, 0.90, 0.91)),  # E9: 0.905525
    ("0.38*0.0725", 2, (0.03, 0.02, 0.03)),  # E9: 0.02755
    ("2.19*0.0725", 2, (0.16, 0.15, 0.16)),  # E9: 0.158775
    ("20.03*0.0725", 2, (1.45, 1.45, 1.45)),  # E9: 1.452175
    ("3.36*0.20", 2, (0.67, 0.67, 0.67)),  # E13: 0.672
    ("0.57", 2, (0.57, 0.57, 0.57)),  # 0.57 x 100 falls short of 57 in binary
    ("4.35*0.2", 2, (0.87, 0.87, 0.87)),
    ("1.1*1.1", 2, (1.21, 1.21, 1.21)),
    ("550*0.0725", 2, (39.88, 39.87, 39.88)),  # E3: 39.875
    ("150*0.0725", 2, (10.88, 10.87, 10.88)),  # E2: 10.875
    ("1234567.125", 2, (1234567.13, 1234567.12, 1234567.12)),
    ("2.5", 0, (3, 2, 2)),
    ("3.5", 0, (4, 3, 4)),
    ("0.0625", 3, (0.063, 0.062, 0.062)),
    ("-0.125", 2, (-0.13, -0.12, -0.12)),
    ("-9.29*0.08875", 2, (-0.82, -0.82, -0.82)),  # -0.8244875
    ("0", 2, (0, 0, 0)),
]
MODES = ("half-up", "down", "half-even")


@cache
def found() -> list[tuple[float, ...]]:
    """Every case in every mode, reckoned in one start."""
    book, saved = Workbook(), BytesIO()
    sheet = book.worksheets[0]
    for row, (text, places, _) in enumerate(CASES, start=1):
        for column, mode in enumerate(MODES, start=1):
            rounded = rounded_as_named(text, places, f'"{mode}"')
            sheet.cell(row, column).value = f"={rounded}"
    book.save(saved)
    (data,) = reckoned({"rounding": saved.getvalue()}).values()
    return [tuple(cell.value for cell in row) for row in opened(data, values=True).worksheets[0]]


@pytest.mark.parametrize("at", range(len(CASES)), ids=[f"{text} to {n}" for text, n, _ in CASES])
def test_the_formula_rounds_as_it_says(at: int) -> None:
    assert found()[at] == pytest.approx(CASES[at][2], abs=1e-9)
