"""How a workbook shows money, dates and paper in the job's locale: number format codes."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from estimator.language import Language
from estimator.money import minor_unit
from estimator.survey.records import Job

if TYPE_CHECKING:
    from babel import Locale

LETTER, A4 = 1, 9
_LETTER_COUNTRIES = frozenset(("US", "CA", "MX", "CL", "CO", "PH"))

# Windows locale numbers (hexadecimal) of languages with country, so that month names come out
# in the job's language on any machine. A locale that is not here shows months in the reader's.
# es_US has the number of Mexico: LibreOffice has no months for its own.
_LOCALE_NUMBERS = {
    "en_US": "409", "en_CA": "1009", "en_GB": "809", "en_AU": "C09", "en_NZ": "1409",
    "en_IE": "1809", "en_IN": "4009", "fr_CA": "C0C", "fr_FR": "40C", "es_US": "80A",
    "es_MX": "80A", "es_ES": "C0A", "de_DE": "407", "de_AT": "C07", "de_CH": "807",
    "fr": "40C", "es": "80A",
    "it_IT": "410", "nl_NL": "413", "pt_BR": "416", "pt_PT": "816", "ja_JP": "411",
}  # fmt: skip
_DATE_PARTS = re.compile(r"'(?:[^']|'')*'|[A-Za-z]+|[^A-Za-z']+")
_DAY_MONTH_YEAR = {
    "d": "d", "dd": "dd", "M": "m", "MM": "mm", "MMM": "mmm", "MMMM": "mmmm", "LLLL": "mmmm",
    "y": "yyyy", "yy": "yyyy", "yyyy": "yyyy",
}  # fmt: skip
_ISO_DATE = "yyyy-mm-dd"
_NUMBER = re.compile(r"[#0][#0,.]*")
_SPACES = re.compile(r"[ \u00a0\u202f]")
_DIRECTION = re.compile("[\u061c\u200e\u200f]")
_SIGN_PLACE = "\u00a4"
_PLAIN_MARKS = re.compile(r"[ ,./-]+")


@dataclass(frozen=True, slots=True)
class Formats:
    """What the locale decides.

    Attributes:
        money: number format code of the currency. places: its decimals, used in every ROUND.
        date: number format code of a date. paper: LETTER or A4, as the workbook numbers them.
    """

    money: str
    places: int
    date: str
    paper: int


@cache
def formats(currency: str, locale: str, country: str = "") -> Formats:
    """Find the formats of a currency in a locale, by CLDR (through Babel) and ISO 4217.

    Paper goes by the country; where none is named, by that of the locale.

    Raises:
        InputError: a currency that is not on file.
    """
    from babel import Locale

    place = Locale.parse(locale.replace("-", "_"))
    name = f"{place.language}_{place.territory}" if place.territory else place.language
    number = _LOCALE_NUMBERS.get(name, "")
    return Formats(
        money=_money_code(place, currency, number),
        places=minor_unit(currency),
        date=_date_code(place.date_formats["long"].pattern, number),
        paper=LETTER if (country or place.territory) in _LETTER_COUNTRIES else A4,
    )


def _money_code(place: Locale, currency: str, number: str) -> str:
    """Turn CLDR's pattern into a format code: sign, digits and spaces stay in their order."""
    from babel.numbers import get_currency_symbol

    sign = get_currency_symbol(currency, place)
    before, _, after = _NUMBER.sub("0", _positive(place)).partition("0")
    digits = "#,##0" + ("." + "0" * minor_unit(currency) if minor_unit(currency) else "")
    if before == _SIGN_PLACE and sign[-1].isalpha():
        before += " "  # CLDR sets letters off from the digits that follow
    shown = "".join(_literal(part, f'"{sign}"') for part in (before, digits, after))
    return f"[$-{number}]{shown}" if number else shown


def _positive(place: Locale) -> str:
    """Take CLDR's pattern of an amount above zero; a minus goes in front of it by itself."""
    return str(place.currency_formats["standard"].pattern).split(";")[0]


def _literal(part: str, marked: str) -> str:
    """Put the sign in its place, and spaces of any kind as spaces a format code may hold."""
    return _SPACES.sub(r"\\ ", _DIRECTION.sub("", part)).replace(_SIGN_PLACE, marked)


def _date_code(pattern: str, number: str) -> str:
    """Turn CLDR's date pattern into a format code; one that has other parts becomes ISO 8601."""
    parts = [_date_part(part) for part in _DATE_PARTS.findall(pattern)]
    if None in parts:
        return _ISO_DATE
    code = "".join(part for part in parts if part is not None)
    return f"[$-{number}]{code}" if number else code


def _date_part(part: str) -> str | None:
    """Turn one piece of a date pattern into its code; None for what a workbook cannot show."""
    if part[0].isascii() and part[0].isalpha():
        return _DAY_MONTH_YEAR.get(part)
    if _PLAIN_MARKS.fullmatch(part):
        return part
    return '"' + part.strip("'").replace("''", "'").replace('"', "") + '"'


def date_form(currency: str, job: Job, language: Language) -> str:
    """The number format code of dates in a language, as the job's country writes them in it."""
    return formats(currency, language.dates(job.locale), job.country).date
