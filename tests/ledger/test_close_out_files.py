"""Reading close-out files: each fault with its line, and all of them at once."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.ledger.closing import open_job
from estimator.ledger.reader import close_out_from_text, read_close_out
from estimator.ledger.records import CloseOutRecord
from estimator.problems import InputError, Problem
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, SAMPLE, changed, closed


def problems(text: str) -> tuple[Problem, ...]:
    with pytest.raises(InputError) as caught:
        close_out_from_text(text, Path("c.toml"))
    return caught.value.problems


def problem(text: str, *changes: tuple[str, str]) -> Problem:
    (only,) = problems(changed(text, *changes))
    return only


def line(text: str, piece: str) -> int:
    """The line that a piece of text stands on, counted by hand from 1."""
    return text[: text.index(piece)].count("\n") + 1


@pytest.mark.parametrize(
    ("old", "new", "where", "read", "write"),
    [
        ("amount = 62.10", 'amount = "sixty"', "receipts[0].lines[0].amount",
         '"sixty" does not fit here', "Write a number with a point, such as 1.75."),
        ("amount = 62.10", "amount = true", "receipts[0].lines[0].amount",
         "true: this is not a number", "Write a number, such as 62.10."),
        ("amount = 62.10", "amount = -1", "receipts[0].lines[0].amount", "-1 does not fit here",
         "Write a value of at least 0."),
        ("tax_rate_pct = 8.25\nlines = [\n", "tax_rate_pct = 101\nlines = [\n",
         "receipts[0].tax_rate_pct", "101 does not fit here", "Write a value of at most 100."),
        ('for = "own-tool"', 'for = "car"', "receipts[0].lines[3]",
         '"car" is nothing a line can be for',
         'Write for = "job", "truck-stock", "own-tool", "supplies", "owner", or "job:NUMBER" for '
         "another job."),
        ('for = "own-tool"', 'for = "job:"', "receipts[0].lines[3]",
         '"job:" is nothing a line can be for', "another job."),
        ("tax_rate_pct = 8.25\nlines = [\n", "tax_rate_pct = 8.25\ntax = 1\nlines = [\n",
         "receipts[0]", "tax and tax_rate_pct are both given", "Keep one of them."),
        ("date = 2026-03-10", 'date = "10 March"', "receipts[0].date", '"10 March" does not fit',
         "Write a date as 2026-03-09."),
        ('doc_no = "R-1"\n', "", "receipts[0].doc_no", 'the key "doc_no" is missing', "Add it"),
        ("unit_cost = 0.44\n", "", "stock[0]", "the cost of a unit is not clear",
         "Write unit_cost, or pack_size together with pack_cost."),
        ("unit_cost = 0.44", "unit_cost = 0.44\npack_size = 250", "stock[0]",
         "the cost of a unit is not clear", "Write unit_cost"),
        ("unit_cost = 0.44", "pack_size = 250", "stock[0]", "the cost of a unit is not clear",
         "Write unit_cost"),
        ('phase = "rough-in"\n', "", "hours[0]", "these hours have no task and no phase",
         "Write a task or a phase."),
        ("hours = 7.25", "hours = 0", "hours[0].hours", "0 does not fit here", "above 0"),
        ("amount = 9.52", "amount = 1000000001", "receipts[0].lines[3].amount",
         "1000000001 does not fit", "at most 1000000000"),
        ("price = 640.00", "price = 1e30", "estimate.price", "1e+30 does not fit",
         "at most 1000000000"),
        ("asked_pct", "askd_pct", "deposit.asked_pct", 'the key "asked_pct" is missing', "Add it"),
    ],
)  # fmt: skip
def test_one_fault(old: str, new: str, where: str, read: str, write: str) -> None:
    found = problems(changed(S19, (old, new)))[0]
    assert found.where.endswith(f", {where}")
    assert found.read.startswith(read)
    assert write in found.write


def test_the_line_is_named_as_an_editor_counts_it() -> None:
    found = problem(S19, ("amount = 9.52", "amount = -9"))
    assert found.where == f"c.toml: line {line(S19, 'Hand tool')}, receipts[0].lines[3].amount"


def test_a_key_with_a_slip_names_the_nearest() -> None:
    found = problem(S19, ('doc_no = "R-1"', 'doc_no = "R-1"\npayd = "bank"'))
    assert found.read == 'the key "payd" is not known here'
    assert found.write.startswith('Did you mean "paid"?')


def test_all_faults_come_at_once_in_line_order() -> None:
    text = changed(S19, ("price = 640.00", "price = -1"), ("amount = 62.10", "amount = -2"),
                   ("hours = 7.25", "hours = -3"))  # fmt: skip
    found = problems(text)
    assert [each.read.split()[0] for each in found] == ["-1", "-2", "-3"]


def test_no_estimate_at_all() -> None:
    head, _, rest = S19.partition("[estimate]")
    found = problems(head + rest[rest.index("[deposit]") :])[0]
    assert found.read == "there is no estimate to compare with"
    assert 'estimate = "my-job.toml"' in found.write


def test_an_estimate_twice() -> None:
    found = problem(S19, ('job = "S19"', 'job = "S19"\nestimate = "job.toml"'))
    assert found.read == "the estimate is named in [close_out] and typed in [estimate]"


def test_a_paper_that_stands_twice() -> None:
    again = S19[S19.index("[[receipts]]") : S19.index("[[returns]]")]
    found = problems(S19 + again.replace("R-1", "r-1 "))[0]
    assert found.read == '"Sample supply house r-1 " stands already in receipts[0]'
    assert found.where.endswith("receipts[1].doc_no")


@pytest.mark.parametrize("table", ["invoices", "payments", "paid_out"])
def test_other_papers_that_stand_twice(table: str) -> None:
    start = DOUBLE_ENTRY.index(f"[[{table}]]")
    end = DOUBLE_ENTRY.find("\n\n[", start)
    again = DOUBLE_ENTRY[start : end if end > 0 else None]
    found = problems(DOUBLE_ENTRY + again)[0]
    assert f"stands already in {table}[0]" in found.read


def test_phases_add_up_to_the_hours() -> None:
    phases = 'labor_hours = 5.5\nphases = [{ phase = "rough-in", hours = 5 }]'
    found = problem(S19, ("labor_hours = 5.5", phases))
    assert found.read == "the phases add up to 5 h, and labor_hours says 5.5"


def test_an_invoice_of_nothing() -> None:
    found = problem(DOUBLE_ENTRY, ("materials = 150.00\nlabor = 400.00\n", ""))
    assert found.read == "this invoice has no amount"


def test_an_invoice_with_two_taxes() -> None:
    found = problem(DOUBLE_ENTRY, ("tax_rate_pct = 7.25", "tax_rate_pct = 7.25\ntax = 10.88"))
    assert (found.read, found.write) == (
        "tax and tax_rate_pct are both given", "Keep one of them."
    )  # fmt: skip


def test_tax_on_nothing_cannot_be_split() -> None:
    found = problem(DOUBLE_ENTRY, ('paid = "on account"', "tax = 1.00"),
                    ("amount = 120.00", "amount = 0"))  # fmt: skip
    assert found.read == "there is tax and no amount that it is on"


def test_a_locale_that_is_none() -> None:
    found = problem(S19, ('job = "S19"', 'job = "S19"\nlocale = "xx_YY"'))
    assert (found.where, found.read) == (
        "c.toml: line 4, close_out.locale", '"xx_YY" is not a locale'
    )  # fmt: skip


DRIVE = "\n[[mileage]]\ndate = {}-03-10\ndistance = 24\n{}\n"


def test_miles_of_a_year_without_a_rate() -> None:
    (found,) = problems(S19 + DRIVE.format(2022, ""))
    assert found.read == "no rate per mile is on file for 2022"
    assert found.write == "Write rate = 0.70 or so. On file: 2023, 2024, 2025, 2026."


def test_kilometres_need_a_rate_of_their_own() -> None:
    (found,) = problems(S19 + DRIVE.format(2026, 'unit = "km"'))
    assert found.read == "there is no rate on file for kilometres"
    close_out_from_text(S19 + DRIVE.format(2026, 'unit = "km"\nrate = 0.45'), Path("c.toml"))


def test_a_job_file_posts_nothing() -> None:
    job = SAMPLE.parents[1] / "nightstand.toml"
    with pytest.raises(InputError, match="A bid posts nothing"):
        read_close_out(job)


def test_a_job_file_that_is_not_there(tmp_path: Path) -> None:
    path = tmp_path / "c.toml"
    head, _, rest = S19.partition("[estimate]")
    text = head.replace('job = "S19"', 'job = "S19"\nestimate = "no.toml"')
    path.write_text(text + rest[rest.index("[deposit]") :])
    with pytest.raises(InputError, match=r"line 4, close_out.estimate: there is no job file"):
        open_job(path)


def test_a_job_file_of_another_job(tmp_path: Path) -> None:
    path = tmp_path / "c.toml"
    text = SAMPLE.read_text(encoding="utf-8").replace("../", f"{SAMPLE.parents[1]}/")
    path.write_text(text.replace('job = "S1"', 'job = "S2"', 1))
    with pytest.raises(InputError, match='this is job "S2", and the job file is for job "S1"'):
        open_job(path)


def test_a_record_cannot_be_changed() -> None:
    with pytest.raises(ValueError, match="frozen"):
        closed().file.record.format = 2  # type: ignore[misc,assignment]


def test_every_field_has_a_meaning() -> None:
    waiting, seen = [CloseOutRecord.model_json_schema()], 0
    for each in waiting[0]["$defs"].values():
        for name, field in each["properties"].items():
            seen += 1
            assert field.get("description"), (each["title"], name)
    assert seen > 50


def test_a_date_typed_with_strokes_names_the_day() -> None:
    found = problem(S19, ("date = 2026-03-20", 'date = "11/24/2026"'))
    assert found.write == "Write 2026-11-24, without quotes."
