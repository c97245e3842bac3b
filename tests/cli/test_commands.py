"""The commands on real jobs: what they print where, what they write, how they end."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from openpyxl import load_workbook

from estimator.outputs.json_out import document_schema
from tests.cli.run import NIGHTSTAND, SAMPLES, changed, estimator

PROMISES = {"safe", "safely", "safety", "approve", "approved", "approval", "guaranteed"}
LISTS = ("takeoff", "shopping-list", "check", "compare")
COLUMNS = 80
TOO_LARGE_BREAKER = ("breaker = 15", "breaker = 20")  # 14 AWG carries 15 A: NEC 240.4(D)


def words(text: str) -> set[str]:
    """The words of a text in small letters."""
    return set(re.findall(r"[a-z]+", text.lower()))


def read_json(text: str) -> Any:
    """Read a document as a machine does; a float in it would be an error."""
    return json.loads(text, parse_float=pytest.fail)


def test_bid_writes_the_workbook_here_and_sums_up(tmp_path: Path) -> None:
    done = estimator("bid", str(NIGHTSTAND), folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.endswith("Workbook: nightstand.bid.xlsx\n")
    assert (tmp_path / "nightstand.bid.xlsx").read_bytes().startswith(b"PK")


def test_bid_writes_where_it_is_told(tmp_path: Path) -> None:
    done = estimator("bid", "sample:nightstand", "-o", "smith.xlsx", folder=tmp_path)
    assert "Workbook: smith.xlsx" in done.stdout
    assert [path.name for path in tmp_path.iterdir()] == ["smith.xlsx"]


def test_bid_replaces_its_own_workbook_and_no_other(tmp_path: Path) -> None:
    workbook = tmp_path / "nightstand.bid.xlsx"
    assert [estimator("bid", str(NIGHTSTAND), folder=tmp_path).returncode for _ in "12"] == [0, 0]
    workbook.write_text("somebody's own figures")
    refused = estimator("bid", str(NIGHTSTAND), folder=tmp_path)
    assert (refused.returncode, workbook.read_text()) == (1, "somebody's own figures")
    assert estimator("bid", str(NIGHTSTAND), "--replace", folder=tmp_path).returncode == 0
    assert workbook.read_bytes().startswith(b"PK")


@pytest.mark.parametrize("command", ("bid", *LISTS))
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_json_holds_against_its_schema(command: str, path: Path, tmp_path: Path) -> None:
    done = estimator(command, str(path), "--json", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    Draft202012Validator(document_schema(command)).validate(read_json(done.stdout))


def test_figures_of_the_nightstand_are_those_worked_by_hand(tmp_path: Path) -> None:
    """S1: path 95, cut 119, ordered 11 ft of 14-2; 4 studs; 2 staples."""
    taken = read_json(estimator("takeoff", str(NIGHTSTAND), "--json", folder=tmp_path).stdout)
    (order,) = taken["takeoff"]["cable"]
    (run,) = taken["takeoff"]["runs"]
    assert order["cuts"][0]["path_length"]["exact"] == "95"
    assert (order["cuts_length"]["exact"], order["order"], order["unit"]) == ("119", "11", "ft")
    assert (run["studs"], run["staples"], run["protection_plates"]) == (4, 2, 0)


@pytest.mark.parametrize("command", ("bid", *LISTS))
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_text_fits_80_columns_without_colour(command: str, path: Path, tmp_path: Path) -> None:
    done = estimator(command, str(path), folder=tmp_path)
    assert max(map(len, done.stdout.splitlines())) <= COLUMNS
    assert "\x1b" not in done.stdout


@pytest.mark.parametrize("command", ("bid", *LISTS))
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_output_promises_safety(command: str, path: Path, tmp_path: Path) -> None:
    done = estimator(command, str(path), folder=tmp_path)
    assert not words(done.stdout + done.stderr) & PROMISES


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_list_of_tests_fits_and_promises_nothing(path: Path, tmp_path: Path) -> None:
    done = estimator("check", str(path), "--tests", folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert "[ ] Prove the tester on a live source" in done.stdout
    assert max(map(len, done.stdout.splitlines())) <= COLUMNS
    assert not words(done.stdout) & PROMISES


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_cell_of_the_workbook_promises_safety(path: Path, tmp_path: Path) -> None:
    assert estimator("bid", str(path), "-o", "bid.xlsx", folder=tmp_path).returncode == 0
    book = load_workbook(tmp_path / "bid.xlsx", data_only=True)
    cells = [cell for sheet in book for row in sheet.iter_rows(values_only=True) for cell in row]
    said = words(" ".join(str(cell) for cell in cells if cell is not None))
    assert "dead" in said  # "prove it dead": the words of the sheets were really read
    assert not said & PROMISES


def test_a_blocked_bid_is_not_written_and_says_how_to_go_on(tmp_path: Path) -> None:
    job = changed(tmp_path, *TOO_LARGE_BREAKER)
    blocked = estimator("bid", str(job), folder=tmp_path)
    assert (blocked.returncode, blocked.stdout) == (1, "")
    assert not (tmp_path / "job.bid.xlsx").exists()
    accept = blocked.stderr[blocked.stderr.index("[[acceptances]]") :]
    assert tomllib.loads(accept)["acceptances"][0]["finding"].startswith("breaker-wire:")
    job.write_text(job.read_text() + accept)
    assert estimator("bid", str(job), folder=tmp_path).returncode == 0


def test_a_blocked_bid_as_json_names_the_findings(tmp_path: Path) -> None:
    job = changed(tmp_path, *TOO_LARGE_BREAKER)
    done = estimator("bid", str(job), "--json", folder=tmp_path)
    document = read_json(done.stdout)
    assert (done.returncode, document["workbook"]) == (1, None)
    assert "breaker-wire:circuit" in document["blocked_by"]


@pytest.mark.parametrize("command", LISTS)
def test_a_list_is_printed_even_where_the_bid_is_blocked(command: str, tmp_path: Path) -> None:
    job = changed(tmp_path, *TOO_LARGE_BREAKER)
    done = estimator(command, str(job), folder=tmp_path)
    assert done.returncode == 1
    assert "Nightstand outlet" in done.stdout
    assert "breaker-wire:circuit" in done.stderr


def test_a_length_read_with_a_remark_is_echoed_on_stderr(tmp_path: Path) -> None:
    job = changed(tmp_path, 'height = "8 ft"', "height = '''8' 14\"'''")
    done = estimator("takeoff", str(job), folder=tmp_path)
    assert "14" in done.stderr
    assert "9'-2\"" in done.stderr


def test_own_books_change_the_price(tmp_path: Path) -> None:
    assert estimator("catalog", "copy", "mine", folder=tmp_path).returncode == 0
    shop = tmp_path / "mine" / "shop.toml"
    rate = "labor_rate_per_hour = 85.00"
    assert rate in shop.read_text()
    shop.write_text(shop.read_text().replace(rate, "labor_rate_per_hour = 200.00"))
    done = estimator("bid", str(NIGHTSTAND), "--books", "mine", "--json", folder=tmp_path)
    assert read_json(done.stdout)["price"]["labor_rate_per_hour"] == "200.00"


def test_the_starter_job_can_be_priced_as_it_stands(tmp_path: Path) -> None:
    starter = estimator("survey", "--template", folder=tmp_path).stdout
    (tmp_path / "my-job.toml").write_text(starter)
    done = estimator("bid", "my-job.toml", folder=tmp_path)
    assert (done.returncode, "Workbook: my-job.bid.xlsx" in done.stdout) == (0, True), done.stderr


def test_the_starter_job_asks_for_what_can_be_seen_in_the_source(tmp_path: Path) -> None:
    starter = tomllib.loads(estimator("survey", "--template", folder=tmp_path).stdout)
    (contents,) = (box["contents"] for box in starter["boxes"] if "contents" in box)
    asked = {"setback", "gap", "wires_per_screw", "push_in_terminals", "always_live", "tab_removed"}
    assert contents == dict.fromkeys(asked, "unknown")
    assert starter["circuit"]["ground_wire"] == "unknown"


def test_the_schema_of_the_job_file_takes_every_sample(tmp_path: Path) -> None:
    schema = json.loads(estimator("survey", "--schema", folder=tmp_path).stdout)
    check = Draft202012Validator(schema)
    for path in SAMPLES:
        values = json.loads(json.dumps(tomllib.loads(path.read_text()), default=str))
        check.validate(values)
    values["job"]["colour"] = "red"
    assert not check.is_valid(values)


def test_a_sample_is_listed_and_copied_once(tmp_path: Path) -> None:
    assert "sample:nightstand" in estimator("samples", "list", folder=tmp_path).stdout
    first = estimator("samples", "copy", "nightstand", "my.toml", folder=tmp_path)
    assert (first.returncode, first.stdout) == (0, "Job file: my.toml\n")
    assert (tmp_path / "my.toml").read_bytes() == NIGHTSTAND.read_bytes()
    assert estimator("samples", "copy", "nightstand", "my.toml", folder=tmp_path).returncode == 1
