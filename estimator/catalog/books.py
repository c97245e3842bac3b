"""Reads the four books of a shop together, so that all problems come at once."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from pathlib import Path
from typing import TypeVar

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

SHIPPED_SHOP = "shipped shop.toml"


def read_books(
    folder: Path,
    *,
    layers: Sequence[Layer] = (),
    files: Mapping[str, Path] | None = None,
    wanted: Collection[str] | None = None,
) -> Books:
    """Read the books in a folder.

    Settings come from the shipped shop.toml, then the folder's shop.toml laid over it, then
    `layers`. The folder's shop.toml may hold only what differs. A row that is wrong is an error,
    except in a large materials file, where it is left out and kept in `Books.left_out`.

    Args:
        folder: holds materials.csv, labor.csv, shop.toml and accounts.csv.
        layers: settings laid over those of the books, such as a job's.
        files: other files to read in the place of a book: {"materials": Path("supplier.csv")}.
        wanted: item keys to keep; None keeps all.

    Raises:
        InputError: everything that is wrong in any of the books.
    """
    paths = {book: folder / name for book, name in BOOK_FILES.items()} | dict(files or {})
    names = {book: shown_name(path) for book, path in paths.items()}
    problems: list[Problem] = []
    shop = _shop(paths["shop"], names["shop"], layers, problems)
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
    """Name a file by its folder and itself: "catalogs/materials.csv"."""
    return "/".join(path.parts[-2:])


def _shop(path: Path, name: str, layers: Sequence[Layer], problems: list[Problem]) -> Shop | None:
    """Read the settings; None where they cannot be read."""
    try:
        text = read_text(path, name)
        own = Layer(name, read_toml(text, name), text)
        base = _base(path, (own, *layers))
        shop = read_shop([base, own, *layers])
        folders = {name: path.parent, base.name: shipped_catalogs(shop.units)}
        return with_cancellation(shop, folders)
    except InputError as error:
        problems += error.problems
        return None


def _base(path: Path, layers: Sequence[Layer]) -> Layer:
    """Read the shipped settings of the system of units that the last layer names."""
    sections = [layer.mapping.get("shop") for layer in layers]
    named = [one["units"] for one in sections if isinstance(one, Mapping) and "units" in one]
    units: Units = "metric" if named and named[-1] == "metric" else "us"
    shipped = shipped_catalogs(units) / BOOK_FILES["shop"]
    if path.resolve() == shipped:
        return Layer(SHIPPED_SHOP, {})
    text = read_text(shipped, SHIPPED_SHOP)
    return Layer(SHIPPED_SHOP, read_toml(text, SHIPPED_SHOP), text)


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
