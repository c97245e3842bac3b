"""Books in levels: shipped, the user's own, beside the job, the job itself; the nearest wins."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.catalog.records import Books
from estimator.catalog.shipped import copy_books
from estimator.pricing.books_for import books_for
from estimator.problems import InputError
from estimator.survey.reader import read_job
from tests.cli.run import NIGHTSTAND

RATE = "price.labor_rate_per_hour"
ROW = "item,unit,pack_size,pack_price\nnail-finish,ea,100,{price}\n"


@pytest.fixture
def user(tmp_path: Path) -> Path:
    """The user's own folder, with a rate and one price."""
    folder = tmp_path / "home" / "books"
    folder.mkdir(parents=True)
    (folder / "shop.toml").write_text(
        "[price]\nlabor_rate_per_hour = 81\ntrip_charge = 31\n[practice]\nhole = '1/2 in'\n"
    )
    (folder / "materials.csv").write_text(ROW.format(price="4.10"))
    return folder


@pytest.fixture
def here(tmp_path: Path) -> Path:
    """A folder with a job in it."""
    (tmp_path / "kitchen").mkdir()
    (tmp_path / "kitchen" / "job.toml").write_bytes(NIGHTSTAND.read_bytes())
    return tmp_path / "kitchen"


def books(here: Path, user: Path | None, more: str = "", chosen: Path | None = None) -> Books:
    path = here / "job.toml"
    path.write_text(NIGHTSTAND.read_text("utf-8") + more)
    return books_for(read_job(path), chosen, user)


def price(read: Books) -> Decimal | None:
    return read.materials["nail-finish"][0].pack_price


def test_the_users_own_lie_over_the_shipped(here: Path, user: Path) -> None:
    read = books(here, user)
    assert (read.shop.price.labor_rate_per_hour, price(read)) == (81, Decimal("4.10"))
    assert read.files["materials"] == f"{user.as_posix()}/materials.csv"
    assert read.files["labor"] == "shipped labor.csv"
    assert read.shop.origin["price.trip_charge"] == f"{user.as_posix()}/shop.toml"
    assert read.shop.origin["practice.tail"] == "shipped shop.toml"


def test_those_beside_the_job_lie_over_the_users_file_by_file(here: Path, user: Path) -> None:
    (here / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 82\n")
    (here / "materials.csv").write_text(ROW.format(price="4.20"))
    read = books(here, user)
    assert (read.shop.price.labor_rate_per_hour, read.shop.price.trip_charge) == (82, 31)
    assert (price(read), read.files["materials"]) == (Decimal("4.20"), "kitchen/materials.csv")
    assert read.shop.origin[RATE] == "kitchen/shop.toml"


def test_the_settings_of_the_job_lie_over_all(here: Path, user: Path) -> None:
    (here / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 82\n")
    read = books(here, user, "\n[settings.price]\nlabor_rate_per_hour = 83\n")
    assert (read.shop.price.labor_rate_per_hour, read.shop.price.trip_charge) == (83, 31)
    assert read.shop.origin[RATE] == str(here / "job.toml")


def test_a_folder_asked_for_leaves_all_others_aside(here: Path, user: Path, tmp_path: Path) -> None:
    copy_books(tmp_path / "asked")
    (here / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 82\n")
    read = books(here, user, chosen=tmp_path / "asked")
    assert {name.split("/")[0] for name in read.files.values()} == {"asked"}
    assert set(read.shop.origin.values()) == {"asked/shop.toml"}


def test_a_folder_the_job_names_stands_for_the_one_it_is_in(here: Path, user: Path) -> None:
    (here / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 82\n")
    with pytest.raises(InputError) as caught:
        books(here, user, "\n[books]\nfolder = 'none'\n")
    assert [each.where for each in caught.value.problems] == [
        "none/shop.toml", "none/materials.csv", "none/labor.csv", "none/accounts.csv",
    ]  # fmt: skip


def test_a_file_the_job_names_goes_before_the_one_beside_it(here: Path, user: Path) -> None:
    (here / "materials.csv").write_text(ROW.format(price="4.20"))
    (here / "other.csv").write_text(ROW.format(price="4.30"))
    assert price(books(here, user, "\n[books]\nmaterials = 'other.csv'\n")) == Decimal("4.30")


def test_a_metric_job_takes_the_metric_books_of_the_user(here: Path, user: Path) -> None:
    (user / "metric").mkdir()
    (user / "metric" / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 51\n")
    shop = books_for(read_job(NIGHTSTAND.with_name("lounge.toml")), None, user).shop
    assert (shop.price.labor_rate_per_hour, shop.units, shop.shown["practice.tail"]) == (
        51, "metric", "200 mm",
    )  # fmt: skip


def test_all_faults_of_all_levels_come_at_once_with_their_places(here: Path, user: Path) -> None:
    (user / "shop.toml").write_text('[price]\nlabor_rate_per_hour = "much"\n')
    (here / "shop.toml").write_text("[pricing]\n")
    (user / "labor.csv").write_text("task\na\n")
    with pytest.raises(InputError) as caught:
        books(here, user)
    shown = [each.where.split(":")[0] for each in caught.value.problems]
    mine = user.as_posix()
    assert shown == [f"{mine}/shop.toml", "kitchen/shop.toml", *[f"{mine}/labor.csv"] * 4]


def test_files_that_are_no_toml_are_all_named(here: Path, user: Path) -> None:
    for folder in (user, here):
        (folder / "shop.toml").write_text("[price\n")
    with pytest.raises(InputError) as caught:
        books(here, user)
    shown = [each.where.split(":")[0] for each in caught.value.problems]
    assert shown == [f"{user.as_posix()}/shop.toml", "kitchen/shop.toml"]


def test_a_book_that_is_a_link_to_nowhere_is_told(here: Path, user: Path) -> None:
    (user / "labor.csv").symlink_to(user / "gone.csv")
    with pytest.raises(InputError, match=r"labor\.csv: there is no such file"):
        books(here, user)
