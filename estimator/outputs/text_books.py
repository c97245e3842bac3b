"""The books for the terminal: what was read, the year by account and by job."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from estimator.ledger.account_map import AccountMap
from estimator.ledger.entries import Entry
from estimator.ledger.roll_up import RollUp
from estimator.money import show_money
from estimator.outputs.text_layout import counted, heading, wrapped
from estimator.outputs.text_table import table

NOTHING_WRITTEN = "Nothing was written. Name a file: -o books.csv, or -o books.xlsx."
BIDS = "A bid posts nothing: bids are left out."


def books_text(
    entries: Sequence[Entry], added: RollUp, locale: str, account_map: AccountMap | None
) -> list[str]:
    """Say how many entries there are, and what they add up to."""

    def money(amount: Decimal) -> str:
        return show_money(amount, added.currency, locale)

    txns = len({entry.txn_id for entry in entries})
    said = f"{counted(len(entries), 'line')} of {counted(txns, 'transaction')}; "
    said += f"debits {money(added.debit)}, credits {money(added.credit)}. {BIDS}"
    accounts = [
        (each.account_code, each.account_name, *map(money, (each.debit, each.credit, each.net)))
        for each in added.by_account
    ]
    jobs = [
        (each.job_no, each.job_name, *map(money, (each.income, each.costs, each.margin)))
        for each in added.jobs
    ]
    heads = ("Account", "", "Debit", "Credit", "Net")
    lines = [*wrapped(said), *heading("By account"), *table(heads, accounts, 2)]
    if jobs:
        heads = ("Job", "", "Income", "Costs", "Margin")
        lines += [*heading("By job"), *table(heads, jobs, 2)]
    return [*lines, *(_mapped(added, account_map, locale) if account_map else [])]


def _mapped(added: RollUp, account_map: AccountMap, locale: str) -> list[str]:
    """The names of the map; those from memory are marked so."""
    rows = [
        (f"{each.name} ({each.confidence})", each.line,
         show_money(each.net, added.currency, locale))
        for each in added.by_map
    ]  # fmt: skip
    said = "Names and lines move from year to year; rows marked memory were not read on the form."
    title = f"By {account_map.title}"
    return [*heading(title), *table(("Name", "Line", "Net"), rows), *wrapped(said)]


def other_years(entries: Sequence[Entry], account_map: AccountMap) -> list[str]:
    """Warn where the map is of another year than the entries."""
    years = {entry.date.year for entry in entries}
    mapped = {each.year for each in account_map.by_kind.values()}
    odd = sorted(year for year in years if str(year) not in mapped)
    if not odd:
        return []
    shown, of = ", ".join(map(str, odd)), ", ".join(sorted(mapped))
    return wrapped(f"The map {account_map.title} is of {of}; check its names for {shown}.")
