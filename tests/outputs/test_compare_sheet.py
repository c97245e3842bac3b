"""The Compare sheet: LibreOffice finds every stored figure, and follows what is typed."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, NamedTuple

import pytest

from estimator.outputs.workbook import bid_workbook
from estimator.pricing.compare import HIRE_ALWAYS, OWN_ALWAYS, compare
from estimator.pricing.records import Bid
from tests.outputs.spreadsheet import cells, opened, reckoned, same
from tests.outputs.test_workbook_changed import found_in, retyped
from tests.worked.compare_job import S21, own, with_compare

TWO_BIDS = """
[compare]
own_hour = 20

[[compare.tools]]
name = "=1+1"
have = "borrow"

[[compare.tools]]
name = "Lamp"
price = "unknown"

[[compare.hire]]
name = "@Firm with an odd name"
quote = 900
tax = 54.25
includes = ["materials", "wiring"]
excludes = ["patch", "paint", "clean-up", "permit"]
extras = { "+Parking" = 12.50 }
notes = "-call again"

[[compare.hire]]
name = "Firm without a quote"
quote = "unknown"
excludes = ["materials", "patch and paint"]
"""
PAINTER = (
    "\n[compare]\nown_patch_paint = 240\npermit = 30\nrework_chance_pct = 10\nrework_cost = 99\n"
)
FORBIDDEN = ("own_hours = 9.5", 'own_hours = 9.5\nforbidden = "Town code 12: licensed firms only"')


class Case(NamedTuple):
    """A workbook, what somebody types into it, and what must come out."""

    bid: Bid
    typed: Mapping[str, Any]
    found: Mapping[str, Any]


_MADE: dict[int, tuple[Bid, bytes]] = {}


def workbook(bid: Bid) -> bytes:
    """The workbook of a bid that is kept, made once."""
    if id(bid) not in _MADE:
        _MADE[id(bid)] = (bid, bid_workbook(bid))
    return _MADE[id(bid)][1]


def named(bid: Bid) -> dict[str, Any]:
    """What the engine finds, by defined name."""
    made = compare(bid)
    assert made.own is not None
    return {
        "own_hours": float(own(made).hours),
        "own_hours_high": float(made.own.hours_high.value or 0),
        "own_parts": float(made.own.parts.value or 0),
        "own_consumables": float(made.own.consumables.value or 0),
    }


def side(bid: Bid, columns: str, number: int = 1) -> list[str]:
    """Cells of a hire bid's row in the table of sides."""
    page = opened(workbook(bid))["Compare"]
    first = int(page.tables["Side_by_side"].ref.partition(":")[0].lstrip("A"))
    return [f"Compare!{column}{first + 1 + number}" for column in columns]


def amount(bid: Bid, table: str, line: int, column: str = "C") -> str:
    """A cell of a line of a table on the sheet."""
    ref = opened(workbook(bid))["Compare"].tables[table].ref
    return f"Compare!{column}{int(ref.partition(':')[0].lstrip('A')) + line}"


def of_s21(typed: Mapping[str, Any], columns: str, *found: Any) -> Case:
    bid = worked()
    return Case(bid, typed, dict(zip(side(bid, columns), found, strict=True)))


@cache
def worked() -> Bid:
    return with_compare(S21)


@cache
def cases() -> dict[str, Case]:
    corner = with_compare("", sample="printer-corner")
    worth = with_compare("\n[compare]\npace = 2\ntax_pct = 8.25\n")
    tool = amount(worked(), "Compare_tools", 1, "E")
    quote = amount(worked(), "Hire_1", 1)
    two = with_compare(TWO_BIDS, sample="printer-corner")
    return {
        # S21, worked by hand: cash, all in, better by, break-even, and the same at both ends.
        "S21": of_s21({}, "CDGHIJK", 545, 572, 1.5, 189.10, 41.64, 41.64, 41.64),
        "S21 own": of_s21({}, "E", "costs less, all in"),
        # 9.5 h x 60 + 211.90 = 781.90; 545 + 90 = 635.
        "dear hours": of_s21({"worth_of_hour_typed": 60}, "DEHI", 635, "costs more, all in",
                             146.90, 41.64),
        "dear quote": of_s21({quote: 400}, "CDH", 580, 607, 224.10),
        "borrowed": of_s21({tool: "borrow"}, "HI", 232.60, 47.08),  # (545 - 168.40) / 8
        # (545 - 211.90) / (12 - 1.5) and / (7 - 1.5).
        "range": of_s21({"own_hours_low_typed": 7, "own_hours_high_typed": 12}, "IJK",
                        41.64, 31.72, 60.56),
        "same hours": of_s21({"own_hours_typed": 1.5}, "FIJK", OWN_ALWAYS, "none", "none", "none"),
        "hiring for little": of_s21({quote: 20}, "FI", HIRE_ALWAYS, "none"),
        "quote lost": of_s21({quote: "unknown"}, "CDEHI", "unknown", "unknown",
                             "the quote is not known", "unknown", "unknown"),
        "permit lost": Case(worked(), {"own_permit_typed": None},
                            {"own_permit": "unknown", side(worked(), "H")[0]: 254.10}),
        "pace": Case(with_compare(""), {"own_pace_typed": 2, "counter_tax_typed": 0.0825},
                     named(worth)),
        "painter": Case(
            corner,
            {"patch_paint_typed": 240},
            named(with_compare(PAINTER, sample="printer-corner")),
        ),
        "hours stated": Case(with_compare(""), {"own_hours_typed": 4},
                             {"own_hours": 4, "own_hours_low": 4, "own_hours_high": 4}),
        "two bids": Case(two, {}, {}),
        "quote found": Case(two, {amount(two, "Hire_2", 1): 100}, {}),
        "forbidden": Case(with_compare(S21, FORBIDDEN), {}, {}),
        "painter stated": Case(with_compare(PAINTER, sample="printer-corner"), {}, {}),
        "routes": Case(with_compare("", sample="door-in-the-way"), {}, {}),
    }  # fmt: skip


@cache
def outcomes() -> dict[str, bytes]:
    """Every case as LibreOffice reckons it, in one start."""
    return reckoned({
        name: retyped(workbook(case.bid), case.typed) if case.typed else workbook(case.bid)
        for name, case in cases().items()
    })  # fmt: skip


NAMES = (
    "S21", "S21 own", "dear hours", "dear quote", "borrowed", "range", "same hours",
    "hiring for little", "quote lost", "permit lost", "pace", "painter", "hours stated",
    "two bids", "quote found", "forbidden", "painter stated", "routes",
)  # fmt: skip


AS_WRITTEN = ("S21", "S21 own", "two bids", "forbidden", "painter stated", "routes")


@pytest.mark.parametrize("name", NAMES)
def test_what_is_typed_comes_out_as_reckoned_by_hand(name: str) -> None:
    want = dict(cases()[name].found)
    assert found_in(outcomes()[name], want) == pytest.approx(want, abs=0.000_000_5)


@pytest.mark.parametrize("name", AS_WRITTEN)
def test_every_stored_figure_is_found_again(name: str) -> None:
    stored = {
        place: cell
        for place, cell in cells(workbook(cases()[name].bid)).items()
        if place[0] == "Compare" and cell.formula
    }
    found = cells(outcomes()[name])
    wrong = {
        place: (cell, found[place].value)
        for place, cell in stored.items()
        if not same(cell.value, found[place].value)
    }
    assert wrong == {}
    assert len(stored) > 5


def test_every_case_is_tried() -> None:
    assert set(cases()) == set(NAMES)
    assert {name for name in NAMES if not cases()[name].typed} == set(AS_WRITTEN)


def test_a_quote_found_later_makes_the_sums() -> None:
    case = cases()["quote found"]
    (cash,) = side(case.bid, "C", 2)
    assert found_in(outcomes()["quote found"], {cash: 0})[cash] > 100


def texts(bid: Bid) -> list[str]:
    page = opened(workbook(bid), values=True)["Compare"]
    return [cell.value for row in page.iter_rows() for cell in row if isinstance(cell.value, str)]


def test_where_it_is_forbidden_no_figure_of_own_work_stands_in_the_workbook() -> None:
    said = texts(cases()["forbidden"].bid)
    assert "Doing it yourself is not offered for this job. Its figures are withheld." in said
    assert "A local rule named in the job: Town code 12: licensed firms only" in said
    assert "withheld" in said and "Together: Sample electrician" in said
    book = opened(workbook(cases()["forbidden"].bid), values=True)
    numbers = [cell.value for row in book["Compare"].iter_rows() for cell in row]
    assert not {202.9, 382.9, 171, 41.64, 9.5} & {each for each in numbers if each is not None}
    assert "Own_work" not in book["Compare"].tables


def test_a_bid_that_is_stopped_withholds_it_too() -> None:
    """14 AWG copper on a 20 A breaker: NEC 240.4(D) ends at 15 A."""
    stopped = with_compare(S21, ("breaker = 15", "breaker = 20"))
    said = texts(stopped)
    assert any("breaker-wire:circuit" in text for text in said)
    assert "Do it yourself" not in said


def test_what_a_bid_says_nothing_of_is_priced_and_in_no_sum() -> None:
    bid = with_compare('\n[[compare.hire]]\nname = "Firm"\nquote = 500\n')
    said = texts(bid)
    assert "Firm: clean-up" in said and "Firm: permit" in said
    assert compare(bid).hires[0].cash == 500


def test_names_that_look_like_formulas_stay_text() -> None:
    page = opened(workbook(cases()["two bids"].bid))["Compare"]
    found = {cell.value: cell.data_type for row in page.iter_rows() for cell in row}
    assert found["=1+1"] == "s"
    assert found["@Firm with an odd name"] == "s"


def test_a_local_rule_that_looks_like_a_formula_stays_text() -> None:
    odd = ("own_hours = 9.5", 'own_hours = 9.5\nforbidden = "=1+1"')
    page = opened(workbook(with_compare(S21, odd)))["Compare"]
    assert "A local rule named in the job: =1+1" in {
        cell.value for row in page.iter_rows() for cell in row if cell.data_type == "s"
    }


def test_the_chart_shows_cash_and_all_in_of_each_column() -> None:
    (chart,) = opened(workbook(worked()))["Compare"]._charts
    assert [series.tx.v for series in chart.series] == ["Cash", "All in"]
    points = [
        [float(point.v) for point in series.val.numRef.numCache.pt] for series in chart.series
    ]
    assert points == [[202.90, 545.00], [382.90, 572.00]]


def test_ways_stand_best_first_each_with_its_reason() -> None:
    """S14, worked by hand: C, A, B."""
    page = opened(workbook(cases()["routes"].bid), values=True)["Compare"]
    rows = [[cell.value for cell in row] for row in page["A7:L9"]]
    assert [row[1] for row in rows] == ["C (this bid)", "A", "B"]
    assert [row[6] for row in rows] == ["14 ft of 14-2", "23 ft of 14-2", "53 ft of 14-2"]
    assert [row[7] for row in rows] == [0, 6, 38]
    assert [row[8] for row in rows] == [0, 1, 0]
    assert "less than A" in rows[0][4] and "more than C" in rows[1][4]
