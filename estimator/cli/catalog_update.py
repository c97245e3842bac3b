"""`estimator catalog update`: a supplier's prices into the materials book, shown before written."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.options import JsonOption
from estimator.cli.terminal import say, tell, told
from estimator.problems import InputError, Problem
from estimator.user_folder import user_books

if TYPE_CHECKING:
    from estimator.catalog.supplier_map import SupplierMap

EXAMPLE = """\
Example: estimator catalog update prices.csv --map supplier.toml

The map, made once:

estimator catalog update prices.csv --supplier "Sample supply" --column "Article=number" --column
"Price=pack_price" --item "10-25=cable-14-2" --save-map supplier.toml
"""

FileArgument = Annotated[
    Path,
    typer.Argument(metavar="SUPPLIER.csv", help="The supplier's file.", show_default=False),
]
MapOption = Annotated[
    Path | None,
    typer.Option("--map", metavar="MAP.toml", help="Saved column map.", show_default=False),
]
SaveOption = Annotated[
    Path | None,
    typer.Option(
        "--save-map",
        metavar="MAP.toml",
        help="Keep the map and the options below in a new file.",
        show_default=False,
    ),
]
Pairs = list[str] | None
ColumnOption = Annotated[
    Pairs,
    typer.Option(
        "--column",
        metavar="THEIRS=OURS",
        help="Their column and ours; number is their article number. Repeatable.",
        show_default=False,
    ),
]
FixOption = Annotated[
    Pairs,
    typer.Option(
        "--fix",
        metavar="OURS=TEXT",
        help="What every row holds in a column of ours. Repeatable.",
        show_default=False,
    ),
]
ItemOption = Annotated[
    Pairs,
    typer.Option(
        "--item",
        metavar="THEIRS=ITEM",
        help="Their number or description, and our item. Repeatable.",
        show_default=False,
    ),
]
SupplierOption = Annotated[
    str, typer.Option("--supplier", metavar="NAME", help="Who sells.", show_default=False)
]
DateOption = Annotated[
    datetime.datetime | None,
    typer.Option(
        "--date",
        metavar="2026-11-30",
        formats=["%Y-%m-%d"],
        help="Day the prices are from.",
        show_default=False,
    ),
]
FolderOption = Annotated[
    Path | None,
    typer.Option(
        "--books",
        metavar="FOLDER",
        help="Folder with the book to change, in place of your own.",
        show_default=False,
    ),
]
YesOption = Annotated[bool, typer.Option("--yes", help="Write the materials book.")]


def update_catalog(
    file: FileArgument,
    *,
    map_file: MapOption = None,
    save_map: SaveOption = None,
    column: ColumnOption = None,
    fix: FixOption = None,
    item: ItemOption = None,
    supplier: SupplierOption = "",
    date: DateOption = None,
    books: FolderOption = None,
    yes: YesOption = False,
    as_json: JsonOption = False,
) -> None:
    """Merge a supplier's prices; shows what changes first."""
    with told(as_json=as_json):
        from estimator.catalog.supplier_map import SupplierMap, laid_over, read_map
        from estimator.catalog.update import materials_update
        from estimator.files import replace_file
        from estimator.outputs.text_update import update_text
        from estimator.outputs.update_document import update_json

        day = None if date is None else date.date()
        made = SupplierMap(_pairs(column), _pairs(fix), _pairs(item), supplier, day)
        made = made if map_file is None else laid_over(read_map(map_file), made)
        update = materials_update(file, made, books or user_books())
        if save_map is not None:
            _save(made, save_map)
            tell([f"Map: {save_map}"])
        if yes:
            replace_file(update.path, update.data)
        say([update_json(update, written=yes)] if as_json else update_text(update, written=yes))


def _pairs(given: list[str] | None) -> dict[str, str]:
    """Split each THEIRS=OURS at its last equals sign."""
    pairs: dict[str, str] = {}
    for text in given or ():
        theirs, mark, ours = text.rpartition("=")
        if not (mark and theirs.strip() and ours.strip()):
            read, write = "is no pair.", 'Write it with = between, such as "Price=pack_price".'
            raise InputError([Problem(f'"{text}"', read, write)])
        pairs[theirs.strip()] = ours.strip()
    return pairs


def _save(made: SupplierMap, path: Path) -> None:
    """Keep a map; never over a file that is there, other than the same map.

    Raises:
        InputError: another file is there, or it cannot be written.
    """
    from estimator.catalog.supplier_map import map_text
    from estimator.files import replace_file

    data = map_text(made).encode()
    if path.exists() and (not path.is_file() or path.read_bytes() != data):
        read = "is there already and was left as it is."
        raise InputError([Problem(str(path), read, "Choose another name for the map.")])
    replace_file(path, data)
