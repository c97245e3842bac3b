"""The crew sheet as a workbook of its own: lines to tick, and a sheet to write in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.language import CALLED, Language
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, blank, line_number, words
from estimator.outputs.crew_records import CrewSheet
from estimator.outputs.crew_sheet import crew_sheets
from estimator.outputs.formats import formats
from estimator.outputs.looks import DATE, MONEY
from estimator.pricing.records import Bid
from estimator.saying import said

NAME = said("Crew")
NOTES = said("Crew notes")
UNTICKED, TICKED = "\u2610", "\u2611"
_TICKS = f"{UNTICKED},{TICKED}"
_DONE, _FOUND, _LINE = said("Done"), said("What was found"), said("Line")
_WIDTHS = {1: (6.0, 80.0, 24.0), 2: (6.0, 46.0, 46.0, 24.0)}
_NOTE_WIDTHS = (6.0, 30.0, 20.0, 20.0, 20.0, 16.0)
_LETTERS = "ABCDEF"
_APART = " / "


def crew_workbook(bid: Bid, languages: Sequence[Language]) -> bytes:
    """Make the workbook, as the bytes of an .xlsx file: no formula, and nothing of money.

    Raises:
        InputError: a currency that is not on file, which says the paper to print on.
    """
    job, shop = bid.survey.job, bid.books.shop
    sheets = crew_sheets(bid, languages)
    shown = formats(shop.currency, job.locale, job.country)
    from estimator.outputs.book import Contents, book_bytes  # openpyxl, and only here

    return book_bytes(
        Contents(
            sheets=(_lines(sheets, languages), _notes(sheets, languages)),
            names={},
            forms={MONEY: shown.money, DATE: shown.date},
            paper=shown.paper,
            job_id=job.id,
            title=sheets[0].title,
            subject=job.title,
            creator=shop.terms.firm_name,
            dated=job.bid_date,
            language=sheets[0].language,
        )
    )


def _lines(sheets: Sequence[CrewSheet], languages: Sequence[Language]) -> Sheet:
    """All lines, a column for each language; the tables to write in are on the other sheet."""
    widths = _WIDTHS[len(sheets)]
    sheet = Sheet(languages[0].say(NAME), dict(zip(_LETTERS, widths, strict=False)), wide=False)
    sheet.begin_block()
    sheet.title(_joined([each.title for each in sheets]))
    for heads in zip(*(each.head for each in sheets), strict=True):
        sheet.note(_joined(heads))
    sheet.freeze()
    headers = (
        _said(_DONE, languages),
        *(CALLED[each.language] for each in sheets),
        _said(_FOUND, languages),
    )
    sheet.table("Crew_lines", headers, _rows(sheet, sheets))
    return sheet


def _rows(sheet: Sheet, sheets: Sequence[CrewSheet]) -> Iterator[Row]:
    for parts in zip(*(each.parts[:-1] for each in sheets), strict=True):
        sheet.begin_block()
        yield [blank(), *(words(part.title, looks.SECTION) for part in parts), blank(looks.RULE)]
        for groups in zip(*(part.groups for part in parts), strict=True):
            if groups[0].title:
                yield [blank(), *(words(group.title, looks.LABEL) for group in groups), blank()]
            for lines in zip(*(group.lines for group in groups), strict=True):
                yield [
                    _tick(sheet, tick=lines[0].tick),
                    *(words(each.text) for each in lines),
                    blank(looks.ENTRY_WORD if lines[0].write else looks.TEXT),
                ]


def _tick(sheet: Sheet, *, tick: bool) -> Cell:
    """A box to tick from a list of two."""
    if not tick:
        return blank()
    sheet.choices.append((f"A{sheet.next_row}", _TICKS))
    return words(UNTICKED, looks.ENTRY_WORD)


def _notes(sheets: Sequence[CrewSheet], languages: Sequence[Language]) -> Sheet:
    """Tables to write in, each row with its number."""
    sheet = Sheet(languages[0].say(NOTES), dict(zip(_LETTERS, _NOTE_WIDTHS, strict=True)))
    last = [each.parts[-1] for each in sheets]
    sheet.begin_block()
    sheet.title(_joined([part.title for part in last]))
    sheet.freeze()
    line, found = _said(_LINE, languages), _said(_FOUND, languages)
    for number, groups in enumerate(zip(*(part.groups for part in last), strict=True), start=1):
        sheet.section(_joined([group.title for group in groups]))
        heads = [_joined(texts) for texts in zip(*(group.headers for group in groups), strict=True)]
        rows: list[Row] = [
            [_entry(_joined(texts)) for texts in zip(*(each.cells for each in row), strict=True)]
            for row in zip(*(group.rows for group in groups), strict=True)
        ]
        rows = rows or [[_entry("")] for _ in groups[0].lines]
        numbered = ([line_number(at), *row] for at, row in enumerate(rows, start=1))
        sheet.table(f"Crew_notes_{number}", (line, *(heads or [found])), numbered)
    return sheet


def _entry(text: str) -> Cell:
    return words(text) if text else blank(looks.ENTRY_WORD)


def _joined(texts: Sequence[str]) -> str:
    """What is said in each language, one behind the other; once where it is the same."""
    return _APART.join(dict.fromkeys(texts))


def _said(text: str, languages: Sequence[Language]) -> str:
    return _joined([language.say(text) for language in languages])
