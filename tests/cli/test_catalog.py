"""The catalog commands: books checked, shown and copied."""

from __future__ import annotations

import csv
import json
import os
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_out import document_schema
from estimator.user_folder import user_books
from tests.cli.run import ENVIRONMENT, NIGHTSTAND, ROOT, estimator

COLUMNS = 80
BOOKS = ("materials.csv", "labor.csv", "shop.toml", "accounts.csv")
WORDS = "words.csv"  # one list for all units


@pytest.fixture
def mine(tmp_path: Path) -> Path:
    """A copy of the shipped books."""
    assert estimator("catalog", "copy", "mine", folder=tmp_path).returncode == 0
    return tmp_path / "mine"


def spoil(book: Path, old: str, new: str) -> None:
    text = book.read_text(encoding="utf-8")
    assert old in text
    book.write_text(text.replace(old, new, 1), encoding="utf-8")


@pytest.mark.parametrize(("option", "folder"), [((), ""), (("--metric",), "metric")])
def test_copied_books_are_those_that_ship(
    option: tuple[str, ...], folder: str, tmp_path: Path
) -> None:
    done = estimator("catalog", "copy", "mine", *option, folder=tmp_path)
    assert done.stdout.splitlines() == [f"Copied: mine/{name}" for name in (*BOOKS, WORDS)]
    for name in (*BOOKS, WORDS):
        shipped = ROOT / "catalogs" / ("" if name == WORDS else folder) / name
        assert (tmp_path / "mine" / name).read_bytes() == shipped.read_bytes()


def test_books_are_never_copied_over_others(mine: Path) -> None:
    (mine / "shop.toml").write_text("# my own")
    done = estimator("catalog", "copy", str(mine), folder=mine.parent)
    assert (done.returncode, done.stdout) == (1, "")
    assert (mine / "shop.toml").read_text() == "# my own"


def test_good_books_are_said_to_be_usable(mine: Path) -> None:
    done = estimator("catalog", "check", str(mine), folder=mine.parent)
    said = " ".join(done.stdout.split())  # a long folder name may wrap
    assert (done.returncode, "can be used" in said, done.stderr) == (0, True, "")


def test_a_wrong_price_is_told_by_file_row_and_column(mine: Path) -> None:
    with (mine / "materials.csv").open(encoding="utf-8", newline="") as file:
        header, first = list(csv.reader(file))[:2]
    spoil(mine / "materials.csv", f",{first[header.index('pack_price')]},", ",cheap,")
    done = estimator("catalog", "check", str(mine), folder=mine.parent)
    assert (done.returncode, done.stdout) == (1, "")
    assert "materials.csv: row 2, column pack_price" in done.stderr
    assert '"cheap"' in done.stderr


def test_wrong_books_as_json_hold_against_the_schema(mine: Path) -> None:
    spoil(mine / "labor.csv", "0.25", "long")
    done = estimator("catalog", "check", str(mine), "--json", folder=mine.parent)
    document = json.loads(done.stdout)
    Draft202012Validator(document_schema("problems")).validate(document)
    assert (done.returncode, document["schema"]) == (1, "estimator-problems-1")


def test_an_old_price_is_a_warning_and_not_an_error(mine: Path) -> None:
    text = (mine / "materials.csv").read_text(encoding="utf-8")
    (mine / "materials.csv").write_text(text.replace(",2026-", ",1999-"), encoding="utf-8")
    done = estimator("catalog", "check", str(mine), "--json", folder=mine.parent)
    document = json.loads(done.stdout)
    Draft202012Validator(document_schema("catalog-check")).validate(document)
    assert done.returncode == 0
    assert "1999" in document["warnings"][0]["read"]


def test_the_whole_catalog_as_json_holds_against_its_schema(tmp_path: Path) -> None:
    document = json.loads(estimator("catalog", "show", "--json", folder=tmp_path).stdout)
    Draft202012Validator(document_schema("catalog-show")).validate(document)
    with (ROOT / "catalogs" / "materials.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [each["item"] for each in document["materials"]] == [row["item"] for row in rows]


def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The user's own folder of books, for the commands of one test."""
    monkeypatch.setitem(ENVIRONMENT, "ESTIMATOR_HOME", str(tmp_path / "home"))
    return tmp_path / "home" / "books"


def test_copy_without_a_folder_makes_your_own_books_which_jobs_take(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    mine = home(tmp_path, monkeypatch)
    done = estimator("catalog", "copy", folder=tmp_path)
    assert f"Copied: {mine}/shop.toml" in done.stdout
    assert "estimator catalog check" in done.stdout
    (mine / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 83.21\n")
    shown = [
        estimator(*before, "catalog", "show", "--json", *more, folder=tmp_path).stdout
        for before in ((), ("--no-user-books",))
        for more in ((), ("--job", str(NIGHTSTAND)))
    ]
    rates = [json.loads(each)["settings"]["price.labor_rate_per_hour"] for each in shown]
    assert rates == ["83.21", "83.21", "85.00", "85.00"]
    origin = json.loads(shown[1])["origins"]["price.labor_rate_per_hour"]
    assert origin == f"{mine.as_posix()}/shop.toml"


@pytest.mark.parametrize(
    "arguments",
    [
        ("takeoff", str(NIGHTSTAND)),
        ("change", str(NIGHTSTAND), str(NIGHTSTAND)),
        ("rate",),
        ("close-out", "sample:nightstand"),
        ("books", "sample:nightstand"),
        ("catalog", "check"),
    ],
    ids=lambda arguments: " ".join(arguments[:2]),
)
def test_every_command_takes_your_own_books_and_tells_where_they_are_wrong(
    arguments: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    mine = home(tmp_path, monkeypatch)
    mine.mkdir(parents=True)
    (mine / "shop.toml").write_text("[pricing]\n")
    told = estimator(*arguments, folder=tmp_path)
    assert told.returncode == 1
    assert f"{mine.as_posix()}/shop.toml" in "".join(told.stderr.split())
    assert estimator("--no-user-books", "takeoff", str(NIGHTSTAND), folder=tmp_path).returncode == 0


def test_no_test_sees_the_books_of_whoever_runs_it() -> None:
    assert not user_books().exists()
    assert ENVIRONMENT["ESTIMATOR_HOME"] == os.environ["ESTIMATOR_HOME"]


@pytest.mark.parametrize(
    ("word", "want"),
    [
        ("DROP-CLOTH", "drop-cloth: "),
        ("fish-drop", "fish-drop (ea): 0.25 / 0.5 / 1.5; "),
        ("cost-permit", "cost-permit  5040 Permits and fees"),
        ("trip_charge", "price.trip_charge   45.00 (shipped shop.toml)"),
        ("no such word", 'No row of the books holds "no such word".'),
    ],
)
def test_show_finds_a_word_in_every_book(word: str, want: str, tmp_path: Path) -> None:
    done = estimator("catalog", "show", word, folder=tmp_path)
    assert want in done.stdout
    assert max(map(len, done.stdout.splitlines())) <= COLUMNS


def test_show_metric_is_in_metric_units(tmp_path: Path) -> None:
    done = estimator("catalog", "show", "--metric", "--json", folder=tmp_path)
    units = {each["unit"] for each in json.loads(done.stdout)["materials"]}
    assert not units & {"ft", "ft2", "in", "gal", "qt"}
    assert {"m", "m2", "L"} <= units
