"""A year of entries added up by account, month and job."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from estimator.ledger.account_map import AccountMap, need_all
from estimator.ledger.entries import Entry
from estimator.money import minor_unit

if TYPE_CHECKING:
    from pandas import DataFrame

_ACCOUNT = ("account_code", "account_name")
_COSTS = ("cost", "expense")


@dataclass(frozen=True, slots=True)
class Total:
    """Debits and credits of one account, in one month or of one job where it says so.

    Attributes:
        month: such as 2026-03; empty where all months are together. job_no: likewise.
        net: debits less credits.
    """

    month: str
    job_no: str
    job_name: str
    account_code: str
    account_name: str
    debit: Decimal
    credit: Decimal
    net: Decimal


@dataclass(frozen=True, slots=True)
class JobTotal:
    """What a job brought and cost; margin is income less costs.

    Attributes:
        lines_count: of its entries.
    """

    job_no: str
    job_name: str
    lines_count: int
    income: Decimal
    costs: Decimal
    margin: Decimal


@dataclass(frozen=True, slots=True)
class MapTotal:
    """One name of the map, such as a line of a tax form.

    Attributes:
        net: debits less credits; sales are below zero.
        confidence: how far the row of the map can be trusted.
    """

    name: str
    year: str
    line: str
    confidence: str
    debit: Decimal
    credit: Decimal
    net: Decimal


@dataclass(frozen=True, slots=True)
class RollUp:
    """Everything added up; by_map is empty where no map was asked for.

    Attributes:
        jobs: income and costs of each job; by_job: its accounts.
    """

    currency: str
    debit: Decimal
    credit: Decimal
    by_account: tuple[Total, ...]
    by_month: tuple[Total, ...]
    by_job: tuple[Total, ...]
    jobs: tuple[JobTotal, ...]
    by_map: tuple[MapTotal, ...]


def roll_up(entries: Sequence[Entry], account_map: AccountMap | None = None) -> RollUp:
    """Add up entries of one currency, exactly: in whole minor units.

    Raises:
        InputError: kinds of line that the map has no name for, all of them.
    """
    if account_map is not None:
        need_all(account_map, (entry.line_kind for entry in entries))
    currency = entries[0].currency if entries else ""
    if not entries:
        return RollUp("", Decimal(0), Decimal(0), (), (), (), (), ())
    frame = _frame(entries, account_map)
    places = minor_unit(currency)
    jobs = frame[frame["job_no"] != ""]
    return RollUp(
        currency=currency,
        debit=_amount(int(frame["debit"].sum()), places),
        credit=_amount(int(frame["credit"].sum()), places),
        by_account=_totals(frame, _ACCOUNT, places),
        by_month=_totals(frame, ("month", *_ACCOUNT), places),
        by_job=_totals(jobs, ("job_no", "job_name", *_ACCOUNT), places),
        jobs=_jobs(jobs, places),
        by_map=_by_map(frame, places) if account_map is not None else (),
    )


def _frame(entries: Sequence[Entry], account_map: AccountMap | None) -> DataFrame:
    """The entries as a table, amounts in whole minor units."""
    from pandas import DataFrame

    places = minor_unit(entries[0].currency)
    columns: dict[str, list[str] | list[int]] = {
        "month": [entry.date.isoformat()[: len("2026-03")] for entry in entries],
        "job_no": [entry.job_no for entry in entries],
        "job_name": [entry.job_name for entry in entries],
        "account_code": [entry.account_code for entry in entries],
        "account_name": [entry.account_name for entry in entries],
        "group": [entry.group for entry in entries],
        "debit": [int(entry.debit.scaleb(places)) for entry in entries],
        "credit": [int(entry.credit.scaleb(places)) for entry in entries],
    }
    if account_map is not None:
        named = [account_map.by_kind[entry.line_kind] for entry in entries]
        columns["map_name"] = [each.name for each in named]
        columns["map_year"] = [each.year for each in named]
        columns["map_line"] = [each.line for each in named]
        columns["map_confidence"] = [each.confidence for each in named]
    return DataFrame(columns)


def _amount(units: int, places: int) -> Decimal:
    """Whole minor units as money."""
    return Decimal(units).scaleb(-places)


def _summed(frame: DataFrame, keys: tuple[str, ...]) -> list[dict[str, str | int]]:
    """Debits and credits for each combination of keys, sorted by them."""
    added = frame.groupby(list(keys), sort=True)[["debit", "credit"]].sum().reset_index()
    return [
        {str(name): value if isinstance(value, str) else int(value) for name, value in row.items()}
        for row in added.to_dict("records")
    ]


def _totals(frame: DataFrame, keys: tuple[str, ...], places: int) -> tuple[Total, ...]:
    rows = _summed(frame, keys) if len(frame) else []
    return tuple(
        Total(
            month=str(row.get("month", "")),
            job_no=str(row.get("job_no", "")),
            job_name=str(row.get("job_name", "")),
            account_code=str(row["account_code"]),
            account_name=str(row["account_name"]),
            debit=_amount(int(row["debit"]), places),
            credit=_amount(int(row["credit"]), places),
            net=_amount(int(row["debit"]) - int(row["credit"]), places),
        )
        for row in rows
    )


def _jobs(frame: DataFrame, places: int) -> tuple[JobTotal, ...]:
    """Income, costs and margin of each job."""
    if not len(frame):
        return ()
    made = []
    for key in _summed(frame, ("job_no", "job_name")):
        mine = frame[(frame["job_no"] == key["job_no"]) & (frame["job_name"] == key["job_name"])]
        sold, spent = mine[mine["group"] == "income"], mine[mine["group"].isin(_COSTS)]
        income = int(sold["credit"].sum() - sold["debit"].sum())
        costs = int(spent["debit"].sum() - spent["credit"].sum())
        amounts = (_amount(each, places) for each in (income, costs, income - costs))
        made.append(JobTotal(str(key["job_no"]), str(key["job_name"]), len(mine), *amounts))
    return tuple(made)


def _by_map(frame: DataFrame, places: int) -> tuple[MapTotal, ...]:
    keys = ("map_line", "map_name", "map_year", "map_confidence")
    return tuple(
        MapTotal(
            name=str(row["map_name"]),
            year=str(row["map_year"]),
            line=str(row["map_line"]),
            confidence=str(row["map_confidence"]),
            debit=_amount(int(row["debit"]), places),
            credit=_amount(int(row["credit"]), places),
            net=_amount(int(row["debit"]) - int(row["credit"]), places),
        )
        for row in _summed(frame, keys)
    )
