"""Totals by account, month and job: sums added by hand, and again in plain Python."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.ledger.account_map import need_all, read_map, shipped_maps
from estimator.ledger.entries import Entry, entries_of
from estimator.ledger.kinds import GROUPS
from estimator.ledger.roll_up import RollUp, Total, roll_up
from estimator.problems import InputError
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed, closed, sample

LATE = changed(DOUBLE_ENTRY, ("date = 2026-04-20", "date = 2026-05-20"))
ENTRIES = entries_of([closed(S19), closed(LATE, "b.toml"), sample()])
MAP = read_map("schedule-c-2024")
ADDED = roll_up(ENTRIES, MAP)


def in_plain_python(keys: tuple[str, ...], entries: tuple[Entry, ...]) -> dict[object, Decimal]:
    """Net amounts by the same keys, added one after the other."""
    found: dict[object, Decimal] = defaultdict(Decimal)
    for entry in entries:
        month = f"{entry.date:%Y-%m}"
        found[tuple(month if key == "month" else getattr(entry, key) for key in keys)] += (
            entry.debit - entry.credit
        )
    return dict(found)


@pytest.mark.parametrize(
    ("name", "keys"),
    [
        ("by_account", ("account_code",)),
        ("by_month", ("month", "account_code")),
        ("by_job", ("job_no", "account_code")),
    ],
)
def test_totals_are_those_of_plain_python(name: str, keys: tuple[str, ...]) -> None:
    rows: tuple[Total, ...] = getattr(ADDED, name)
    entries = tuple(each for each in ENTRIES if name != "by_job" or each.job_no)
    found = {tuple(getattr(row, key) for key in keys): row.net for row in rows}
    assert found == in_plain_python(keys, entries)
    assert all(row.debit - row.credit == row.net for row in rows)


def example() -> RollUp:
    return roll_up(entries_of([closed(LATE)]))


def test_the_example_by_account() -> None:
    """Bank 185.09 + 375.79 - 10.88 = 550.00; receivable, deposits and tax come to nothing."""
    assert [(row.account_code, f"{row.net}") for row in example().by_account] == [
        ("1000", "550.00"), ("1200", "0.00"), ("2000", "-120.00"), ("2200", "0.00"),
        ("2300", "0.00"), ("4010", "-150.00"), ("4020", "-400.00"), ("5010", "120.00"),
    ]  # fmt: skip


def test_the_example_by_month() -> None:
    rows = [row for row in example().by_month if row.month == "2026-05"]
    assert [(row.account_code, f"{row.net}") for row in rows] == [
        ("1000", "-10.88"), ("2200", "10.88")
    ]  # fmt: skip


def test_what_the_example_brought() -> None:
    """150.00 + 400.00 - 120.00."""
    (job,) = example().jobs
    assert [f"{each}" for each in (job.income, job.costs, job.margin)] == [
        "550.00", "120.00", "430.00"
    ]  # fmt: skip


def test_debits_equal_credits_over_all() -> None:
    assert ADDED.debit == ADDED.credit == sum(each.debit for each in ENTRIES)


def test_a_map_adds_the_same_amounts() -> None:
    assert sum(row.net for row in ADDED.by_map) == 0
    sold = next(row for row in ADDED.by_map if row.name == "Gross receipts or sales")
    assert (sold.line, sold.year, sold.confidence) == ("1", "2024", "seen")
    assert sold.net == -(Decimal("550.00") + Decimal("678.31"))


def test_entries_of_no_job() -> None:
    text = changed(S19, ("amount = 62.10", 'amount = 62.10, for = "owner"'))
    others = [each for each in entries_of([closed(text)]) if not each.job_no]
    added = roll_up(others)
    assert (added.jobs, added.by_job) == ((), ())


def test_yen_have_no_decimals() -> None:
    job = closed(changed(DOUBLE_ENTRY, ("185.09", "185"), ("375.79", "376"), ("10.88", "11")))
    shop = replace(job.books.shop, currency="JPY")
    added = roll_up(entries_of([replace(job, books=replace(job.books, shop=shop))]))
    assert {row.account_code: f"{row.net}" for row in added.by_account}["1000"] == "550"


def test_nothing_to_add() -> None:
    assert roll_up(()).by_account == ()


@pytest.mark.parametrize("kind", GROUPS)
def test_the_shipped_map_names_every_kind(kind: str) -> None:
    assert shipped_maps() == ("schedule-c-2024",)
    assert MAP.by_kind[kind].year == "2024"


@pytest.mark.parametrize(
    ("kind", "name", "line", "confidence"),
    [
        ("materials", "Gross receipts or sales", "1", "seen"),
        ("cost-materials", "Materials and supplies, Part III", "38", "memory"),
        ("cost-permit", "Taxes and licenses", "23", "memory"),
        ("cost-subcontract", "Contract labor", "11", "memory"),
        ("cost-trips", "Car and truck expenses", "9", "memory"),
        ("cost-other", "Other expenses", "27b", "memory"),
        ("supplies", "Supplies (not in Part III)", "22", "memory"),
    ],
)
def test_names_of_the_shipped_map(kind: str, name: str, line: str, confidence: str) -> None:
    """Schedule C (Form 1040) of 2024 as noted from the form, with how far each was read."""
    row = MAP.by_kind[kind]
    assert (row.name, row.line, row.confidence) == (name, line, confidence)


OWN = "name,year,line,line_kinds\nSold,2026,1,materials labor\n"


def own(folder: Path, text: str) -> str:
    (folder / "mine.csv").write_text(text)
    return str(folder / "mine.csv")


def test_a_map_of_your_own(tmp_path: Path) -> None:
    mine = read_map(own(tmp_path, OWN))
    assert (mine.title, mine.by_kind["labor"].name) == ("mine", "Sold")
    assert mine.by_kind["labor"].confidence == "memory"


@pytest.mark.parametrize(
    ("row", "says"),
    [
        ("More,2026,2,labor", "labor stands already in row 2"),
        ("More,2026,2,cats", '"cats" is not a kind of line'),
        (",2026,2,other", "has no name or no year"),
        ("More,,2,other", "has no name or no year"),
    ],
)
def test_a_fault_of_a_map(row: str, says: str, tmp_path: Path) -> None:
    with pytest.raises(InputError, match=says) as caught:
        read_map(own(tmp_path, f"{OWN}{row}\n"))
    assert "mine.csv: row 3" in caught.value.problems[0].where


def test_kinds_without_a_name_are_all_said(tmp_path: Path) -> None:
    mine = read_map(own(tmp_path, OWN))
    with pytest.raises(InputError) as caught:
        need_all(mine, ("materials", "bank", "tax", "bank"))
    assert [each.read for each in caught.value.problems] == [
        'no row for lines of kind "bank"', 'no row for lines of kind "tax"'
    ]  # fmt: skip


def test_no_such_map() -> None:
    with pytest.raises(InputError, match='there is no map called "schedule-c-1999"') as caught:
        read_map("schedule-c-1999")
    assert "Use schedule-c-2024" in caught.value.problems[0].write
