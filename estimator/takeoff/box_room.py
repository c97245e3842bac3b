"""Room that a box has: as marked, or by the table of standard boxes; with rings and covers."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.measures import cm3_to_in3, in3_to_cm3, to_decimal
from estimator.survey.electrical import Box
from estimator.tables.box_fill import FillRules, standard_boxes

_ROOMS_KEPT = 1024
_STAMP_PLACES = 2
_VOLUME_PLACES = 6  # as the survey keeps a volume


def volume_in3(box: Box, rules: FillRules | None) -> Decimal | None:
    """The room of a box as surveyed, rings and covers included; None where nobody knows it.

    Rings and covers without a mark add nothing.
    """
    bare = bare_volume_in3(box, rules)
    return None if bare is None else bare + added_in3(box)


def bare_volume_in3(box: Box, rules: FillRules | None) -> Decimal | None:
    """The room of the box alone: its mark, else its row of the standard metal boxes.

    A nonmetallic box without a mark has no room that anyone may count on.
    """
    name = box.contents.table_box
    if box.volume_in3 is not None or name is None or rules is None:
        return box.volume_in3
    row = standard_boxes().get(name)
    if row is None or not rules.table_boxes or box.metal == "no":
        return None
    return row.volume_in3 * (box.gangs_count if row.per_gang else 1)


def added_in3(box: Box) -> Decimal:
    """Room of the rings and covers that have a mark."""
    added = box.contents.added_volumes_in3
    return sum((each for each in added if each is not None), Decimal(0))


def room_of(box: Box, rules: FillRules) -> Fraction | None:
    """The room of a box as surveyed, in the unit that the code counts in."""
    bare = bare_volume_in3(box, rules)
    return None if bare is None else room_with(bare, box, rules)


def room_with(bare_in3: Decimal, box: Box, rules: FillRules) -> Fraction:
    """The room of a box of some volume with the rings and covers of this one."""
    room = room_in(bare_in3, rules)
    for each in box.contents.added_volumes_in3:
        if each is not None:
            room += room_in(each, rules)
    return room


@lru_cache(maxsize=_ROOMS_KEPT)
def room_in(volume_in3: Decimal, rules: FillRules) -> Fraction:
    """A volume in the unit that the code counts in.

    A mark in millilitres was kept in cubic inches to six places; it is given back as marked.

    >>> from estimator.tables.box_fill import canada_fill_rules
    >>> room_in(Decimal("18.014209"), canada_fill_rules())
    Fraction(1476, 5)
    """
    if rules.unit == "in3":
        return Fraction(volume_in3)
    exact_ml = in3_to_cm3(volume_in3)
    marked_ml = to_decimal(exact_ml, _STAMP_PLACES)
    was_marked = to_decimal(cm3_to_in3(marked_ml), _VOLUME_PLACES) == volume_in3
    return Fraction(marked_ml) if was_marked else exact_ml
