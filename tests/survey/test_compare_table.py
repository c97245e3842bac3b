"""What a job file may say of doing the work yourself and of hiring it out."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.problems import InputError, Problem
from estimator.survey.compare import Compare
from estimator.survey.reader import job_from_text, job_schema
from tests.survey.made_job import TEXT

HIRE = '[[compare.hire]]\nname = "Firm"\n'


def read(more: str) -> Compare:
    return job_from_text(f"{TEXT}\n{more}", Path("job.toml")).survey.compare


def refused(more: str) -> list[Problem]:
    with pytest.raises(InputError) as caught:
        read(more)
    return list(caught.value.problems)


def test_a_job_without_the_table_says_nothing() -> None:
    said = read("")
    assert said == Compare()
    assert (said.own_hour, said.tools, said.hire, said.forbidden) == (None, (), (), "")


@pytest.mark.parametrize(
    "name",
    ["own_hour", "pace", "own_hours", "own_hours_low", "own_hours_high", "materials",
     "consumables", "tax_pct", "permit", "own_patch_paint", "rework_chance_pct", "rework_cost"],
)  # fmt: skip
def test_each_figure_may_be_unknown_and_is_not_zero_then(name: str) -> None:
    assert getattr(read(f'[compare]\n{name} = "unknown"'), name) is None
    assert getattr(read(f"[compare]\n{name} = 7.25"), name) == Decimal("7.25")


def test_a_tool_is_bought_and_nothing_of_it_kept_unless_said() -> None:
    (tool,) = read('[[compare.tools]]\nname = "Saw"\nprice = 87').tools
    assert (tool.price, tool.have, tool.keep_pct) == (87, "buy", 0)
    (tool,) = read('[[compare.tools]]\nname = "Saw"\nhave = "own"\nkeep_pct = "50 %"').tools
    assert (tool.price, tool.have, tool.keep_pct) == (None, "own", 50)


def test_a_bid_of_somebody() -> None:
    (bid,) = read(
        HIRE + 'quote = 365\nincludes = ["permit"]\nexcludes = ["patch", "paint"]\n'
        'prices = { patch = 120, paint = 60 }\nextras = { "Parking" = 12 }\nown_hours = 1.5'
    ).hire
    assert (bid.quote, bid.tax, bid.own_hours) == (365, 0, Decimal("1.5"))
    assert (bid.includes, bid.excludes) == (("permit",), ("patch", "paint"))
    assert (bid.prices, bid.extras) == ({"patch": 120, "paint": 60}, {"Parking": 12})


@pytest.mark.parametrize("name", ["quote", "tax", "own_hours"])
def test_what_nobody_knows_of_a_bid(name: str) -> None:
    text = HIRE + f'{name} = "unknown"\n' + ("" if name == "quote" else "quote = 1\n")
    assert getattr(read(text).hire[0], name) is None


@pytest.mark.parametrize(
    ("text", "says", "write"),
    [
        (HIRE, 'the key "quote" is missing', "every field is in the README"),
        (
            HIRE + 'quote = 1\nincludes = ["paint"]\nexcludes = ["paint"]',
            '"paint" stands twice in includes and excludes',
            "Name each part once, in one of the two lists.",
        ),
        (
            HIRE + 'quote = 1\nexcludes = ["patch", "patch and paint"]',
            '"patch" stands twice in includes and excludes',
            "Name each part once, in one of the two lists.",
        ),
        (
            HIRE + "quote = 1\nprices = { paint = 5 }",
            '"paint" has a price and is not in excludes',
            'Add "paint" to excludes, or put its price in extras.',
        ),
        (HIRE + 'quote = 1\nexcludes = ["roof"]', '"roof" is not one of the words', '"patch"'),
        (HIRE + "quote = -1", "-1", "at least 0"),
        ("[compare]\nrework_chance_pct = 101", "101", "at most 100"),
        ("[compare]\npace = 0", "0", "above 0"),
        (
            "[compare]\nown_hours = 5\nown_hours_low = 6",
            "your hours are not in order",
            "from least to most",
        ),
        ("[compare]\nown_hour = true", "true", "Write a number"),
        ("[compare]\nowner_hour = 1", '"owner_hour" is not known here', "own_hour"),
    ],
)
def test_what_is_refused_and_what_to_write(text: str, says: str, write: str) -> None:
    (problem,) = refused(text)
    assert says in problem.read
    assert write in problem.write


def test_hours_may_be_the_same() -> None:
    said = read("[compare]\nown_hours_low = 5\nown_hours = 5\nown_hours_high = 5")
    assert said.own_hours_low == said.own_hours_high == 5


def test_the_schema_knows_the_table() -> None:
    schema = job_schema()
    assert "compare" in schema["properties"]
    assert set(schema["$defs"]["Hire"]["required"]) == {"name", "quote"}
