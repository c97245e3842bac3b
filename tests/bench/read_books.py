"""Prints the time and memory that reading a supplier file takes, against bare pandas.

Run from the checkout: `python -m tests.bench.read_books [ROWS]` (1,000,000 unless told). The file
is made anew each time, from a fixed seed; every figure is taken in a process of its own, so that
the peak memory belongs to one way of reading only. Time is that of the processor, so that other
work on the machine does not count, and includes importing what is needed.
"""

from __future__ import annotations

import csv
import os
import random
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
ROWS = 1_000_000
ITEMS = 200_000
WANTED = 60
SUPPLIERS, AISLES = 40, 60
COLUMNS = (
    "item", "description", "unit", "pack_size", "pack_price", "supplier", "aisle", "tax_class",
    "sold_as", "volume_in3", "holds", "priced_on", "source",
)  # fmt: skip

MEASURED = """
import resource, sys, time
begin = time.process_time()
{read}
peak_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
print(time.process_time() - begin, peak_kb / 1024)
"""
BARE = "import pandas; pandas.read_csv({path!r})"
OURS = """
from pathlib import Path
from estimator.catalog.materials import read_materials
found = read_materials(Path({path!r}), {wanted})
assert not found.problems and found.materials["item-7"]
"""
DEFAULT_SET = """
from estimator.catalog.books import read_books
from estimator.catalog.shipped import shipped_catalogs
begin = time.perf_counter()
read_books(shipped_catalogs())
first = time.perf_counter() - begin
begin = time.perf_counter()
for _ in range(20): read_books(shipped_catalogs())
print(first, (time.perf_counter() - begin) / 20)
"""


def write_book(path: Path, rows: int) -> None:
    """Write a supplier file: every row a pack of its own, prices and dates as they come."""
    chance = random.Random(1)
    with path.open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file)
        writer.writerow(COLUMNS)
        for row in range(rows):
            price = f"{chance.randrange(100, 90_000) / 100:.2f}"
            day = f"2026-{chance.randrange(1, 12):02}-{chance.randrange(1, 28):02}"
            writer.writerow((
                f"item-{row % ITEMS}", f"Thing, number {row}", "ea", row // ITEMS + 1, price,
                f"Supplier {row % SUPPLIERS}", f"aisle {row % AISLES}", "goods", "", "", "", day,
                "list price",
            ))  # fmt: skip


def measured(code: str) -> tuple[float, float]:
    """Run code in a fresh Python that prints two figures."""
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    done = subprocess.run(
        [sys.executable, "-c", code], env=env, check=True, capture_output=True, text=True
    )
    first, second = done.stdout.split()
    return float(first), float(second)


def compare(path: Path) -> None:
    """Print each way of reading the file, and its ratio to bare pandas."""
    wanted = f"{{f'item-{{n}}' for n in range({WANTED})}}"
    ways = {
        "bare pandas.read_csv": BARE.format(path=str(path)),
        "as the book, every row": OURS.format(path=str(path), wanted=None),
        f"as the book, {WANTED} items wanted": OURS.format(path=str(path), wanted=wanted),
    }
    base: tuple[float, float] | None = None
    for name, read in ways.items():
        seconds, peak_mb = measured(MEASURED.format(read=read))
        base = base or (seconds, peak_mb)
        print(f"{name}: {seconds:.2f} s ({seconds / base[0]:.2f} x), "
              f"peak {peak_mb:.0f} MB ({peak_mb / base[1]:.2f} x)")  # fmt: skip


if __name__ == "__main__":
    first, again = measured("import time\n" + DEFAULT_SET)
    print(f"the shipped books: {first * 1000:.1f} ms, again {again * 1000:.1f} ms")
    with tempfile.TemporaryDirectory() as folder:
        book = Path(folder) / "supplier.csv"
        write_book(book, int(sys.argv[1]) if sys.argv[1:] else ROWS)
        print(f"supplier file: {book.stat().st_size / 1_000_000:.0f} MB")
        compare(book)
