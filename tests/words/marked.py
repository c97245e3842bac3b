"""A language made up for tests: whatever can be told stands in marks, all else shows bare."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from estimator.language import Language
from estimator.pricing.records import Bid

OPEN, CLOSE = "\u27e6", "\u27e7"
BETWEEN = CLOSE + r"\g<0>" + OPEN
"""What stands in a place of a sentence shows bare unless it is told itself."""
_PLACE = re.compile(r"\{\w+\}")
UNITS = ("ft", "in", "mm", "in3", "cm3", "gal", "ft2", "m2")
"""Signs of units are the same in all languages."""
_LETTERS = re.compile(r"[^\W\d_]{2,}")


@dataclass(frozen=True, slots=True)
class Marked(Language):
    """Tells every sentence and word inside marks, and remembers which were asked for.

    Attributes:
        asked_sentences: English sentences. asked_words: words and lines of books and tables.
    """

    asked_sentences: set[tuple[str, str]] = field(default_factory=set, compare=False)
    asked_words: set[str] = field(default_factory=set, compare=False)

    def sentence(self, english: str, plural: str, count: int | None) -> str:
        self.asked_sentences.add((english, plural))
        chosen = plural if plural and count != 1 else english
        return f"{OPEN}{_PLACE.sub(BETWEEN, chosen)}{CLOSE}"

    def word(self, english: str) -> str:
        self.asked_words.add(english)
        return f"{OPEN}{english}{CLOSE}"


def bare(text: str, own: tuple[str, ...] = ()) -> str:
    """What of a text stands outside all marks, without the job's own words; empty if no letters.

    Args:
        own: texts of the job or of the user, longest first, that no language touches.
    """
    kept, depth = "", 0
    for char in text:
        depth += (char == OPEN) - (char == CLOSE)
        if depth == 0 and char != CLOSE:
            kept += char
    for each in sorted(own, key=len, reverse=True):
        kept = kept.replace(each, " ")
    return kept.strip() if _LETTERS.search(kept) else ""


def in_language(bid: Bid, language: Language) -> Bid:
    """The same bid for a customer who reads this language."""
    return replace(bid, books=replace(bid.books, language=language))


def own_words(bid: Bid) -> tuple[str, ...]:
    """Texts of the job and of the firm that no language touches: names, ids, places, reasons."""
    found: set[str] = set()
    _texts(bid.survey.model_dump(exclude={"settings"}), found)
    terms = bid.books.shop.terms
    firm = (terms.firm_name, terms.firm_contact, terms.firm_license, bid.books.shop.currency)
    return tuple({*found, *firm, *UNITS} - {""})


def _texts(value: object, found: set[str]) -> None:
    if isinstance(value, str):
        found.update({value, *value.split("\n")})
    elif isinstance(value, dict):
        for each in value.values():
            _texts(each, found)
    elif isinstance(value, list | tuple):
        for each in value:
            _texts(each, found)
