"""Text for pages and pictures: whatever a user typed stays text, in HTML and SVG alike."""

from __future__ import annotations

from fractions import Fraction
from html import escape as _escape

from estimator.measures import to_decimal
from estimator.outputs.xlsx_values import clean_text

_PLACES = 2


def safe(text: str) -> str:
    """Make any text fit to stand in markup, between tags or inside a quoted attribute.

    >>> safe('2" <b> & more')
    '2&quot; &lt;b&gt; &amp; more'
    """
    return _escape(clean_text(text), quote=True)


def plain(amount: Fraction) -> str:
    """Write a measure of a picture: at most two decimals, and no zeros behind them.

    >>> plain(Fraction(21, 8)), plain(Fraction(3))
    ('2.63', '3')
    """
    text = f"{to_decimal(amount, _PLACES):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
