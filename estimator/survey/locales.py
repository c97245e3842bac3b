"""Locales of a job: whether one exists, and which decimal mark people write there."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from babel import Locale

# The usual ones, so that most jobs load no locale data to be read; all write a point.
_USUAL = ("en_US", "en_CA", "en_GB", "en_AU", "en_IE", "en_NZ", "es_US", "es_MX")


_UNITED_KINGDOM, _ITS_CODE = "UK", "GB"


def country_code(name: str) -> str:
    """A country in capitals; UK is the everyday name of the one whose code is GB.

    >>> country_code("uk"), country_code("us")
    ('GB', 'US')
    """
    code = name.upper()
    return _ITS_CODE if code == _UNITED_KINGDOM else code


def locale_name(name: str) -> str:
    """A locale as it was typed; that of the UK by its code.

    >>> locale_name("en_UK"), locale_name("en_GB")
    ('en_GB', 'en_GB')
    """
    language, mark, country = name.replace("-", "_").partition("_")
    there = country.upper() == _UNITED_KINGDOM
    return f"{language}{mark}{_ITS_CODE}" if there else name


def is_locale(name: str) -> bool:
    """True for a locale that money and dates can be shown in."""
    return name in _USUAL or _locale(name) is not None


def writes_comma(name: str) -> bool:
    """True where decimals are written with a comma; False for a locale that is not known."""
    if name in _USUAL:
        return False
    locale = _locale(name)
    if locale is None:
        return False
    return bool(locale.number_symbols.get("latn", {}).get("decimal") == ",")


def _locale(name: str) -> Locale | None:
    from babel import Locale, UnknownLocaleError  # late: most jobs never need it

    try:
        return Locale.parse(name.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        return None
