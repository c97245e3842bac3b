"""Prints how long writing the workbook takes, against openpyxl writing the same cells and no more.

Run from the checkout: `python -m tests.bench.workbook`. Medians of 15, taken turn about so that
a slow moment of the machine falls on both sides. The bare side writes the texts, figures and
formulas of every sheet; it has no styles, tables, charts, or results beside the formulas.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from statistics import median

from openpyxl import Workbook, load_workbook

from estimator.outputs.workbook import bid_workbook
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.survey.reader import read_job

ROOT = Path(__file__).parents[2]
ROUNDS = 15
Cells = dict[str, list[list[object]]]


def cells_of(data: bytes) -> Cells:
    """What stands in every sheet, row by row."""
    return {
        sheet.title: [[cell.value for cell in row] for row in sheet.iter_rows()]
        for sheet in load_workbook(BytesIO(data))
    }


def bare(sheets: Cells) -> None:
    """Write the same cells with openpyxl alone."""
    book = Workbook()
    book.remove(book.worksheets[0])
    for name, rows in sheets.items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(row)
    book.save(BytesIO())


def seconds(work: Callable[[], object]) -> float:
    """Time one go."""
    begin = time.perf_counter()
    work()
    return time.perf_counter() - begin


def compare(path: Path) -> None:
    """Print the medians for one sample and their ratio."""
    job = read_job(path)
    bid = estimate(job.survey, books_for(job))
    sheets = cells_of(bid_workbook(bid))
    count = sum(value is not None for rows in sheets.values() for row in rows for value in row)
    pairs = [
        (seconds(lambda: bid_workbook(bid)), seconds(lambda: bare(sheets))) for _ in range(ROUNDS)
    ]
    ours, base = (median(each) * 1000 for each in zip(*pairs, strict=True))
    print(f"{path.stem}: {count} cells, {ours:.0f} ms, bare {base:.0f} ms, ratio {ours / base:.2f}")


if __name__ == "__main__":
    for sample in sorted((ROOT / "samples").glob("*.toml")):
        compare(sample)
