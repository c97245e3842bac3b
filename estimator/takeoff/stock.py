"""What the takeoff must know of the materials on file: boxes and wire connectors by size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class BoxOnFile:
    """One box that can be bought.

    Attributes:
        volume_in3: as marked, in cubic inches; None where the book does not say.
        mount: "old-work" (in a finished wall), "ceiling-old-work", or "fan-old-work".
    """

    item: str
    description: str
    volume_in3: Decimal | None
    gangs_count: int
    clamps: bool
    metal: bool
    depth_in: Fraction | None
    mount: str


@dataclass(frozen=True, slots=True)
class ConnectorOnFile:
    """One wire connector: least and most conductors that it holds, by wire size."""

    item: str
    description: str
    holds: Mapping[str, tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Stock:
    """Boxes by rising volume, connectors by rising size; words and unit of each item on file."""

    boxes: tuple[BoxOnFile, ...]
    connectors: tuple[ConnectorOnFile, ...]
    descriptions: Mapping[str, str]
    units: Mapping[str, str]

    def connector_for(self, wire: str, count: int) -> ConnectorOnFile | None:
        """The smallest connector whose range takes `count` conductors of a size."""
        for connector in self.connectors:
            least, most = connector.holds.get(wire, (1, 0))
            if least <= count <= most:
                return connector
        return None
