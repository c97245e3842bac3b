"""How a supplier's file is read: which of their columns is which of ours, kept as TOML."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Any

from estimator.catalog.materials import KNOWN
from estimator.problems import InputError, Problem
from estimator.text_files import read_text
from estimator.toml_files import read_toml, toml_place
from estimator.toml_lines import TomlPath

NUMBER = "number"
"""Their number of an article; it finds the item in `items` and is not written to the book."""
OURS = (NUMBER, *dict.fromkeys(KNOWN))
PRICE = "pack_price"
_TEXTS = ("supplier",)
_TABLES = ("columns", "fixed", "items")


@dataclass(frozen=True, slots=True)
class SupplierMap:
    """A column map.

    Attributes:
        columns: their heading -> our column, or "number".
        fixed: our column -> what every row holds.
        items: their number or description -> our item key.
        priced_on: the day the prices are from; None where a column tells, or nobody knows.
        name: what problems call the map. text: its file; None where it was typed as options.
    """

    columns: Mapping[str, str] = field(default_factory=dict)
    fixed: Mapping[str, str] = field(default_factory=dict)
    items: Mapping[str, str] = field(default_factory=dict)
    supplier: str = ""
    priced_on: date | None = None
    name: str = "the options"
    text: str | None = None

    def where(self, *path: str) -> str:
        """Name a place of the map."""
        return toml_place(self.name, self.text, path)


def read_map(path: Path) -> SupplierMap:
    """Read a map from its file.

    Raises:
        InputError: with everything in it that is not as it should be.
    """
    name = str(path)
    text = read_text(path, name)
    raw = read_toml(text, name)
    problems = [
        Problem(toml_place(name, text, place), read, write) for place, read, write in _faults(raw)
    ]
    if problems:
        raise InputError(problems)
    tables = {key: raw.get(key, {}) for key in _TABLES}
    return SupplierMap(
        **tables, supplier=raw.get("supplier", ""), priced_on=raw.get("priced_on"),
        name=name, text=text,
    )  # fmt: skip


def laid_over(under: SupplierMap, over: SupplierMap) -> SupplierMap:
    """Lay what was typed as options over a map that was read."""
    return SupplierMap(
        columns={**under.columns, **over.columns},
        fixed={**under.fixed, **over.fixed},
        items={**under.items, **over.items},
        supplier=over.supplier or under.supplier,
        priced_on=over.priced_on or under.priced_on,
        name=under.name if under.text is not None else over.name,
        text=under.text,
    )


def check_map(made: SupplierMap) -> None:
    """See that a map can be used, before any supplier's file is read with it.

    Raises:
        InputError: no supplier, no column for the price or for the item, a column given twice.
    """
    problems = list(_lacking(made))
    if problems:
        raise InputError(problems)


def _lacking(made: SupplierMap) -> Iterator[Problem]:
    given = [*made.columns.values(), *made.fixed]
    if not made.supplier and "supplier" not in given:
        yield Problem(made.name, "the supplier is missing.", 'Write supplier = "their name".')
    if PRICE not in made.columns.values():
        write = 'Write "their heading" = "pack_price" under [columns].'
        yield Problem(made.name, "no column holds the price of a pack.", write)
    if not {"item", NUMBER, "description"} & {*made.columns.values()}:
        write = "Map one of their columns to number, to description or to item."
        yield Problem(made.name, "no column tells which item a row is.", write)
    for theirs, ours in made.columns.items():
        if ours not in OURS:
            yield _no_column(made.where("columns", theirs), ours)
        elif given.count(ours) > 1:
            read = f"our column {ours} is given more than once."
            yield Problem(made.where("columns", theirs), read, "Keep one of them.")
    for ours in made.fixed:
        if ours not in OURS[1:]:
            yield _no_column(made.where("fixed", ours), ours)


def _no_column(where: str, ours: str) -> Problem:
    return Problem(where, f'"{ours}" is no column of ours.', f"Use one of {', '.join(OURS)}.")


def _faults(raw: Mapping[str, Any]) -> Iterator[tuple[TomlPath, str, str]]:
    """Find what is no part of a map, or of another kind than it should be."""
    for key, value in raw.items():
        if key in _TABLES:
            yield from _table_faults(key, value)
        elif key == "priced_on":
            if type(value) is not date:
                yield (key,), "is no date.", "Write it without quotes, as 2026-11-30."
        elif key not in _TEXTS:
            known = ", ".join((*_TEXTS, "priced_on", *_TABLES))
            yield (key,), "is no part of a column map.", f"Use one of {known}."
        elif not isinstance(value, str):
            yield (key,), "is no text.", f'Write {key} = "text", in quotes.'


def _table_faults(table: str, value: object) -> Iterator[tuple[TomlPath, str, str]]:
    if not isinstance(value, Mapping):
        yield (table,), "is no table.", f"Write [{table}] on a line of its own."
        return
    for name, text in value.items():
        if not isinstance(text, str):
            write = 'Write both sides in quotes: "theirs" = "ours".'
            yield (table, name), "is no text.", write


def map_text(made: SupplierMap) -> str:
    """Write a map as the TOML file that `read_map` reads."""
    lines = ["# Which of a supplier's columns is which of ours. Read by: estimator catalog update"]
    if made.supplier:
        lines.append(f"supplier = {_quoted(made.supplier)}")
    if made.priced_on is not None:
        lines.append(f"priced_on = {made.priced_on.isoformat()}")
    for name, about, table in (
        ("columns", "their heading = our column", made.columns),
        ("fixed", "our column = what every row holds", made.fixed),
        ("items", "their number or description = our item", made.items),
    ):
        if table:
            rows = [f"{_quoted(key)} = {_quoted(value)}" for key, value in table.items()]
            lines += ["", f"[{name}]  # {about}", *rows]
    return "\n".join([*lines, ""])


def _quoted(text: str) -> str:
    """Write a text as TOML does; JSON has the same marks, but for the delete character."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
