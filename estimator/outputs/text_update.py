"""What a supplier's file would change in the materials book, for the terminal."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.catalog.supplier_rows import LeftRow
from estimator.catalog.update import MaterialsUpdate, UpdatedRow
from estimator.money import show_money
from estimator.outputs.text_layout import counted, heading, number, printable, wrapped

LOCALE = "en_US"
_HANGING = "    "
_MOST_LEFT = 40


def update_text(update: MaterialsUpdate, *, written: bool) -> list[str]:
    """List old and new prices, new rows and rows that are not taken; say what was written."""
    money = update.currency
    changed = [line for one in update.changed for line in _row(one, _prices(one, money))]
    added = [line for one in update.added for line in _row(one, _show(one.new, money))]
    same = [f"{counted(update.same_count, 'row')} in the book cost what they did."]
    parts = (
        ("Prices that change", changed),
        ("New rows", added),
        ("Same price", same if update.same_count else []),
        ("Rows of the supplier that are not taken", list(_left(update.left))),
    )
    lines = [line for name, inside in parts if inside for line in (*heading(name), *inside)]
    return [*lines[1:], "", *wrapped(_done(update, written=written))]


def _row(one: UpdatedRow, says: str) -> list[str]:
    pack = f"{number(one.pack_size)} {one.unit}"
    who = f", {printable(one.supplier)}" if one.supplier else ""
    text = f"row {one.row}, {one.item}: {printable(one.description)}; {pack}{who}: {says}"
    return wrapped(text, rest=_HANGING)


def _prices(one: UpdatedRow, currency: str) -> str:
    if one.old is None:
        return f"unknown -> {_show(one.new, currency)}"
    pct = "" if one.change_pct is None else f" ({one.change_pct:+} %)"
    return f"{_show(one.old, currency)} -> {_show(one.new, currency)}{pct}"


def _show(price: Decimal, currency: str) -> str:
    return show_money(price, currency, LOCALE)


def _left(left: tuple[LeftRow, ...]) -> Iterator[str]:
    """Their rows, the first of them where there are very many."""
    for one in left[:_MOST_LEFT]:
        words = " ".join(filter(None, (printable(one.number), printable(one.description))))
        yield from wrapped(f"row {one.row}, {words or 'no words'}: {one.why}.", rest=_HANGING)
    if len(left) > _MOST_LEFT:
        yield f"... and {counted(len(left) - _MOST_LEFT, 'more row')}; --json lists them all."


def _done(update: MaterialsUpdate, *, written: bool) -> str:
    count = f"{counted(len(update.changed), 'price')} and {counted(len(update.added), 'new row')}"
    if not (update.changed or update.added or update.same_count):
        return "Nothing to write."
    if written:
        return f"{count} written to {update.path}."
    return f"Nothing was written. To write {count} to {update.path}, add --yes."
