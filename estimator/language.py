"""The languages that customers and crews read: sentences from catalogs, words from a list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Literal, get_args

from estimator.saying import tell

if TYPE_CHECKING:
    from gettext import NullTranslations

LanguageCode = Literal["en", "es", "fr"]
CrewLanguage = Literal["en", "es", "fr", "both"]
CODES: tuple[LanguageCode, ...] = get_args(LanguageCode)
SOURCE: LanguageCode = "en"
CALLED = {"en": "English", "es": "español", "fr": "français"}
CATALOGS = Path(__file__).parent / "languages"


@dataclass(frozen=True, slots=True)
class OtherWord:
    """What a word or line is called in another language.

    Attributes:
        sure: people on site say it so; where not, the English stands behind it in brackets.
    """

    text: str
    sure: bool = True


@dataclass(frozen=True, slots=True)
class Language:
    """One language: tells what can be said in it, and leaves all else as it is.

    Attributes:
        code: ISO 639-1. words: words and lines of books by their English text, and sentences
            of which the user wants other words than the catalog has.
    """

    code: LanguageCode = SOURCE
    words: Mapping[str, OtherWord] = field(default_factory=dict, compare=False)

    def say(self, text: object) -> str:
        """Tell a saying in this language; text that is none stays as it is."""
        return tell(text, self)

    def sentence(self, english: str, plural: str, count: int | None) -> str:
        """Find a sentence with its places left open; the English one where there is no other."""
        if not plural and english in self.words:
            return self.words[english].text
        if plural and count is not None:
            return _catalog(self.code).ngettext(english, plural, count)
        return _catalog(self.code).gettext(english)

    def word(self, english: str) -> str:
        """Find a word or a line of a book; the same where the list has none."""
        other = self.words.get(english)
        if other is None:
            return english
        return other.text if other.sure else f"{other.text} [{english}]"

    def dates(self, locale: str) -> str:
        """The locale to write dates in: this language, as in the locale's country if it can.

        Nobody asked for English, so dates stay with the locale there.
        """
        if self.code == SOURCE:
            return locale
        if locale.replace("-", "_").partition("_")[0] == self.code:
            return locale
        from babel.localedata import exists

        there = f"{self.code}_{locale.replace('-', '_').rpartition('_')[2]}"
        return there if exists(there) else self.code


ENGLISH = Language()


@cache
def _catalog(code: str) -> NullTranslations:
    """Read the sentences of a language; those of English are what is written in the code."""
    from gettext import NullTranslations

    if code == SOURCE:
        return NullTranslations()
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po
    from babel.support import Translations

    with (CATALOGS / f"{code}.po").open("rb") as file:
        catalog = read_po(file, locale=code)
    compiled = BytesIO()
    write_mo(compiled, catalog)
    compiled.seek(0)
    return Translations(compiled)
