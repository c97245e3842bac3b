"""`estimator survey --edit`: one answer changed, the rest of the file as it was."""

from __future__ import annotations

import re
import shutil
import sys
import tomllib
from pathlib import Path
from typing import Any

import pexpect
import pytest

from estimator.guide.facts import pruned
from estimator.guide.job_text import answered, new_job
from tests.cli.run import ENVIRONMENT, NIGHTSTAND, estimator
from tests.guide.made_answers import DRAWN

WAIT_S = 30
OPENING = {
    "customer": "Ann", "country": "US", "room": "bedroom", "device": "receptacle",
    "new_height": "15 in", "run_height": "3 in",
}  # fmt: skip


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return Path(shutil.copy(NIGHTSTAND, tmp_path / "job.toml"))


def test_by_key_without_a_terminal(job: Path) -> None:
    done = estimator("survey", "--edit", "job.toml", "breaker=20", folder=job.parent)
    assert done.returncode == 0, done.stderr
    assert "before: 15 A" in done.stdout and "after:  20 A" in done.stdout
    assert "estimator bid job.toml" in done.stdout
    old = NIGHTSTAND.read_text(encoding="utf-8")
    assert job.read_text(encoding="utf-8") == old.replace("breaker = 15", "breaker = 20")


def test_the_answers_are_shown_by_number_within_80_columns(job: Path) -> None:
    shown = estimator("survey", "--edit", "job.toml", folder=job.parent).stdout
    assert " source_x          2 ft 10 in" in shown
    assert max(map(len, shown.splitlines())) <= 80
    assert job.read_bytes() == NIGHTSTAND.read_bytes()


def test_several_answers_at_once(job: Path) -> None:
    """13 ft fits only on the longer wall."""
    done = estimator("survey", "--edit", "job.toml", "wall_length=14 ft", "new_x=13 ft",
                     "finish=plaster", folder=job.parent)  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout.count("before:") == 3 and done.stdout.count("estimator bid") == 1
    (wall,), box = job_in(job)["walls"], job_in(job)["boxes"][1]
    assert (wall["length"], wall["finish"], box["x"]) == ("14 ft", "plaster", "13 ft")


def test_where_one_of_several_does_not_fit_none_is_changed(job: Path) -> None:
    done = estimator("survey", "--edit", "job.toml", "breaker=20", "new_x=13 ft",
                     folder=job.parent)  # fmt: skip
    assert done.returncode == 1 and "beyond the end" in done.stderr
    assert job.read_bytes() == NIGHTSTAND.read_bytes()


def test_numbers_are_those_that_were_shown(job: Path) -> None:
    """The attic asks less before the wall's own questions, so their numbers move."""
    shown = estimator("survey", "--edit", "job.toml", folder=job.parent).stdout
    number = re.search(r"(\d+)  insulated ", shown)
    assert number is not None
    estimator("survey", "--edit", "job.toml", "way=attic", f"{number[1]}=yes", folder=job.parent)
    assert job_in(job)["walls"][0]["insulated"] == "yes"


def test_words_are_never_cut_at_the_edge_of_the_terminal(job: Path) -> None:
    done = estimator("survey", "--edit", "job.toml", "wall_length=unknown", folder=job.parent)
    assert max(map(len, done.stdout.splitlines())) < 80
    assert "from box to box" in " ".join(done.stdout.split())


def test_by_number_at_a_terminal(job: Path) -> None:
    child = pexpect.spawn(
        sys.executable, ["-m", "estimator", "survey", "--edit", "job.toml"],
        cwd=str(job.parent), env={**ENVIRONMENT, "TERM": "dumb"}, dimensions=(24, 80),
        encoding="utf-8", timeout=WAIT_S,
    )  # fmt: skip
    child.expect(r"(\d+)  source_volume")
    number = child.match[1]
    child.expect("> $")
    child.sendline(number)
    child.expect(r"\[18.0 in3\] > $")
    child.sendline("20")
    child.expect(pexpect.EOF)
    assert "after:  20.0 in3" in child.before
    assert 'volume = "20 in3"' in job.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("breaker=lots", "whole number"),
        ("brekker=15", "Did you mean breaker?"),
        ("source_x=40 ft", "beyond the end"),
        ("breaker=", "was given no value"),
    ],
)
def test_a_change_that_does_not_fit_leaves_the_file_alone(
    job: Path, change: str, said: str
) -> None:
    done = estimator("survey", "--edit", "job.toml", change, folder=job.parent)
    assert done.returncode == 1 and said in done.stderr
    assert job.read_bytes() == NIGHTSTAND.read_bytes()


@pytest.fixture
def surveyed(tmp_path: Path) -> Path:
    """A finished file of the survey itself, for S1."""
    job = answered(new_job("smith.toml"), pruned(DRAWN | OPENING))
    path = tmp_path / "smith.toml"
    path.write_text(job.text, encoding="utf-8")
    return path


def job_in(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("change", ["way=attic", "way=crawlspace", "way=wall", "way=through"])
def test_another_way_keeps_the_rest_and_takes_what_is_usual(surveyed: Path, change: str) -> None:
    before = job_in(surveyed)
    done = estimator("survey", "--edit", "smith.toml", change, folder=surveyed.parent)
    assert done.returncode == 0, done.stderr
    after = job_in(surveyed)
    assert after["job"] == before["job"] and after["job"]["id"] == "smith"
    assert after["runs"][0]["cable"] == before["runs"][0]["cable"] == "14-2"
    assert estimator("bid", "smith.toml", folder=surveyed.parent).returncode == 0


def test_an_attic_lies_as_high_as_is_usual_until_it_is_answered(surveyed: Path) -> None:
    done = estimator("survey", "--edit", "smith.toml", "way=attic", folder=surveyed.parent)
    assert "estimator survey smith.toml" in done.stdout
    assert "estimator bid smith.toml" in done.stdout
    (level,) = job_in(surveyed)["levels"]
    assert (level["kind"], level["height"]) == ("attic", "8 ft 4 in")


def test_a_bid_of_what_now_lacks_an_answer_says_how_to_go_on(surveyed: Path) -> None:
    """Without a wall, how far the boxes are apart has to be measured."""
    before = job_in(surveyed)
    done = estimator("survey", "--edit", "smith.toml", "wall_length=unknown",
                     folder=surveyed.parent)  # fmt: skip
    assert "Now more is asked" in done.stdout
    after = job_in(surveyed)
    assert (after["job"], after["runs"][0]["cable"]) == (before["job"], "14-2")
    bid = estimator("bid", "smith.toml", folder=surveyed.parent)
    assert bid.returncode == 1 and "1 problem." in bid.stderr
    assert "Go on with: estimator survey smith.toml" in bid.stderr
    estimator("survey", "--edit", "smith.toml", "distance=71 in", folder=surveyed.parent)
    assert estimator("bid", "smith.toml", folder=surveyed.parent).returncode == 0


@pytest.mark.parametrize(
    ("key", "value"), [("title", "Nightstand"), ("id", "2026-7"), ("scope", "One outlet.")]
)
def test_what_was_written_by_hand_stays_when_the_way_changes(
    surveyed: Path, key: str, value: str
) -> None:
    text = surveyed.read_text(encoding="utf-8")
    there = job_in(surveyed)["job"][key]
    assert text.count(f'{key} = "{there}"') == 1
    surveyed.write_text(text.replace(f'{key} = "{there}"', f'{key} = "{value}"'), encoding="utf-8")
    done = estimator("survey", "--edit", "smith.toml", "way=attic", folder=surveyed.parent)
    assert done.returncode == 0, done.stderr
    assert job_in(surveyed)["job"][key] == value


def test_what_cannot_be_changed_is_named_with_its_line(surveyed: Path) -> None:
    text = surveyed.read_text(encoding="utf-8")
    text = text.replace('stapled_at = ["source", "new"]', 'stapled_at = ["source"]')
    surveyed.write_text(text, encoding="utf-8")
    line = 1 + text.splitlines().index('stapled_at = ["source"]')
    done = estimator("survey", "--edit", "smith.toml", "way=attic", folder=surveyed.parent)
    assert done.returncode == 1
    assert f"smith.toml: line {line}, runs[0].stapled_at: " in done.stderr
    assert surveyed.read_text(encoding="utf-8") == text


def test_a_file_of_another_hand_takes_what_is_usual_for_the_new_way(job: Path) -> None:
    estimator("survey", "--edit", "job.toml", "way=attic", folder=job.parent)
    assert job_in(job)["levels"][0]["height"] == "8 ft 4 in"
    assert estimator("bid", "job.toml", folder=job.parent).returncode == 0


def test_there_must_be_a_file_to_edit(tmp_path: Path) -> None:
    done = estimator("survey", "--edit", "none.toml", "breaker=15", folder=tmp_path)
    assert done.returncode == 1 and "estimator survey none.toml" in done.stderr


@pytest.mark.parametrize("both", [("--edit", "--template"), ("job.toml", "breaker=15")])
def test_two_wishes_at_once_are_refused(job: Path, both: tuple[str, str]) -> None:
    assert estimator("survey", *both, folder=job.parent).returncode == 2
