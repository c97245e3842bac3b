"""`estimator shopping-list --page` and `--text`: files written where they may be, short lines."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.jobs import price_job
from estimator.language import LanguageCode
from estimator.outputs.money_form import MoneyForm, money_form
from estimator.outputs.own_page import is_own_page
from estimator.outputs.shopping_items import expected, items_of
from estimator.outputs.text_message import message_text
from tests.cli.run import estimator
from tests.outputs.bid_factory import full_bid, sample_bid

JOB = "sample:nightstand"


def test_the_page_is_written_and_named(tmp_path: Path) -> None:
    done = estimator("shopping-list", JOB, "--page", "list.html", folder=tmp_path)
    assert (done.returncode, done.stdout) == (0, "Page: list.html\n")
    assert (tmp_path / "list.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")


def test_its_own_page_is_replaced_and_a_changed_one_is_not(tmp_path: Path) -> None:
    page = tmp_path / "list.html"
    for _ in range(2):
        assert estimator("shopping-list", JOB, "--page", "list.html",
                         folder=tmp_path).returncode == 0  # fmt: skip
    page.write_text(page.read_text(encoding="utf-8").replace("Job S1", "Job mine"))
    refused = estimator("shopping-list", JOB, "--page", "list.html", folder=tmp_path)
    assert refused.returncode == 1
    assert "not a page as this tool wrote it" in refused.stderr
    assert "Job mine" in page.read_text(encoding="utf-8")
    asked = estimator("shopping-list", JOB, "--page", "list.html", "--replace", folder=tmp_path)
    assert asked.returncode == 0


@pytest.mark.parametrize("content", ["", "my own notes", "<html>", "\x00\x01"])
def test_other_files_are_not_ours(tmp_path: Path, content: str) -> None:
    path = tmp_path / "list.html"
    path.write_text(content)
    assert not is_own_page(path)


def test_a_file_that_is_missing_or_not_text_is_not_ours(tmp_path: Path) -> None:
    (tmp_path / "bytes.html").write_bytes(b"\xff\xfe\xfa")
    assert not is_own_page(tmp_path / "bytes.html")
    assert not is_own_page(tmp_path / "missing.html")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--page", "list.txt"), "the name must end in .html"),
        (("--page", "list.html", "--text"), "choose one of --page, --text and --json"),
        (("--text", "--json"), "choose one of --page, --text and --json"),
        (("--language", "de"), '"de" is not a language on file. Write en, es or fr.'),
    ],
)
def test_wrong_usage(tmp_path: Path, arguments: tuple[str, ...], said: str) -> None:
    done = estimator("shopping-list", JOB, *arguments, folder=tmp_path)
    assert done.returncode == 2
    assert said in " ".join(done.stderr.split())


@pytest.mark.parametrize("code", ["en", "es", "fr"])
def test_a_language_asked_for_goes_before_the_settings(code: LanguageCode) -> None:
    assert price_job(JOB, None, language=code).bid.books.language.code == code


def test_english_asked_for_is_the_list_as_ever(tmp_path: Path) -> None:
    asked = estimator("shopping-list", JOB, "--language", "en", folder=tmp_path)
    assert asked.stdout == estimator("shopping-list", JOB, folder=tmp_path).stdout


def test_a_folder_that_is_missing_is_named(tmp_path: Path) -> None:
    done = estimator("shopping-list", JOB, "--page", "no/list.html", folder=tmp_path)
    assert done.returncode == 1
    assert "the folder does not exist" in done.stderr


def test_the_message_names_every_thing_once(tmp_path: Path) -> None:
    done = estimator("shopping-list", JOB, "--text", folder=tmp_path)
    items = items_of(sample_bid("nightstand"))
    assert done.stdout.splitlines()[0] == "Shopping list S1: Nightstand outlet"
    assert [line[2:] for line in done.stdout.splitlines() if line.startswith("- ")] == [
        each.what for each in items
    ]
    assert done.stdout.splitlines()[-1] == "About $62.62 before tax."


def test_the_message_is_plain_short_lines() -> None:
    lines = message_text(full_bid())
    assert not [line for line in lines if "  " in line or "\t" in line or "|" in line]
    assert max(map(len, lines)) <= 100
    assert "FROM THE TRUCK" in lines
    assert lines[-1] == "2 without a price in the book."


def test_what_is_expected_adds_up_to_what_is_bought() -> None:
    """What the truck gives is not bought again."""
    bid = full_bid()
    bought = [pack.cost for line in bid.shopping for pack in line.packs]
    assert expected(items_of(bid)) == sum(bought, Decimal(0))


def test_every_thing_has_a_key_of_its_own() -> None:
    keys = [each.key for each in items_of(full_bid())]
    assert len(keys) == len(set(keys))


# By CLDR: sign, decimal sign and thousands separator of each locale.
FORMS = [
    ("USD", "en_US", MoneyForm("USD", 2, "$", "", ".", ",")),
    ("GBP", "en_GB", MoneyForm("GBP", 2, "£", "", ".", ",")),
    ("EUR", "de_DE", MoneyForm("EUR", 2, "", "\u00a0€", ",", ".")),
    ("EUR", "fr_FR", MoneyForm("EUR", 2, "", "\u00a0€", ",", "\u202f")),
    ("CAD", "en_CA", MoneyForm("CAD", 2, "$", "", ".", ",")),
    ("JPY", "en_US", MoneyForm("JPY", 0, "¥", "", ".", ",")),
    ("KWD", "en_US", MoneyForm("KWD", 3, "KWD\u00a0", "", ".", ",")),
]


@pytest.mark.parametrize(("currency", "locale", "want"), FORMS)
def test_forms_of_money(currency: str, locale: str, want: MoneyForm) -> None:
    assert money_form(currency, locale) == want


@pytest.mark.parametrize(
    ("currency", "amount", "want"),
    [("USD", "12.30", 1230), ("JPY", "1250", 1250), ("KWD", "1.5", 1500), ("USD", "0", 0)],
)
def test_amounts_in_whole_minor_units(currency: str, amount: str, want: int) -> None:
    assert money_form(currency, "en_US").minor(Decimal(amount)) == want
