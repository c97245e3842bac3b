"""The sheet and table parts of a workbook: rows, frozen titles, paper, footer, choices, tables."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.outputs.cells import Sheet, Table
from estimator.outputs.paging import page_breaks
from estimator.outputs.xlsx_values import clean_text, escape

LONGEST_FOOTER_ID = 80
"""A footer holds 255 characters in all; a job id longer than this is cut."""
_DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_MARGINS = (
    '<printOptions horizontalCentered="1"/>'
    '<pageMargins left="0.5" right="0.5" top="0.5" bottom="0.7" header="0.3" footer="0.3"/>'
)
_CHOICE_ADVICE = "Choose one of the words in the list."


def sheet_xml(sheet: Sheet, paper: int, job_id: str, *, first: bool) -> str:
    """Write one sheet; its elements stand in the order that the file format asks for.

    Args:
        sheet: written to the end.
        paper: number of the paper size, as workbooks count them.
        job_id: shown at the foot of every page.
        first: the sheet in front when the workbook is opened.
    """
    side = "landscape" if sheet.wide else "portrait"
    pages = 1 if sheet.one_page else 0
    texts = f'<ignoredError sqref="{sheet.used}" numberStoredAsText="1"/>'
    columns = "".join(
        f'<col min="{at}" max="{at}" width="{width:g}" customWidth="1"/>'
        for at, width in enumerate(sheet.widths.values(), start=1)
    )
    return (
        f'{_DECLARATION}<worksheet xmlns="{_MAIN}" xmlns:r="{_RELATIONS}">'
        '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>'
        f'<dimension ref="{sheet.used}"/>{_view(sheet, first=first)}'
        f'<sheetFormatPr defaultRowHeight="12.75"/><cols>{columns}</cols>'
        f"{sheet.data_xml()}{_choices(sheet)}{_MARGINS}"
        f'<pageSetup paperSize="{paper}" orientation="{side}" fitToWidth="1" '
        f'fitToHeight="{pages}"/>'
        f"<headerFooter><oddFooter>{_footer(job_id)}</oddFooter></headerFooter>"
        f"{_breaks(page_breaks(sheet, paper))}"
        f"<ignoredErrors>{texts}</ignoredErrors>"
        f"{_relations(sheet)}</worksheet>"
    )


def _view(sheet: Sheet, *, first: bool) -> str:
    """Hide the grid, keep the title rows in sight."""
    chosen = ' tabSelected="1"' if first else ""
    pane, rows = "", sheet.frozen_rows
    if rows:
        pane = (
            f'<pane ySplit="{rows}" topLeftCell="A{rows + 1}" activePane="bottomLeft" '
            f'state="frozen"/><selection pane="bottomLeft" activeCell="A{rows + 1}" '
            f'sqref="A{rows + 1}"/>'
        )
    return (
        f'<sheetViews><sheetView showGridLines="0"{chosen} workbookViewId="0">{pane}'
        "</sheetView></sheetViews>"
    )


def _choices(sheet: Sheet) -> str:
    """Let some cells be filled only with the words offered."""
    offers = "".join(
        f'<dataValidation type="list" showErrorMessage="1" error="{_CHOICE_ADVICE}" '
        f'sqref="{place}"><formula1>"{choice}"</formula1></dataValidation>'
        for place, choice in sheet.choices
    )
    count = len(sheet.choices)
    return f'<dataValidations count="{count}">{offers}</dataValidations>' if count else ""


def _footer(job_id: str) -> str:
    """Job, sheet and page; an ampersand begins a code in footers, so a typed one is doubled."""
    name = " ".join(clean_text(job_id).split())[:LONGEST_FOOTER_ID].replace("&", "&&")
    return escape(f"&L&8Job {name}&C&8&A&R&8Page &P of &N")


def _breaks(rows: Sequence[int]) -> str:
    """Begin a new printed page at these rows."""
    if not rows:
        return ""
    count = len(rows)
    breaks = "".join(f'<brk id="{row - 1}" max="16383" man="1"/>' for row in rows)
    return f'<rowBreaks count="{count}" manualBreakCount="{count}">{breaks}</rowBreaks>'


def _relations(sheet: Sheet) -> str:
    """Name the chart (rId1) and the tables (from rId2 on)."""
    chart = '<drawing r:id="rId1"/>' if sheet.picture else ""
    count = len(sheet.tables)
    tables = "".join(f'<tablePart r:id="rId{at + 2}"/>' for at in range(count))
    return chart + (f'<tableParts count="{count}">{tables}</tableParts>' if count else "")


def table_xml(table: Table, number: int, columns: str) -> str:
    """Write one named table.

    Args:
        table: where it stands, and its headers as its header row has them.
        number: unique in the workbook.
        columns: letters of the sheet's columns, from A on.
    """
    last = columns[len(table.headers) - 1]
    names = "".join(
        f'<tableColumn id="{at}" name="{escape(header)}"/>'
        for at, header in enumerate(table.headers, start=1)
    )
    return (
        f'{_DECLARATION}<table xmlns="{_MAIN}" id="{number}" name="{table.name}" '
        f'displayName="{table.name}" ref="A{table.first_row}:{last}{table.last_row}" '
        f'totalsRowShown="0"><tableColumns count="{len(table.headers)}">{names}</tableColumns>'
        "</table>"
    )
