"""From the values of a job file to the texts of a form's cells."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from estimator.form.cell_text import cell_text, free_text, quoted
from estimator.form.layout import OWNER_KEY, SETTINGS, Table
from estimator.form.setting_names import named_settings
from estimator.problems import InputError, Problem

LONGEST = 32_000
"""Characters that a cell of every spreadsheet program holds."""


def rows_for(table: Table, raw: Mapping[str, Any], *, comma: bool) -> list[dict[str, str]]:
    """The rows of a table's sheet, each text by its heading; one row for a single record.

    Raises:
        InputError: a text is longer than a cell holds.
    """
    rows = []
    for owner, record in _records(table.path, table.lists, raw):
        row = {table.owner: quoted(owner)} if table.owner else {}
        for column in table.columns:
            text = cell_text(column, record.get(column.key, ""), comma=comma)
            if column.key in record and text:
                row[column.heading] = text
        _check(table.sheet, row)
        rows.append(row)
    return rows


def setting_rows(raw: Mapping[str, Any]) -> list[tuple[str, str]]:
    """Every setting that the job file has of its own: its name and its value."""
    rows = [(name, free_text(value)) for name, value in named_settings(raw.get(SETTINGS[0], {}))]
    for name, text in rows:
        _check("Settings", {name: text})
    return rows


def _records(
    path: Sequence[str], lists: Sequence[bool], inside: Mapping[str, Any], owner: str = ""
) -> Iterator[tuple[str, Mapping[str, Any]]]:
    """Every record at a path, with the id of the row that it belongs to."""
    key, rest = path[0], path[1:]
    if key not in inside:
        return
    found = inside[key] if lists[0] else [inside[key]]
    for record in found:
        if not rest:
            yield owner, record
        else:
            name = str(record[OWNER_KEY]) if lists[0] else owner
            yield from _records(rest, lists[1:], record, name)


def _check(sheet: str, row: Mapping[str, str]) -> None:
    for heading, text in row.items():
        if len(text) > LONGEST:
            read = f'"{heading}" has {len(text)} characters, more than a cell holds'
            raise InputError([Problem(sheet, read, "Keep this job as a text file.")])
