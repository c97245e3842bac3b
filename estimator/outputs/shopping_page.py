"""The shopping list as one page for a phone: ticks that remember, and what was paid."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from itertools import groupby

from estimator.guide.title_words import title_of
from estimator.outputs.draft import CAUTION
from estimator.outputs.list_words import script_words
from estimator.outputs.markup import safe
from estimator.outputs.money_form import MoneyForm, money_form
from estimator.outputs.page import whole_page
from estimator.outputs.shopping_items import NO_PRICE, Item, expected, items_of
from estimator.outputs.text_job import money
from estimator.outputs.unit_words import cost_with_price
from estimator.pricing.records import Bid
from estimator.saying import listed, said

_DIGITS = 16
_STYLES, _SCRIPTS = ("base.css", "list.css"), ("list_numbers.js", "list.js")
_NO_SCRIPT = said("This view cannot remember ticks. The list can be read and printed.")
_BUTTONS = {
    "copy": said("Copy what was paid"),
    "save": said("Save it as a file"),
    "forget": said("Forget ticks and prices"),
}


def shopping_page(bid: Bid, job_file: str = "") -> str:
    """Write the page. The same list gives the same page, and finds its ticks again.

    `job_file` is the name of the job file, for the close-out file that the page saves beside it.
    """
    job, language = bid.survey.job, bid.books.language
    page = _Page(bid, items_of(bid), money_form(bid.books.shop.currency, job.locale), job_file)
    title = language.say(
        said("Shopping list {job}: {title}", job=job.id, title=title_of(bid.survey))
    )
    body = "\n".join((*page.head(), *page.main(), *page.foot()))
    return whole_page(title, body, _STYLES, _SCRIPTS, lang=language.code)


def list_hash(items: tuple[Item, ...]) -> str:
    """Name a list by what is on it: ticks of one list never show up on another.

    The English names count, whatever the page is told in: a list read in another language finds
    its ticks again.
    """
    rows = [(each.key, str(each.what), str(each.quantity), str(each.cost)) for each in items]
    return sha256(repr(rows).encode()).hexdigest()[:_DIGITS]


@dataclass(frozen=True, slots=True)
class _Page:
    """The lines of the page, told in the customer's language."""

    bid: Bid
    items: tuple[Item, ...]
    form: MoneyForm
    job_file: str

    def told(self, text: str) -> str:
        """Tell it, fit to stand in markup."""
        return safe(self.bid.books.language.say(text))

    def head(self) -> Iterator[str]:
        """Title, what it should cost, and the caution."""
        job, told = self.bid.survey.job, self.told
        yield f'<a class="skip" href="#list">{told(said("Go to the list"))}</a>'
        yield "<header>"
        yield f"<h1>{told(said('Shopping list: {title}', title=title_of(self.bid.survey)))}</h1>"
        named = said("Job {job}, {customer}", job=job.id, customer=job.customer)
        yield f"<p>{told(named)}</p>"
        total = money(self.bid, expected(self.items))
        about = told(said("About {total} before tax, without small items.", total=total))
        yield f"<p>{about.replace(safe(total), f'<strong>{safe(total)}</strong>', 1)}</p>"
        missing = sum(each.kind == "buy" and each.cost is None for each in self.items)
        if missing:
            yield f"<p>{told(said('Without a price in the book: {count}.', count=missing))}</p>"
        yield f"<p>{told(CAUTION)}</p>"
        yield f"<noscript><p>{told(_NO_SCRIPT)}</p>"
        yield "</noscript>"
        yield "</header>"

    def main(self) -> Iterator[str]:
        """Everything to get, aisle by aisle, and what was paid."""
        form = self.form
        named = {
            "job": self.bid.survey.job.id,
            "file": self.job_file,
            "list": list_hash(self.items),
            "places": str(form.places),
            "before": form.before,
            "after": form.after,
            "point": form.point,
            "group": form.group,
        }
        yield f'<main id="list" tabindex="-1"{self._data(named)}>'
        at = 0
        aisles = groupby(self.items, key=lambda each: each.aisle)
        for number, (aisle, group) in enumerate(aisles, start=1):
            yield f'<section aria-labelledby="aisle{number}">'
            yield f'<h2 id="aisle{number}">{self.told(aisle)}</h2>'
            yield "<ul>"
            for item in group:
                at += 1
                yield from self._item(item, f"i{at}")
            yield "</ul>"
            yield "</section>"
        if not self.items:
            yield f"<p>{self.told(said('Nothing to get.'))}</p>"
        yield from self._paid()
        yield "</main>"

    def _data(self, named: dict[str, str]) -> str:
        return "".join(f' data-{name}="{self.told(value)}"' for name, value in named.items())

    def _item(self, item: Item, mark: str) -> Iterator[str]:
        """One thing to get: its box to tick, its name, why, and what was paid for it."""
        named = {
            "key": item.key, "kind": item.kind, "item": item.item, "what": item.what,
            "quantity": f"{item.quantity:f}", "unit": item.unit, "supplier": item.supplier,
            "cost": "" if item.cost is None else str(self.form.minor(item.cost)),
        }  # fmt: skip
        yield f"<li{self._data(named)}>"
        yield (
            f'<div class="tick"><input type="checkbox" id="{mark}" class="got" autocomplete="off">'
            f'<label for="{mark}">{self.told(item.what)}</label></div>'
        )
        if detail := self._detail(item):
            yield f'<p class="detail">{self.told(detail)}</p>'
        yield f'<p class="detail told" hidden>{self.told(said("Had it already."))}</p>'
        yield '<div class="more">'
        if item.kind == "buy":
            yield from self._price_field(item, mark)
            yield from self._had_box(item, mark)
        yield from self._fold(item, mark)
        yield "</div>"
        if item.kind == "buy":
            paid = self.told(said("Paid: ____________"))
            yield f'<p class="on-paper" aria-hidden="true">{paid}</p>'
        yield "</li>"

    def _detail(self, item: Item) -> str:
        """Size of the pack, where it is sold, and what it should cost."""
        cost = NO_PRICE if item.cost is None else money(self.bid, item.cost)
        if item.pack is not None:
            cost = cost_with_price(cost, money(self.bid, item.pack.price_each), item.pack)
        return listed((part for part in (item.detail, item.supplier, cost) if part), "; ")

    def _unseen(self, item: Item) -> str:
        """The name of the thing, for those who hear a field without its surroundings."""
        return f'<span class="unseen">, {self.told(item.what)}</span>'

    def _price_field(self, item: Item, mark: str) -> Iterator[str]:
        """A field that only the script makes useful; without it, it stays hidden."""
        sign = (self.form.before or self.form.after).strip()
        label = self.told(said("Paid {currency}", currency=sign))
        yield '<div class="paid scripted" hidden>'
        yield f'<label for="{mark}p">{label}{self._unseen(item)}</label>'
        yield (
            f'<input type="text" inputmode="decimal" id="{mark}p" class="price" '
            f'autocomplete="off" maxlength="20" aria-describedby="{mark}e">'
        )
        yield f'<p class="wrong" id="{mark}e"></p>'
        yield "</div>"

    def _had_box(self, item: Item, mark: str) -> Iterator[str]:
        """The mark of what need not be bought, beside the price."""
        label = f"{self.told(said('Had it already: not bought'))}{self._unseen(item)}"
        yield (
            f'<div class="tick small scripted" hidden><input type="checkbox" id="{mark}h" '
            f'class="had" autocomplete="off"><label for="{mark}h">{label}</label></div>'
        )

    def _fold(self, item: Item, mark: str) -> Iterator[str]:
        """Why it is on the list, folded away; and how many were bought, where that is another."""
        buy = item.kind == "buy"
        summary = said("Why, and how many") if buy else said("Why")
        yield f"<details><summary>{self.told(summary)}{self._unseen(item)}</summary>"
        yield f"<p>{self.told(item.why)}</p>"
        if buy:
            yield from self._quantity_field(item, mark)
        yield "</details>"

    def _quantity_field(self, item: Item, mark: str) -> Iterator[str]:
        """How many were bought; the script fills in what the list says."""
        label = self.told(said("Bought ({unit})", unit=item.unit))
        yield '<div class="paid scripted" hidden>'
        yield f'<label for="{mark}q">{label}{self._unseen(item)}</label>'
        yield (
            f'<input type="text" inputmode="decimal" id="{mark}q" class="many" '
            f'autocomplete="off" maxlength="20" aria-describedby="{mark}w">'
        )
        yield f'<p class="wrong" id="{mark}w"></p>'
        yield "</div>"

    def _paid(self) -> Iterator[str]:
        """What was paid, to hand to the desk; the script fills it."""
        told = self.told
        yield '<section class="scripted" aria-labelledby="paid" hidden>'
        yield f'<h2 id="paid">{told(said("What was paid"))}</h2>'
        yield '<p id="against"></p>'
        yield '<div id="receipts"></div>'
        yield f"<fieldset><legend>{told(said('Write it as'))}</legend>"
        yield (
            '<div class="tick small"><input type="radio" name="form" id="as-toml" value="toml" '
            f'checked><label for="as-toml">{told(said("lines for a close-out file"))}</label></div>'
        )
        yield (
            '<div class="tick small"><input type="radio" name="form" id="as-csv" value="csv">'
            f'<label for="as-csv">{told(said("a table (CSV) for a spreadsheet"))}</label></div>'
        )
        yield "</fieldset>"
        yield f'<label for="out">{told(said("To copy"))}</label>'
        yield '<p id="held"></p>'
        yield (
            '<textarea id="out" rows="8" readonly spellcheck="false" aria-describedby="held">'
            "</textarea>"
        )
        for name, label in _BUTTONS.items():
            yield f'<button type="button" id="{name}">{told(label)}</button>'
        yield "</section>"

    def foot(self) -> Iterator[str]:
        """Where the script says how far it is; and what it says that with."""
        yield '<footer class="bar scripted" hidden>'
        yield '<p id="sum" role="status"></p>'
        yield '<p id="status" role="status"></p>'
        yield "</footer>"
        words = script_words(self.bid.books.language)
        yield f'<script type="application/json" id="words">{words}</script>'
