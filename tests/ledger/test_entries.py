"""Entries of several jobs: lasting numbers, nothing booked twice, every kind with its account."""

from __future__ import annotations

from dataclasses import replace

import pytest

from estimator.ledger.entries import entries_of, in_year
from estimator.ledger.estimated import Closed
from estimator.ledger.kinds import GROUPS
from estimator.problems import InputError
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed, closed, us_books

NEW_RECEIPT = """
[[receipts]]
date = 2026-01-02
supplier = "Corner hardware (sample)"
doc_no = "7"
lines = [{ description = "Tape", amount = 1.00 }]
"""


def numbers(*texts: str) -> dict[str, set[str]]:
    """The txn_ids of each kind of document."""
    found: dict[str, set[str]] = {}
    for entry in entries_of([closed(text, f"{at}.toml") for at, text in enumerate(texts)]):
        found.setdefault(f"{entry.doc_type} {entry.doc_no}", set()).add(entry.txn_id)
    return found


def refused(*jobs: Closed) -> list[str]:
    with pytest.raises(InputError) as caught:
        entries_of(jobs)
    return [f"{each.where}: {each.read}" for each in caught.value.problems]


def test_a_number_outlasts_what_is_added_before_it() -> None:
    before, _, rest = S19.partition("[[receipts]]")
    added = before + NEW_RECEIPT + "\n[[receipts]]" + rest
    assert numbers(S19).items() <= numbers(added).items()


def test_a_number_outlasts_a_corrected_amount() -> None:
    assert numbers(S19) == numbers(changed(S19, ("amount = 62.10", "amount = 62.20")))


def test_two_like_lines_have_two_numbers() -> None:
    hours = S19[S19.index("[[hours]]") :]
    assert len(numbers(S19 + hours)["time "]) == 2


def test_numbers_of_all_events_differ() -> None:
    found = numbers(S19, DOUBLE_ENTRY)
    assert all(len(each) == 1 for each in found.values())
    assert len(set.union(*found.values())) == len(found) == 10


def test_the_order_of_files_does_not_matter() -> None:
    one, other = closed(S19, "a.toml"), closed(DOUBLE_ENTRY, "b.toml")
    assert entries_of([one, other]) == entries_of([other, one])


def test_entries_stand_by_date() -> None:
    dates = [each.date for each in entries_of([closed(S19), closed(DOUBLE_ENTRY, "b.toml")])]
    assert dates == sorted(dates)


def test_lines_for_another_job_take_its_name() -> None:
    other = changed(DOUBLE_ENTRY, ('job = "B1"', 'job = "S20"\ntitle = "Other job"'))
    found = entries_of([closed(S19), closed(other, "b.toml")])
    assert {each.job_name for each in found if each.job_no == "S20"} == {"Other job"}


def test_a_job_in_two_files() -> None:
    text = changed(S19, ("R-1", "R-2"), ("C-1", "C-2"))
    assert refused(closed(S19, "a.toml"), closed(text, "b.toml")) == [
        'b.toml: line 2, close_out: job "S19" stands already in a.toml'
    ]


def test_a_file_named_twice() -> None:
    assert refused(closed(), closed())[0].endswith('job "S19" stands already in close-out.toml')


def test_a_receipt_in_two_files() -> None:
    text = changed(S19, ('job = "S19"', 'job = "S20"'), ("C-1", "C-2"))
    (said,) = refused(closed(S19, "a.toml"), closed(text, "b.toml"))
    assert 'receipt "Sample supply house R-1" stands already in a.toml' in said


def test_currencies_are_not_added() -> None:
    shop = replace(us_books().shop, currency="GBP")
    other = replace(closed(DOUBLE_ENTRY, "b.toml"), books=replace(us_books(), shop=shop))
    assert refused(closed(), other) == ["b.toml: its books are in GBP, those before in USD"]


def test_every_kind_without_an_account_is_named_once() -> None:
    kept = {kind: one for kind, one in us_books().accounts.items()
            if kind not in ("tools", "bank", "stock")}  # fmt: skip
    job = replace(closed(), books=replace(us_books(), accounts=kept))
    assert refused(job) == [
        f'shipped accounts.csv: no account for lines of kind "{kind}"'
        for kind in ("stock", "tools", "bank")
    ]


@pytest.mark.parametrize("kind", GROUPS)
def test_the_shipped_accounts_have_every_kind(kind: str) -> None:
    assert us_books().accounts[kind].account_code


def test_the_entries_of_one_year() -> None:
    text = changed(S19, ("date = 2026-03-12", "date = 2027-01-05"))
    found = entries_of([closed(text)])
    assert {each.doc_type for each in in_year(found, 2027)} == {"bill credit"}
    assert len(in_year(found, 2027)) + len(in_year(found, 2026)) == len(found)
    assert in_year(found, None) == found
    assert in_year(found, 2025) == ()
