"""The workbook as LibreOffice prints it: the bid on one page, nothing cut, money as the locale."""

from __future__ import annotations

import re
import subprocess
import tempfile
from functools import cache
from pathlib import Path

import pytest

from estimator.catalog.words import read_language
from estimator.language import LanguageCode
from estimator.money import show_money
from estimator.outputs.workbook import bid_workbook
from tests.outputs.bid_factory import full_bid, full_file, in_currency, sample_bid, sample_file
from tests.outputs.spreadsheet import printed
from tests.outside import need_program
from tests.words.marked import in_language

NO_BREAK = str.maketrans("\u00a0\u202f", "  ")
# Currency and locale; LibreOffice shows each by the format code alone, Babel by CLDR.
SHOWN = {
    "us": ("USD", "en_US"), "euro": ("EUR", "de_DE"), "quebec": ("CAD", "fr_CA"),
    "yen": ("JPY", "ja_JP"), "pound": ("GBP", "en_GB"), "peso": ("MXN", "es_MX"),
    "canada": ("CAD", "en_CA"), "dollar": ("USD", "es_US"),
}  # fmt: skip


# Long dates of es-US and fr: Unicode CLDR.
TOLD: dict[LanguageCode, str] = {"es": "2 de marzo de 2026", "fr": "2 mars 2026"}


@cache
def pages() -> dict[str, list[str]]:
    """The text of every printed page, by workbook."""
    files = {"nightstand": sample_file("nightstand"), "lounge": sample_file("lounge"),
             "everything": full_file()}  # fmt: skip
    files |= {name: bid_workbook(in_currency("nightstand", *how)) for name, how in SHOWN.items()}
    for code in TOLD:
        told = in_language(sample_bid("nightstand"), read_language(code, ()))
        files[code] = bid_workbook(told)
    return {name: page_texts(pdf) for name, pdf in printed(files).items()}


def page_texts(pdf: bytes) -> list[str]:
    need_program("pdftoppm")  # pdftotext comes with it
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "printed.pdf")
        path.write_bytes(pdf)
        run = subprocess.run(
            ["pdftotext", "-layout", "-enc", "UTF-8", str(path), "-"],
            check=True, capture_output=True,
        )  # fmt: skip
    return run.stdout.decode().translate(NO_BREAK).split("\f")[:-1]


@pytest.mark.parametrize("name", ["nightstand", "lounge", "everything"])
def test_the_bid_is_one_page(name: str) -> None:
    first, second = pages()[name][:2]
    assert "Customer, date" in first
    assert second.lstrip().startswith("Takeoff")


@pytest.mark.parametrize("code", TOLD)
def test_another_language_prints_on_one_page_with_its_months(code: LanguageCode) -> None:
    first, second = pages()[code][:2]
    assert TOLD[code] in first
    assert "Customer, date" not in first
    assert second.lstrip().startswith("Takeoff")


@pytest.mark.parametrize("name", ["nightstand", "lounge", "everything", *SHOWN, *TOLD])
def test_no_figure_is_too_wide_for_its_column(name: str) -> None:
    assert not [page for page in pages()[name] if "##" in page]


@pytest.mark.parametrize("name", ["nightstand", "everything"])
def test_every_page_says_its_job_and_its_number(name: str) -> None:
    count = len(pages()[name])
    for at, page in enumerate(pages()[name], start=1):
        assert re.search(rf"Page {at} of {count}\b", page)
        assert "Job S" in page


@pytest.mark.parametrize("name", ["nightstand", "everything"])
def test_titles_are_repeated_on_every_page_of_a_sheet(name: str) -> None:
    for page in pages()[name][1:]:
        assert "Turn the power off and prove it dead" in page


@pytest.mark.parametrize("name", ["nightstand", "everything"])
def test_the_whole_of_a_long_reason_is_printed(name: str) -> None:
    bid = full_bid() if name == "everything" else sample_bid(name)
    said = set(" ".join(pages()[name]).split())
    for part in bid.takeoff.parts:
        for word in (word for word in part.reason.split() if "-" not in word):
            assert word in said or any(word in longer for longer in said)


@pytest.mark.parametrize("name", SHOWN)
def test_money_is_shown_as_the_locale_writes_it(name: str) -> None:
    currency, locale = SHOWN[name]
    total = in_currency("nightstand", currency, locale).price.total
    want = show_money(total, currency, locale).translate(NO_BREAK)
    assert want in pages()[name][0]


@pytest.mark.parametrize(
    ("name", "want"),
    # 2 March 2026, with the month as a word, as CLDR's long date of each locale has it.
    [
        ("us", "March 2, 2026"), ("pound", "2 March 2026"), ("euro", "2. März 2026"),
        ("quebec", "2 mars 2026"), ("peso", "2 de marzo de 2026"), ("yen", "2026年3月2日"),
    ],
)  # fmt: skip
def test_dates_are_shown_as_the_locale_writes_them(name: str, want: str) -> None:
    assert want in pages()[name][0]
