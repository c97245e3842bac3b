"""What to buy: each item of the takeoff against truck stock and the packs on file."""

from __future__ import annotations

from decimal import Decimal
from functools import lru_cache

from estimator.catalog.records import Books, Material
from estimator.pricing.bought import (
    Answer,
    Shelf,
    Wanted,
    pack_bought,
    shelf,
    shelf_of,
    shopping_line,
    stock_drawn,
)
from estimator.pricing.cable_shopping import cable_answer, cable_words
from estimator.pricing.packs import PackChoice, PackOffer, choose_packs
from estimator.pricing.records import ShoppingLine
from estimator.problems import InputError, Problem
from estimator.saying import said
from estimator.survey.records import Survey
from estimator.takeoff.records import PartLine, Takeoff

_ITEMS_KEPT = 4096
FROM_TRUCK = said("all from the truck")


def shopping_list(survey: Survey, takeoff: Takeoff, books: Books) -> tuple[ShoppingLine, ...]:
    """One line for each item of the takeoff, in takeoff order.

    Raises:
        InputError: items that the book sells by another unit than the takeoff counts in.
    """
    cables = {order.item: order for order in takeoff.cable}
    wanted_items = _wanted(survey, takeoff, books)
    _refuse_other_units(wanted_items, books)
    lines = []
    for wanted in wanted_items:
        order = cables.get(wanted.part.item)
        if order is None:
            lines.append(
                shopping_line(wanted, _pack_answer(books, wanted), wanted.part.description)
            )
        else:
            answer = cable_answer(books, order, wanted, survey.job.units)
            lines.append(shopping_line(wanted, answer, cable_words(order, wanted)))
    return tuple(lines)


def _refuse_other_units(wanted_items: list[Wanted], books: Books) -> None:
    """A price for a metre is no price for a foot: the book has to say the takeoff's unit."""
    where = books.files.get("materials", "materials.csv")
    problems = [
        Problem(
            f"{where}: row {row.row}, column unit",
            f'"{row.item}" is sold by "{row.unit}", and the takeoff counts it in'
            f' "{each.part.unit}"',
            f'Write its pack size in "{each.part.unit}".',
        )
        for each in wanted_items
        for row in each.shelf.ways
        if row.unit != each.part.unit
    ]
    if problems:
        raise InputError(problems)


def _wanted(survey: Survey, takeoff: Takeoff, books: Books) -> list[Wanted]:
    """Each item once, with the sum of its takeoff lines."""
    needs: dict[str, Decimal] = {}
    first: dict[str, PartLine] = {}
    for part in takeoff.parts:
        needs[part.item] = needs.get(part.item, Decimal(0)) + part.quantity
        first.setdefault(part.item, part)
    return [
        Wanted(
            first[item],
            need,
            _shelf(survey, books, first[item]),
            tuple(each for each in survey.truck_stock if each.item == item),
        )
        for item, need in needs.items()
    ]


def _shelf(survey: Survey, books: Books, part: PartLine) -> Shelf:
    """The ways to buy an item; a price that the job gives goes before the book."""
    on_file = shelf_of(books, part.item)
    price = survey.overrides.prices.get(part.item)
    if price is None:
        return on_file
    own = Material(
        item=part.item,
        description=part.description,
        unit=part.unit,
        pack_size=Decimal(1),
        pack_price=price,
        supplier=said("priced by the job"),
        aisle=on_file.ways[0].aisle if on_file.ways else "other",
        tax_class="goods",
        properties={"sold_as": "length"} if part.group == "cable" else {},
        priced_on=None,
        source="the job's own price",
        row=0,
    )
    return shelf((own,))


def _pack_answer(books: Books, wanted: Wanted) -> Answer:
    """Truck stock first, then whole packs at least cost."""
    drawn, left = [], wanted.need
    for stock in wanted.stock:
        used = min(left, stock.quantity or Decimal(0))
        if used:
            drawn.append(stock_drawn(books, wanted, stock, used))
            left -= used
    if not left:
        return Answer(left, (), tuple(drawn), True, FROM_TRUCK)
    if not wanted.shelf.priced:
        return Answer(left, (), tuple(drawn), False, wanted.shelf.why_unpriced)
    choice = _choice(left, wanted.shelf.offers)
    packs = tuple(
        pack_bought(wanted.shelf.priced[int(offer.offer_id)], count, books.shop.currency)
        for offer, count in choice.packs
    )
    return Answer(left, packs, tuple(drawn), True, choice.why)


@lru_cache(maxsize=_ITEMS_KEPT)
def _choice(need: Decimal, offers: tuple[PackOffer, ...]) -> PackChoice:
    return choose_packs(need, offers)
