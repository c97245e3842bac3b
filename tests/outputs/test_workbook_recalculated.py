"""Every formula, reckoned again by LibreOffice from nothing, gives the value stored beside it."""

from __future__ import annotations

import os
import zipfile
from functools import cache
from io import BytesIO

import pytest

from estimator.outputs.workbook import bid_workbook
from tests.outputs.bid_factory import NAMES, RandomJobs, full_file, in_currency, sample_file
from tests.outputs.spreadsheet import cells, differences, reckoned, same

FULL = os.environ.get("CI") == "true" or os.environ.get("ESTIMATOR_FULL") == "1"
RANDOM_JOBS = 200 if FULL else 40
SEED = 20_261_104
# Half a unit of the sixth place, the finest that any formula rounds to.
CURRENCIES = {"yen": ("JPY", "ja_JP"), "dinar": ("KWD", "en_GB"), "euro": ("EUR", "de_DE")}


@cache
def written() -> dict[str, bytes]:
    """All workbooks under test."""
    made = {name: sample_file(name) for name in NAMES} | {"full": full_file()}
    for name, (currency, locale) in CURRENCIES.items():
        made[name] = bid_workbook(in_currency("nightstand", currency, locale))
    jobs = RandomJobs(SEED)
    return made | {f"random-{at}": bid_workbook(jobs.bid()) for at in range(RANDOM_JOBS)}


@cache
def again() -> dict[str, bytes]:
    """The same, reckoned by LibreOffice in one start, with no stored result to lean on."""
    return reckoned(written())


@pytest.mark.parametrize("name", [*NAMES, "full", *CURRENCIES])
def test_every_formula_of_a_sample_gives_its_stored_value(name: str) -> None:
    formulas = [cell for cell in cells(written()[name]).values() if cell.formula]
    assert len(formulas) > 200
    assert differences(written()[name], again()[name]) == []


def test_every_formula_of_random_jobs_gives_its_stored_value() -> None:
    wrong = {
        name: differences(written()[name], again()[name])
        for name in written()
        if name.startswith("random")
    }
    assert len(wrong) == RANDOM_JOBS
    assert {name: found for name, found in wrong.items() if found} == {}


def test_charts_and_tables_survive_the_spreadsheet_program() -> None:
    for name in NAMES:
        kept = parts(again()[name])
        for kind in ("xl/charts/chart", "xl/tables/table"):
            assert kept.count(kind) == parts(written()[name]).count(kind) > 0


def parts(data: bytes) -> str:
    """Names of all parts, one after the other."""
    with zipfile.ZipFile(BytesIO(data)) as archive:
        return " ".join(name for name in archive.namelist() if "_rels" not in name)


def test_a_wrong_stored_value_would_be_found() -> None:
    assert not same(10.01, 10.0)
    assert not same("ties", "does not tie")
    assert not same(None, 0)
