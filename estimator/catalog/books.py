"""Reads the four books of a shop together, so that all problems come at once."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import NamedTuple, TypeVar

from estimator.catalog.cancellation import with_cancellation
from estimator.catalog.cells import Habits
from estimator.catalog.labor import AccountsRead, LaborRead, read_accounts, read_labor
from estimator.catalog.materials import MaterialsRead, read_materials
from estimator.catalog.records import Books
from estimator.catalog.setting_keys import CONDITIONS
from estimator.catalog.shipped import BOOK_FILES, Units, shipped_catalogs
from estimator.catalog.shop import Layer, read_shop
from estimator.problems import InputError, Problem
from estimator.settings import Shop
from estimator.text_files import read_text
from estimator.toml_files import read_toml

_Read = TypeVar("_Read", MaterialsRead, LaborRead, AccountsRead)

_SHIPPED = "shipped"
SHIPPED_SHOP = f"{_SHIPPED} shop.toml"


class BookFile(NamedTuple):
    """A file that holds a book, and what to call it; empty for its folder and its own name."""

    path: Path
    called: str = ""

    @property
    def name(self) -> str:
        """What problems and sheets call it."""
        return self.called or shown_name(self.path)


def read_books(
    folder: Path,
    *,
    layers: Sequence[Layer] = (),
    files: Mapping[str, Path | BookFile] | None = None,
    wanted: Collection[str] | None = None,
    below: Sequence[BookFile] = (),
    units: Units = "us",
) -> Books:
    """Read the books in a folder.

    Settings come from the shipped shop.toml, then those of `below` laid over it, then the
    folder's shop.toml, then `layers`. A shop.toml may hold only what differs. A row that is wrong
    is an error, except in a large materials file: there it is left out and kept in
    `Books.left_out`.

    Args:
        folder: holds materials.csv, labor.csv, shop.toml and accounts.csv.
        layers: settings laid over those of the books, such as a job's.
        files: other files to read in the place of a book: {"materials": Path("supplier.csv")}.
        wanted: item keys to keep; None keeps all.
        below: other files of settings that lie under the folder's, the lowest first.
        units: of the shipped settings, where no file of settings names any.

    Raises:
        InputError: everything that is wrong in any of the books.
    """
    found = {book: BookFile(folder / name) for book, name in BOOK_FILES.items()}
    for book, file in (files or {}).items():
        found[book] = file if isinstance(file, BookFile) else BookFile(file)
    paths = {book: file.path for book, file in found.items()}
    names = {book: file.name for book, file in found.items()}
    problems: list[Problem] = []
    shop = _shop((*below, found["shop"]), layers, units, problems)
    habits = _habits(shop)
    materials = _or_empty(
        lambda: read_materials(
            paths["materials"], wanted, expected=habits, name=names["materials"]
        ),
        MaterialsRead({}, ()),
    )
    labor = _or_empty(
        lambda: read_labor(*_text(paths, names, "labor"), habits, CONDITIONS), LaborRead({}, ())
    )
    accounts = _or_empty(
        lambda: read_accounts(*_text(paths, names, "accounts")), AccountsRead({}, ())
    )
    left_out = materials.problems if materials.large else ()
    problems += [*(() if left_out else materials.problems), *labor.problems, *accounts.problems]
    if problems or shop is None:
        raise InputError(problems)
    return Books(
        materials.materials, labor.labor, accounts.accounts, shop, names, left_out,
    )  # fmt: skip


def shown_name(path: Path) -> str:
    """Name a file by its folder and itself, "mine/materials.csv"; or say that it is shipped."""
    if path.parent in (shipped_catalogs(), shipped_catalogs("metric")):
        return f"{_SHIPPED} {path.name}"
    return "/".join(path.parts[-2:])


def read_settings(files: Sequence[BookFile], layers: Sequence[Layer], units: Units) -> Shop:
    """Read the settings alone: files of settings laid over the shipped, then `layers`.

    Raises:
        InputError: everything that is wrong in them.
    """
    problems: list[Problem] = []
    shop = _shop(files, layers, units, problems)
    if shop is None:
        raise InputError(problems)
    return shop


def _shop(
    files: Sequence[BookFile], layers: Sequence[Layer], units: Units, problems: list[Problem]
) -> Shop | None:
    """Read the settings of all files, laid over each other; None where they cannot be read."""
    own: list[Layer] = []
    wrong: list[Problem] = []
    for file in files:
        try:
            own.append(_layer(file.path, file.name))
        except InputError as error:
            wrong += error.problems
    problems += wrong
    if wrong:
        return None
    base = _base((*own, *layers), units)
    folders = {file.name: file.path.parent for file in files}
    try:
        shop = read_shop([*([] if own[0] is base else [base]), *own, *layers])
        return with_cancellation(shop, {base.name: shipped_catalogs(shop.units)} | folders)
    except InputError as error:
        problems += error.problems
        return None


def _base(layers: Sequence[Layer], units: Units) -> Layer:
    """Read the shipped settings of the system of units that the last layer names."""
    sections = [layer.mapping.get("shop") for layer in layers]
    named = [one["units"] for one in sections if isinstance(one, Mapping) and "units" in one]
    if named:
        units = "metric" if named[-1] == "metric" else "us"
    return _shipped_layer(shipped_catalogs(units) / BOOK_FILES["shop"])


@cache
def _shipped_layer(path: Path) -> Layer:
    """Read settings that come along; they do not change while the program runs."""
    text = read_text(path, SHIPPED_SHOP)
    return Layer(SHIPPED_SHOP, read_toml(text, SHIPPED_SHOP), text)


def _layer(path: Path, name: str) -> Layer:
    """Read one file of settings."""
    if name == SHIPPED_SHOP:
        return _shipped_layer(path)
    text = read_text(path, name)
    return Layer(name, read_toml(text, name), text)


def _habits(shop: Shop | None) -> Habits:
    """What to expect of the CSV files of a shop."""
    if shop is None:
        return Habits()
    return Habits(shop.decimal_comma, shop.units == "metric", shop.currency)


def _text(paths: Mapping[str, Path], names: Mapping[str, str], book: str) -> tuple[str, str]:
    """Give the text of a book and the name of its file."""
    return read_text(paths[book], names[book]), names[book]


def _or_empty(read: Callable[[], _Read], empty: _Read) -> _Read:
    """Read a book; where that fails, give the empty one with the problems."""
    try:
        return read()
    except InputError as error:
        return empty._replace(problems=error.problems)
