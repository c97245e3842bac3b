"""How a page writes and reads amounts of money in whole minor units, without a library."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from estimator.money import minor_unit, show_money

_DIGITS = re.compile(r"[0-9].*[0-9]|[0-9]", re.DOTALL)
_SAMPLE, _LARGE = Decimal(0), Decimal(1_111_111)
_POINT, _COMMA = ".", ","


@dataclass(frozen=True, slots=True)
class MoneyForm:
    """What stands before and after the figures, and the signs between them.

    Attributes:
        places: decimals of the currency. point, group: decimal sign and thousands separator.
    """

    currency: str
    places: int
    before: str
    after: str
    point: str
    group: str

    def minor(self, amount: Decimal) -> int:
        """An amount in whole minor units (cents); it has no parts of one."""
        return int(amount.scaleb(self.places))


def money_form(currency: str, locale: str) -> MoneyForm:
    """Find the form from how amounts are shown in this locale.

    Raises:
        InputError: a currency that is not on file, or a locale that is not known.
    """
    places = minor_unit(currency)
    shown, large = (show_money(amount, currency, locale) for amount in (_SAMPLE, _LARGE))
    figures = _DIGITS.search(shown)
    if figures is None:  # figures of another script: the page writes plain ones
        return MoneyForm(currency, places, f"{currency} ", "", _POINT, _COMMA)
    point = figures.group().strip("0") or _POINT
    group = re.sub(r"[0-9]", "", _whole(large, point, places))[:1]
    before, after = shown[: figures.start()], shown[figures.end() :]
    return MoneyForm(currency, places, before, after, point, group)


def _whole(shown: str, point: str, places: int) -> str:
    """The figures of an amount before the decimal sign."""
    found = _DIGITS.search(shown)
    figures = found.group() if found else ""
    return figures.rpartition(point)[0] if places else figures
