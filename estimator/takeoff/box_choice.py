"""Chooses the box to buy: the smallest on file that fits the place and holds the wires."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.settings import Practice
from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.tables.box_fill import FillRules
from estimator.takeoff.box_need import Holding, Need, need_of
from estimator.takeoff.box_room import bare_volume_in3, room_in, room_with
from estimator.takeoff.stock import BoxOnFile, Stock

FAN_BOX = "fan box"
_MOUNTS = {"wall": "old-work", "ceiling": "ceiling-old-work"}
_FAN_MOUNT = "fan-old-work"


def counted_clamps(clamps: YesNo, metal: YesNo, practice: Practice) -> YesNo:
    """Inner clamps that count: those built into a plastic box only if the shop counts them."""
    disputed = metal == "no" and not practice.count_built_in_clamps
    return "no" if disputed else clamps


def offered_clamps(offer: BoxOnFile, practice: Practice) -> YesNo:
    """Inner clamps that count in a box on file."""
    clamps: YesNo = "yes" if offer.clamps else "no"
    return counted_clamps(clamps, "yes" if offer.metal else "no", practice)


def is_metal_to_be(box: Box) -> bool:
    """True where the box to buy is a metal one: a new box that the survey says is metal."""
    return box.metal == "yes" and not box.existing


def choose(
    box: Box, holding: Holding, rules: FillRules | None, practice: Practice, stock: Stock
) -> BoxOnFile | None:
    """The smallest box on file for the place, the stated volume and the wires.

    A box in the place of an old one takes no rings over. A box without a volume holds nothing
    that has to be counted, or that a volume was stated for. None where none on file fits.
    """
    asked_in3 = box.replacement_volume_in3 if box.existing else bare_volume_in3(box, rules)
    needs: dict[YesNo, Need] = {}
    for offer in stock.boxes:
        if not _suits(offer, box):
            continue
        if (offer.volume_in3 or Decimal(0)) < (asked_in3 or Decimal(0)):
            continue
        if rules is None:
            return offer
        if offer.volume_in3 is None:
            continue
        clamps = offered_clamps(offer, practice)
        if clamps not in needs:
            needs[clamps] = need_of(box, holding, clamps, rules)
        if needs[clamps].fits(_room(offer.volume_in3, box, rules)):
            return offer
    return None


def is_fan_box(box: Box) -> bool:
    """True where the box to buy is one made for paddle fans: as planned, or in an old one's place.

    A box in a wall carries no paddle fan.
    """
    if box.existing:
        return box.replacement == FAN_BOX
    return box.mount == "ceiling" and box.contents.fan_rated == "yes"


def _suits(offer: BoxOnFile, box: Box) -> bool:
    """Whether a box on file is of the kind; boxes for fans are bought as they come."""
    if is_fan_box(box):
        return (offer.mount, offer.gangs_count) == (_FAN_MOUNT, box.gangs_count)
    place = (offer.mount, offer.gangs_count, offer.metal)
    return place == (_MOUNTS[box.mount], box.gangs_count, is_metal_to_be(box))


def _room(offer_in3: Decimal, box: Box, rules: FillRules) -> Fraction:
    return room_in(offer_in3, rules) if box.existing else room_with(offer_in3, box, rules)
