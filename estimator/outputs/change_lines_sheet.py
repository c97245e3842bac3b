"""Sheets behind a change order: parts and work that differ, and what the parts cost."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, middle, number, words
from estimator.outputs.draft import UNKNOWN, Draft, price
from estimator.outputs.text_change import PRICED_BY, STILL_TO_BUY, WAS_THERE
from estimator.pricing.change_bought import BoughtPart, CountedAsBought
from estimator.pricing.change_records import ChangedLine, ChangeOrder, ItemChange, PackRow

LINES, COSTS = "Lines", "Parts cost"
LINE_WIDTHS = "10 22 40 8 12 12 12 12 12"
LINE_HEADERS = (
    "Status", "Key", "Part or work", "Unit", "Before", "After", "Hours before", "Hours after",
    "Hours more",
)  # fmt: skip
COST_WIDTHS = "22 40 14 10 12 14 60"
PACK_HEADERS = ("Item", "Pack", "What", "Count", "Price each", "Cost")
ITEM_HEADERS = ("Item", "Description", "Need before", "Need after", "Cost more", "Cost less", "Why")
BOUGHT_HEADERS = ("Item", "Description", "Sold as", "Packs", "In each", "Price each", "Price from")
_MORE, _LESS = ("to buy", "bought for it", "from the truck"), ("in the first bid",)
_HOURS = looks.figure(looks.HOURS)
_STATUS_BEFORE, _STATUS_AFTER = "first list", "new list"
BOUGHT = (
    "The parts of the first bid are taken as bought: only what goes beyond them costs more, "
    "and only whole packs come back."
)
BY_FILE = "What {file} says counts as bought; it stands in the last table."
NOT_BOUGHT = "The parts of the first bid are taken as not yet bought: one list less the other."


def write_lines(draft: Draft, order: ChangeOrder) -> Sheet:
    """Write every part and every task that differs, with its hours; the hours add up live."""
    sheet = draft.sheet(LINES, LINE_WIDTHS)
    draft.heading(sheet, "Lines: what is added, dropped and changed")
    for title, name, kind in (
        ("Parts", "Changed_parts", "part"), ("Work", "Changed_work", "work"),
    ):  # fmt: skip
        sheet.section(title)
        first = sheet.next_row + 1
        found = [line for line in order.lines if line.kind == kind]
        sheet.table(name, LINE_HEADERS, (_line(sheet, line) for line in found))
        if kind == "work":
            _hours(draft, sheet, order, (first, max(sheet.next_row - 1, first)))
    return sheet


def _line(sheet: Sheet, line: ChangedLine) -> Row:
    at = sheet.next_row
    status = f'IF(E{at}=0,"added",IF(F{at}=0,"dropped","changed"))'
    cells: Row = [
        formula(status, line.status, looks.TEXT), words(line.key), words(line.description),
        middle(line.unit), number(line.quantity_before), number(line.quantity_after),
    ]  # fmt: skip
    if line.kind == "part":
        return cells
    more = line.hours_after - line.hours_before
    hours = (
        number(each, looks.entry(looks.HOURS)) for each in (line.hours_before, line.hours_after)
    )
    return [*cells, *hours, formula(f"H{at}-G{at}", more, _HOURS)]


def _hours(draft: Draft, sheet: Sheet, order: ChangeOrder, rows: tuple[int, int]) -> None:
    """Hours more and hours fewer, each summed by itself; stated hours go before them."""
    price, span = order.price, f"I{rows[0]}:I{rows[1]}"
    for name, label, sign, value in (
        ("lines_hours_added", "Hours added", ">0", price.hours_added),
        ("lines_hours_dropped", "Hours dropped", "<0", price.hours_dropped),
    ):
        total = f"SUMPRODUCT(({span}{sign})*1,{span})"
        text = total if sign == ">0" else f"0-{total}"
        draft.names[name] = sheet.ref("I", sheet.next_row)
        cell = (
            number(value, looks.entry(looks.HOURS))
            if _stated(order)
            else formula(text, value, _HOURS)
        )
        sheet.put([None, None, words(label, looks.LABEL), *[None] * 5, cell])
    if _stated(order):
        sheet.note("A job file states its hours in all, so the hours of the whole are compared.")


def _stated(order: ChangeOrder) -> bool:
    return "override" in (order.before.hours.basis, order.after.hours.basis)


def write_costs(draft: Draft, order: ChangeOrder) -> Sheet:
    """Write the packs behind the change and, from them, what each item costs more or less."""
    sheet = draft.sheet(COSTS, COST_WIDTHS)
    draft.heading(sheet, "Parts cost: what is bought because of the change, and what goes back")
    sheet.note(_basis(order))
    sheet.section("Packs")
    first = sheet.next_row + 1
    packs = [(item.item, row) for item in order.items for row in item.rows]
    sheet.table("Changed_packs", PACK_HEADERS, (_pack(draft, sheet, *each) for each in packs))
    rows = (first, max(sheet.next_row - 1, first))
    sheet.section("Items")
    first = sheet.next_row + 1
    sheet.table("Changed_items", ITEM_HEADERS, _items(draft, sheet, order, rows))
    _costs(draft, sheet, order, (first, max(sheet.next_row - 1, first)))
    if order.bought is not None:
        _bought(sheet, order.bought)
    return sheet


def _basis(order: ChangeOrder) -> str:
    """Which parts are taken as bought."""
    if order.bought is not None:
        return BY_FILE.format(file=order.bought.file)
    return BOUGHT if order.materials_bought else NOT_BOUGHT


def _bought(sheet: Sheet, bought: CountedAsBought) -> None:
    """Write what counts as bought by the file, and what of it does not."""
    sheet.section("Counted as bought")
    for note in (f"From {bought.file}.", STILL_TO_BUY, *bought.notes):
        sheet.note(note)
    sheet.table("Counted_as_bought", BOUGHT_HEADERS, map(_part, bought.parts))


def _part(part: BoughtPart) -> Row:
    source = WAS_THERE if part.had else PRICED_BY[part.price_from]
    each = words(UNKNOWN) if part.price_each is None else price(part.price_each)
    return [
        words(part.item), words(part.description), words(part.sold_as),
        number(part.count), number(part.pack_size), each,
        words(f"{source}, more than the first list" if part.beyond else source),
    ]  # fmt: skip


def _pack(draft: Draft, sheet: Sheet, item: str, row: PackRow) -> Row:
    at = sheet.next_row
    return [
        words(item), words(row.description), words(row.what), number(row.count),
        number(row.price_each, looks.entry(looks.MONEY)),
        draft.money(draft.round_to(f"D{at}*E{at}"), row.cost),
    ]  # fmt: skip


def _items(draft: Draft, sheet: Sheet, order: ChangeOrder, rows: tuple[int, int]) -> Iterator[Row]:
    for each in order.items:
        at = sheet.next_row
        if order.materials_bought:
            plus, minus = (
                "+".join(_sum(at, rows, what) for what in kinds) for kinds in (_MORE, _LESS)
            )
            more = f"MAX(0,{plus}-({minus}))"
            less = f"MAX(0,{minus}-({plus}))+{_sum(at, rows, 'goes back')}"
        else:
            old, new = (_sum(at, rows, what) for what in (_STATUS_BEFORE, _STATUS_AFTER))
            more, less = f"MAX(0,{new}-{old})", f"MAX(0,{old}-{new})"
        yield [
            words(each.item), words(each.description), number(each.need_before),
            number(each.need_after), _added(draft, more, each),
            draft.money(less, each.cost_dropped), words(each.why),
        ]  # fmt: skip


def _added(draft: Draft, text: str, item: ItemChange) -> Cell:
    if item.cost_added is None:
        return words(UNKNOWN)
    return draft.money(text, item.cost_added)


def _sum(at: int, rows: tuple[int, int], what: str) -> str:
    """Costs of one item's packs of one kind, summed."""
    first, last = rows
    picked = f'(A{first}:A{last}=A{at})*(C{first}:C{last}="{what}")'
    return f"SUMPRODUCT({picked},F{first}:F{last})"


def _costs(draft: Draft, sheet: Sheet, order: ChangeOrder, rows: tuple[int, int]) -> None:
    """All items together; a stated cost of materials goes before them."""
    price = order.price
    stated = order.before.price.materials_overridden or order.after.price.materials_overridden
    sums = (
        ("lines_cost_added", "E", price.added.listed),
        ("lines_cost_dropped", "F", price.dropped.listed),
    )
    cells: Row = []
    for name, column, value in sums:
        draft.names[name] = sheet.ref(column, sheet.next_row)
        entry = number(value, looks.entry(looks.MONEY))
        total = draft.money(f"SUM({column}{rows[0]}:{column}{rows[1]})", value, total=True)
        cells.append(entry if stated else total)
    sheet.put([None, words("All items", looks.LABEL), None, None, *cells])
    if stated:
        sheet.note("A job file states what its materials cost, so the two costs are compared.")
