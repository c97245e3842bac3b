"""What was bought, as the shopping list page saves it: read, or refused with its place."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.language import CODES, Language
from estimator.ledger.list_columns import COLUMNS, NO, YES
from estimator.ledger.paid import read_paid
from estimator.pricing.change_bought import PaidFile, PaidLine
from estimator.problems import InputError
from tests.outputs.bid_factory import full_bid, sample_bid

PAGE = """[[receipts]]
date = 2026-03-09
supplier = "Sample supply house"
doc_no = "{number}"
tax = 0.48
lines = [
  {{ description = "1 x Old-work box", amount = 3.05, item = "box-old-work-1g-20", quantity = 1 }},
  {{ {second} }},
]
"""
SCREWS = 'description = "Screws", amount = 3.00, item = "screw-drywall", quantity = 100'
HEAD = """[close_out]
job = "{job}"
date = 2026-03-20
[estimate]
price = 1
materials = 1
labor_hours = 1
[[hours]]
date = 2026-03-10
phase = "rough-in"
hours = 2
"""
RETURN = """[[returns]]
date = 2026-03-12
supplier = "Sample supply house"
doc_no = "C-1"
lines = [{{ description = "Screws", amount = 1.50, item = "screw-drywall", quantity = {count} }}]
"""
BOX = PaidLine(
    "box-old-work-1g-20", "1 x Old-work box", Decimal(1), Decimal("3.05"), "Sample supply house"
)
HEADINGS = "what,item,quantity,unit,shop,expected,paid,got,had\n"


def page(second: str = SCREWS, number: str = "R-1") -> str:
    return PAGE.format(second=second, number=number)


def read(folder: Path, text: str, name: str = "paid.toml") -> PaidFile:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return read_paid(path, sample_bid("nightstand"))


def refused(folder: Path, text: str, name: str = "paid.toml") -> list[str]:
    """Each problem without the folder in front of the file's name."""
    with pytest.raises(InputError) as error:
        read(folder, text, name)
    return [str(each).replace(f"{folder}/", "") for each in error.value.problems]


@pytest.mark.parametrize("around", ["", HEAD.format(job="S1")], ids=["lines alone", "close-out"])
def test_the_page_s_lines_with_and_without_the_rest_of_a_file(tmp_path: Path, around: str) -> None:
    found = read(tmp_path, around + page())
    screws = PaidLine("screw-drywall", "Screws", Decimal(100), Decimal("3.00"), BOX.supplier)
    assert (found.lines, found.notes) == ((BOX, screws), ())


def test_what_went_back_is_taken_off_at_the_same_price(tmp_path: Path) -> None:
    """100 for 3.00, 50 went back: 50 for 1.50 are left."""
    _, screws = read(tmp_path, page() + RETURN.format(count=50)).lines
    assert (screws.quantity, screws.paid) == (Decimal(50), Decimal("1.50"))


@pytest.mark.parametrize("other", ['for = "truck-stock"', 'for = "job:S2"', 'kind = "permit"'])
def test_lines_for_something_else_do_not_count(tmp_path: Path, other: str) -> None:
    assert read(tmp_path, page(f"{SCREWS}, {other}")).lines == (BOX,)


def test_a_line_without_an_item_is_told_and_not_counted(tmp_path: Path) -> None:
    found = read(tmp_path, page('description = "Sandpaper", amount = 2.00'))
    assert found.lines == (BOX,)
    (note,) = found.notes
    assert note.endswith('line 8, receipts[0].lines[1]: "Sandpaper" names no item, so it is not'
                         " counted.")  # fmt: skip


def test_a_page_without_a_price_holds_nothing(tmp_path: Path) -> None:
    assert read(tmp_path, "# No price has been typed yet.\n").lines == ()


def test_lines_for_this_job_in_the_file_of_another(tmp_path: Path) -> None:
    text = HEAD.format(job="S2") + page(f'{SCREWS}, for = "job:S1"')
    assert [line.item for line in read(tmp_path, text).lines] == ["screw-drywall"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (page(SCREWS.replace("screw-drywall", "screw-dry")),
         'paid.toml: line 8, receipts[0].lines[1].item: "screw-dry" is neither on the shopping list'
         " nor in the materials book\n  Write an item key of materials.csv, such as the page has"
         " it."),
        (page(SCREWS.removesuffix(", quantity = 100")),
         'paid.toml: line 8, receipts[0].lines[1]: "screw-drywall" has no quantity\n'
         "  Write how much was bought, in its unit (ea)."),
        (page() + page(),
         'paid.toml: line 13, receipts[1].doc_no: "Sample supply house R-1" stands already in'
         " receipts[0]\n  Keep one of them, or correct the number."),
        (page() + RETURN.format(count=101),
         'paid.toml: line 14, returns[0].lines[0]: more "screw-drywall" went back than the receipts'
         " of this file have\n  Write the receipt of it too."),
        ('[job]\nid = "S1"\n',
         "paid.toml: this is a job file: it says what is there, not what was bought.\n"
         "  Name what the shopping list page saved, or the close-out file of the job."),
        (HEAD.format(job="S9") + page(),
         'paid.toml: line 2, close_out.job: this is the close-out file of job "S9"; nothing in it'
         ' is for job "S1"\n  Name what the shopping list page saved, or the close-out file of the'
         " job."),
    ],
    ids=["unknown item", "no quantity", "twice", "too much back", "job file", "other job"],
)  # fmt: skip
def test_what_is_refused_and_where(tmp_path: Path, text: str, said: str) -> None:
    assert refused(tmp_path, text) == [said]


def test_every_problem_is_told_at_once(tmp_path: Path) -> None:
    text = page('description = "A", amount = 1, item = "nothing", quantity = 1').replace(
        ", quantity = 1 },\n  {", " },\n  {"
    )
    assert len(refused(tmp_path, text)) == 2


ROWS = """\
1 x Old-work box,box-old-work-1g-20,1,ea,Sample supply house,2.85,3.05,no,no
Screws,screw-drywall,50,ea,Sample supply house,3.20,,yes,no
Nails,nail-finish-2in,50,ea,Corner hardware (sample),3.60,,no,no
Caulk,caulk,80,ft,Sample supply house,4.30,,no,yes
"""
FROM_ROWS = (
    BOX,
    PaidLine("screw-drywall", "Screws", Decimal(50), None, "Sample supply house"),
    PaidLine("caulk", "Caulk", Decimal(80), None, "Sample supply house", had=True),
)


@pytest.mark.parametrize("name", ["paid.csv", "paid.txt"])
def test_the_table_says_what_was_bought_got_or_had(tmp_path: Path, name: str) -> None:
    assert read(tmp_path, HEADINGS + ROWS, name).lines == FROM_ROWS


@pytest.mark.parametrize("code", CODES)
def test_the_table_in_every_language_of_the_page(tmp_path: Path, code: str) -> None:
    say = Language(code).say
    told = ROWS.replace("yes", say(YES)).replace(",no", f",{say(NO)}")
    text = ",".join(map(say, COLUMNS)) + "\n" + told
    assert read(tmp_path, text, "paid.csv").lines == FROM_ROWS


def test_the_table_as_a_spreadsheet_program_saves_it(tmp_path: Path) -> None:
    """Semicolons, decimal commas, another order of columns, one of them gone."""
    rows = ("what;paid;item;quantity;got;had;shop",
            "1 x Old-work box;3,05;box-old-work-1g-20;1;no;;Sample supply house")  # fmt: skip
    assert read(tmp_path, "\n".join(rows), "paid.csv").lines == (BOX,)


def test_what_came_from_the_truck_is_not_counted_again(tmp_path: Path) -> None:
    """The receptacle of the job with everything in it is drawn from the truck, and ticked."""
    path = tmp_path / "paid.csv"
    row = "1 ea Receptacle,receptacle-15,{},ea,,1.50,,yes,no\n"
    path.write_text(HEADINGS + row.format(1), encoding="utf-8")
    assert read_paid(path, full_bid()).lines == ()
    path.write_text(HEADINGS + row.format(2), encoding="utf-8")
    assert len(read_paid(path, full_bid()).lines) == 1


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("A,screw-dry,1,ea,,,,yes,no",
         'paid.csv: row 2, column item: "screw-dry" is neither on the shopping list nor in the'
         " materials book\n  Write an item key of materials.csv, such as the page has it."),
        ("A,screw-drywall,,ea,,,1.00,no,no",
         'paid.csv: row 2, column quantity: "screw-drywall" has no quantity\n'
         "  Write how much was bought, in its unit (ea)."),
        ("A,screw-drywall,1,ea,,,1.x,no,no",
         'paid.csv: row 2, column paid: "1.x" is not a number.\n'
         "  Write digits only, such as 1.25."),
        ("A,screw-drywall,1,ea,,,,perhaps,no",
         'paid.csv: row 2, column got: "perhaps" is neither yes nor no\n  Write yes or no.'),
    ],
    ids=["unknown item", "no quantity", "no number", "no yes"],
)  # fmt: skip
def test_rows_that_are_refused_and_where(tmp_path: Path, row: str, said: str) -> None:
    assert refused(tmp_path, HEADINGS + row + "\n", "paid.csv") == [said]


def test_a_table_without_its_headings(tmp_path: Path) -> None:
    (said,) = refused(tmp_path, HEADINGS.replace("paid", "price") + ROWS, "paid.csv")
    assert said.startswith("paid.csv: row 1: the column paid is missing\n  Keep the headings of")
