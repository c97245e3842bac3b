"""Job file to form and back again: nothing is lost, for the samples and for random jobs."""

from __future__ import annotations

from copy import deepcopy
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.form.layout import Column, tables
from estimator.form.reader import job_from_grids, read_form
from estimator.outputs.form_book import form_workbook
from estimator.survey.reader import checked, read_job
from estimator.survey.records import Survey
from estimator.toml_writing import toml_text
from tests.form.made_form import NAMES, SAMPLES, grids, raw_of, sample, texts
from tests.survey.made_job import TEXT

FORM = Path("job.xlsx")
WORDS = st.text(st.characters(exclude_categories=("Cs",)), max_size=12)
MEASURES = st.sampled_from(
    ["12' 6-1/2\"", "150 in", "3.8 m", "1/2 in", "unknown", "18.0 in3", "7 ft2", '9"', "3 1/8 in"]
)
NUMBERS = st.one_of(st.integers(0, 400), st.decimals(0, 400, places=3).map(abs), st.just("unknown"))


def value_for(column: Column, kind: str) -> st.SearchStrategy[Any]:
    if kind == "choice":
        return st.sampled_from(column.choices)
    plain = {
        "text": WORDS,
        "number": NUMBERS,
        "measure": st.one_of(MEASURES, NUMBERS),
        "yes or no": st.booleans(),
        "date": st.dates(date(1990, 1, 1), date(2090, 1, 1)),
        "pairs": st.dictionaries(WORDS, NUMBERS, max_size=3),
    }
    if kind == "list":
        return st.lists(value_for(column, column.item), max_size=3)
    return plain[kind]


FREE = st.recursive(
    st.one_of(WORDS, st.integers(-5, 10**12), st.booleans(), st.dates(),
              st.decimals(-999, 999, places=2)),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(WORDS, inner, max_size=3)),
    max_leaves=6,
)  # fmt: skip
LOCALES = st.sampled_from(["en_US", "de_DE", "fr_FR", "en_GB"])


def is_sound(raw: dict[str, Any]) -> bool:
    return isinstance(checked(raw, []), Survey)


@st.composite
def jobs(draw: st.DrawFn) -> dict[str, Any]:
    """A sound job with as many random facts as it takes, in every table of the file."""
    raw = raw_of(TEXT)
    raw["job"]["locale"] = draw(LOCALES)
    for _ in range(draw(st.integers(3, 14))):
        table = draw(st.sampled_from(tables()))
        column = draw(st.sampled_from(table.columns))
        tried = deepcopy(raw)
        if column.key not in ("locale", "units"):
            filled = draw(st.sampled_from([True, True, False])) or not table.is_list
            row = place(tried, table.path, table.lists, new=not filled)
            for each in table.columns if row == {} else (column,):
                if each.needed or each is column:
                    row[each.key] = draw(value_for(each, each.kind))
        if is_sound(tried):
            raw = tried
    raw["settings"] = draw(st.dictionaries(WORDS, FREE, max_size=3))
    return raw_of(toml_text(raw))


def place(raw: dict[str, Any], path: tuple[str, ...], lists: tuple[bool, ...], *, new: bool) -> Any:
    """The record at a path: the last row of each list, or a new row of the last list."""
    inside: Any = raw
    for at, (key, is_list) in enumerate(zip(path, lists, strict=True)):
        if not is_list:
            inside = inside.setdefault(key, {})
            continue
        rows = inside.setdefault(key, [])
        if not rows or (new and at == len(path) - 1):
            rows.append({})
        inside = rows[-1]
    return inside


def survey_of(raw: dict[str, Any]) -> Survey:
    made = checked(raw, [])
    assert isinstance(made, Survey)
    return made


@pytest.mark.parametrize("name", NAMES)
def test_a_sample_through_the_form_is_the_same_survey(name: str, tmp_path: Path) -> None:
    path = tmp_path / "job.xlsx"
    path.write_bytes(form_workbook(sample(name)))
    again = read_form(path)
    assert again.survey == read_job(SAMPLES / f"{name}.toml").survey
    assert again.notes == ()


@pytest.mark.parametrize("name", NAMES)
def test_form_to_job_file_to_form_has_the_same_cells(name: str, tmp_path: Path) -> None:
    first, second = tmp_path / "first.xlsx", tmp_path / "second.xlsx"
    first.write_bytes(form_workbook(sample(name)))
    second.write_bytes(form_workbook(raw_of(read_form(first).text)))
    assert texts(first) == texts(second)


@given(jobs())
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_random_job_comes_back_as_it_was(raw: dict[str, Any]) -> None:
    again = job_from_grids(grids(raw), FORM)
    assert again.survey == survey_of(raw)
    assert survey_of(raw_of(again.text)) == survey_of(raw)
    assert grids(raw_of(again.text)) == grids(raw)


@given(jobs())
@settings(max_examples=4, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_random_job_comes_back_from_a_workbook(
    tmp_path_factory: pytest.TempPathFactory, raw: dict[str, Any]
) -> None:
    path = tmp_path_factory.mktemp("random") / "job.xlsx"
    path.write_bytes(form_workbook(raw))
    assert read_form(path).survey == survey_of(raw)


def test_every_field_of_the_records_has_a_column() -> None:
    """Counted over the JSON Schema, which another library writes."""
    schema = Survey.model_json_schema(by_alias=True)["$defs"]
    keys = {key for record in schema.values() for key in record.get("properties", {})}
    inside = {"contents", "spot", "sides", "fixture_wires", "legs", "tools", "hire"}
    assert {column.key for table in tables() for column in table.columns} == keys - inside


@pytest.mark.parametrize(
    "text", ['"', '""', "=1+1", " x ", "a,b", "a;b", "none", "_x0041_", "a\nb", "\x00", "é漢", "'"]
)
def test_odd_names_come_back(text: str) -> None:
    raw = raw_of(TEXT)
    raw["job"]["title"] = text
    raw["circuit"]["serves"] = [text, "b", ""]
    again = job_from_grids(grids(raw), FORM).survey
    assert again.job.title == text
    assert again.circuit.serves == (text, "b", "")


def test_a_comma_locale_writes_and_reads_commas() -> None:
    raw = raw_of(TEXT)
    raw["job"]["locale"] = "de_DE"
    raw["overrides"] = {"labor_hours": Decimal("1.250"), "prices": {"a": Decimal("2.5")}}
    made = {grid.name: grid for grid in grids(raw)}
    shown = [found.value for found in made["Overrides"].cells.values()]
    assert "1,2500" in shown
    assert "a = 2,5" in shown
    assert job_from_grids(list(made.values()), FORM).survey == survey_of(raw)
