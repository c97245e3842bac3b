"""The notice of cancellation: found where the setting stands, and refused in plain words."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.catalog.books import read_books
from estimator.catalog.cancellation import MOST_CHARACTERS
from estimator.catalog.shop import Layer
from estimator.problems import InputError, Problem

CATALOGS = Path(__file__).parents[2] / "catalogs"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Books that name a notice, which is not there yet."""
    mine = tmp_path / "mine"
    mine.mkdir()
    for name in ("materials.csv", "labor.csv", "accounts.csv"):
        (mine / name).write_bytes((CATALOGS / name).read_bytes())
    (mine / "shop.toml").write_text('[terms]\ncancellation_file = "notice.txt"\n')
    return mine


def problem(folder: Path) -> Problem:
    with pytest.raises(InputError) as caught:
        read_books(folder)
    (only,) = caught.value.problems
    return only


def test_no_notice_is_shipped() -> None:
    terms = read_books(CATALOGS).shop.terms
    assert (terms.cancellation_file, terms.cancellation_text) == (None, "")


def test_the_text_is_read_beside_the_shop_file(folder: Path) -> None:
    (folder / "notice.txt").write_bytes(b"\r\n You may cancel\r\nwithin 3 days. \r\n\r\n")
    terms = read_books(folder).shop.terms
    assert terms.cancellation_file == "notice.txt"
    assert terms.cancellation_text == "You may cancel\nwithin 3 days."


def test_a_job_names_it_from_its_own_place(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "own.txt").write_text("Of the job.")
    job = Layer(str(tmp_path / "job.toml"), {"terms": {"cancellation_file": "own.txt"}})
    assert read_books(folder, layers=[job]).shop.terms.cancellation_text == "Of the job."


def test_a_job_may_say_none(folder: Path) -> None:
    job = Layer("job.toml", {"terms": {"cancellation_file": "none"}})
    assert read_books(folder, layers=[job]).shop.terms.cancellation_text == ""


def test_a_missing_file_is_named_with_its_setting(folder: Path) -> None:
    said = problem(folder)
    assert said.where == "mine/shop.toml: terms.cancellation_file (notice.txt)"
    assert said.read == "there is no such file."


def test_an_empty_file_is_no_notice(folder: Path) -> None:
    (folder / "notice.txt").write_text(" \n\n")
    assert problem(folder).read == "the file holds no text."


@pytest.mark.parametrize(("more", "fits"), [(0, True), (1, False)])
def test_the_longest_text_that_fits(folder: Path, more: int, fits: bool) -> None:
    (folder / "notice.txt").write_text("n" * (MOST_CHARACTERS + more))
    if fits:
        assert len(read_books(folder).shop.terms.cancellation_text) == MOST_CHARACTERS
    else:
        said = problem(folder)
        assert said.read == "the text has 30001 characters and does not fit on a bid."
        assert said.write == "Shorten it to 30000 characters."
