"""The shopping list as one page for a phone: ticks that remember, and what was paid."""

from __future__ import annotations

from collections.abc import Iterator
from hashlib import sha256
from itertools import groupby

from estimator.outputs.draft import CAUTION
from estimator.outputs.markup import safe
from estimator.outputs.money_form import MoneyForm, money_form
from estimator.outputs.page import whole_page
from estimator.outputs.shopping_items import Item, expected, items_of
from estimator.outputs.text_job import money
from estimator.pricing.records import Bid

_DIGITS = 16
_STYLES, _SCRIPTS = ("base.css", "list.css"), ("list.js",)


def shopping_page(bid: Bid) -> str:
    """Write the page. The same list gives the same page, and finds its ticks again."""
    items = items_of(bid)
    form = money_form(bid.books.shop.currency, bid.survey.job.locale)
    title = f"Shopping list {bid.survey.job.id}: {bid.survey.job.title}"
    parts = (
        _head(bid, items),
        _main(bid, items, form),
        _foot(),
    )
    body = "\n".join(line for part in parts for line in part)
    return whole_page(title, body, _STYLES, _SCRIPTS)


def list_hash(items: tuple[Item, ...]) -> str:
    """Name a list by what is on it: ticks of one list never show up on another."""
    rows = [(each.key, each.what, str(each.quantity), str(each.cost)) for each in items]
    return sha256(repr(rows).encode()).hexdigest()[:_DIGITS]


def _head(bid: Bid, items: tuple[Item, ...]) -> Iterator[str]:
    job = bid.survey.job
    yield '<a class="skip" href="#list">Go to the list</a>'
    yield "<header>"
    yield f"<h1>Shopping list: {safe(job.title)}</h1>"
    yield f"<p>Job {safe(job.id)}, {safe(job.customer)}</p>"
    total = money(bid, expected(items))
    yield f"<p>About <strong>{safe(total)}</strong> before tax, without small items.</p>"
    missing = sum(each.kind == "buy" and each.cost is None for each in items)
    if missing:
        yield f"<p>Without a price in the book: {missing}.</p>"
    yield f"<p>{safe(CAUTION)}</p>"
    yield "<noscript><p>This view cannot remember ticks. The list can be read and printed.</p>"
    yield "</noscript>"
    yield "</header>"


def _main(bid: Bid, items: tuple[Item, ...], form: MoneyForm) -> Iterator[str]:
    named = {
        "job": bid.survey.job.id,
        "list": list_hash(items),
        "places": str(form.places),
        "before": form.before,
        "after": form.after,
        "point": form.point,
        "group": form.group,
    }
    yield f'<main id="list" tabindex="-1"{_data(named)}>'
    at = 0
    for number, (aisle, group) in enumerate(groupby(items, key=lambda each: each.aisle), start=1):
        yield f'<section aria-labelledby="aisle{number}">'
        yield f'<h2 id="aisle{number}">{safe(aisle)}</h2>'
        yield "<ul>"
        for item in group:
            at += 1
            yield from _item(bid, item, form, f"i{at}")
        yield "</ul>"
        yield "</section>"
    if not items:
        yield "<p>Nothing to get.</p>"
    yield from _paid()
    yield "</main>"


def _data(named: dict[str, str]) -> str:
    return "".join(f' data-{name}="{safe(value)}"' for name, value in named.items())


def _item(bid: Bid, item: Item, form: MoneyForm, mark: str) -> Iterator[str]:
    """One thing to get: its box to tick, its name, why, and what was paid for it."""
    named = {
        "key": item.key, "kind": item.kind, "item": item.item, "what": item.what,
        "quantity": f"{item.quantity:f}", "unit": item.unit, "supplier": item.supplier,
        "cost": "" if item.cost is None else str(form.minor(item.cost)),
    }  # fmt: skip
    yield f"<li{_data(named)}>"
    yield (
        f'<div class="tick"><input type="checkbox" id="{mark}" class="got" autocomplete="off">'
        f'<label for="{mark}">{safe(item.what)}</label></div>'
    )
    if detail := _detail(bid, item):
        yield f'<p class="detail">{safe(detail)}</p>'
    yield '<p class="detail told" hidden>Had it already.</p>'
    yield '<div class="more">'
    if item.kind == "buy":
        yield from _price_field(item, form, mark)
    yield from _fold(item, mark)
    yield "</div>"
    if item.kind == "buy":
        yield '<p class="on-paper" aria-hidden="true">Paid: ____________</p>'
    yield "</li>"


def _detail(bid: Bid, item: Item) -> str:
    """Size of the pack, where it is sold, and what it should cost."""
    cost = "no price in the book" if item.cost is None else money(bid, item.cost)
    if item.price_each is not None:
        cost += f" ({money(bid, item.price_each)} each)"
    return "; ".join(part for part in (item.detail, item.supplier, cost) if part)


def _unseen(item: Item) -> str:
    """The name of the thing, for those who hear a field without its surroundings."""
    return f'<span class="unseen">, {safe(item.what)}</span>'


def _price_field(item: Item, form: MoneyForm, mark: str) -> Iterator[str]:
    """A field that only the script makes useful; without it, it stays hidden."""
    sign = safe((form.before or form.after).strip())
    yield '<div class="paid scripted" hidden>'
    yield f'<label for="{mark}p">Paid {sign}{_unseen(item)}</label>'
    yield (
        f'<input type="text" inputmode="decimal" id="{mark}p" class="price" autocomplete="off" '
        f'maxlength="20" aria-describedby="{mark}e">'
    )
    yield f'<p class="wrong" id="{mark}e"></p>'
    yield "</div>"


def _fold(item: Item, mark: str) -> Iterator[str]:
    """Why it is on the list, folded away; and the mark of what need not be bought."""
    yield f"<details><summary>Why{_unseen(item)}</summary>"
    yield f"<p>{safe(item.why)}</p>"
    if item.kind == "buy":
        yield (
            f'<div class="tick small scripted" hidden><input type="checkbox" id="{mark}h" '
            f'class="had" autocomplete="off"><label for="{mark}h">Had it already: not bought'
            f"{_unseen(item)}</label></div>"
        )
    yield "</details>"


def _paid() -> Iterator[str]:
    """What was paid, to hand to the desk; the script fills it."""
    yield '<section class="scripted" aria-labelledby="paid" hidden>'
    yield '<h2 id="paid">What was paid</h2>'
    yield '<p id="against"></p>'
    yield '<div id="receipts"></div>'
    yield "<fieldset><legend>Write it as</legend>"
    yield (
        '<div class="tick small"><input type="radio" name="form" id="as-toml" value="toml" '
        'checked><label for="as-toml">lines for a close-out file</label></div>'
    )
    yield (
        '<div class="tick small"><input type="radio" name="form" id="as-csv" value="csv">'
        '<label for="as-csv">a table (CSV) for a spreadsheet</label></div>'
    )
    yield "</fieldset>"
    yield '<label for="out">To copy</label>'
    yield '<textarea id="out" rows="8" readonly spellcheck="false"></textarea>'
    yield '<button type="button" id="copy">Copy what was paid</button>'
    yield '<button type="button" id="save">Save it as a file</button>'
    yield '<button type="button" id="forget">Forget ticks and prices</button>'
    yield "</section>"


def _foot() -> Iterator[str]:
    yield '<footer class="bar scripted" hidden>'
    yield '<p id="sum" role="status"></p>'
    yield '<p id="status" role="status"></p>'
    yield "</footer>"
