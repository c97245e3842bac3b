"""A supplier's prices merged into the materials book: what changes, and the changed file."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

from estimator.catalog.cell_edits import change_cells
from estimator.catalog.cells import Habits
from estimator.catalog.columns import habits_of
from estimator.catalog.csv_table import Heading, read_table
from estimator.catalog.levels import Level, read_levels
from estimator.catalog.materials import KNOWN, NEEDED, NUMBERS, read_materials_text
from estimator.catalog.records import Material
from estimator.catalog.shipped import BOOK_FILES
from estimator.catalog.supplier_map import PRICE, SupplierMap, check_map
from estimator.catalog.supplier_rows import LeftRow, Offer, Offers, guarded, read_offers
from estimator.measures import to_decimal
from estimator.problems import InputError, Problem
from estimator.text_files import decode_text, read_bytes

_BOM = b"\xef\xbb\xbf"
_PRICED_ON = "priced_on"


@dataclass(frozen=True, slots=True)
class UpdatedRow:
    """A row of the book that a supplier's file changes or adds.

    Attributes:
        row: of the materials book as it will be. supplier_row: of the supplier's file.
        old: price before; None for a new row, or where nobody knew it.
        change_pct: of the old price, to one decimal; None where there is none.
    """

    row: int
    supplier_row: int
    item: str
    description: str
    unit: str
    pack_size: Decimal
    supplier: str
    old: Decimal | None
    new: Decimal
    change_pct: Decimal | None


@dataclass(frozen=True, slots=True)
class MaterialsUpdate:
    """All that a supplier's file would do to a materials book.

    Attributes:
        same_count: how many rows keep their price; their date moves on where one is known.
        left: rows of the supplier that are not taken.
        data: the file as it would be written.
    """

    path: Path
    currency: str
    changed: tuple[UpdatedRow, ...]
    added: tuple[UpdatedRow, ...]
    same_count: int
    left: tuple[LeftRow, ...]
    data: bytes


@dataclass(frozen=True, slots=True)
class _Book:
    """A materials book as text and as rows."""

    path: Path
    text: str
    marked: bool
    heading: Heading
    materials: Mapping[str, tuple[Material, ...]]
    habits: Habits

    def written(self, value: object) -> str:
        """Write a value as this book writes it."""
        if isinstance(value, Decimal):
            return f"{value:f}".replace(".", "," if self.habits.decimal_comma else ".")
        return value.isoformat() if isinstance(value, date) else str(value or "")


def materials_update(supplier_file: Path, made: SupplierMap, folder: Path) -> MaterialsUpdate:
    """Work out what a supplier's file changes; nothing is written.

    A row of the book is the same as theirs where item, supplier and pack size are (and whether
    it is a coil, where they say). Of it only the price and its date change. Others are added at
    the end. What they leave blank there is taken from the item's rows, where all say the same.

    Raises:
        InputError: everything that is wrong in the map, the file or the books.
    """
    check_map(made)
    book = _read(folder)
    offers = read_offers(supplier_file, made, book.habits)
    problems: list[Problem] = []
    pairs = list(_matched(book, offers, problems))
    if problems:
        raise InputError(problems)
    news = [offer for offer, row in pairs if row is None]
    cells = {place: text for offer, row in pairs if row for place, text in _cells(book, offer, row)}
    text = _with_rows(change_cells(book.text, book.heading.delimiter, cells), book, news)
    read = read_materials_text(text, f"{book.path} as it would be", book.habits)
    if read.problems:
        raise InputError(read.problems)
    updated = [_updated(offer, row) for offer, row in pairs if row is not None]
    last = max(one.row for rows in read.materials.values() for one in rows)
    places = range(last - len(news) + 1, last + 1)
    return MaterialsUpdate(
        book.path,
        book.habits.currency,
        tuple(one for one in updated if one.old != one.new),
        tuple(_added(book, offer, row) for offer, row in zip(news, places, strict=True)),
        sum(one.old == one.new for one in updated),
        offers.left,
        (_BOM if book.marked else b"") + text.encode(),
    )


def _read(folder: Path) -> _Book:
    path = folder / BOOK_FILES["materials"]
    name = str(path)
    if not path.exists():
        write = "Make your own books first: estimator catalog copy. Or name their folder: --books."
        raise InputError([Problem(name, "there is no such file.", write)])
    raw = read_bytes(path, name)
    shop = read_levels((Level(folder),)).shop
    expected = Habits(shop.decimal_comma, shop.units == "metric", shop.currency)
    text = decode_text(raw, name)
    read = read_materials_text(text, name, expected)
    if read.problems:
        raise InputError(read.problems)
    table = read_table(text, name, KNOWN, NEEDED)
    numbers = (cell for key in NUMBERS for cell in table.column(key))
    habits = habits_of(expected, table.heading, numbers, table.column(_PRICED_ON))
    return _Book(path, text, raw.startswith(_BOM), table.heading, read.materials, habits)


def _matched(
    book: _Book, offers: Offers, problems: list[Problem]
) -> Iterator[tuple[Offer, Material | None]]:
    """Each offer with the row of the book that it is, or None for a new one."""
    seen: dict[object, int] = {}
    for offer in offers.offers:
        known = book.materials.get(offer.item, ())
        rows = [row for row in known if _is_same(row, offer.values)]
        said = _fault(offer, known, rows)
        key = (
            rows[0].row
            if rows
            else (offer.item, *map(offer.values.get, ("supplier", "pack_size", "sold_as")))
        )
        if said is None and seen.setdefault(key, offer.row) != offer.row:
            said = ("item", f"{offer.item} in this pack stands already in row {seen[key]}.",
                    "Keep one of the two rows, or map a column that tells them apart.")  # fmt: skip
        if said is None:
            yield offer, rows[0] if rows else None
        else:
            problems.append(offers.problem(offer, *said))


def _is_same(row: Material, values: Mapping[str, Any]) -> bool:
    supplier = str(values.get("supplier", "")).casefold()
    size, sold = values.get("pack_size"), values.get("sold_as")
    return (
        row.supplier.casefold() == supplier
        and (size is None or size == row.pack_size)
        and (not sold or sold == row.properties.get("sold_as", ""))
    )


def _fault(
    offer: Offer, known: Sequence[Material], rows: Sequence[Material]
) -> tuple[str, str, str] | None:
    """Say why an offer cannot be taken: our column, what is so, what to do."""
    unit = offer.values.get("unit")
    if guarded(offer.item) != offer.item:
        return "item", f"{offer.item} begins like a formula.", "Use another key."
    if known and unit and unit != known[0].unit:
        read = f"{offer.item} is in {unit} here and in {known[0].unit} in your book."
        return "unit", read, f"Give pack sizes in {known[0].unit}."
    if len(rows) > 1:
        numbers = ", ".join(str(one.row) for one in rows)
        read = f"{offer.item} of this supplier stands in rows {numbers}."
        return "item", read, "Map a column to pack_size (and to sold_as) to tell which is meant."
    if not rows and "pack_size" not in offer.values:
        read = f"{offer.item} is new, and nothing says how much one pack holds."
        return "pack_size", read, "Map a column to pack_size, or fix it."
    if not known and not unit:
        read = f"{offer.item} is new, and nothing says its unit."
        return "unit", read, "Map a column to unit, or fix it."
    return None


def _cells(book: _Book, offer: Offer, row: Material) -> Iterator[tuple[tuple[int, int], str]]:
    """The cells of one row that differ."""
    keys = book.heading.keys
    if row.pack_price != offer.values[PRICE]:
        yield (row.row, keys.index(PRICE)), book.written(offer.values[PRICE])
    dated = offer.values.get(_PRICED_ON)
    if dated is not None and _PRICED_ON in keys and dated != row.priced_on:
        yield (row.row, keys.index(_PRICED_ON)), book.written(dated)


def _with_rows(text: str, book: _Book, news: Sequence[Offer]) -> str:
    """Add rows at the end, in the book's columns, delimiter and line ends."""
    if not news:
        return text
    end = "\r\n" if "\r\n" in text else "\n"
    made = io.StringIO(newline="")
    writer = csv.writer(made, delimiter=book.heading.delimiter, lineterminator=end)
    for offer in news:
        values = _filled(book, offer)
        writer.writerow([book.written(values.get(key)) for key in book.heading.keys])
    return text + ("" if text.endswith(("\n", "\r")) else end) + made.getvalue()


def _filled(book: _Book, offer: Offer) -> dict[str, Any]:
    """The values of a new row; what is blank is what all rows of the item say."""
    known = [_cells_of(row) for row in book.materials.get(offer.item, ())]
    values = {key: value for key, value in offer.values.items() if value not in (None, "")}
    for key in KNOWN:
        said = {each.get(key, "") for each in known}
        if key not in values and len(said) == 1 and key not in (_PRICED_ON, "source"):
            values[key] = said.pop()
    return {"description": offer.item, **values}


def _cells_of(row: Material) -> dict[str, Any]:
    fixed = ("description", "unit", "aisle", "tax_class")
    return {key: getattr(row, key) for key in fixed} | dict(row.properties)


def _updated(offer: Offer, row: Material) -> UpdatedRow:
    old, new = row.pack_price, offer.values[PRICE]
    pct = to_decimal(Fraction(new - old) * 100 / Fraction(old), 1) if old else None
    return UpdatedRow(
        row.row, offer.row, row.item, row.description, row.unit, row.pack_size, row.supplier,
        old, new, pct,
    )  # fmt: skip


def _added(book: _Book, offer: Offer, row: int) -> UpdatedRow:
    values = _filled(book, offer)
    return UpdatedRow(
        row, offer.row, offer.item, values["description"], values["unit"], values["pack_size"],
        values.get("supplier", ""), None, values[PRICE], None,
    )  # fmt: skip
