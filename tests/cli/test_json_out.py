"""What `--json` prints holds against its own schema, figure by figure."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_documents import DOCUMENTS
from estimator.outputs.json_out import (
    bid_json,
    check_json,
    document_schema,
    problems_json,
    shopping_json,
    takeoff_json,
)
from estimator.problems import Problem
from tests.cli.made_bid import FINDINGS, REMEDIES, made_bid

NOTES = ("walls[0].length: 12.6 is read as decimal feet.",)
WRITTEN = {
    "bid": bid_json(made_bid(), None, NOTES),
    "takeoff": takeoff_json(made_bid(), NOTES),
    "shopping-list": shopping_json(made_bid(), NOTES),
    "check": check_json(made_bid(), NOTES),
    "problems": problems_json([Problem("job.toml: line 3", "is odd", "Write it even.")]),
}


def read(name: str) -> Any:
    """The document as a machine reads it; a float in it would be an error."""
    return json.loads(WRITTEN[name], parse_float=pytest.fail)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_schema_is_a_schema(name: str) -> None:
    Draft202012Validator.check_schema(document_schema(name))


@pytest.mark.parametrize("name", WRITTEN)
def test_a_document_holds_against_its_schema(name: str) -> None:
    Draft202012Validator(document_schema(name)).validate(read(name))


@pytest.mark.parametrize("name", WRITTEN)
def test_a_schema_refuses_a_missing_and_a_foreign_field(name: str) -> None:
    document, check = read(name), Draft202012Validator(document_schema(name))
    assert not check.is_valid({**document, "foreign": 1})
    del document["schema"]
    assert not check.is_valid(document)


def test_a_schema_refuses_money_as_a_float() -> None:
    document = read("bid")
    document["price"]["total"] = 225.0
    assert not Draft202012Validator(document_schema("bid")).is_valid(document)


def test_figures_of_the_bid_are_exact() -> None:
    """Price of S3, worked by hand: 148.75 + 36.92 = 185.67, the minimum of 225.00 governs."""
    price = read("bid")["price"]
    assert (price["labor"], price["materials_sell"], price["base"]) == ("148.75", "36.92", "185.67")
    assert (price["total"], price["minimum_governs"]) == ("225.00", True)


def test_figures_of_the_takeoff_are_exact() -> None:
    """Cable of S3, worked by hand: 5 + 24 = 29 in, bought as 3 ft."""
    (order,) = read("takeoff")["takeoff"]["cable"]
    assert order["cuts"][0]["cut_length"] == {"exact": "29", "unit": "in", "shown": "2'-5\""}
    assert (order["order"], order["unit"]) == ("3", "ft")
    assert order["order_length"]["exact"] == "36"


def test_a_blocked_bid_says_so() -> None:
    document = read("bid")
    assert document["workbook"] is None
    assert document["blocked_by"] == ["box-fill:source"]


def test_an_item_without_a_price_is_unknown_and_not_zero() -> None:
    document = read("shopping-list")
    costs = {line["item"]: line["cost"] for line in document["shopping"]}
    assert costs == {
        "protection-plate": "9.00", "cable-14-2": "1.86", "box-deep": None, "plate": "0.80",
    }  # fmt: skip
    assert (document["cost"], document["unpriced_items"]) == ("11.66", ["box-deep"])


def test_letters_beyond_ascii_survive_any_terminal() -> None:
    written = problems_json([Problem("job.toml", "“12′” is odd")])
    assert written.isascii()
    assert json.loads(written)["problems"][0]["read"] == "“12′” is odd"


def test_each_kind_of_remedy_is_written_and_holds_against_the_schema() -> None:
    findings = (replace(FINDINGS[2], remedies=REMEDIES, remedied=True),)
    written = json.loads(check_json(made_bid(findings=findings), ()))
    Draft202012Validator(document_schema("check")).validate(written)
    assert written["findings"][0]["remedies"] == [
        {"group": "boxes", "item": "box-deep", "quantity": "1", "unit": "ea"},
        {"phase": "terminate", "task": "replace-box", "quantity": "1", "unit": "ea"},
        {"what": "device", "subject": "new", "value": "gfci receptacle"},
    ]


def test_the_check_carries_the_tests_of_the_job() -> None:
    assert read("check")["tests"]["This job"][1] == "Open and prove dead: source"


def test_editions_are_named_in_the_head() -> None:
    job = read("bid")["job"]
    assert (job["edition"], job["building_edition"]) == ("nec-2023", "irc-2021")


def test_the_bid_carries_its_visits_in_working_days() -> None:
    """S3 is one visit of 1.75 h; without a date there are day numbers alone."""
    calendar = read("bid")["calendar"]
    (visit,) = calendar["visits"]
    assert (calendar["dates_from"], calendar["working_days"]) == ("none", 1)
    assert (visit["hours"], visit["first_day"], visit["first_date"]) == ("1.750000", 1, None)
