"""The crew sheet as a workbook and as text: every line in its column, nothing reckoned or run."""

from __future__ import annotations

from functools import cache
from io import BytesIO
from typing import Any

import pytest
from openpyxl import load_workbook

from estimator.language import ENGLISH
from estimator.outputs.crew_book import TICKED, UNTICKED, crew_workbook
from estimator.outputs.crew_sheet import crew_sheets
from estimator.outputs.text_crew import crew_text
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, bid_of, full_bid, sample_bid
from tests.outputs.crew_made import BOTH, english, lines_of, part_texts

WIDEST = 79
LIKE_FORMULAS = {
    'title = "Nightstand outlet"': 'title = "=1+1"',
    'customer = "Sample customer"': 'customer = "+cmd"',
    'id = "strip"': 'id = "@SUM(A1)"',
    'address = "1 Example Street, Sampletown"': 'address = "-2+3"',
}
ONE, TWO = (ENGLISH,), BOTH


def book(bid: Bid, languages: Any) -> Any:
    return load_workbook(BytesIO(crew_workbook(bid, languages)))


@cache
def column(letter: str) -> list[Any]:
    return [cell.value for cell in book(full_bid(), TWO)["Crew"][letter]]


@pytest.mark.parametrize("name", NAMES)
def test_every_line_but_the_notes_is_on_the_sheet(name: str) -> None:
    sheet = book(sample_bid(name), ONE)["Crew"]
    found = [cell.value for cell in sheet["B"]]
    wanted = [line.text for line in lines_of(english(sample_bid(name))) if line.text]
    assert [text for text in wanted if found.count(text) != wanted.count(text)] == []


def test_two_languages_stand_side_by_side() -> None:
    first, second = crew_sheets(full_bid(), TWO)
    left, right = column("B"), column("C")
    for one, other in zip(part_texts(first, "runs"), part_texts(second, "runs"), strict=True):
        assert right[left.index(one)] == other


def test_what_is_to_be_done_can_be_ticked() -> None:
    ticks = [each for each in column("A") if each == UNTICKED]
    todo = [line for line in lines_of(english(full_bid())) if line.tick]
    assert len(ticks) == len(todo)
    (choice,) = {each.formula1 for each in book(full_bid(), TWO)["Crew"].data_validations
                 .dataValidation}  # fmt: skip
    assert choice == f'"{UNTICKED},{TICKED}"'


def test_the_lines_and_the_notes_are_named_tables_with_headers() -> None:
    made = book(full_bid(), TWO)
    assert made.sheetnames == ["Crew", "Crew notes"]
    (lines,) = made["Crew"].tables.values()
    heads = [each.name for each in lines.tableColumns]
    assert heads == ["Done", "English", "espa\u00f1ol", "What was found / was What found"]
    names = sorted(made["Crew notes"].tables)
    assert names == ["Crew_notes_1", "Crew_notes_2", "Crew_notes_3"]


def test_notes_leave_cells_to_write_in() -> None:
    rows = list(book(sample_bid("nightstand"), ONE)["Crew notes"].values)
    at = rows.index(("Line", "Date", "What", "Taken or put back", "Quantity", "Unit"))
    assert rows[at + 1 : at + 5] == [(line, *[None] * 5) for line in (1, 2, 3, 4)]


def test_nothing_in_it_is_a_formula() -> None:
    for bid in (bid_of("nightstand", LIKE_FORMULAS), full_bid()):
        for sheet in book(bid, TWO):
            assert [
                cell for row in sheet.iter_rows() for cell in row if cell.data_type == "f"
            ] == []


def test_text_like_a_formula_is_marked_as_text() -> None:
    made = bid_of("nightstand", {'title = "Nightstand outlet"': 'title = "x"',
                                 'scope = "Add': 'scope = "=Add'})  # fmt: skip
    cells = {cell.value: cell for cell in book(made, ONE)["Crew"]["B"]}
    said = made.survey.job.scope
    assert (said[0], cells[said].data_type, cells[said].quotePrefix) == ("=", "s", True)


def test_the_same_job_gives_the_same_workbook() -> None:
    assert crew_workbook(full_bid(), TWO) == crew_workbook(full_bid(), TWO)


@pytest.mark.parametrize("languages", [ONE, TWO], ids=["one", "both"])
@pytest.mark.parametrize("name", NAMES)
def test_it_fits_a_terminal(name: str, languages: Any) -> None:
    lines = crew_text(crew_sheets(sample_bid(name), languages))
    assert max(map(len, lines)) <= WIDEST


def test_two_languages_stand_side_by_side_in_a_terminal() -> None:
    lines = crew_text(crew_sheets(sample_bid("nightstand"), TWO))
    assert "[ ] Open and prove dead: source.       | dead: prove and Open source." in lines


def test_every_word_reaches_the_terminal() -> None:
    shown = " ".join(" ".join(crew_text((english(full_bid()),))).split())
    for line in lines_of(english(full_bid())):
        assert " ".join(line.text.split()) in shown


def test_no_control_character_reaches_the_terminal() -> None:
    bid = bid_of("nightstand", {'title = "Nightstand outlet"': 'title = "red \\u001b[31m"'})
    assert "\x1b" not in "\n".join(crew_text((english(bid),)))
