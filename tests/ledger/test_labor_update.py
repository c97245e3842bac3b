"""The labor book moved by actual hours: the credibility formula by hand, and the file kept."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from estimator.catalog.shipped import shipped_catalogs
from estimator.ledger.estimated import Closed
from estimator.ledger.labor_update import (
    COUNTED,
    NO_QUANTITY,
    NOT_ON_FILE,
    SOME_QUANTITY,
    LaborUpdate,
    labor_update,
)
from estimator.ledger.shrinkage import moved, weight
from estimator.problems import InputError
from tests.ledger.made_close_out import S19, changed, closed, sample

BOOK = """\
task,unit,my note,hours_low,hours_likely,hours_high,source
fish-drop,ea,"mine, kept",0.25,0.50,1.50,judgement

fit-box,ea,,0.10,0.20,0.30,
"""
# 0.75 h for each of two drops: 1.50 h.
HOURS = 'task = "fish-drop"\nhours = 1.50\nquantity = 2'


def job(hours: str = HOURS) -> Closed:
    return closed(changed(S19, ('phase = "rough-in"\nhours = 7.25', hours)))


def update(path: Path, book: str | bytes = BOOK, hours: str = HOURS) -> LaborUpdate:
    path = path / "labor.csv"
    path.write_bytes(book if isinstance(book, bytes) else book.encode())
    return labor_update(job(hours), path)


@pytest.mark.parametrize(
    ("jobs", "k", "want"), [(0, 10, "1/11"), (9, 10, "1/20"), (0, 0, "1"), (4, "2.5", "2/15")]
)
def test_weight_of_one_more_job(jobs: int, k: int | str, want: str) -> None:
    """Z = n / (n + k): one job 1 / (1 + 10); the tenth 1 / (10 + 10)."""
    assert weight(jobs, Decimal(k)) == Fraction(want)


def test_one_at_a_time_comes_to_the_same_as_all_at_once() -> None:
    """Three jobs of 0.8, 0.9 and 1.0 h on a book of 0.5 h, k = 10: Z = 3/13 towards their mean
    0.9: 0.5 + 3/13 x 0.4 = 0.592307..."""
    likely = Decimal("0.5")
    for before, observed in enumerate(("0.8", "0.9", "1.0")):
        likely = moved(likely, Fraction(observed), weight(before, Decimal(10)))
    assert abs(Fraction(likely) - Fraction("0.5") - Fraction(3, 13) * Fraction("0.4")) < Fraction(
        1, 10_000
    )


@pytest.mark.parametrize(
    ("likely", "observed", "share", "want"),
    [
        ("0.50", "3/4", "1/11", "0.5227"),  # 0.5 + 0.25 / 11 = 0.52272...
        ("0.50", "1/4", "1/11", "0.4773"),  # 0.47727...
        ("0.50", "1/2", "1/11", "0.5000"),
        ("0.0001", "1/5000", "1/2", "0.0002"),  # 0.00015, half up
        ("0.50", "3/4", "1", "0.7500"),
    ],
)
def test_likely_hours_move_by_the_share(likely: str, observed: str, share: str, want: str) -> None:
    assert f"{moved(Decimal(likely), Fraction(observed), Fraction(share))}" == want


def test_one_job_moves_its_task_by_an_eleventh(tmp_path: Path) -> None:
    (change,) = update(tmp_path).changes
    assert (change.task, change.row, change.observed) == ("fish-drop", 2, Decimal("0.7500"))
    assert (change.new_likely, change.weight_pct) == (Decimal("0.5227"), Decimal("9.1"))
    assert (change.new_low, change.new_high, change.jobs) == (change.low, change.high, 1)


def test_only_the_cells_that_change_are_changed(tmp_path: Path) -> None:
    told = "judgement; likely hours moved by 1 job, last 2026-03-20: S19"
    want = BOOK.replace("0.50,1.50,judgement", f'0.5227,1.50,"{told}"')
    assert update(tmp_path).data.decode() == want


def test_working_it_out_writes_nothing(tmp_path: Path) -> None:
    update(tmp_path)
    assert (tmp_path / "labor.csv").read_text() == BOOK


def test_mark_line_ends_delimiter_and_comma_are_kept(tmp_path: Path) -> None:
    book = BOOK.replace(",", ";").replace("mine; kept", "mine, kept").replace(".", ",")
    raw = b"\xef\xbb\xbf" + book.replace("\n", "\r\n").encode()
    told = b"0,5227;1,50;judgement; likely".replace(b"judgement; likely", b'"judgement; likely')
    data = update(tmp_path, raw).data
    assert data.startswith(b"\xef\xbb\xbftask;unit;my note;") and b'"mine, kept"' in data
    assert told in data and data.count(b"\r\n") == raw.count(b"\r\n") == data.count(b"\n")


def test_a_separator_line_is_kept(tmp_path: Path) -> None:
    book = "sep=;\n" + BOOK.replace(",", ";").replace("mine; kept", "mine")
    data = update(tmp_path, book).data.decode()
    assert data.startswith("sep=;\ntask;unit;") and ";0.5227;1.50;" in data


def test_a_short_row_gets_the_cells_it_needs(tmp_path: Path) -> None:
    book = BOOK.replace("1.50,judgement", "1.50")
    row = update(tmp_path, book).data.decode().splitlines()[1]
    assert row.endswith('0.5227,1.50,"likely hours moved by 1 job, last 2026-03-20: S19"')


def test_the_second_job_weighs_a_twelfth(tmp_path: Path) -> None:
    """0.5227 + (0.75 - 0.5227) / 12 = 0.541641... -> 0.5416."""
    first = update(tmp_path).data
    text = changed(S19, ('phase = "rough-in"\nhours = 7.25', HOURS), ('"S19"', '"S 20"'))
    (tmp_path / "labor.csv").write_bytes(first)
    (change,) = labor_update(closed(text), tmp_path / "labor.csv").changes
    assert (change.new_likely, change.jobs) == (Decimal("0.5416"), 2)
    assert change.source == ("judgement; likely hours moved by 2 jobs, last 2026-03-20: S19 S_20")


def test_a_job_counts_once(tmp_path: Path) -> None:
    first = update(tmp_path).data
    again = update(tmp_path, first)
    assert (again.changes, again.left, again.data) == ((), (("fish-drop", COUNTED),), first)


@pytest.mark.parametrize(
    ("hours", "why"),
    [
        ('task = "dig"\nhours = 1\nquantity = 1', NOT_ON_FILE),
        ('task = "fish-drop"\nhours = 1', NO_QUANTITY),
        (f'{HOURS}\n[[hours]]\ndate = 2026-03-11\ntask = "fish-drop"\nhours = 1', SOME_QUANTITY),
    ],
)
def test_what_is_left_as_it_is(hours: str, why: str, tmp_path: Path) -> None:
    found = update(tmp_path, hours=hours)
    assert [each for _, each in found.left] == [why]
    assert (found.changes, found.data) == ((), BOOK.encode())


def test_hours_of_several_days_are_added(tmp_path: Path) -> None:
    """1.50 + 0.50 h for 2 + 2 drops: 0.5 h each, which moves nothing."""
    more = '\n[[hours]]\ndate = 2026-03-12\ntask = "Fish-drop"\nhours = 0.5\nquantity = 2'
    (change,) = update(tmp_path, hours=HOURS + more).changes
    assert (change.observed, change.new_likely) == (Decimal("0.5000"), Decimal("0.5000"))


def test_low_and_high_give_way_where_likely_passes_them(tmp_path: Path) -> None:
    """36 h for one: 0.20 + 35.8 / 11 = 3.45454..., above the high of 0.30."""
    hours = 'task = "fit-box"\nhours = 36\nquantity = 1'
    (change,) = update(tmp_path, hours=hours).changes
    assert change.new_likely == change.new_high == Decimal("3.4545")
    low = update(tmp_path, BOOK.replace("0.10,0.20", "0.20,0.20"),
                 'task = "fit-box"\nhours = 0.02\nquantity = 1').changes[0]  # fmt: skip
    assert low.new_low == low.new_likely == Decimal("0.1836")  # 0.20 - 0.18 / 11


def test_conditions_of_the_job_are_taken_out(tmp_path: Path) -> None:
    """set-up: 0.75 h in an occupied room (factor 1.175): 0.6383 h; + (0.6383 - 0.5) / 11."""
    path = tmp_path / "labor.csv"
    path.write_bytes((shipped_catalogs() / "labor.csv").read_bytes())
    changes = {each.task: each for each in labor_update(sample(), path).changes}
    assert changes["set-up"].observed == Decimal("0.6383")
    assert changes["set-up"].new_likely == Decimal("0.5126")
    assert changes["fish-drop"].observed == Decimal("0.8750")  # 1.75 h for 2 drops


def test_a_book_without_a_source_column(tmp_path: Path) -> None:
    book = "task,unit,hours_low,hours_likely,hours_high\nfish-drop,ea,0.25,0.5,1.5\n"
    with pytest.raises(InputError, match="Add a column with the heading source"):
        update(tmp_path, book)


def test_a_book_with_faults_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="do not rise"):
        update(tmp_path, BOOK.replace("0.25,0.50", "0.60,0.50"))


def test_how_slowly_is_a_setting(tmp_path: Path) -> None:
    """With k = 1 one job weighs a half: 0.625."""
    books = job().books
    terms = replace(books.shop.ledger, credibility_jobs=Decimal(1))
    quick = replace(job(), books=replace(books, shop=replace(books.shop, ledger=terms)))
    (tmp_path / "labor.csv").write_text(BOOK)
    (change,) = labor_update(quick, tmp_path / "labor.csv").changes
    assert (change.new_likely, change.weight_pct) == (Decimal("0.6250"), Decimal("50.0"))
