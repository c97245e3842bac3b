"""Readers for the settings of price, rate, tax and payment."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.catalog.setting_readers import (
    ALL_PCT,
    Manner,
    each_of,
    number,
    percent,
    refuse,
    text,
)
from estimator.reading import MeasureError
from estimator.settings import PlannedPayment

_PAYMENT = 'Write when = "on completion" and pct = 40 in each.'


def above_zero(value: object, manner: Manner) -> Decimal:
    """Read a number above zero."""
    read = number(value, manner)
    if read == 0:
        raise refuse(value, "is zero", "Write a number above zero.")
    return read


def some_share(value: object, manner: Manner) -> Decimal:
    """Read a percentage above 0 and up to 100."""
    pct: Decimal = percent(ALL_PCT)(value, manner)
    if pct == 0:
        raise refuse(value, "is no share at all", "Write a percentage above 0, at most 100.")
    return pct


def below_all(value: object, manner: Manner) -> Decimal:
    """Read a percentage from 0 and below 100: a price can be grossed up by it."""
    pct: Decimal = percent(ALL_PCT)(value, manner)
    if pct == ALL_PCT:
        raise refuse(value, "is all of it", "Write a percentage below 100.")
    return pct


def confidence(value: object, manner: Manner) -> Decimal:
    """Read how sure one wants to be, above 0 and below 100 %."""
    pct = below_all(value, manner)
    if pct == 0:
        raise refuse(value, "is no confidence", "Write a percentage above 0 and below 100.")
    return pct


def rate_or_built(value: object, manner: Manner) -> Decimal | None:
    """Read an hourly rate; None for "built"."""
    return _number_or("built", value, manner)


def percent_or_none(value: object, manner: Manner) -> Decimal | None:
    """Read a percentage up to 100; None for "none"."""
    pct = _number_or("none", value, manner)
    if pct is not None and pct > ALL_PCT:
        raise refuse(value, "is more than 100 %", 'Write 10 for 10 %, at most 100, or "none".')
    return pct


def _number_or(word: str, value: object, manner: Manner) -> Decimal | None:
    """Read a number; None for the word."""
    if value == word:
        return None
    try:
        return number(value, manner)
    except MeasureError as error:
        hint = f'{error.hint.rstrip(".")}, or "{word}".'
        raise refuse(value, error.reason, hint) from None


def factor_or_exact(value: object, manner: Manner) -> Decimal | None:
    """Read the percentage that a price is grossed up by; None for "exact"."""
    return _number_or("exact", value, manner)


def file_or_none(value: object, manner: Manner) -> str | None:
    """Read the name of a file; None for "none" or nothing."""
    name = text(value, manner)
    return None if name in ("", "none") else name


def payments(value: object, manner: Manner) -> tuple[PlannedPayment, ...]:
    """Read the plan of payments; their percentages add up to 100."""
    if not isinstance(value, Sequence) or isinstance(value, str):
        raise refuse(value, "is not a list of payments", _PAYMENT)
    plan = tuple(each_of(_payment, value, manner))
    together = sum(each.pct for each in plan)
    if plan and together != ALL_PCT:
        reason = f"adds up to {together:f} % and not to 100 %"
        raise refuse(value, reason, "Write shares of the total that add up to 100.")
    return plan


def _payment(row: object, manner: Manner) -> PlannedPayment:
    if not isinstance(row, Mapping) or set(row) != {"when", "pct"}:
        raise refuse(row, "does not hold when and pct", _PAYMENT)
    when = text(row["when"], manner)
    if not when:
        raise refuse(row["when"], "does not say when", _PAYMENT)
    return PlannedPayment(when, some_share(row["pct"], manner))
