"""A language made up for tests: whatever can be told stands in marks, all else shows bare."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from estimator.language import Language

OPEN, CLOSE = "\u27e6", "\u27e7"
BETWEEN = CLOSE + r"\g<0>" + OPEN
"""What stands in a place of a sentence shows bare unless it is told itself."""
_PLACE = re.compile(r"\{\w+\}")
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
