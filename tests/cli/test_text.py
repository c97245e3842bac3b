"""What the terminal shows: the figures of a job worked by hand, in 80 columns."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.outputs.text_bid import bid_summary
from estimator.outputs.text_check import check_text, how_to_accept
from estimator.outputs.text_layout import COLUMNS, pairs, printable, wrapped
from estimator.outputs.text_problems import MOST_SHOWN, problems_text
from estimator.outputs.text_shopping import shopping_text
from estimator.outputs.text_takeoff import takeoff_text
from estimator.pricing.records import Bid
from estimator.problems import Problem
from tests.cli.made_bid import FINDINGS, PRICE, made_bid, made_way
from tests.worked.job import worked

LISTS = (bid_summary, takeoff_text, shopping_text, check_text)


def shown(to_text: Callable[[Bid], list[str]], **changes: object) -> str:
    """A list as one text, with every run of spaces made one, so that wrapping does not matter."""
    return " ".join(" ".join(to_text(made_bid(**changes))).split())


@pytest.mark.parametrize("to_text", LISTS)
def test_no_line_is_wider_than_80_columns(to_text: Callable[[Bid], list[str]]) -> None:
    long = tuple(replace(each, figures=each.figures * 20) for each in FINDINGS)
    assert max(map(len, to_text(made_bid(findings=long)))) < COLUMNS


@pytest.mark.parametrize(
    "want",
    [
        "Total $225.00, no tax added; the minimum charge applies",
        "Deposit $67.50, then $157.50",
        "Hours 1.75 charged, 0.88 to 3.5 possible",
        "FAILS Wires in each box (box-fill:source): stops the bid needs 20.0 in3, has 12.5 in3 "
        "[NEC 2023 314.16] -> Fit a deep box of 22.5 in3.",
        "1 failed, 1 not known, 0 to note, 1 within. 1 of them stops the bid.",
        "1. grounded: taken as grounded [ground-source:source]",
        "The total leaves these out. Give them a price in materials.csv: box-deep",
        "Turn the power off and prove it dead",
    ],
)
def test_the_summary_says(want: str) -> None:
    assert want in shown(bid_summary)


def test_tax_and_a_second_total_are_shown_where_there_are_any() -> None:
    text = shown(
        bid_summary,
        price=replace(PRICE, tax=Decimal("9.59")),
        second_total=Decimal("301.5"),
        second_total_why="the box is too small",
    )
    assert "$9.59 of it tax" in text
    assert "Second total $301.50 if this turns out badly: the box is too small" in text


def test_several_ways_are_compared_and_one_is_not() -> None:
    """Two of the ways of S14, worked by hand."""
    crawl = made_way()
    over = replace(crawl, route="A", rank=2, total=Decimal("182.75"), blocked_by=(), chosen=True)
    text = shown(bid_summary, routes=(crawl, over))
    assert "1. C: $141.75, 1.66 h, 14 ft of 14-2, 2 members crossed; blocked by level" in text
    assert "2. A (this bid): $182.75" in text
    assert "Ways" not in shown(bid_summary, routes=(over,))


@pytest.mark.parametrize(
    "want",
    [
        '1: 14-2 from source to new path 5" + tails 2\'-0" = cut 2\'-5"',
        "crosses: studs 0 (assumed from the spacing), king 2",
        "3 ft Cable 14-2, run 1 29 in of cuts, no allowance, up to 3 ft",
        "Deep box 22.5 in3, source (remedy for box-fill:source)",
        "1 run Fish cable, hall (plaster)",
    ],
)
def test_the_takeoff_says(want: str) -> None:
    assert want in shown(takeoff_text)


def test_what_holds_for_all_of_the_work_is_said_once_in_words() -> None:
    """The nightstand's rooms are lived in: 1.175 in shop.toml."""
    text = " ".join(" ".join(takeoff_text(worked("nightstand"))).split())
    said = "All of the work: in rooms that are lived in; where it slows the work its hours count"
    assert text.count(said) == 1 and f"{said} x 1.175." in text
    assert "occupied-room" not in text
    assert "lived in" not in shown(takeoff_text)  # nobody has said so there


@pytest.mark.parametrize(
    "want",
    [
        "[ ] 3 ft in one piece: Cable, cut to length; Sample supply; $1.86",
        "[ ] 2 x Protection plate, pack of 5; Sample supply; $9.00 ($4.50 per pack)",
        "[ ] 1 x Deep box: price unknown",
        "From the truck -------------- [ ] 1 x Plate (one plate): $0.80",
        "Together $10.86 before tax",
    ],
)
def test_the_shopping_list_says(want: str) -> None:
    assert want in shown(shopping_text)


@pytest.mark.parametrize("findings", [None, ()], ids=["some", "none"])
def test_the_summary_of_a_bid_promises_no_list_of_findings(findings: tuple[()] | None) -> None:
    """It has those that fail and the counts; the list is that of `estimator check`."""
    changes = {} if findings is None else {"findings": findings}
    text = shown(bid_summary, **changes)
    assert "Checks ------" in text and "worst first" not in text
    assert "worst first" in shown(check_text)


def test_the_check_counts_its_findings() -> None:
    assert "3 findings: 1 failed, 1 not known, 0 to note, 1 within." in shown(check_text)


def test_a_blocked_bid_says_what_to_write_in_the_job_file() -> None:
    lines = how_to_accept(made_bid(), "job.toml")
    assert lines[-3:] == [
        "[[acceptances]]",
        'finding = "box-fill:source"',
        'reason = "why you accept it"',
    ]


def test_an_accepted_finding_no_longer_stops_the_bid() -> None:
    accepted = tuple(replace(each, accepted="Owner replaces it.") for each in FINDINGS)
    assert how_to_accept(made_bid(findings=accepted), "job.toml") == []
    assert "Accepted in the job file: Owner replaces it." in shown(check_text, findings=accepted)


@pytest.mark.parametrize(
    ("typed", "want"),
    [
        ("two\nlines\tand  gaps", "two lines and gaps"),
        ("\x1b[2Jclean", "?[2Jclean"),
        ("right\u202eleft", "rightleft"),
        ("1\u202f234,50\u00a0€", "1\u202f234,50\u00a0€"),
    ],
)
def test_text_from_a_file_cannot_steer_the_terminal(typed: str, want: str) -> None:
    assert printable(typed) == want


def test_wrapped_lines_stand_under_their_first_word() -> None:
    assert wrapped("word " * 30, first="1. ")[1].startswith("   word")


def test_pairs_stand_in_two_columns() -> None:
    assert pairs([("Total", "1"), ("Or", "")]) == ["Total  1", "Or"]


def test_very_many_problems_are_counted_not_all_shown() -> None:
    problems = [Problem(f"book.csv: row {row}", "is odd", "Write it even.") for row in range(99)]
    lines = problems_text(problems)
    assert lines[:2] == ["book.csv: row 0: is odd", "  Write it even."]
    assert sum("is odd" in line for line in lines) == MOST_SHOWN
    assert lines[-1].startswith("99 problems, 49 of them not shown here.")
