"""Trade words of the country: what is said of a receptacle where people call it a socket."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache

from estimator.saying import local
from estimator.tables.facts import rows

NORTH_AMERICA = ("US", "CA", "MX")
Say = Callable[[str], str]


def is_british(country: str, locale: str) -> bool:
    """Tell whether a job's English is that of Britain: outside North America, and in English.

    >>> is_british("GB", "en_GB"), is_british("CA", "en_CA"), is_british("FR", "fr_FR")
    (True, False, False)
    """
    return country not in NORTH_AMERICA and locale[:2].lower() == "en"


def local_words(country: str, locale: str, own: Iterable[str] = ()) -> Say:
    """Give a function that says a sentence of this tool in the words of the country.

    Args:
        country: of the job.
        locale: of the job.
        own: the job's own names; they stay as they were typed.

    >>> local_words("GB", "en_GB", ["Ground room"])("a receptacle with ground, Ground room")
    'a socket with earth, Ground room'
    """
    return _in_british(frozenset(own)) if is_british(country, locale) else as_said


def as_said(text: str) -> str:
    """The same; what can be told in another language still can."""
    return text


def _in_british(own: frozenset[str]) -> Say:
    pattern = _pattern(tuple(sorted(each for each in own if _pattern().search(each))))

    def say(text: str) -> str:
        return local(pattern.sub(lambda found: text_of(found[0]), text), text)

    def text_of(word: str) -> str:
        if word in own:
            return word
        there = _british()[word.lower()]
        return there[:1].upper() + there[1:] if word[:1].isupper() else there

    return say


@cache
def _british() -> dict[str, str]:
    return {row["american"]: row["british"] for row in rows("local_words")}


@cache
def _pattern(own: tuple[str, ...] = ()) -> re.Pattern[str]:
    """The longest words first, so that a phrase goes before its parts; own names before all."""
    words = sorted(_british(), key=len, reverse=True)
    names = "|".join(re.escape(each) for each in sorted(own, key=len, reverse=True))
    trade = "|".join(re.escape(each) for each in words)
    whole = rf"(?<![\w.])(?i:{trade})(?![\w=]|\.\w)"
    return re.compile(rf"(?<!\w)(?:{names})(?!\w)|{whole}" if names else whole)
