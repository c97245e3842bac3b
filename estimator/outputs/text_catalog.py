"""The books for the terminal, and what a check of them found."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.catalog.records import Books, LaborUnit, Material
from estimator.money import show_money
from estimator.outputs.catalog_rows import rows_with
from estimator.outputs.text_layout import counted, heading, number, pairs, printable, wrapped
from estimator.outputs.text_problems import problem_lines
from estimator.problems import Problem

LOCALE = "en_US"
HANGING = "    "


def catalog_text(books: Books, word: str) -> list[str]:
    """List the rows of each book that hold a word; every row for an empty word."""
    rows = rows_with(books, word)
    currency = books.shop.currency
    accounts = [
        (printable(each.line_kind), f"{each.account_code} {each.account_name}")
        for each in rows.accounts
    ]
    settings = [
        (printable(key), f"{value} ({rows.origins[key]})") for key, value in rows.settings.items()
    ]
    files = [(book, printable(file)) for book, file in books.files.items()]
    parts = (
        ("Files read", pairs(files) if rows.hold else []),
        ("Materials", [line for way in rows.materials for line in _way(way, currency)]),
        ("Labor, hours for one unit", [line for task in rows.labor for line in _task(task)]),
        ("Accounts", pairs(accounts)),
        ("Settings, and the file that set each", pairs(settings)),
    )
    lines = [line for name, inside in parts if inside for line in (*heading(name), *inside)]
    return lines[1:] or wrapped(f'No row of the books holds "{word}".')


def _way(way: Material, currency: str) -> list[str]:
    """Show one way to buy an item."""
    price = "price unknown"
    if way.pack_price is not None:
        price = show_money(way.pack_price, currency, LOCALE)
    size = f"{number(way.pack_size)} {way.unit}"
    return wrapped(
        f"{way.item}: {way.description}; {size}, {price}, {way.supplier}", first="", rest=HANGING
    )


def _task(task: LaborUnit) -> list[str]:
    """Show one task with its low, likely and high hours."""
    hours = (task.hours_low, task.hours_likely, task.hours_high)
    shown = " / ".join(number(each) for each in hours)
    return wrapped(f"{task.task} ({task.unit}): {shown}; {task.description}", rest=HANGING)


def check_result(folder: str, warnings: Sequence[Problem]) -> list[str]:
    """Say that books can be used, and what in them deserves a second look."""
    lines = [line for warning in warnings for line in problem_lines(warning)]
    look = f", {counted(len(warnings), 'warning')} above" if warnings else ""
    return [*lines, *wrapped(f"The books in {folder} can be used{look}.")]
