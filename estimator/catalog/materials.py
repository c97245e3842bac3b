"""The materials book: one row for each way to buy an item."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from estimator.catalog import cells
from estimator.catalog.cells import CellReader, Habits
from estimator.catalog.columns import Fault, Values, fault_at, habits_of, read_rows
from estimator.catalog.csv_table import Heading, Table, read_table
from estimator.catalog.records import Material
from estimator.problems import Problem
from estimator.text_files import read_text

NEEDED = ("item", "unit", "pack_size", "pack_price")
TEXTS = ("description", "supplier", "aisle", "source")
NUMBERS = ("pack_size", "pack_price", "volume_in3", "volume_ml", "depth_in", "depth_mm", "gangs")
FIXED = (*NEEDED, *TEXTS, "tax_class", "priced_on")
KNOWN = (*FIXED, *NUMBERS[2:], "sold_as", "clamps", "metal", "mount", "holds")
LARGE_BYTES = 5_000_000

_DEFAULTS: Values = {
    "description": "", "supplier": "", "aisle": "", "source": "", "tax_class": "goods",
    "priced_on": None,
}  # fmt: skip
_CABLE = "cable-"
ONE_PIECE = ("coil", "length")
_SAY_SOLD = "Write coil where a pack is one piece, or length where any number of them is cut."


class MaterialsRead(NamedTuple):
    """A materials book as read.

    Attributes:
        materials: all ways to buy an item, by item key, in file order.
        problems: what is wrong, in row order; its rows are not in `materials`.
        large: the file was read the way of large files, where wrong rows are left out and the
            others serve.
    """

    materials: Mapping[str, tuple[Material, ...]]
    problems: tuple[Problem, ...]
    large: bool = False


def read_materials(
    path: Path,
    wanted: Collection[str] | None = None,
    *,
    expected: Habits | None = None,
    name: str | None = None,
) -> MaterialsRead:
    """Read a materials book of any size.

    Args:
        path: a CSV file.
        wanted: item keys to keep; rows of other items are not looked at. None keeps all.
        expected: how the shop writes decimals and dates, for files that do not show it.
        name: what to call the file in problems; its own name where None.

    Raises:
        InputError: no such file, not text, or headings that cannot be used.
    """
    shown, habits = name or path.name, expected or Habits()
    if path.is_file() and path.stat().st_size > LARGE_BYTES:
        from estimator.catalog.large import read_large  # pandas, and only here

        return read_large(path, shown, wanted, habits)
    return read_materials_text(read_text(path, shown), shown, habits, wanted)


def read_materials_text(
    text: str, name: str, expected: Habits, wanted: Collection[str] | None = None
) -> MaterialsRead:
    """Read the text of a materials book; as `read_materials`, which reads the file."""
    table = read_table(text, name, KNOWN, NEEDED)
    return _read_small(table if wanted is None else _only(table, wanted), expected)


def material_readers(habits: Habits) -> dict[str, CellReader]:
    """Give the reader of each column that is not plain text."""
    yes_no = cells.choice("yes", "no", empty="")
    measures = {key: cells.number_text(habits, thing="a number") for key in NUMBERS[2:]}
    return measures | {
        "item": cells.item_key,
        "unit": cells.unit(*cells.MATERIAL_UNITS),
        "pack_size": cells.amount(habits, thing="a pack size", above_zero=True),
        "pack_price": cells.price(habits),
        "tax_class": cells.choice("goods", "exempt", empty="goods"),
        "priced_on": cells.day(habits),
        "sold_as": cells.choice("coil", "length", "pack", empty=""),
        "clamps": yes_no,
        "metal": yes_no,
        "mount": cells.choice(*cells.MOUNTS, empty=""),
        "holds": cells.holds,
    }


def make_material(values: Values, row: int) -> Material:
    """Make the record of one row from its values by column key."""
    given = {**_DEFAULTS, **values}
    return Material(
        **{key: given[key] for key in FIXED if key != "description"},
        description=given["description"] or given["item"],
        properties={key: text for key, text in values.items() if text and key not in FIXED},
        row=row,
    )


def _only(table: Table, wanted: Collection[str]) -> Table:
    """Keep the rows of wanted items."""
    place = table.heading.keys.index("item")
    rows = tuple(row for row in table.rows if row[1][place].lower() in wanted)
    return Table(table.name, table.heading, rows)


def _read_small(table: Table, expected: Habits) -> MaterialsRead:
    """Read a table that is in memory."""
    heading = table.heading
    numbers = (text for key in NUMBERS for text in table.column(key))
    habits = habits_of(expected, heading, numbers, table.column("priced_on"))
    faults: list[Fault] = []
    made = [make_material(values, row) for row, values in
            read_rows(table, material_readers(habits), faults)]  # fmt: skip
    for find in (_unsaid, _mixed_units, _duplicates):
        found = list(find(made, heading))
        wrong = {fault.row for fault in found}
        made = [one for one in made if one.row not in wrong]
        faults += found
    problems = [fault.problem(table.name, heading) for fault in sorted(faults)]
    return MaterialsRead(_by_item(made), tuple(problems))


def _by_item(made: Iterable[Material]) -> dict[str, tuple[Material, ...]]:
    """Group by item key, in file order."""
    groups: dict[str, list[Material]] = {}
    for material in made:
        groups.setdefault(material.item, []).append(material)
    return {item: tuple(group) for item, group in groups.items()}


def _duplicates(made: Iterable[Material], heading: Heading) -> Iterator[Fault]:
    """Find rows that sell the same pack of the same item at the same supplier."""
    first: dict[object, int] = {}
    for one in made:
        sold_as = one.properties.get("sold_as", "")
        row = first.setdefault((one.item, one.supplier, one.pack_size, sold_as), one.row)
        if row != one.row:
            yield duplicate(heading, one.row, one.item, row)


def duplicate(heading: Heading, row: int, item: str, first_row: int) -> Fault:
    """Say that a row repeats an earlier one."""
    read = f"{item} in this pack size, from this supplier, stands already in row {first_row}."
    return fault_at(heading, row, "item", read, "Keep one of the two rows.")


def _mixed_units(made: Iterable[Material], heading: Heading) -> Iterator[Fault]:
    """Find items that are sold in one unit here and in another there."""
    first: dict[str, Material] = {}
    for one in made:
        other = first.setdefault(one.item, one)
        if other.unit != one.unit:
            yield mixed_unit(heading, one, other)


def mixed_unit(heading: Heading, one: Material, other: Material) -> Fault:
    """Say that an item has two units."""
    read = f"{one.item} is in {one.unit} here and in {other.unit} in row {other.row}."
    write = f"Turn the pack size into {other.unit}, so that all its rows have one unit."
    return fault_at(heading, one.row, "unit", read, write)


def is_cable(item: object) -> bool:
    """Tell whether an item key is one of a cable; a refused cell is none."""
    return isinstance(item, str) and item.startswith(_CABLE)


def _unsaid(made: Iterable[Material], heading: Heading) -> Iterator[Fault]:
    """Find cable rows that do not say whether a pack is one piece."""
    for one in made:
        by_length = is_cable(one.item) and one.unit != "ea"
        if by_length and one.properties.get("sold_as") not in ONE_PIECE:
            yield unsaid(heading, one)


def unsaid(heading: Heading, one: Material) -> Fault:
    """Say that a cable row has no word in the column sold_as."""
    read = f"{one.item} is sold as a coil or cut to length, and this row does not say which."
    if "sold_as" not in heading.keys:
        read = f"{read[:-1]} (there is no column sold_as)."
    return fault_at(heading, one.row, "sold_as", read, _SAY_SOLD)
