"""What the takeoff needs of the materials book, made from its rows once for each book."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.catalog.records import Books, Material
from estimator.measures import MM_PER_IN, cm3_to_in3, to_decimal
from estimator.saying import word
from estimator.takeoff.stock import BoxOnFile, ConnectorOnFile, Stock

_BOOKS_KEPT = 8
_VOLUME_PLACES = 6
_MOUNTS = ("old-work", "ceiling-old-work", "fan-old-work")


class _ByItem(Mapping[str, str]):
    """One column of the materials book by item, looked up only when asked for."""

    def __init__(self, books: Books, column: Callable[[Material], str]) -> None:
        self._materials, self._column = books.materials, column
        self._known: dict[str, str] = {}

    def __getitem__(self, item: str) -> str:
        """The first row's value; KeyError for an item that is not on file."""
        if item not in self._known:
            self._known[item] = self._column(self._materials[item][0])
        return self._known[item]

    def __iter__(self) -> Iterator[str]:
        """Item keys in file order."""
        return iter(self._materials)

    def __len__(self) -> int:
        """Items on file."""
        return len(self._materials)


@lru_cache(maxsize=_BOOKS_KEPT)
def stock_of(books: Books) -> Stock:
    """Boxes by rising volume, connectors by rising size, and the words for every item.

    Only items whose key begins with "box-" or "connector-" are looked at, so that a book of
    a million rows is not read through for each job.
    """
    boxes = [row for row in _first(books, "box-") if row.properties.get("mount") in _MOUNTS]
    connectors = [row for row in _first(books, "connector-") if row.properties.get("holds")]
    return Stock(
        boxes=tuple(sorted(map(_box, boxes), key=_box_size)),
        connectors=tuple(sorted(map(_connector, connectors), key=_connector_size)),
        descriptions=_ByItem(books, lambda row: word(row.description)),
        units=_ByItem(books, lambda row: word(row.unit)),
    )


def _first(books: Books, start: str) -> Iterator[Material]:
    """The first row of each item whose key begins so."""
    return (books.materials[item][0] for item in books.materials if item.startswith(start))


def _box(row: Material) -> BoxOnFile:
    properties = row.properties
    return BoxOnFile(
        item=row.item,
        description=word(row.description),
        volume_in3=_volume_in3(row),
        gangs_count=int(Decimal(properties.get("gangs", "1"))),
        clamps=properties.get("clamps") == "yes",
        metal=properties.get("metal") == "yes",
        depth_in=_depth_in(row),
        mount=properties["mount"],
    )


def _volume_in3(row: Material) -> Decimal | None:
    in3 = _number(row.properties.get("volume_in3"))
    if in3 is not None:
        return in3
    ml = _number(row.properties.get("volume_ml"))
    return None if ml is None else to_decimal(cm3_to_in3(Fraction(ml)), _VOLUME_PLACES)


def _depth_in(row: Material) -> Fraction | None:
    inches, mm = row.properties.get("depth_in"), row.properties.get("depth_mm")
    if inches:
        return Fraction(inches)
    return Fraction(mm) / MM_PER_IN if mm else None


def _number(text: str | None) -> Decimal | None:
    return Decimal(text) if text else None


def _box_size(box: BoxOnFile) -> tuple[Decimal, str]:
    return box.volume_in3 or Decimal(0), box.item


def _connector(row: Material) -> ConnectorOnFile:
    return ConnectorOnFile(row.item, word(row.description), holds(row.properties["holds"]))


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
