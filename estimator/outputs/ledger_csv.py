"""The books' entries as CSV: plain numbers, ISO dates, and text that no program runs."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator, Sequence
from dataclasses import fields
from decimal import Decimal
from pathlib import Path

from estimator.files import replace_file
from estimator.ledger.account_map import AccountMap, need_all
from estimator.ledger.entries import Entry
from estimator.outputs.xlsx_values import clean_text
from estimator.problems import InputError, Problem
from estimator.text_files import read_bytes

COLUMNS = tuple(field.name for field in fields(Entry))
MAP_COLUMNS = ("map_name", "map_year", "map_line", "map_confidence")
_WRITE = "Choose another name, or replace it with --replace."
LINE_END = "\r\n"
# What begins a formula in some spreadsheet program, after blanks too (OWASP, CSV Injection).
_STARTS = re.compile("\\s*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20]")
# RFC 4180 asks for quotes round the first four; the others part cells in some programs.
_QUOTED = re.compile('[,"\r\n;\t|]|^\\s|\\s$')

Value = str | int | Decimal | datetime.date | None


def books_csv(entries: Sequence[Entry], account_map: AccountMap | None = None) -> bytes:
    r"""Write entries as CSV in UTF-8; the same entries give the same bytes.

    Records end with CR LF and all have the same cells. Numbers are never in quotes. Text that
    begins like a formula gets a single quote before it.

    Args:
        entries: in the order to be written.
        account_map: adds the columns of a map at the end.

    Raises:
        InputError: kinds of line that the map has no name for.

    Source: RFC 4180; OWASP, CSV Injection.
    """
    if account_map is not None:
        need_all(account_map, (entry.line_kind for entry in entries))
    heading = (*COLUMNS, *(MAP_COLUMNS if account_map is not None else ()))
    rows = (",".join(map(cell, entry_values(entry, account_map))) for entry in entries)
    return "".join(f"{line}{LINE_END}" for line in (",".join(heading), *rows)).encode()


def entry_values(entry: Entry, account_map: AccountMap | None = None) -> Iterator[Value]:
    """The values of one entry by column, those of the map last."""
    for name in COLUMNS:
        yield getattr(entry, name)
    if account_map is not None:
        named = account_map.by_kind[entry.line_kind]
        yield from (named.name, named.year, named.line, named.confidence)


def cell(value: Value) -> str:
    r"""One cell of the CSV.

    >>> cell(Decimal("-12.50")), cell('=1+2";=1+2')
    ('-12.50', '"\'=1+2"";=1+2"')
    """
    if value is None:
        return ""
    if isinstance(value, Decimal):
        return f"{value:f}"
    if isinstance(value, datetime.date):
        return value.isoformat()
    return str(value) if isinstance(value, int) else _text(value)


def _text(text: str) -> str:
    """Text made harmless: guarded where it begins like a formula, in quotes where needed."""
    clean = clean_text(text)
    guarded = f"'{clean}" if _STARTS.match(clean) else clean
    if not _QUOTED.search(guarded):
        return guarded
    doubled = guarded.replace('"', '""')
    return f'"{doubled}"'


def write_csv(path: Path, data: bytes, *, replace: bool) -> None:
    """Write an export in one step. A file that differs is replaced only if asked.

    Nothing in a CSV file tells whether somebody has changed it since.

    Raises:
        InputError: another file is there, or it cannot be written.
    """
    if not replace and path.exists():
        if path.is_file() and read_bytes(path, str(path)) == data:
            return
        read = "this file is there already, and holds something else."
        raise InputError([Problem(str(path), read, _WRITE)])
    replace_file(path, data)
