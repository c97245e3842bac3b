"""Which circuit may feed which outlet in which room: the matrix, and the kinds of circuits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from itertools import product
from typing import Literal, cast

from estimator.tables.facts import NotOnFile, Row, rows

ANY = "any"
ALL = "all"
Permission = Literal["allowed", "refused", "only"]


@dataclass(frozen=True, slots=True)
class SourceRow:
    """One cell of the matrix.

    Attributes:
        row: key of the row in the reference ("XT-01").
        answer: "only" is allowed where every condition holds.
        reason: goes on from "this circuit ...", in plain words.
    """

    row: str
    answer: Permission
    conditions: tuple[str, ...]
    reason: str
    where: str
    confidence: str


@dataclass(frozen=True, slots=True)
class CircuitClass:
    """A kind of circuit.

    Attributes:
        words: the kind in plain words.
        least_a, most_a: breaker that it has; None where any will do.
        served_rooms: a survey may name the rooms it serves; else it serves one thing alone.
    """

    circuit: str
    words: str
    least_a: int | None
    most_a: int | None
    served_rooms: bool
    where: str
    confidence: str

    def takes(self, breaker_a: int | None) -> bool:
        """True where the kind can have such a breaker, or nobody knows the breaker."""
        if breaker_a is None or self.least_a is None or self.most_a is None:
            return True
        return self.least_a <= breaker_a <= self.most_a

    @property
    def is_exact(self) -> bool:
        """True where the kind has one rating alone, so that the breaker must be known."""
        return self.least_a is not None and self.least_a == self.most_a


@cache
def circuit_classes() -> Mapping[str, CircuitClass]:
    """Every kind of circuit on file, by the name a survey uses."""
    return {
        row["circuit"]: CircuitClass(
            row["circuit"],
            row["words"],
            int(row["least_a"]) if row["least_a"] else None,
            int(row["most_a"]) if row["most_a"] else None,
            row["served_rooms"] == "yes",
            row["where"],
            row["confidence"],
        )
        for row in rows("circuit_classes")
    }


@cache
def _cells() -> Mapping[tuple[str, str, str, str], Row]:
    return {
        (row["circuit"], row["room"], row["outlet"], row["edition"]): row
        for row in rows("source_class")
    }


@cache
def source_row(circuit: str, room: str, outlet: str, edition: str) -> SourceRow:
    """The cell for one circuit, room and outlet: the closest row, room before outlet.

    Raises:
        NotOnFile: a circuit without rows; the message lists those on file.
    """
    for place in product((room, ANY), (outlet, ANY), (edition, ALL)):
        found = _cells().get((circuit, *place))
        if found is not None:
            return _read(found)
    raise NotOnFile("source_class", circuit, tuple(sorted({key[0] for key in _cells()})))


def _read(row: Row) -> SourceRow:
    return SourceRow(
        row["row"],
        cast(Permission, row["answer"]),
        tuple(row["condition"].split()),
        row["reason"],
        row["where"],
        row["confidence"],
    )
