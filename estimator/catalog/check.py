"""Looks over a shop's books: what stops a bid, and what deserves a second look."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import NamedTuple

from estimator.catalog.books import BookFile, read_books
from estimator.catalog.levels import Level, own_levels, read_own
from estimator.catalog.records import Books, Material
from estimator.catalog.shipped import Units, shipped_catalogs
from estimator.catalog.words import word_problems
from estimator.problems import InputError, Problem


class BookCheck(NamedTuple):
    """What a check of the books found.

    Attributes:
        errors: what stops a bid, or leaves rows out of it.
        warnings: what does not, such as stale prices.
    """

    errors: tuple[Problem, ...]
    warnings: tuple[Problem, ...]


def check_books(folder: Path, today: date, files: Mapping[str, Path] | None = None) -> BookCheck:
    """Read the books in a folder and say everything that a person should look at.

    Args:
        folder: as for `read_books`.
        today: the day from which the age of prices is counted.
        files: as for `read_books`.
    """
    words = [Level(folder).words()]
    return _checked(lambda: read_books(folder, files=files), words, today)


def check_own(user: Path | None, units: Units, today: date) -> BookCheck:
    """Check the books that hold where no job says otherwise: the user's over the shipped."""
    words = [level.words() for level in own_levels(user, units)]
    return _checked(lambda: read_own(None, user, units), words, today)


def _checked(read: Callable[[], Books], words: Sequence[BookFile | None], today: date) -> BookCheck:
    wrong = [problem for file in words if file is not None for problem in word_problems(file)]
    try:
        books = read()
    except InputError as error:
        return BookCheck((*error.problems, *wrong), ())
    shipped = read_books(shipped_catalogs(books.shop.units))
    errors = (*wrong, *books.left_out, *_other_units(books, shipped))
    warnings = (*price_dates(books, today), *_missing(books, shipped), *_loose(books))
    return BookCheck(errors, warnings)


def price_dates(books: Books, today: date) -> Iterator[Problem]:
    """Warn of prices that are stale, or from a day that is still to come."""
    days = books.shop.stale_after_days
    oldest = today - timedelta(days=days)
    for ways in books.materials.values():
        for one in ways:
            if one.pack_price is None or one.priced_on is None:
                continue
            read = f"the price of {one.item} is from {one.priced_on}"
            if one.priced_on < oldest:
                read += f", more than {days} days ago."
                yield Problem(_place(books, one, "priced_on"), read, "Ask for the price again.")
            elif one.priced_on > today:
                read += ", which is still to come."
                yield Problem(_place(books, one, "priced_on"), read, "Write the day of the price.")


def _place(books: Books, one: Material, column: str) -> str:
    """Say where a row of the materials book stands."""
    return f"{books.files['materials']}: row {one.row}, column {column}"


def _other_units(books: Books, shipped: Books) -> Iterator[Problem]:
    """Find items and tasks that the takeoff counts in another unit."""
    for item, ways in shipped.materials.items():
        unit = ways[0].unit
        mine = books.materials.get(item)
        if mine and mine[0].unit != unit:
            read = f"{item} is in {mine[0].unit}, and the takeoff counts it in {unit}."
            yield Problem(_place(books, mine[0], "unit"), read, f"Write its pack sizes in {unit}.")
    for key, task in shipped.labor.items():
        own = books.labor.get(key)
        if own and own.unit != task.unit:
            where = f"{books.files['labor']}: row {own.row}, column unit"
            read = f"{key} is in {own.unit}, and the takeoff counts it in {task.unit}."
            yield Problem(where, read, f"Write its hours for one {task.unit}.")


def _missing(books: Books, shipped: Books) -> Iterator[Problem]:
    """Warn of items, tasks and kinds of line that a takeoff may ask for and the books lack."""
    unpriced = "A bid that needs one shows its price as unknown. Copy the rows you want."
    stops = "A bid that needs one stops. Copy the rows from the shipped book."
    for book, mine, wanted, column, write in (
        ("materials", books.materials, shipped.materials, "item", unpriced),
        ("labor", books.labor, shipped.labor, "task", stops),
        ("accounts", books.accounts, shipped.accounts, "line_kind", stops),
    ):
        lacking = [key for key in wanted if key not in mine]
        if lacking:
            read = f"there is no row for {', '.join(lacking)}."
            yield Problem(f"{books.files[book]}: column {column}", read, write)


def _loose(books: Books) -> Iterator[Problem]:
    """Warn of consumables that are not in the materials book."""
    for used in books.shop.practice.consumables:
        if used.item not in books.materials:
            read = f"there is no row for {used.item}, which practice.consumables names."
            write = "Add a row for it, or take it out of shop.toml."
            yield Problem(f"{books.files['materials']}: column item", read, write)
