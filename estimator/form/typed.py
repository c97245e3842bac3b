"""What a person typed into a cell, as text; what a spreadsheet program made of it is caught."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from decimal import Decimal

from estimator.form.book_in import Found
from estimator.form.cell_text import number_text
from estimator.form.layout import Kind

_FIFTEEN = ".15g"
_AS_TEXT = "Format the cell as text, then type it once more"
_EXAMPLES = {"measure": ", such as 12' 6-1/2\"", "number": ", such as 12.5"}
_ALL_PCT = 100


class NotTyped(ValueError):
    """A cell that does not hold what a person typed.

    Attributes:
        read: what is there, in words. write: what to do.
    """

    def __init__(self, read: str, write: str) -> None:
        self.read, self.write = read, write
        super().__init__(f"{read}. {write}")


def typed_text(found: Found, kind: Kind, unit: str, *, comma: bool) -> str:
    """The text of a cell, without blanks around it; empty where nothing stands there.

    Numbers come in full, a date as 2026-03-09.

    Raises:
        NotTyped: a formula that has no stored value, an error, or a date or a time of day where
            none belongs.
    """
    value = found.value
    if found.formula and value is None:
        write = "Type the value itself, or open the form, let it reckon and save it."
        raise NotTyped("a formula without a stored value", write)
    if found.error:
        raise NotTyped(f"the error {value} in place of a value", "Type the value itself.")
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return number_text(_exact(value, found.form, unit), comma=comma)
    if isinstance(value, date | time | timedelta):
        return _day(value, kind)
    return str(value or "").strip()


def _exact(value: int | float, form: str, unit: str) -> Decimal:
    """A number without the dust of binary fractions; 50 for what is shown as 50 % of 100."""
    exact = Decimal(format(value, _FIFTEEN)) if isinstance(value, float) else Decimal(value)
    if unit == "%" and "%" in form:
        exact *= _ALL_PCT
    return exact.to_integral_value() if exact == exact.to_integral_value() else exact


def _day(value: date | time | timedelta, kind: Kind) -> str:
    if kind == "date" and isinstance(value, date):
        return (value.date() if isinstance(value, datetime) else value).isoformat()
    what = "date" if isinstance(value, date) else "time of day"
    day = value.date() if isinstance(value, datetime) else value
    read = f"the spreadsheet program made the {what} {day} of what was typed"
    raise NotTyped(read, f"{_AS_TEXT}{_EXAMPLES.get(kind, '')}.")
