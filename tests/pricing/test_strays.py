"""Names that nothing answers to are said, one line each; units of a book must be the takeoff's."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.strays import stray_names
from estimator.problems import InputError
from estimator.survey.reader import job_from_text

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"
CASES = [
    (
        '[[acceptances]]\nfinding = "box-fill:sorce"\nreason = "r"',
        'acceptances: there is no finding "box-fill:sorce" in this job.',
    ),
    ("[overrides.hours]\nbore-stud = 0.2", 'overrides.hours: this job has no task "bore-stud".'),
    (
        "[overrides.prices]\ncable-12-2 = 0.9",
        'overrides.prices: this job takes no item "cable-12-2".',
    ),
    (
        '[[truck_stock]]\nitem = "cable-12-2"\nlength = "9 ft"',
        'truck_stock: this job takes no item "cable-12-2".',
    ),
]


def said(extra: str) -> tuple[str, ...]:
    """The notes on a sample with lines added."""
    job = job_from_text(f"{SAMPLE.read_text(encoding='utf-8')}\n{extra}\n", SAMPLE)
    return stray_names(estimate(job.survey, books_for(job)))


@pytest.mark.parametrize(("extra", "note"), CASES)
def test_a_name_that_nothing_answers_to_is_said(extra: str, note: str) -> None:
    assert said(extra) == (note,)


@pytest.mark.parametrize(
    "extra",
    [
        "",
        '[[acceptances]]\nfinding = "box-fill:source"\nreason = "r"',
        "[overrides.hours]\nbore-member = 0.2",
        "[overrides.prices]\ncable-14-2 = 0.9",
        '[[truck_stock]]\nitem = "cable-14-2"\nlength = "9 ft"',
    ],
)
def test_a_name_with_an_effect_is_not_said(extra: str) -> None:
    assert said(extra) == ()


def test_a_book_in_another_unit_is_refused(tmp_path: Path) -> None:
    head = "item,description,unit,pack_size,pack_price,supplier,aisle,tax_class,sold_as\n"
    row = "cable-14-2,Cable,m,1,1.90,Sample supply house,wire and cable,goods,length\n"
    (tmp_path / "materials.csv").write_text(head + row, encoding="utf-8")
    text = SAMPLE.read_text(encoding="utf-8") + '\n[books]\nmaterials = "materials.csv"\n'
    job = job_from_text(text, tmp_path / "job.toml")
    with pytest.raises(InputError) as caught:
        estimate(job.survey, books_for(job))
    (found,) = caught.value.problems
    assert found.where.endswith("materials.csv: row 2, column unit")
    assert found.read == '"cable-14-2" is sold by "m", and the takeoff counts it in "ft"'
    assert found.write == 'Write its pack size in "ft".'
