"""Single figures of the rules: one row a figure and edition, with its source and confidence."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from estimator.tables.facts import NotOnFile, Row, editions, rows, sources

ALL = "all"
# Every file of figures; a new one is added here.
LIMIT_TABLES = (
    "limits_box",
    "limits_cable",
    "limits_circuit",
    "limits_house",
    "limits_place",
    "limits_wood",
)


@dataclass(frozen=True, slots=True)
class Limit:
    """One figure of a rule.

    Attributes:
        value: exact; the unit is in `unit`. where: place in the source ("314.16(B)(2)").
        confidence: "seen", "memory", "inferred" or "common practice"; of this very figure.
    """

    figure: str
    value: Fraction
    unit: str
    source: str
    where: str
    confidence: str


@cache
def _all_limits() -> Mapping[tuple[str, str], Row]:
    """Rows by figure and edition."""
    return {(row["figure"], row["edition"]): row for table in LIMIT_TABLES for row in rows(table)}


@cache
def limit(figure: str, edition: str) -> Limit:
    """One figure in one edition; a row for all editions serves where there is none of its own.

    Raises:
        NotOnFile: no row; the message lists the editions on file for that figure.
    """
    found = _all_limits().get((figure, edition)) or _all_limits().get((figure, ALL))
    if found is None:
        on_file = tuple(sorted(each for name, each in _all_limits() if name == figure))
        raise NotOnFile("limits", f"{figure} in {edition}", on_file)
    return Limit(
        figure,
        Fraction(found["value"]),
        found["unit"],
        found["source"],
        found["where"],
        found["confidence"],
    )


def figures_on_file() -> tuple[str, ...]:
    """Names of every figure, sorted."""
    return tuple(sorted({figure for figure, _ in _all_limits()}))


def cited(edition: str, where: str, confidence: str = "") -> str:
    """A citation with its edition, and its confidence where it was not read.

    >>> cited("nec-2023", "314.16")
    'NEC 2023 314.16'
    >>> cited("nec-2017", "314.16", "memory")
    'NEC 2017 314.16 (from memory: check)'
    """
    name = editions()[edition]["name"]
    told = confidence or sources()[editions()[edition]["source"]]["confidence"]
    return f"{name} {where}{confidence_words(told)}"


def confidence_words(confidence: str) -> str:
    """What a citation adds for a figure that was not read in its source."""
    if confidence == "memory":
        return " (from memory: check)"
    if confidence == "inferred":
        return " (worked out)"
    return ""
