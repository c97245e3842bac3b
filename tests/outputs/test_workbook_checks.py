"""What the checks put on the Checks and Bid sheets: decisions, what is included, the tests."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from estimator.outputs.checks_sheet import TESTS, write_checks
from estimator.outputs.draft import Draft
from estimator.outputs.paging import page_breaks
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.records import Bid
from estimator.rules.facts import rule_rows
from estimator.rules.records import Finding, RemedyPart
from estimator.rules.safety_list import safety_list
from estimator.takeoff.records import Assumption
from tests.outputs.bid_factory import sample_bid
from tests.outputs.spreadsheet import opened

LETTER = 1
# Letter across: (612 - 87) points of height / (720 / (190 characters x 5.25 + 9 columns x 3.75)).
LETTER_PT = 751
BOX = Finding(
    "box-fill", "source", "fail", "needs 20.0 in3, has 18.0", "NEC 2023 314.16", "nec-2023",
    remedy="Fit a deeper box.", blocking=True, title="Wires in each box",
    remedies=(RemedyPart("boxes", "box-deep", sample_bid("nightstand").hours.likely, "ea"),),
)  # fmt: skip
TAKEN = replace(BOX, remedied=True)
ACCEPTED = replace(BOX, subject="new", accepted="The owner replaces it.")
LEFT = Assumption(
    1, "Wires in each box, new", "accepted: The owner replaces it.", False,
    findings=("box-fill:new",), decided=True,
)  # fmt: skip


@cache
def sheets(*findings: Finding) -> Any:
    """The nightstand's workbook with these findings, and its first part marked as a remedy."""
    bid = sample_bid("nightstand")
    first = replace(bid.takeoff.parts[0], description="Deep box", remedy="box-fill:source")
    lines = tuple(LEFT for each in findings if each.accepted)
    takeoff = replace(bid.takeoff, parts=(first, *bid.takeoff.parts[1:]), assumptions=lines)
    made = replace(bid, findings=findings, takeoff=takeoff)
    return opened(bid_workbook(made), values=True)


def said(sheet: Any) -> list[str]:
    return [str(cell.value) for row in sheet.iter_rows() for cell in row if cell.value]


def test_a_row_holds_all_that_is_known_of_a_finding() -> None:
    rows = [[cell.value for cell in row] for row in sheets(TAKEN, ACCEPTED)["Checks"].iter_rows()]
    assert rows[6] == [
        1, "PUT RIGHT", "Wires in each box", "box-fill", "source", "needs 20.0 in3, has 18.0",
        "NEC 2023 314.16", "Fit a deeper box.",
        "Its remedy is in the takeoff, marked box-fill:source.",
    ]  # fmt: skip
    assert (rows[7][1], rows[7][8]) == ("FAIL", "Accepted in the job file: The owner replaces it.")


def test_findings_are_counted_at_the_top() -> None:
    assert "1 put right, 1 failed but accepted" in sheets(TAKEN, ACCEPTED)["Checks"]["A3"].value


def test_the_line_of_a_remedy_is_marked_on_the_takeoff() -> None:
    lines = said(sheets(TAKEN)["Takeoff"])
    assert any(line.endswith("asked for by finding box-fill:source") for line in lines)


def test_the_bid_names_what_the_checks_put_in_and_what_was_accepted() -> None:
    lines = said(sheets(TAKEN, ACCEPTED)["Bid"])
    at = lines.index("Included because of the checks")
    assert lines[at + 1 : at + 3] == ["1. ", "Wires in each box, source: deep box."]
    at = lines.index("Found, and left as it is")
    said_of_it = "Wires in each box, new: accepted: The owner replaces it."
    assert lines[at + 1 : at + 3] == ["1. ", said_of_it]


def test_what_was_accepted_stands_in_the_assumptions_with_its_finding() -> None:
    sheet = sheets(TAKEN, ACCEPTED)["Assumptions and sources"]
    rows = [[cell.value for cell in row][:5] for row in sheet.iter_rows()]
    said_of_it = "accepted: The owner replaces it."
    (found,) = (row for row in rows if said_of_it in row)
    assert found[1:] == ["Wires in each box, new", said_of_it, "no", "box-fill:new"]


def test_a_bid_that_the_checks_left_alone_says_nothing_of_them() -> None:
    lines = said(sheets()["Bid"])
    assert "Included because of the checks" not in lines
    assert "Found, and left as it is" not in lines


@pytest.mark.parametrize("sample", ["nightstand", "lounge", "printer-corner"])
def test_every_test_of_the_job_has_a_line(sample: str) -> None:
    bid = sample_bid(sample)
    lines = said(opened(bid_workbook(bid), values=True)["Checks"])
    for title, texts in safety_list(bid.survey, bid.findings):
        at = lines.index(title)
        assert lines[at + 1 : at + 1 + len(texts)] == list(texts)


def drawn(bid: Bid) -> Draft:
    return Draft.of(bid)


def test_the_tests_begin_a_page_of_their_own() -> None:
    sheet = write_checks(drawn(sample_bid("nightstand")))
    (row,) = sheet.own_pages
    assert page_breaks(sheet, LETTER)[-1] == row
    assert next(each.value for each in sheet.placed if each.row == row + 1) == TESTS


def test_the_tests_fit_one_page_whatever_the_rules_ask_for() -> None:
    asks = tuple(replace(BOX, rule=rule, verdict="unknown") for rule in rule_rows())
    sheet = write_checks(drawn(replace(sample_bid("nightstand"), findings=asks)))
    (top,) = (top for row, top in sheet.sections if row in sheet.own_pages)
    assert sum(sheet.widths.values()) <= 190
    assert sheet.frozen_pt + sheet.height_pt - top <= LETTER_PT
