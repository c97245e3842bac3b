"""Rows of things to get: what the truck gives, and how many packs of each kind, live."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from math import ceil

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, figure_only, formula, middle, number, words
from estimator.outputs.draft import UNKNOWN, Draft, price
from estimator.outputs.price_step import text
from estimator.outputs.shopping_items import NO_PRICE
from estimator.pricing.records import PackBought, ShoppingLine, StockDrawn
from estimator.saying import said

TICK_BOX = "\u2610"
TRUCK = said("truck")
ROUND_SIX = 6


class Getting:
    """Writes the rows to get, and remembers in which rows each item stands.

    Args:
        first_need: row of the second table in which the first item will stand.
    """

    def __init__(self, draft: Draft, sheet: Sheet, first_need: int) -> None:
        self._draft, self._sheet = draft, sheet
        lines = draft.bid.shopping
        self._need_rows = {line.item: first_need + at for at, line in enumerate(lines)}
        self.truck_rows: dict[str, list[int]] = {line.item: [] for line in lines}
        self.pack_rows: dict[str, list[int]] = {line.item: [] for line in lines}

    def rows(self) -> Iterator[Row]:
        """Truck stock first, then what is bought, aisle by aisle."""
        lines = self._draft.bid.shopping
        for line in lines:
            for drawn in line.stock:
                self.truck_rows[line.item].append(self._sheet.next_row)
                yield self._drawn(line, drawn)
        for line in sorted(lines, key=lambda line: (not line.aisle, line.aisle)):
            for pack in line.packs:
                count = self._count(line, pack)
                self.pack_rows[line.item].append(self._sheet.next_row)
                yield self._pack(line, pack, count)
            if is_unpriced(line):
                yield self._unpriced(line)

    def _drawn(self, line: ShoppingLine, drawn: StockDrawn) -> Row:
        return self._row(
            (TRUCK, line.description, line.item),
            (number(drawn.quantity), figure_only(1), drawn.unit),
            (TRUCK, drawn.what),
            (drawn.unit_cost, drawn.cost),
        )

    def _pack(self, line: ShoppingLine, pack: PackBought, count: Cell) -> Row:
        return self._row(
            (line.aisle, pack.description or line.description, line.item),
            (count, number(pack.pack_size), pack.unit),
            (pack.supplier, pack.sold_as),
            (pack.price_each, pack.cost),
        )

    def _unpriced(self, line: ShoppingLine) -> Row:
        """An item that the book has no price for is asked for by the piece."""
        row = self._sheet.next_row
        whole = f"ROUNDUP(ROUND(H{self._need_rows[line.item]}/F{row},{ROUND_SIX}),0)"
        self.pack_rows[line.item].append(row)
        return self._row(
            (line.aisle, line.description, line.item),
            (formula(whole, ceil(line.to_buy)), number(1), line.unit),
            (NO_PRICE, ""),
            (None, None),
        )

    def _count(self, line: ShoppingLine, pack: PackBought) -> Cell:
        """How many packs of a kind: the last kind covers what the others leave.

        Cable may need more packs than its length asks for, as each cut is one piece; then that
        many stays the least.
        """
        if pack is not line.packs[-1]:
            return number(pack.count)
        row, others = self._sheet.next_row, self.pack_rows[line.item]
        rest = "".join(f"-E{other}*F{other}" for other in others)
        whole = f"ROUNDUP(ROUND((H{self._need_rows[line.item]}{rest})/F{row},{ROUND_SIX}),0)"
        covered = sum((each.count * each.pack_size for each in line.packs[:-1]), Decimal(0))
        exact = Fraction(line.to_buy - covered) / Fraction(pack.pack_size)
        asked = max(0, ceil(to_decimal(exact, ROUND_SIX)))
        if asked > pack.count:
            return number(pack.count)
        if asked < pack.count:
            return formula(f"MAX({whole},{pack.count})", pack.count)
        return formula(f"MAX({whole},0)" if others else whole, pack.count)

    def _row(
        self,
        what: tuple[str, str, str],
        amount: tuple[Cell, Cell, str],
        origin: tuple[str, str],
        cost: tuple[Decimal | None, Decimal | None],
    ) -> Row:
        """One thing to get; its cost is unknown as long as its price is a word or missing."""
        row = self._sheet.next_row
        count, size, unit = amount
        each, all_of_it = cost
        product = self._draft.round_to(f"E{row}*I{row}")
        unknown = text(self._draft.say(UNKNOWN))
        known = f'IF(I{row}="",{unknown},IFERROR({product},{unknown}))'
        return [
            words(TICK_BOX, looks.MIDDLE), *map(words, what), count, size, middle(unit),
            words(origin[0]), price(each) if each is not None else words(UNKNOWN, looks.ENTRY_WORD),
            money_or_unknown(known, all_of_it), words(origin[1]),
        ]  # fmt: skip


def is_unpriced(line: ShoppingLine) -> bool:
    """Whether something has to be bought that the book has no price for."""
    return not line.packs and line.to_buy > 0


def money_or_unknown(found: str, amount: Decimal | None) -> Cell:
    """An amount that a formula finds, or the word where there is none."""
    return formula(found, UNKNOWN if amount is None else amount, looks.figure(looks.MONEY))
