"""Text that can be told in another language: an English string that knows what it is made of.

A saying is its English text: it can be printed, compared and written like any other. Beside that
it keeps its sentence and what was put into it, so that a page can tell it in its reader's
language. Adding strings together loses this; put them into a sentence, or list them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal, Protocol

Case = Literal["capital", "small", "lower"]


class Speaker(Protocol):
    """Knows the sentences and the words of one language."""

    def sentence(self, english: str, plural: str, count: int | None) -> str:
        """Find a sentence with its places left open; the English one where there is no other."""

    def word(self, english: str) -> str:
        """Find a word or line of a book; the same where there is no other."""


class Saying(str):
    """English text that can be told in another language."""

    def told(self, speaker: Speaker) -> str:
        """Tell it in the speaker's language."""
        raise NotImplementedError


class Said(Saying):
    """A sentence with places in it, and what stands there.

    Attributes:
        english: the sentence with its places ("{count} openings"). plural: where it goes by a
            count, the sentence for several. counted: None where nothing is counted.
        values: what stands in its places; sayings among them are told too.
    """

    english: str
    plural: str
    counted: int | None
    values: Mapping[str, object]

    def __new__(
        cls,
        english: str,
        values: Mapping[str, object],
        plural: str = "",
        counted: int | None = None,
    ) -> Said:
        """Fill the sentence in English."""
        made = super().__new__(
            cls, (plural if plural and counted != 1 else english).format(**values)
        )
        made.english, made.plural, made.counted, made.values = english, plural, counted, values
        return made

    def __reduce__(self) -> tuple[type[Said], tuple[object, ...]]:
        """Travel to another process whole."""
        return Said, (self.english, self.values, self.plural, self.counted)

    def told(self, speaker: Speaker) -> str:
        """Tell the sentence, and what stands in it."""
        pattern = speaker.sentence(self.english, self.plural, self.counted)
        return pattern.format(**{name: tell(value, speaker) for name, value in self.values.items()})


class Word(Saying):
    """A word or a line out of a book or table; somebody's own words are told as they are."""

    def __reduce__(self) -> tuple[type[Word], tuple[str]]:
        """Travel to another process whole."""
        return Word, (str(self),)

    def told(self, speaker: Speaker) -> str:
        """Look the word up."""
        return speaker.word(str(self))


class Listed(Saying):
    """Parts one behind the other.

    Attributes:
        parts: text; sayings among them are told. between: what parts them.
    """

    parts: tuple[str, ...]
    between: str

    def __new__(cls, parts: Iterable[str], between: str = "") -> Listed:
        """Join the parts in English."""
        kept = tuple(parts)
        made = super().__new__(cls, between.join(kept))
        made.parts, made.between = kept, between
        return made

    def __reduce__(self) -> tuple[type[Listed], tuple[object, ...]]:
        """Travel to another process whole."""
        return Listed, (self.parts, self.between)

    def told(self, speaker: Speaker) -> str:
        """Tell each part; what parts them is told where it is a saying."""
        between = tell(self.between, speaker)
        return between.join(tell(part, speaker) for part in self.parts)


class Cased(Saying):
    """A saying with other capital letters than it has by itself.

    Attributes:
        inside: the text as it is. how: "capital" and "small" for its first letter, "lower" for all.
    """

    inside: str
    how: Case

    def __new__(cls, inside: str, how: Case) -> Cased:
        """Change the letters of the English."""
        made = super().__new__(cls, _in_case(inside, how))
        made.inside, made.how = inside, how
        return made

    def __reduce__(self) -> tuple[type[Cased], tuple[str, str]]:
        """Travel to another process whole."""
        return Cased, (self.inside, self.how)

    def told(self, speaker: Speaker) -> str:
        """Tell it, then change its letters."""
        return _in_case(tell(self.inside, speaker), self.how)


def _in_case(text: str, how: Case) -> str:
    if how == "lower":
        return text.lower()
    first = text[:1].upper() if how == "capital" else text[:1].lower()
    return first + text[1:]


class Local(Saying):
    """A saying in the trade words of a country whose people speak English too.

    Attributes:
        inside: the saying as it was said. A language that leaves it as it is gets the local words.
    """

    inside: str

    def __new__(cls, text: str, inside: str) -> Local:
        """Take the text in local words, and what it was made of."""
        made = super().__new__(cls, text)
        made.inside = inside
        return made

    def __reduce__(self) -> tuple[type[Local], tuple[str, str]]:
        """Travel to another process whole."""
        return Local, (str(self), self.inside)

    def told(self, speaker: Speaker) -> str:
        """Tell it; where that changes nothing, in the local words."""
        told = tell(self.inside, speaker)
        return str(self) if told == self.inside else told


def said(english: str, /, **values: object) -> Said:
    """Say a sentence. The text is written out where it is said, so that it can be collected.

    >>> said("Box {box} is new.", box="A")
    'Box A is new.'
    """
    return Said(english, values)


def several(count: int, one: str, many: str, /, **values: object) -> Said:
    """Say a sentence by a count, which stands at {count}.

    >>> several(2, "{count} opening", "{count} openings")
    '2 openings'
    """
    return Said(one, {"count": count, **values}, many, count)


def word(text: str) -> str:
    """A word or line out of a book or table, such as what an item is called."""
    return Word(text) if text and not isinstance(text, Saying) else text


def listed(parts: Iterable[str], between: str = ", ") -> Listed:
    """Parts one behind the other, as `str.join`."""
    return Listed(parts, between)


def capital(text: str) -> Saying:
    """The same with a capital letter at its beginning."""
    return Cased(text, "capital")


def small(text: str) -> Saying:
    """The same with a small letter at its beginning."""
    return Cased(text, "small")


def lower(text: str) -> Saying:
    """The same in small letters."""
    return Cased(text, "lower")


def local(text: str, inside: str) -> str:
    """A text in local words, which can be told where what it was made of can."""
    return Local(text, inside) if isinstance(inside, Saying) else text


def tell(value: object, speaker: Speaker) -> str:
    """Tell a saying in the speaker's language; anything else as it is."""
    return value.told(speaker) if isinstance(value, Saying) else str(value)
