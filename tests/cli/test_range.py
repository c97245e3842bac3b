"""`estimator range`: the terminal's page, its JSON, and what may be asked of it."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from functools import cache

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from estimator.cli.app import app
from estimator.outputs.json_out import document_schema, range_json
from estimator.outputs.range_words import about_p, likely_line
from estimator.outputs.text_layout import COLUMNS
from estimator.outputs.text_range import range_text
from estimator.pricing.risk import price_range
from estimator.pricing.risk_records import PriceRange
from tests.pricing.risk_case import bid_with


@cache
def drawn() -> PriceRange:
    return price_range(bid_with(), draws=2_000)


def shown(spread: PriceRange) -> str:
    return " ".join(" ".join(range_text(bid_with(), spread)).split())


def typed(*arguments: str) -> tuple[int, str]:
    result = CliRunner().invoke(app, ["range", *arguments], prog_name="estimator")
    return result.exit_code, result.stdout


def test_no_line_is_wider_than_80_columns() -> None:
    long = replace(drawn().drivers[0], name="a task with a long name " * 9)
    lines = range_text(bid_with(), replace(drawn(), drivers=(long,)))
    assert max(map(len, lines)) < COLUMNS


def made_up() -> PriceRange:
    """The range with round figures in it, so that each sentence can be read off."""
    spread = drawn().total
    total = replace(spread, p10=Decimal("600.00"), p80=Decimal("1900.00"), p90=Decimal("2000.00"))
    return replace(
        drawn(), total=total, bid_total=Decimal("1540.00"), bid_holds_pct=Decimal("22.0"),
        confidence_pct=Decimal(80), at_confidence=Decimal("1900.00"),
        likely_hours=Decimal("12.8196"), likely_total=Decimal("1477.35"),
        likely_hours_at_pct=Decimal("14.2"), likely_total_at_pct=Decimal("11.9"),
    )  # fmt: skip


@pytest.mark.parametrize(
    "want",
    [
        "The bid $1,540.00, enough in 22 of 100 jobs",
        "Enough in 80 of 100 $1,900.00, $360.00 more than the bid",
        "Likely values added up 12.82 h and $1,477.35, at about P12",
        "Likely values added up: at about P12 of the total and at about P14 of the hours.",
        "The middle is P50.",
        "$600.00",
        "drawing the job 2,000 times by chance (seed 1)",
        "with a correlation of 25 %",
        "- Only 2000 draws: the percentiles are rough.",
        "- A block or brace in a bay that has to be passed: 20 of 100 jobs, 0.25 / 0.5 / 1.5 h "
        "(judgement)",
        "10 of 100 jobs, 0.5 / 1.25 / 4 h, parts $5.00 / $15.00 / $45.00 (judgement)",
        "Turn the power off and prove it dead",
    ],
)
def test_the_page_says(want: str) -> None:
    assert want in shown(made_up())


@pytest.mark.parametrize(
    ("at", "want"),
    [("1000.00", "$1,000.00, $540.00 less than the bid"), ("1540.00", "$1,540.00, the bid itself")],
)
def test_a_bid_that_is_enough_is_told_so(at: str, want: str) -> None:
    assert want in shown(replace(made_up(), at_confidence=Decimal(at)))


def test_without_risks_there_is_no_list_of_them() -> None:
    tasks = tuple(each for each in drawn().inputs if each.kind != "risk")
    assert "What may be found" not in shown(replace(made_up(), inputs=tasks))


@pytest.mark.parametrize(("at", "skewed"), [("44.9", True), ("45", False), ("60", False)])
def test_the_reason_why_the_likely_sum_is_low_is_given_where_it_is_low(
    at: str, skewed: bool
) -> None:
    said = likely_line(replace(drawn(), likely_hours_at_pct=Decimal(at)))
    assert ("What can go wrong takes longer" in said) == skewed
    assert "The middle is P50." in said


@pytest.mark.parametrize(("pct", "want"), [("12.4", "P12"), ("12.5", "P13"), ("0.0", "P0")])
def test_a_place_among_the_draws_is_a_whole_number(pct: str, want: str) -> None:
    assert about_p(Decimal(pct)) == want


def test_the_document_holds_against_its_schema() -> None:
    document = json.loads(range_json(bid_with(), drawn(), ("a note",)), parse_float=pytest.fail)
    Draft202012Validator(document_schema("range")).validate(document)
    assert document["schema"] == "estimator-range-1"
    assert document["range"]["total"]["p80"] == str(drawn().total.p80)
    assert (document["notes"], document["unpriced_items"]) == (["a note"], [])


def test_draws_and_seed_are_taken_from_the_command() -> None:
    code, said = typed("sample:nightstand", "--draws", "1500", "--seed", "9")
    assert code == 0
    assert "1,500 times by chance (seed 9)" in " ".join(said.split())


def test_json_on_stdout_alone() -> None:
    code, said = typed("sample:nightstand", "--draws", "1000", "--json")
    document = json.loads(said)
    assert code == 0
    assert (document["range"]["draws"], document["range"]["seed"]) == (1000, 1)


@pytest.mark.parametrize(
    "arguments", [("--draws", "999"), ("--draws", "500001"), ("--seed", "-1"), ("--draws", "many")]
)
def test_what_cannot_be_drawn_is_wrong_usage(arguments: tuple[str, str]) -> None:
    assert typed("sample:nightstand", *arguments)[0] == 2


def test_a_job_that_cannot_be_read_ends_with_1() -> None:
    assert typed("no-such-job.toml", "--json")[0] == 1
