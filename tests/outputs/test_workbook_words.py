"""The customer's page in words: each sentence for the job that calls for it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.outputs.bid_words import assumption_said, scope_lines, visit_lines
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.records import Bid
from estimator.takeoff.records import Assumption, Visit
from tests.outputs.bid_factory import bid_of, full_bid, sample_bid
from tests.outputs.spreadsheet import opened


def scope(bid: Bid) -> list[str]:
    return list(scope_lines(bid))


def said_on(bid: Bid, sheet: str) -> list[str]:
    page = opened(bid_workbook(bid), values=True)[sheet]
    return [cell.value for row in page.iter_rows() for cell in row if isinstance(cell.value, str)]


@pytest.mark.parametrize(
    ("sample", "want"),
    [
        ("nightstand", "1 new receptacle: new (bedroom)."),
        ("printer-corner", "2 new receptacles: A (office), B (office)."),
        ("closet-light", "1 new switch: switch (closet)."),
        ("lounge", "2 new sockets: 1 (lounge), 2 (lounge)."),
        ("nightstand", "New cable in 1 run, fed from the existing box source."),
        ("printer-corner", "New cable in 2 runs, fed from the existing box source."),
        ("closet-charger", "No openings in walls or ceilings besides those for the boxes."),
        ("closet-charger", "The existing box hall is too small and is replaced by a larger one."),
        ("printer-corner", "Painting: the whole wall, corner to corner."),
    ],
)
def test_the_work_in_plain_words(sample: str, want: str) -> None:
    assert want in scope(sample_bid(sample))


@pytest.mark.parametrize(
    ("finish", "want"),
    [
        ("none", "left open for others to close"),
        ("closed", "closed, not taped"),
        ("taped", "closed, taped and smoothed, ready to paint"),
        ("painted", "closed, taped, smoothed and painted"),
    ],
)
def test_how_far_the_wall_is_brought_back(finish: str, want: str) -> None:
    bid = bid_of("printer-corner", {'scope = "painted"': f'scope = "{finish}"'})
    assert f"2 openings in walls or ceilings, {want}." in scope(bid)


def test_no_paint_is_promised_where_none_is_priced() -> None:
    hidden = scope(sample_bid("nightstand"))
    assert "1 opening out of sight, closed and not finished." in hidden
    assert not any("painted" in line for line in hidden)
    bid = bid_of("printer-corner", {'paint = "wall"': 'paint = "none"'})
    assert "2 openings in walls or ceilings, closed, taped and smoothed, ready to paint." in scope(
        bid
    )


@pytest.mark.parametrize(
    ("device", "want"),
    [
        ("switch", "1 new switch"),
        ("luminaire", "1 new light"),
        ("gfci receptacle", "1 new receptacle with ground-fault protection"),
        ("none", "1 new box with a blank cover"),
    ],
)
def test_devices_are_named_as_people_name_them(device: str, want: str) -> None:
    bid = sample_bid("nightstand")
    boxes = (box.model_copy(update={"device": device}) for box in bid.survey.boxes)
    survey = bid.survey.model_copy(update={"boxes": tuple(boxes)})
    assert any(line.startswith(f"{want}: ") for line in scope(replace(bid, survey=survey)))


def test_the_jobs_own_sentence_comes_first() -> None:
    bid = sample_bid("nightstand")
    assert scope(bid)[0] == bid.survey.job.scope


def test_visits_say_what_is_done_and_how_long_to_wait() -> None:
    visits = (Visit(1, "tape and first coat", Decimal(24)), Visit(2, "paint.", Decimal(0)))
    bid = sample_bid("nightstand")
    lines = list(visit_lines(replace(bid, takeoff=replace(bid.takeoff, visits=visits))))
    assert lines == [
        ("Visit 1", "Tape and first coat. Then about 24 h to dry."), ("Visit 2", "Paint."),
        ("Time", "About 2 working days on site, 2 days from the first to the last."),
    ]  # fmt: skip


def test_assumptions_are_numbered_on_the_bid() -> None:
    bid = full_bid()
    page = opened(bid_workbook(bid), values=True)["Bid"]
    numbered = {row[1].value: row[0].value for row in page.iter_rows(max_col=2)}
    for each in bid.assumptions:
        said = assumption_said(each)
        assert numbered[said] == f"{each.number}. "
        assert each.about[1:] in said and each.taken in said


@pytest.mark.parametrize(
    ("in_second", "want"),
    [(False, "Its gap: small."), (True, "Its gap: small (if not: second total).")],
)
def test_an_assumption_is_a_sentence(in_second: bool, want: str) -> None:
    line = Assumption(1, "its gap", "small", moves_price=True, in_second_total=in_second)
    assert assumption_said(line) == want


def test_nothing_assumed_is_said_in_a_word() -> None:
    bid = sample_bid("printer-corner")
    measured = replace(bid, takeoff=replace(bid.takeoff, assumptions=()))
    assert "nothing" in said_on(measured, "Bid")


def test_the_second_total_says_what_it_depends_on() -> None:
    bid = full_bid()
    assert bid.second_total is not None
    assert f"if this turns out badly: {bid.second_total_why}" in said_on(bid, "Bid")


def test_where_nothing_unknown_moves_the_price_the_bid_shows_one_total() -> None:
    bid = replace(full_bid(), second_total=None, second_total_why="")
    assert "Second total" not in said_on(bid, "Bid")


@pytest.mark.parametrize(("sample", "said"), [("closet-charger", True), ("nightstand", False)])
def test_the_minimum_charge_is_named_where_it_governs(sample: str, said: bool) -> None:
    words = said_on(sample_bid(sample), "Bid")
    assert ("The firm's minimum charge applies." in words) == said


def test_routes_are_ranked_and_what_blocks_one_is_named() -> None:
    # S14, worked by hand: the crawlspace C is best, then A over the door, then B the long way.
    bid = sample_bid("door-in-the-way")
    page = opened(bid_workbook(bid), values=True)["Compare"]
    ways = [row[1].value for row in page.iter_rows(min_row=7, max_row=9)]
    assert ways == ["C (this bid)", "A", "B"]


def test_doing_it_yourself_breaks_even_at_the_rest_of_the_bid_over_the_hours() -> None:
    # (total - parts - consumables) / (own hours - hours that hiring takes), from what is shown.
    page = opened(bid_workbook(sample_bid("nightstand")), values=True)["Compare"]
    shown = {row[1].value: row for row in page.iter_rows(max_col=11)}
    hire, mine = shown["This bid"], shown["Do it yourself"]
    gap = hire[2].value - mine[2].value
    assert hire[8].value == pytest.approx(gap / (mine[6].value - hire[6].value), abs=0.005)


def test_a_job_without_hours_has_no_break_even_that_time_could_move() -> None:
    bid = sample_bid("nightstand")
    zero = Decimal(0)
    hours = replace(bid.hours, low=zero, likely=zero, high=zero)
    said = said_on(replace(bid, hours=hours, labor=()), "Compare")
    assert "doing it yourself costs less, whatever an hour of yours is worth" in said


def test_a_job_held_against_no_rule_says_so() -> None:
    said = said_on(sample_bid("lounge"), "Checks")
    assert any(line.startswith("No electrical rule of this country is on file.") for line in said)


def test_a_line_of_the_books_without_a_cost_is_unknown_not_zero() -> None:
    page = opened(bid_workbook(sample_bid("nightstand")), values=True)["Books"]
    costs = {row[2].value: row[6].value for row in page.iter_rows(max_col=7)}
    assert costs["labor"] == "unknown"
    assert costs["tax"] == "none"
