"""From the sheets of a form to the values of a job file, and the cell of each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from estimator.form.book_in import Found, Grid, place_name
from estimator.form.cell_text import free_value, value_of
from estimator.form.layout import OWNER_KEY, Column, Table, tables
from estimator.form.typed import NotTyped, typed_text
from estimator.problems import Problem
from estimator.toml_lines import TomlPath

FACT, ANSWER = "fact", "answer"
SETTINGS_SHEET, SETTING, VALUE = "Settings", "setting", "value"
BESIDE = ("unit", "choices", "what it is", "if left blank", "what it means, and where to measure")
"""Headings of columns that say something to the reader alone."""
REFUSED = object()
"""Stands for a cell that could not be read; no record takes it."""
_HEADING_ROWS = 12
_NOT_THERE = "Write the name of one that has a row, or take this row out."


@dataclass(slots=True)
class Facts:
    """A job file's values as they are gathered.

    Attributes:
        name: the file, for problems.
        raw: values as TOML would give them. cells: the cell of each place, empty ones too.
        blank: places whose cell is empty. refused: places whose cell could not be read.
        notes: what was passed over.
        made: places that were filled before any table was read; a table may state them anew.
    """

    name: str
    comma: bool = False
    raw: dict[str, Any] = field(default_factory=dict)
    cells: dict[TomlPath, str] = field(default_factory=dict)
    blank: set[TomlPath] = field(default_factory=set)
    refused: dict[TomlPath, Problem] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    made: set[TomlPath] = field(default_factory=set)

    def problem(self, cell: str, read: str, write: str) -> Problem:
        """A problem at a cell, kept for the end."""
        made = Problem(f"{self.name}: {cell}", read, write)
        self.problems.append(made)
        return made


class Row(dict[str, Found]):
    """The filled cells of one row by heading, and where it stands."""

    def __init__(self, sheet: str, number: int, columns: Mapping[str, int]) -> None:
        self.sheet, self.number, self.columns = sheet, number, columns
        super().__init__()

    def place(self, heading: str) -> str:
        """Name the cell under a heading; the row's first where the sheet lacks the heading."""
        return place_name(self.sheet, self.number, self.columns.get(heading, 1))


def read_tables(grids: Mapping[str, Grid], facts: Facts) -> None:
    """Gather the values of every table sheet there is."""
    for table in tables():
        grid = grids.get(table.sheet.lower())
        if grid is None:
            continue
        if table.is_list:
            _read_list(table, grid, facts)
        else:
            _read_one(table, grid, facts)
    settings = grids.get(SETTINGS_SHEET.lower())
    if settings is not None:
        _read_settings(settings, facts)


def rows_of(grid: Grid, headings: list[str], facts: Facts) -> Iterator[Row]:
    """The filled rows below the headings, wherever these stand; strange columns are noted."""
    at = _heading_row(grid, headings)
    if at is None:
        if grid.cells:
            facts.notes.append(f"{grid.name}: its row of headings was not found; it was not read.")
        return
    columns = {plain(each.value): column for column, each in grid.row(at).items()}
    strange = {column: name for name, column in columns.items() if name not in BESIDE}
    used: set[int] = set()
    for number in range(at + 1, grid.last_row + 1):
        filled = grid.row(number)
        used |= set(filled)
        row = Row(grid.name, number, columns)
        row.update(
            {name: filled[columns[name]] for name in headings if columns.get(name) in filled}
        )
        if row:
            yield row
    for column in sorted(
        used - {columns[name] for name in columns if name in (*headings, *BESIDE)}
    ):
        name = strange.get(column, "")
        cell = place_name(grid.name, at, column)
        facts.notes.append(f'{cell}: the column "{name}" is not part of the form; not read.')


def plain(heading: object) -> str:
    """A heading without capitals, blanks and the mark of a needed column."""
    return " ".join(str(heading).lower().replace("_", " ").split()).removesuffix("*").strip()


def _heading_row(grid: Grid, headings: list[str]) -> int | None:
    """The row near the top that holds most of the headings."""
    known = set(headings)
    counts = {
        row: sum(plain(each.value) in known for each in grid.row(row).values())
        for row in range(1, _HEADING_ROWS + 1)
    }
    best = max(counts, key=lambda row: (counts[row], -row))
    return best if counts[best] else None


def _read_one(table: Table, grid: Grid, facts: Facts) -> None:
    """A sheet with a row for each fact of a single record."""
    columns = {each.heading: each for each in table.columns}
    for row in rows_of(grid, [FACT, ANSWER], facts):
        name = plain(row[FACT].value) if FACT in row else ""
        column = columns.get(name)
        if column is not None:
            _put(table.path, column, row, ANSWER, facts)
        elif ANSWER in row:
            facts.notes.append(f"{row.place(ANSWER)}: no fact of the form stands here; not read.")


def _read_list(table: Table, grid: Grid, facts: Facts) -> None:
    """A sheet with a row for each record."""
    headings = [each.heading for each in table.columns]
    owner = [table.owner] if table.owner else []
    for row in rows_of(grid, [*owner, *headings], facts):
        path = _row_path(table, row, facts)
        if path is None:
            continue
        facts.cells[path] = row.place(headings[0])
        _made(facts.raw, path)
        for column in table.columns:
            _put(path, column, row, column.heading, facts)


def _row_path(table: Table, row: Row, facts: Facts) -> TomlPath | None:
    """The place of a row's record; None where its owner is not on file, which is a problem."""
    path: TomlPath = ()
    for key, is_list in zip(table.path, table.lists, strict=True):
        inside = (*path, key)
        last = len([part for part in inside if isinstance(part, str)]) == len(table.path)
        if not is_list:
            path = inside
        elif last:
            path = (*inside, _number(row, inside, facts))
        else:
            at = _owner(table, row, inside, facts)
            if at is None:
                return None
            path = (*inside, at)
    if not table.lists[-1] and path in facts.cells:
        facts.problem(row.place(table.owner), f"a second row for this {table.owner}",
                      "Keep one of them.")  # fmt: skip
        return None
    return path


def _number(row: Row, path: TomlPath, facts: Facts) -> int:
    """The next place in a list, or that of the row made before that has the same name."""
    rows = _at(facts.raw, path) or []
    found = next((row[key].value for key in (OWNER_KEY, "kind") if key in row), "")
    name = str(found).strip().removesuffix(".0")
    for at, made in enumerate(rows):
        before = any(place[: len(path) + 1] == (*path, at) for place in facts.made)
        is_same = bool(name) and name in (made.get(OWNER_KEY), made.get("kind"))
        if before and is_same and (*path, at) not in facts.cells:
            return at
    return len(rows)


def _owner(table: Table, row: Row, path: TomlPath, facts: Facts) -> int | None:
    """Which row of the list at `path` a row belongs to."""
    cell = row.place(table.owner)
    try:
        name = _text(row, table.owner, facts)
    except NotTyped as error:
        facts.problem(cell, error.read, error.write)
        return None
    wanted = value_of(Column(OWNER_KEY, OWNER_KEY, "text"), name, comma=facts.comma)
    ids = [each.get(OWNER_KEY) for each in _at(facts.raw, path) or ()]
    if wanted in ids:
        return ids.index(wanted)
    read = f'there is no {table.owner} "{wanted}"' if name else f"no {table.owner} is named"
    facts.problem(cell, read, f"{_NOT_THERE} On file: {', '.join(map(str, ids)) or 'none'}.")
    return None


def _text(row: Row, heading: str, facts: Facts, column: Column | None = None) -> str:
    if heading not in row:
        return ""
    kind, unit = (column.kind, column.unit) if column else ("text", "")
    return typed_text(row[heading], kind, unit, comma=facts.comma)


def _put(path: TomlPath, column: Column, row: Row, heading: str, facts: Facts) -> None:
    """Put the value of one cell in its place."""
    place = (*path, column.key)
    if place in facts.made:
        if heading not in row:
            return
        facts.cells.pop(place, None)
    if place in facts.cells and heading in row:
        facts.problem(row.place(heading), f"a second answer, after {facts.cells[place]}",
                      "Keep one of them.")  # fmt: skip
        return
    facts.cells[place] = row.place(heading)
    try:
        text = _text(row, heading, facts, column)
    except NotTyped as error:
        facts.refused[place] = Problem(f"{facts.name}: {row.place(heading)}", error.read,
                                       error.write)  # fmt: skip
        _made(facts.raw, path)[column.key] = REFUSED
        return
    if not text:
        facts.blank.add(place)
        return
    _made(facts.raw, path)[column.key] = value_of(column, text, comma=facts.comma)


def _read_settings(grid: Grid, facts: Facts) -> None:
    """A sheet with a dotted name and a value in each row."""
    from estimator.form.setting_names import setting_path

    for row in rows_of(grid, [SETTING, VALUE], facts):
        name = str(row[SETTING].value).strip() if SETTING in row else ""
        path = setting_path(name)
        if path is None:
            facts.problem(row.place(SETTING), f'"{name}" is not the name of a setting',
                          "Write section and name with a point between.")  # fmt: skip
            continue
        _put_setting(("settings", *path), row, facts)


def _put_setting(path: TomlPath, row: Row, facts: Facts) -> None:
    facts.cells[path] = row.place(VALUE)
    try:
        text = _text(row, VALUE, facts)
    except NotTyped as error:
        facts.problem(row.place(VALUE), error.read, error.write)
        return
    inside = _made(facts.raw, path[:-1])
    if not isinstance(inside, dict) or path[-1] in inside:
        facts.problem(row.place(SETTING), "this setting stands twice", "Keep one of them.")
    elif text:
        inside[str(path[-1])] = free_value(text)


def _at(raw: Any, path: TomlPath) -> Any:  # noqa: ANN401 - whatever a job file holds
    """What stands at a place; None where nothing does."""
    for part in path:
        if isinstance(raw, dict):
            raw = raw.get(str(part))
        elif isinstance(raw, list) and isinstance(part, int) and part < len(raw):
            raw = raw[part]
        else:
            return None
    return raw


def _made(raw: dict[str, Any], path: TomlPath) -> Any:  # noqa: ANN401 - as above
    """The table at a place, made where it is not there."""
    inside: Any = raw
    for part, following in zip(path, (*path[1:], ""), strict=True):
        empty: Any = [] if isinstance(following, int) else {}
        if isinstance(inside, list) and isinstance(part, int):
            if part == len(inside):
                inside.append(empty)
            inside = inside[part]
        elif isinstance(inside, dict):
            inside = inside.setdefault(str(part), empty)
    return inside
