"""Closing the British and the Canadian sample, changing them, and their books; worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.cli.run import ROOT, estimator

SAMPLES = ROOT / "samples"
CLOSED = """
[close_out]
job = "{job}"
date = 2026-06-04
estimate = "{estimate}"
purchase_tax = "recovered"

[[receipts]]
date = 2026-05-20
supplier = "Sample supply house"
doc_no = "R-1"
tax_rate_pct = {rate}
lines = [{{ description = "Cable, boxes, devices", amount = {bought} }}]

[[hours]]
date = 2026-05-21
phase = "rough-in"
hours = 8.5

[[invoices]]
date = 2026-06-01
doc_no = "I-1"
materials = {materials}
labor = {labor}
other = {other}
tax_rate_pct = {rate}

[[payments]]
date = 2026-06-03
doc_no = "P-1"
amount = {paid}
"""
# Invoiced: 139.43 + 443.38 + 100.00 and 20 % of it, 136.56; 142.83 + 491.19 + 155.00 and 13 %,
# 102.57. Bought: 31.10 and 6.22; 60.00 and 7.80. 8.5 h at a wage of 20.00 x 1.25; in the books
# for dollars 30.38 x 1.4334 = 43.5467, to the cent 43.55.
GB = {"job": "GB1", "rate": 20, "bought": "31.10", "materials": "139.43", "labor": "443.38",
      "other": "100.00", "paid": "819.37"}  # fmt: skip
CA = {"job": "CA1", "rate": 13, "bought": "60.00", "materials": "142.83", "labor": "491.19",
      "other": "155.00", "paid": "891.59"}  # fmt: skip
JOBS = {"terrace-bedroom": GB, "rec-room": CA}


def closed(folder: Path, sample: str) -> str:
    estimate = (SAMPLES / f"{sample}.toml").as_posix()
    text = CLOSED.format(estimate=estimate, **JOBS[sample])
    (folder / "closed.toml").write_text(text, encoding="utf-8")
    return "closed.toml"


@pytest.mark.parametrize(
    ("sample", "lines"),
    [
        ("terrace-bedroom", ["Bank £819.37 £37.32 £782.05", "Input tax £6.22 £0.00 £6.22",
                             "VAT payable £0.00 £136.56 -£136.56",
                             "Job labour £212.50 £0.00 £212.50"]),
        ("rec-room", ["Bank $891.59 $67.80 $823.79", "Input tax $7.80 $0.00 $7.80",
                      "Job materials $60.00 $0.00 $60.00", "Job labor $370.18 $0.00 $370.18"]),
    ],
    ids=["pounds", "dollars"],
)  # fmt: skip
def test_the_books_of_a_closed_job(sample: str, lines: list[str], tmp_path: Path) -> None:
    done = estimator("books", closed(tmp_path, sample), "--year", "2026", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    said = " ".join(done.stdout.split())
    assert [line for line in lines if line not in said] == []


# Paper as the workbook numbers it: 1 is Letter, 9 is A4.
@pytest.mark.parametrize(("sample", "paper"), [("terrace-bedroom", 9), ("rec-room", 1)])
@pytest.mark.parametrize("command", ["close-out", "books", "bid", "change"])
def test_workbooks_are_printed_on_the_paper_of_the_country(
    command: str, sample: str, paper: int, tmp_path: Path
) -> None:
    job = str(SAMPLES / f"{sample}.toml")
    told = {"bid": [job], "change": [job, changed(tmp_path, sample), "--why", "It moved"]}
    given = told.get(command) or [closed(tmp_path, sample)]
    done = estimator(command, *given, "-o", "made.xlsx", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    sheets = [sheet for sheet in load_workbook(tmp_path / "made.xlsx") if sheet.print_area]
    assert {sheet.page_setup.paperSize for sheet in sheets} == {paper}


def changed(folder: Path, sample: str) -> str:
    """The job file with its last socket 400 mm further."""
    text = (SAMPLES / f"{sample}.toml").read_text(encoding="utf-8")
    for old, new in (('x = "2.9 m"', 'x = "3.3 m"'), ('x = "1.9 m"', 'x = "2.3 m"')):
        text = text.replace(old, new)
    (folder / "now.toml").write_text(text, encoding="utf-8")
    return "now.toml"


def test_a_change_is_priced_in_pounds(tmp_path: Path) -> None:
    """One stud more and 400 mm pulled: 0.33 / 6 + 0.4 x 0.40 / 6 = 0.081667 h x 48.00 = 3.92.

    Two cuts of 1600 and 2000: 3960 mm is still 4 m. 20 % VAT on 3.92 is 0.78.
    """
    job = str(SAMPLES / "terrace-bedroom.toml")
    why = ("--why", "The desk moved")
    done = estimator("change", job, changed(tmp_path, "terrace-bedroom"), *why, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "+£4.70, £0.78 of it tax" in done.stdout
    assert "boxes desk: x: 2.9 m -> 3.3 m" in done.stdout
