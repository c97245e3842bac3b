"""The Range sheet: how far hours and total may come out otherwise, and what drives it."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, line_number, number, words
from estimator.outputs.charts import Bars, Picture
from estimator.outputs.draft import Draft
from estimator.outputs.range_inputs import (
    driver_name,
    own_hours,
    write_materials,
    write_risks,
    write_rules,
    write_tasks,
)
from estimator.outputs.range_words import (
    about_p,
    how_drawn,
    kind_words,
    likely_line,
    reading_line,
)
from estimator.outputs.text_layout import number as shown
from estimator.pricing.risk_records import PriceRange

NAME = "Range"
WIDTHS = "10 46 11 11 11 11 8 8 8 9 9 11 11"
ADVICE = (
    "Percentiles, shares and figures of the draws are stored: run the tool again to draw anew. "
    "All else follows from other cells."
)
LEVEL_HEADERS = ("Percentile", "How to read it", "Hours", "Total", "Above the bid")
SUM_HEADERS = ("Line", "What", "Hours", "Total", "Draws within", "Above the bid")
DRIVER_HEADERS = ("Line", "What drives the spread", "Kind", "Its part", "Moves the cost by")
DRIVER_NOTE = (
    "Its part: of the variance of labor and materials; the parts of all inputs add up to 100 %. "
    "Moves the cost by: from its low to its high, labor at its rate and materials at cost."
)
_CHART_ROWS, _CHART_CM = 18, (8, 24)


def write_range(draft: Draft, spread: PriceRange) -> Sheet:
    """Write the sheet; the ranges of hours and the sums by closed form are live."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Range: how far hours and total may come out otherwise", ADVICE)
    sheet.skip()
    _say(sheet, reading_line(), likely_line(spread), how_drawn(spread), *spread.notes)
    sheet.section("Hours and total that are not exceeded")
    made = sheet.table("Range_levels", LEVEL_HEADERS, _levels(draft, sheet, spread))
    _picture(draft, sheet, spread, (made.first_row + 1, made.last_row))
    sheet.section("The bid among the draws")
    sheet.table("Range_sums", SUM_HEADERS, _sums(draft, sheet, spread))
    sheet.section("What drives the spread, most first")
    _say(sheet, DRIVER_NOTE)
    sheet.table("Range_drivers", DRIVER_HEADERS, _drivers(draft, spread))
    write_rules(draft, sheet, spread)
    write_tasks(draft, sheet, spread)
    write_risks(draft, sheet, spread)
    write_materials(draft, sheet, spread)
    return sheet


def _say(sheet: Sheet, *texts: str) -> None:
    """Sentences in the wide column."""
    for text in texts:
        sheet.put([None, words(text, looks.PLAIN)])


def _hours(value: Decimal) -> Cell:
    """Hours read off the draws."""
    return number(value, looks.figure(looks.HOURS))


def _amount(value: Decimal) -> Cell:
    """Money read off the draws."""
    return number(value, looks.figure(looks.MONEY))


def _share(pct: Decimal) -> Cell:
    return number(pct.scaleb(-2), looks.figure(looks.PERCENT))


def _above(draft: Draft, sheet: Sheet, spread: PriceRange, total: Decimal) -> Cell:
    """How far a total of this row lies above the bid."""
    return draft.money(f"D{sheet.next_row}-bid_total", total - spread.bid_total)


def _levels(draft: Draft, sheet: Sheet, spread: PriceRange) -> Iterator[Row]:
    for level in spread.levels:
        read = f"{level.pct} of 100 such jobs would not exceed it"
        above = _above(draft, sheet, spread, level.total)
        name = words(f"P{level.pct}", looks.STRONG)
        yield [name, words(read), _hours(level.hours), _amount(level.total), above]


def _sums(draft: Draft, sheet: Sheet, spread: PriceRange) -> Iterator[Row]:
    """The bid, the confidence asked for, the likely sum, and means and spreads both ways."""
    bid, empty = draft.bid, words("")
    charged = formula("hours_charged", bid.price.hours_charged, looks.figure(looks.HOURS))
    total = draft.money("bid_total", spread.bid_total)
    yield [line_number(1), words("The bid"), charged, total, _share(spread.bid_holds_pct), empty]
    enough = f"What is enough in {shown(spread.confidence_pct)} of 100 jobs"
    above = _above(draft, sheet, spread, spread.at_confidence)
    yield [
        line_number(2), words(enough), empty, _amount(spread.at_confidence),
        _share(spread.confidence_pct), above,
    ]  # fmt: skip
    likely = f"Likely values added up: at about {about_p(spread.likely_total_at_pct)}"
    above = _above(draft, sheet, spread, spread.likely_total)
    yield [
        line_number(3), words(likely), own_hours(spread), _amount(spread.likely_total),
        _share(spread.likely_total_at_pct), above,
    ]  # fmt: skip
    rows: tuple[tuple[str, Cell, Cell], ...] = (
        ("Mean of the draws", _hours(spread.hours.mean), _amount(spread.total.mean)),
        ("Standard deviation of the draws", _hours(spread.hours.sd), _amount(spread.total.sd)),
        ("Mean of the hours, without draws", _live("range_mean", spread.hours_mean), empty),
        ("Standard deviation, without draws", _live("range_sd", spread.hours_sd), empty),
    )
    for at, (what, hours, money) in enumerate(rows, start=4):
        yield [line_number(at), words(what), hours, money, empty, empty]


def _live(name: str, value: Decimal) -> Cell:
    return formula(name, value, looks.figure(looks.HOURS))


def _drivers(draft: Draft, spread: PriceRange) -> Iterator[Row]:
    for at, each in enumerate(spread.drivers, start=1):
        swing = draft.money(driver_name(at), each.swing)
        yield [
            line_number(at), words(each.name), words(kind_words(each.kind)),
            _share(each.share_pct), swing,
        ]  # fmt: skip


def _picture(draft: Draft, sheet: Sheet, spread: PriceRange, rows: tuple[int, int]) -> None:
    """The totals that are not exceeded, as bars."""
    sheet.begin_block()
    sheet.skip()
    totals = tuple(level.total for level in spread.levels)
    bars = Bars("Total", sheet.span("D", *rows), totals)
    labels = (sheet.span("A", *rows), tuple(f"P{level.pct}" for level in spread.levels))
    title, form = "Total that is not exceeded", draft.formats.money
    sheet.picture = Picture(title, labels, (bars,), form, _CHART_CM, sheet.next_row)
    sheet.skip(_CHART_ROWS)
