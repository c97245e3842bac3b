"""A British house surveyed: by questions on a terminal, on a form, and one answer changed."""

from __future__ import annotations

import json
import shutil
import tomllib
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from tests.cli.run import ROOT, estimator
from tests.cli.test_survey_talk import answer, ask, begin
from tests.form.made_form import answer_cell

TERRACE = ROOT / "samples" / "terrace-bedroom.toml"
# Who, GB, the room, the year; a socket from a socket; a plastic box of 250 cm3 with one cable;
# 20 A and 2.5 mm2, behind the skirting board; wall 3.6 m, boxes at 500 and 1700, 450 high, the
# cable at 75, the first stud at 400; enough for a bid.
TYPED = (
    "", "gb", "", "1998", "socket", "", "1", "250", "1", "20", "2.5", "", "3600", "500", "450",
    "1.7 m", "", "", "400", "",
)  # fmt: skip


@pytest.fixture(scope="module")
def talked(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[str]]:
    """The job from nothing, and every screen on the way."""
    folder = tmp_path_factory.mktemp("terrace")
    child = begin(folder, "job.toml")
    shown = [ask(child), *(answer(child, line) for line in TYPED)]
    return folder, shown


def test_twenty_answers_make_a_metric_job(talked: tuple[Path, list[str]]) -> None:
    folder, _ = talked
    assert len(TYPED) <= 20
    job = tomllib.loads((folder / "job.toml").read_text(encoding="utf-8"))
    assert (job["job"]["units"], job["job"]["locale"]) == ("metric", "en_GB")
    assert job["job"]["scope"].startswith("Add one socket in the bedroom")
    lengths = [job["walls"][0]["length"], job["boxes"][1]["x"], job["walls"][0]["spacing"]]
    assert lengths == ["3600 mm", "1.7 m", "600 mm"]


def test_the_strip_ends_25_mm_beyond_the_boxes(talked: tuple[Path, list[str]]) -> None:
    job = tomllib.loads((talked[0] / "job.toml").read_text(encoding="utf-8"))
    (strip,) = job["openings"]
    assert (strip["left"], strip["right"], strip["top"]) == ("475 mm", "1725 mm", "115 mm")


@pytest.mark.parametrize(
    "words",
    ["1 a socket", "3 a two-way switch", "behind the skirting board", "through the loft",
     "250.0 cm3", "1 1.5 mm2", "1700 mm", "[450 mm] >", "[75 mm] >", "Rough price so far: £"],
)  # fmt: skip
def test_it_speaks_as_people_there_do(words: str, talked: tuple[Path, list[str]]) -> None:
    assert words in "".join(talked[1])


@pytest.mark.parametrize(
    "word", ["receptacle", "baseboard", "attic", " in3", "AWG", "4 ft", "$", "ground-fault"]
)
def test_it_says_no_us_word_after_the_country(word: str, talked: tuple[Path, list[str]]) -> None:
    assert word not in "".join(talked[1][2:])


def test_the_bid_of_that_job(talked: tuple[Path, list[str]]) -> None:
    """Down 375, along 1200, up 375: 1950, and 400 of tails; x 1.10 = 2585 mm, so 3 m."""
    done = estimator("takeoff", "job.toml", "--json", folder=talked[0])
    assert done.returncode == 0, done.stderr
    (order,) = json.loads(done.stdout)["takeoff"]["cable"]
    assert (order["cuts_length"]["exact"], order["cuts_length"]["unit"]) == ("2350", "mm")
    assert (order["order"], order["unit"]) == ("3", "m")


@pytest.mark.parametrize(
    ("change", "before", "after"),
    [
        ("new_x=1.8 m", "1700 mm", "1800 mm"),
        ("new_x=1800", "1700 mm", "1800 mm"),
        ("source_device=switch", "a socket", "a switch"),
        ("way=loft", "behind the skirting board", "up, over through the loft, and down"),
    ],
)
def test_one_answer_is_changed(
    change: str, before: str, after: str, talked: tuple[Path, list[str]], tmp_path: Path
) -> None:
    shutil.copy(talked[0] / "job.toml", tmp_path / "job.toml")
    done = estimator("survey", "--edit", "job.toml", change, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert f"before: {before}" in done.stdout and f"after:  {after}" in done.stdout


def empty_form(folder: Path, *job: str) -> Workbook:
    done = estimator("survey", "--form", "form.xlsx", *job, folder=folder)
    assert done.returncode == 0, done.stderr
    return load_workbook(folder / "form.xlsx")


def beside(book: Workbook, key: str, steps: int) -> Any:
    """What stands so many columns beside an answer."""
    return answer_cell(book, key).offset(0, steps).value


@pytest.mark.parametrize(
    ("job", "units"),
    [((), ("in, or mm", "in3, or cm3")), (("country:GB",), ("mm", "cm3")),
     (("country:us",), ("in, or ft in", "in3")), (("sample:lounge",), ("mm", "cm3")),
     (("sample:rec-room",), ("in, or ft in", "in3"))],
    ids=lambda each: " ".join(each) or "empty",
)  # fmt: skip
def test_the_form_says_what_a_bare_number_is(
    job: tuple[str, ...], units: tuple[str, str], tmp_path: Path
) -> None:
    book = empty_form(tmp_path, *job)
    assert (beside(book, "wall_length", 1), beside(book, "source_volume", 1)) == units


def test_a_british_form_is_filled_in_british(tmp_path: Path) -> None:
    book = empty_form(tmp_path, "country:GB")
    assert answer_cell(book, "country").value == "GB"
    assert book["Questions"].page_setup.paperSize == 9
    assert "[ socket / switch / two-way switch ]" in beside(book, "device", -1)
    typed = {"device": "socket", "way": "loft", "wall_length": 3600, "source_x": "500",
             "source_height": "450 mm", "new_x": "1.7 m"}  # fmt: skip
    for key, value in typed.items():
        answer_cell(book, key).value = value
    book.save(tmp_path / "form.xlsx")
    done = estimator("survey", "--text", "form.xlsx", folder=tmp_path)
    job = tomllib.loads(done.stdout)
    assert (job["walls"][0]["length"], job["boxes"][0]["x"]) == ("3600 mm", "500 mm")
    assert (job["boxes"][1]["device"], job["levels"][0]["kind"]) == ("receptacle", "attic")


def test_no_country_is_refused(tmp_path: Path) -> None:
    done = estimator("survey", "--form", "form.xlsx", "country:Britain", folder=tmp_path)
    assert (done.returncode, "country:GB" in done.stderr) == (1, True)
    assert not (tmp_path / "form.xlsx").exists()


@pytest.mark.parametrize("sample", ["terrace-bedroom", "rec-room"])
def test_a_filled_form_gives_the_bid_of_its_job(sample: str, tmp_path: Path) -> None:
    empty_form(tmp_path, f"sample:{sample}")
    ours = json.loads(estimator("bid", "form.xlsx", "--json", folder=tmp_path).stdout)
    theirs = json.loads(estimator("bid", f"sample:{sample}", "--json", folder=tmp_path).stdout)
    assert (ours["price"], ours["takeoff"]) == (theirs["price"], theirs["takeoff"])
