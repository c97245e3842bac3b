"""Amounts and prices on the list are said as people say them; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.drawing.kind_words import opening_called
from estimator.language import Language
from estimator.outputs.shopping_items import items_of
from estimator.outputs.unit_words import amount_in, amount_of, cost_with_price
from estimator.pricing.records import PackBought
from tests.cli.made_bid import PACK, PLATES, made_bid

COIL = replace(PACK, sold_as="coil", pack_size=Decimal(25), count=2)
SINGLE = replace(PLATES, pack_size=Decimal(1))
FOOT = replace(PACK, pack_size=Decimal(1))


@pytest.mark.parametrize(
    ("quantity", "unit", "said"),
    [("25", "ea", "25"), ("1", "application", "1 application"),
     ("1.5", "application", "1.5 applications"), ("10", "application", "10 applications"),
     ("3", "ft", "3 ft")],
)  # fmt: skip
def test_an_amount_by_its_unit(quantity: str, unit: str, said: str) -> None:
    assert amount_in(Decimal(quantity), unit) == said


@pytest.mark.parametrize(
    ("unit", "said"),
    [("ea", "2 x Thing"), ("application", "2 applications: Thing"), ("gal", "2 gal Thing")],
)
def test_so_much_of_a_thing(unit: str, said: str) -> None:
    assert amount_of(Decimal(2), unit, "Thing") == said


@pytest.mark.parametrize(
    ("code", "one", "two"),
    [("es", "1 aplicación", "2 aplicaciones"), ("fr", "1 application", "2 applications")],
)
def test_an_amount_told(code: str, one: str, two: str) -> None:
    language = Language(code)  # type: ignore[arg-type]
    told = [language.say(amount_in(Decimal(count), "application")) for count in (1, 2)]
    assert told == [one, two]


@pytest.mark.parametrize(
    ("pack", "said"),
    [(PLATES, "$9 ($4 per pack)"), (FOOT, "$9 ($4 per ft)"), (COIL, "$9 ($4 per coil)"),
     (SINGLE, "$9 ($4 each)"), (PACK, "$9 ($4 per 3 ft)")],
)  # fmt: skip
def test_what_a_price_is_for(pack: PackBought, said: str) -> None:
    assert cost_with_price("$9", "$4", pack) == said


def test_pieces_of_a_pack_are_counted_without_a_unit() -> None:
    plates = next(each for each in items_of(made_bid()) if each.item == "protection-plate")
    assert (plates.detail, plates.why) == ("5 in each", "The work needs 8: two packs")


@pytest.mark.parametrize(
    ("name", "said"), [("opening", "opening"), ("strip", "opening strip"), ("Opening", "opening")]
)
def test_an_opening_is_called_so_once(name: str, said: str) -> None:
    assert opening_called(name) == said
