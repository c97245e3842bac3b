"""`estimator crew`: what is written where, in which language, and when nothing is."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from openpyxl import load_workbook

from estimator.language import CATALOGS
from estimator.outputs.json_out import document_schema
from tests.cli.run import NIGHTSTAND, changed, estimator

JOB = "sample:nightstand"
SETTINGS = '\n[settings.terms]\ncrew_language = "{}"\n'


def test_it_writes_a_page_here(tmp_path: Path) -> None:
    done = estimator("crew", JOB, folder=tmp_path)
    assert (done.returncode, done.stdout, done.stderr) == (
        0, "Crew sheet: nightstand.crew.html\n", "")  # fmt: skip
    assert [each.name for each in tmp_path.iterdir()] == ["nightstand.crew.html"]
    assert (
        "<h1>Crew sheet: Nightstand outlet</h1>" in (tmp_path / "nightstand.crew.html").read_text()
    )


@pytest.mark.parametrize("name", ["my.html", "my.HTM"])
def test_a_name_of_a_page_gives_a_page(tmp_path: Path, name: str) -> None:
    assert estimator("crew", JOB, "-o", name, folder=tmp_path).returncode == 0
    assert (tmp_path / name).read_text().startswith("<!DOCTYPE html>")


def test_a_name_of_a_workbook_gives_a_workbook(tmp_path: Path) -> None:
    done = estimator("crew", JOB, "-o", "crew.xlsx", folder=tmp_path)
    assert (done.returncode, done.stdout) == (0, "Crew sheet: crew.xlsx\n")
    assert load_workbook(tmp_path / "crew.xlsx").sheetnames == ["Crew", "Crew notes"]


def test_another_name_is_refused(tmp_path: Path) -> None:
    done = estimator("crew", JOB, "-o", "crew.pdf", folder=tmp_path)
    assert (done.returncode, list(tmp_path.iterdir())) == (2, [])
    assert ".html or .xlsx" in " ".join(done.stderr.split())


@pytest.mark.parametrize("name", ["nightstand.crew.html", "crew.xlsx"])
def test_somebodys_own_file_is_kept(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_text("mine")
    assert estimator("crew", JOB, "-o", name, folder=tmp_path).returncode == 1
    assert (tmp_path / name).read_text() == "mine"
    assert estimator("crew", JOB, "-o", name, "--replace", folder=tmp_path).returncode == 0


def test_text_is_printed_and_nothing_written(tmp_path: Path) -> None:
    done = estimator("crew", JOB, "--text", folder=tmp_path)
    assert done.returncode == 0
    assert done.stdout.startswith("Crew sheet: Nightstand outlet\nJob S1, Sample customer\n")
    assert list(tmp_path.iterdir()) == []


def test_json_holds_against_its_schema(tmp_path: Path) -> None:
    done = estimator("crew", JOB, "--json", folder=tmp_path)
    document = json.loads(done.stdout)
    Draft202012Validator(document_schema("crew")).validate(document)
    assert (document["schema"], document["sheets"][0]["language"]) == ("estimator-crew-1", "en")


@pytest.mark.parametrize("two", [("-o", "x.html", "--text"), ("--text", "--json")],
                         ids=["file", "json"])  # fmt: skip
def test_one_way_out_at_a_time(tmp_path: Path, two: tuple[str, ...]) -> None:
    assert estimator("crew", JOB, *two, folder=tmp_path).returncode == 2


def test_no_sheet_for_a_job_that_a_finding_stops(tmp_path: Path) -> None:
    """14 AWG carries 15 A, NEC 240.4(D): a 20 A breaker stops the job."""
    job = changed(tmp_path, "breaker = 15", "breaker = 20")
    for more in ((), ("--text",)):
        done = estimator("crew", job.name, *more, folder=tmp_path)
        assert (done.returncode, done.stdout) == (1, "")
        assert "No crew sheet is written for a job that a finding stops." in done.stderr
    assert [each.name for each in tmp_path.iterdir()] == ["job.toml"]


def test_an_unknown_language_is_refused(tmp_path: Path) -> None:
    assert estimator("crew", JOB, "--language", "xx", folder=tmp_path).returncode == 2


def words_of(tmp_path: Path, *arguments: str) -> str:
    """The first heading of the sheet where the user calls "This job" other things."""
    (tmp_path / "words.csv").write_text(
        "english,es,es_sure,fr,fr_sure,note\nBefore the work,ANTES,yes,AVANT,no,\n"
    )
    (tmp_path / "job.toml").write_text(NIGHTSTAND.read_text() + SETTINGS.format("es"))
    return estimator("crew", "job.toml", "--text", *arguments, folder=tmp_path).stdout


@pytest.mark.skipif(not (CATALOGS / "es.po").exists(), reason="no sentences in Spanish")
@pytest.mark.parametrize(
    ("arguments", "want"),
    [((), "ANTES"), (("--language", "fr"), "AVANT [Before the work]"),
     (("--language", "en"), "Before the work"),
     (("--language", "both"), f"{'Before the work':<38} | ANTES")],
    ids=["setting", "fr", "en", "both"],
)  # fmt: skip
def test_the_language_is_the_one_asked_for_else_of_the_settings(
    tmp_path: Path, arguments: tuple[str, ...], want: str
) -> None:
    """A word that people on site may not say so has the English behind it."""
    assert want in words_of(tmp_path, *arguments).splitlines()


def test_help_shows_an_example(tmp_path: Path) -> None:
    shown = estimator("crew", "--help", folder=tmp_path).stdout
    assert "Example: estimator crew my-job.toml --language both" in shown
