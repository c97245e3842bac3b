"""What the takeoff needs of the materials book, made from its rows once for each book."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.catalog.records import Books, Material
from estimator.measures import cm3_to_in3, to_decimal
from estimator.takeoff.stock import BoxOnFile, ConnectorOnFile, Stock

_BOOKS_KEPT = 8
_VOLUME_PLACES = 6
_MOUNTS = ("old-work", "ceiling-old-work")


@lru_cache(maxsize=_BOOKS_KEPT)
def stock_of(books: Books) -> Stock:
    """Boxes by rising volume, connectors by rising size, and the words for every item."""
    first = {item: ways[0] for item, ways in books.materials.items()}
    boxes = [_box(row) for row in first.values() if row.properties.get("mount") in _MOUNTS]
    connectors = [_connector(row) for row in first.values() if row.properties.get("holds")]
    return Stock(
        boxes=tuple(sorted(boxes, key=_box_size)),
        connectors=tuple(sorted(connectors, key=_connector_size)),
        descriptions={item: _words(row) for item, row in first.items()},
        units={item: row.unit for item, row in first.items()},
    )


def _words(row: Material) -> str:
    """The item in words; what comes after the last comma is often the pack."""
    return row.description


def _box(row: Material) -> BoxOnFile:
    properties = row.properties
    return BoxOnFile(
        item=row.item,
        description=row.description,
        volume_in3=_volume_in3(row),
        gangs_count=int(Decimal(properties.get("gangs", "1"))),
        clamps=properties.get("clamps") == "yes",
        metal=properties.get("metal") == "yes",
        depth_in=_number(properties.get("depth_in")),
        mount=properties["mount"],
    )


def _volume_in3(row: Material) -> Decimal | None:
    in3 = _number(row.properties.get("volume_in3"))
    if in3 is not None:
        return in3
    ml = _number(row.properties.get("volume_ml"))
    return None if ml is None else to_decimal(cm3_to_in3(Fraction(ml)), _VOLUME_PLACES)


def _number(text: str | None) -> Decimal | None:
    return Decimal(text) if text else None


def _box_size(box: BoxOnFile) -> tuple[Decimal, str]:
    return box.volume_in3 or Decimal(0), box.item


def _connector(row: Material) -> ConnectorOnFile:
    return ConnectorOnFile(row.item, row.description, holds(row.properties["holds"]))


def holds(text: str) -> dict[str, tuple[int, int]]:
    """Read "14:2-3 12:2-2": for each wire size the least and most conductors held.

    >>> holds("14:2-3 12:2-2")["14"]
    (2, 3)
    """
    found = {}
    for each in text.split():
        wire, _, span = each.partition(":")
        least, _, most = span.partition("-")
        found[wire] = (int(least), int(most or least))
    return found


def _connector_size(connector: ConnectorOnFile) -> tuple[int, str]:
    return max(most for _, most in connector.holds.values()), connector.item
