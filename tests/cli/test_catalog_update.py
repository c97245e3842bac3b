"""`estimator catalog update`: shown first, written with --yes, a map kept."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_out import document_schema
from tests.cli.run import ROOT, estimator

OPTIONS = (
    "--supplier", "Sample supply house", "--column", "Article=number", "--column",
    "Price=pack_price", "--fix", "pack_size=25", "--fix", "sold_as=coil",
    "--item", "10-25=cable-14-2",
)  # fmt: skip
SHIPPED = (ROOT / "catalogs" / "materials.csv").read_bytes()


@pytest.fixture
def here(tmp_path: Path) -> Path:
    """A folder with a supplier's file and a copy of the books: 21.50 for the 25 ft coil."""
    (tmp_path / "mine").mkdir()
    for name in ("materials.csv", "labor.csv", "shop.toml", "accounts.csv"):
        (tmp_path / "mine" / name).write_bytes((ROOT / "catalogs" / name).read_bytes())
    (tmp_path / "p.csv").write_text("Article;Price\n10-25;22,36\n10-99;1,20\n")
    return tmp_path


def test_nothing_is_written_until_yes(here: Path) -> None:
    """0.86 of 21.50 is 4 %."""
    done = estimator("catalog", "update", "p.csv", "--books", "mine", *OPTIONS, folder=here)
    assert "Sample supply house: $21.50 -> $22.36 (+4.0 %)" in " ".join(done.stdout.split())
    assert "row 3, 10-99" in done.stdout
    assert "Nothing was written" in done.stdout
    assert (here / "mine" / "materials.csv").read_bytes() == SHIPPED


def test_a_saved_map_does_the_same_and_yes_writes(here: Path) -> None:
    more = ("--books", "mine", "--json")
    first = estimator(
        "catalog", "update", "p.csv", *OPTIONS, *more, "--save-map", "m.toml", folder=here
    )
    again = estimator("catalog", "update", "p.csv", "--map", "m.toml", *more, "--yes", folder=here)
    one, two = json.loads(first.stdout), json.loads(again.stdout)
    Draft202012Validator(document_schema("catalog-update")).validate(two)
    assert (one.pop("written"), two.pop("written")) == (False, True)
    assert one == two
    want = SHIPPED.replace(b'25 ft coil",ft,25,21.50', b'25 ft coil",ft,25,22.36', 1)
    assert (here / "mine" / "materials.csv").read_bytes() == want


def test_a_map_is_never_written_over_another_file(here: Path) -> None:
    (here / "m.toml").write_text("mine")
    more = ("--books", "mine", "--save-map", "m.toml", "--yes")
    done = estimator("catalog", "update", "p.csv", *OPTIONS, *more, folder=here)
    assert (done.returncode, (here / "m.toml").read_text()) == (1, "mine")
    assert (here / "mine" / "materials.csv").read_bytes() == SHIPPED


def test_an_option_that_is_no_pair(here: Path) -> None:
    done = estimator("catalog", "update", "p.csv", "--column", "Price", folder=here)
    assert (done.returncode, '"Price": is no pair.' in done.stderr) == (1, True)
