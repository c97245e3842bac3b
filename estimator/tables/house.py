"""Cautions about the house, and the lines of the test and safety list, by country."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from estimator.saying import said, word
from estimator.tables.facts import NotOnFile, rows, sources
from estimator.tables.limits import confidence_words

ANY = "any"


@dataclass(frozen=True, slots=True)
class Caution:
    """What to do about one hazard, with where it is from."""

    text: str
    cite: str


@cache
def caution(key: str, country: str) -> Caution:
    """A caution in the words for a country; where it has none of its own, the general ones.

    Raises:
        NotOnFile: no general row and none for the country.
    """
    found = {row["country"]: row for row in rows("cautions") if row["caution"] == key}
    row = found.get(country) or found.get(ANY)
    if row is None:
        on_file = tuple(sorted({each["caution"] for each in rows("cautions")}))
        raise NotOnFile("cautions", f"{key} in {country}", on_file)
    title = sources()[row["source"]]["title"]
    place = f"{title}, {row['where']}" if row["where"] else title
    doubt = confidence_words(row["confidence"])
    return Caution(row["text"] + doubt, place + doubt)


@dataclass(frozen=True, slots=True)
class SafetyLine:
    """One line of the list: under which heading, and the rule whose finding calls for it.

    Attributes:
        rule: id of a rule; the line is printed where that rule found something other than a
            pass. Empty: always printed.
    """

    heading: str
    rule: str
    text: str


@cache
def safety_lines(country: str) -> tuple[SafetyLine, ...]:
    """Lines for a country in printing order; its own line goes before the general one."""
    own = {
        (row["heading"], row["rule"])
        for row in rows("safety_list")
        if row["country"] == country and row["rule"]
    }
    return tuple(
        SafetyLine(word(row["heading"]), row["rule"], _with_doubt(row))
        for row in rows("safety_list")
        if row["country"] == country
        or (row["country"] == ANY and (row["heading"], row["rule"]) not in own)
    )


def _with_doubt(row: Mapping[str, str]) -> str:
    """A line of the list, with what is to be said of one that was not read in its source."""
    doubt = confidence_words(row["confidence"]).strip()
    line = word(row["text"])
    return said("{line} {doubt}", line=line, doubt=word(doubt)) if doubt else line
