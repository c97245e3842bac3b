"""The workbook of a change order, as bytes, and written where it may be."""

from __future__ import annotations

from pathlib import Path

from estimator.outputs.change_checks_sheet import write_change_checks
from estimator.outputs.change_lines_sheet import write_costs, write_lines
from estimator.outputs.change_page import write_page
from estimator.outputs.change_price_sheet import write_change_price
from estimator.outputs.draft import Draft
from estimator.outputs.formats import date_form
from estimator.outputs.looks import DATE, MONEY
from estimator.outputs.workbook import write_file
from estimator.pricing.change_records import ChangeOrder
from estimator.saying import said

READING_ORDER = (write_page, write_lines, write_costs, write_change_price, write_change_checks)


def change_workbook(order: ChangeOrder) -> bytes:
    """Make the workbook: live formulas, each with the value that was worked out beside it.

    Raises:
        InputError: a currency that is not on file.
    """
    job, shop = order.after.survey.job, order.after.books.shop
    draft = Draft.of(order.after)
    shown = draft.formats
    sheets = tuple(write(draft, order) for write in READING_ORDER)
    title = said("Change order to bid {bid}", bid=order.before.survey.job.id)
    from estimator.outputs.book import Contents, book_bytes  # openpyxl, and only here

    return book_bytes(
        Contents(
            sheets=sheets,
            names=draft.names,
            forms={MONEY: shown.money, DATE: date_form(shop.currency, job, draft.language)},
            paper=shown.paper,
            job_id=job.id,
            title=draft.say(title),
            subject=job.title,
            creator=shop.terms.firm_name,
            dated=job.bid_date,
        )
    )


def write_change(order: ChangeOrder, path: Path, *, replace: bool) -> None:
    """Write the workbook in one step; somebody's own file is replaced only if asked.

    Raises:
        InputError: the file is not this tool's to replace, or it cannot be written.
    """
    write_file(path, lambda: change_workbook(order), replace=replace)
