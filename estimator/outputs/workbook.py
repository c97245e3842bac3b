"""The bid workbook: eleven sheets from one bid, as bytes, and written where it may be."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

from estimator.files import replace_file
from estimator.outputs.bid_sheet import write_bid_sheet
from estimator.outputs.books_sheet import write_books
from estimator.outputs.cells import Sheet
from estimator.outputs.checks_sheet import write_checks
from estimator.outputs.compare_sheet import write_compare
from estimator.outputs.draft import Draft
from estimator.outputs.drawing_sheet import write_drawing
from estimator.outputs.formats import date_form
from estimator.outputs.labor_sheet import write_labor
from estimator.outputs.looks import DATE, MONEY
from estimator.outputs.own_file import is_own_file
from estimator.outputs.price_sheet import write_price
from estimator.outputs.range_sheet import write_range
from estimator.outputs.shopping_sheet import write_shopping
from estimator.outputs.sources_sheet import write_sources
from estimator.outputs.takeoff_sheet import write_takeoff
from estimator.pricing.records import Bid
from estimator.pricing.risk import price_range
from estimator.problems import InputError, Problem

# In reading order. Takeoff stands before Shopping list and Labor, which take its cells' places;
# all other cells are known by name.
READING_ORDER: tuple[Callable[[Draft], Sheet], ...] = (
    write_bid_sheet, write_takeoff, write_shopping, write_labor, write_price, write_checks,
    write_compare, write_books, write_drawing, write_sources,
)  # fmt: skip
_WRITE = "Choose another name, or replace it with --replace."
RANGE_AT = 5  # behind the price build-up


def bid_workbook(bid: Bid) -> bytes:
    """Make the workbook of a bid, as the bytes of an .xlsx file.

    Formulas are live and every one has the engine's value beside it. The same bid gives the
    same bytes.

    Raises:
        InputError: a currency that is not on file.
    """
    job, shop = bid.survey.job, bid.books.shop
    draft = Draft.of(bid)
    shown = draft.formats
    spread = price_range(bid)
    sheets = [write(draft) for write in READING_ORDER]
    sheets.insert(RANGE_AT, write_range(draft, spread))
    from estimator.outputs.book import Contents, book_bytes  # openpyxl, and only here

    return book_bytes(
        Contents(
            sheets=tuple(sheets),
            names=draft.names,
            forms={MONEY: shown.money, DATE: date_form(shop.currency, job, draft.language)},
            paper=shown.paper,
            job_id=job.id,
            title=f"Bid {job.id}",
            subject=job.title,
            creator=shop.terms.firm_name,
            dated=job.bid_date,
        )
    )


def write_bid(bid: Bid, path: Path, *, replace: bool) -> None:
    """Write the workbook in one step, so that nobody ever meets half of it.

    An existing file is replaced only if asked, or if it is a workbook of this tool that nobody
    has changed since: a bid that was edited in a spreadsheet program is somebody's work.

    Raises:
        InputError: the file is not this tool's to replace, or it cannot be written.
    """
    write_file(path, lambda: bid_workbook(bid), replace=replace)


def write_file(path: Path, made: Callable[[], bytes], *, replace: bool) -> None:
    """Write a workbook in one step where nothing of anybody's own is lost.

    Raises:
        InputError: the file is not this tool's to replace, or it cannot be written.
    """
    if not replace and os.path.isfile(path) and not is_own_file(path):  # noqa: PTH113 - never raises
        read = "this file is there already, and is not a workbook as this tool wrote it."
        raise InputError([Problem(str(path), read, _WRITE)])
    replace_file(path, made())
