"""A change order for the terminal: what changed, what was checked again, what it costs."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from estimator.outputs.finding_words import VERDICTS
from estimator.outputs.text_job import caution_lines, money, title_lines
from estimator.outputs.text_layout import heading, number, pairs, wrapped
from estimator.outputs.unit_words import COIL, amount_in
from estimator.pricing.change_bought import CUT, BoughtPart
from estimator.pricing.change_records import ChangedLine, ChangeOrder, ItemChange, Recheck

HOURS_PLACES = 2
NOTHING = "Nothing differs between the two job files."
NOT_BEFORE, NOT_NOW = "not asked", "no longer asked"
STILL_TO_BUY = "All else on the first list is still to buy; the first bid holds its price."
WAS_THERE = "was there already"
PRICED_BY = {"file": "as paid", "list": "as on the list", "nothing": "nothing says what was paid"}
_INDENT = "  "


def change_text(order: ChangeOrder) -> list[str]:
    """Say why, what was found, what is added and dropped, and the price before and after."""
    lines = title_lines(order.after)
    if order.why:
        lines += wrapped(f"Why: {order.why}")
    if not order.changes_anything:
        return [*lines, "", NOTHING]
    return [
        *lines,
        "",
        *pairs(_price(order)),
        *_facts(order),
        *_lines(order),
        *_items(order),
        *_bought(order),
        *_rechecks(order),
        *caution_lines(),
    ]


def signed(amount: Decimal, shown: str) -> str:
    """Put a plus before what is added; what is given back has its minus already."""
    return f"+{shown}" if amount > 0 else shown


def _price(order: ChangeOrder) -> list[tuple[str, str]]:
    price, bid = order.price, order.after
    tax = f", {money(bid, price.tax)} of it tax" if price.tax else ""
    rows = [
        ("First bid", money(bid, price.job_total_before)),
        ("This change", f"{signed(price.total, money(bid, price.total))}{tax}"),
        ("Job now", money(bid, price.job_total)),
        (
            "Bid anew",
            f"{money(bid, bid.price.total)}, for comparison: the changed job as a new bid",
        ),
        ("Hours", f"{_hours(price.hours_added)} more, {_hours(price.hours_dropped)} fewer"),
    ]
    if price.cap is not None:
        rows.insert(3, ("New cap", f"{money(bid, price.cap)}, in place of the old one"))
    if price.unpriced_items:
        rows.append(("No price", f"{', '.join(price.unpriced_items)}; the change leaves them out"))
    return rows


def _hours(hours: Decimal) -> str:
    return number(hours, HOURS_PLACES)


def _facts(order: ChangeOrder) -> list[str]:
    if not order.facts:
        return []
    said = (f"{each.about}: {each.before} -> {each.after}" for each in order.facts)
    return [*heading("What the house turned out to be"), *_each(said)]


def _lines(order: ChangeOrder) -> list[str]:
    found: list[str] = []
    for status, title in (("added", "Added"), ("dropped", "Dropped"), ("changed", "Changed")):
        said = [_line(line) for line in order.lines if line.status == status]
        found += [*heading(title), *_each(said)] if said else []
    return found


def _line(line: ChangedLine) -> str:
    before, after = number(line.quantity_before), number(line.quantity_after)
    both = after if before == after else f"{before} -> {after}"
    counts = {
        "added": f"{after} {line.unit}",
        "dropped": f"{before} {line.unit}",
        "changed": f"{both} {line.unit}",
    }
    more = line.hours_after - line.hours_before
    hours = f", {signed(more, _hours(more))} h" if more else ""
    return f"{line.description}: {counts[line.status]}{hours}"


def _items(order: ChangeOrder) -> list[str]:
    said = [_item(order, each) for each in order.items]
    return [*heading("To buy, and to give back"), *_each(said)] if said else []


def _bought(order: ChangeOrder) -> list[str]:
    """Which parts count as bought, and from which file."""
    if order.bought is None:
        return []
    title = heading(f"Counted as bought: {len(order.bought.parts)}")
    lines = [_part(order, part) for part in order.bought.parts]
    said = [f"From {order.bought.file}.", *wrapped(STILL_TO_BUY), *_each(lines)]
    return [*title, *said, *_each(order.bought.notes)]


def _part(order: ChangeOrder, part: BoughtPart) -> str:
    amount = f"{number(part.quantity)} {part.unit}" if part.sold_as == CUT else f"{part.count} x"
    is_pack = part.sold_as != CUT and part.pack_size != 1
    held = f" ({amount_in(part.quantity, part.unit)})" if is_pack else ""
    source = WAS_THERE if part.had else PRICED_BY[part.price_from]
    each = part.price_each is not None and not part.had
    price = f"{money(order.after, part.price_each or Decimal(0))} {_per(part)}, " if each else ""
    more = ", more than the first list" if part.beyond else ""
    return f"{amount} {part.description}{held}: {price}{source}{more}"


def _per(part: BoughtPart) -> str:
    """What one price is for."""
    if part.sold_as == CUT:
        size = "" if part.pack_size == 1 else f"{number(part.pack_size)} "
        return f"per {size}{part.unit}"
    if part.pack_size == 1:
        return "each"
    return "per coil" if part.sold_as == COIL else "per pack"


def _item(order: ChangeOrder, item: ItemChange) -> str:
    if item.cost_added is None:
        return f"{item.description}: price unknown; {item.why}"
    more = item.cost_added - item.cost_dropped
    cost = signed(more, money(order.after, more)) if more else "no cost"
    return f"{item.description}: {cost}; {item.why}"


def _rechecks(order: ChangeOrder) -> list[str]:
    if not order.rechecks:
        return []
    lines = [line for each in order.rechecks for line in _recheck(each)]
    return [*heading("Checked again"), *lines]


def _recheck(each: Recheck) -> list[str]:
    before = VERDICTS.get(each.verdict_before, each.verdict_before) or NOT_BEFORE
    after = VERDICTS.get(each.verdict_after, each.verdict_after) or NOT_NOW
    moved = after if before == after else f"{before} -> {after}"
    stops = "; stops the bid" if each.stops else ""
    lines = wrapped(f"{each.title} ({each.finding_id}): {moved}{stops}", "- ", _INDENT)
    same = each.figures_before == each.figures_after
    figures = [("before: ", each.figures_before), ("now: ", each.figures_after)]
    for word, said in [("", each.figures_after)] if same else figures:
        lines += wrapped(f"{word}{said}", _INDENT) if said else []
    if each.verdict_after in ("fail", "unknown") and each.remedy:
        lines += wrapped(each.remedy, f"{_INDENT}-> ")
    return lines


def _each(said: Iterable[str]) -> list[str]:
    return [line for each in said for line in wrapped(each, "- ", _INDENT)]
