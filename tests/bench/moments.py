"""The five moments of a job as the README has them: inputs, characters typed, and wall time.

`python -m tests.bench.moments` walks the nightstand from nothing to the books and prints a table,
with the time of importing the packages that every command needs as the floor. Enter counts as a
character. Nothing is asserted: what each step does is held by the tests.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import pexpect

from tests.cli.run import ENVIRONMENT
from tests.cli.test_survey_talk import S1, answer, ask, begin

SAMPLES = Path(__file__).parents[2] / "samples"
PAID = """\
[[receipts]]
date = 2026-03-09
supplier = "Sample supply house"
doc_no = "R-1"
tax = 0.00
lines = [
  { description = "Box", amount = 3.05, item = "box-old-work-1g-20", quantity = 1 },
]
"""


class Step(NamedTuple):
    """One moment: what was typed into it, and how long it took."""

    name: str
    inputs: int
    characters: int
    seconds: float


def timed(name: str, lines: list[str], run: Callable[[], None]) -> Step:
    """Run a moment and count what is typed; every line ends with Enter."""
    begun = time.perf_counter()
    run()
    taken = time.perf_counter() - begun
    return Step(name, len(lines), sum(len(line) + 1 for line in lines), taken)


def command(folder: Path, line: str) -> None:
    """Type one command as a person would, in the job's folder."""
    typed = line.replace("estimator ", f'"{sys.executable}" -m estimator ', 1)
    done = subprocess.run(
        typed, shell=True, cwd=folder,
        env=ENVIRONMENT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    if done.returncode:
        raise SystemExit(f"{line}\n{done.stdout}{done.stderr}")


def commands(folder: Path, *lines: str) -> Callable[[], None]:
    """Several commands, one after the other."""

    def run() -> None:
        for line in lines:
            command(folder, line)

    return run


def talk(folder: Path) -> None:
    """The survey on a terminal of 80 x 24, then the bid with its page."""
    child = begin(folder, "j.toml")
    ask(child)
    for line in S1[:-1]:
        answer(child, line)
    child.sendline(S1[-1])
    child.expect(pexpect.EOF)
    command(folder, QUOTE[-1])


QUOTE = ["estimator survey j.toml", "estimator bid j.toml --page j.html"]
TABLE = ['estimator survey --edit j.toml "new_x=7 ft"', "estimator compare j.toml"]
STORE = ["estimator shopping-list j.toml --page l.html"]
WALL = [
    "cp j.toml now.toml",
    "estimator survey --edit now.toml finish=plaster",
    'estimator change j.toml now.toml --bought paid.toml --why "Plaster"',
]
MONTH = [
    "estimator close-out close-out/nightstand.toml",
    "estimator books close-out/*.toml -o books.csv",
]


def steps(folder: Path) -> Iterator[Step]:
    """The moments in their order, each on what the one before left."""
    yield timed("in the truck: a quote", [*QUOTE[:1], *S1, *QUOTE[1:]], lambda: talk(folder))
    yield timed("at the table: do it, or hire", TABLE, commands(folder, *TABLE))
    yield timed("in the store: the list on a phone", STORE, commands(folder, *STORE))
    (folder / "paid.toml").write_text(PAID, encoding="utf-8")
    yield timed("the wall is open: a change", WALL, commands(folder, *WALL))
    (folder / "close-out").mkdir()
    for name in ("nightstand.toml", "close-out/nightstand.toml"):
        (folder / name).write_bytes((SAMPLES / name).read_bytes())
    yield timed("at the end of the month", MONTH, commands(folder, *MONTH))


def floor() -> float:
    """Seconds to start Python and import what the commands need."""
    begun = time.perf_counter()
    subprocess.run([sys.executable, "-c", "import typer, pydantic, openpyxl, babel"], check=True)
    return time.perf_counter() - begun


if __name__ == "__main__":
    least = floor()
    print(f"floor: start and imports {least:.2f} s")
    print(f"{'moment':<36} {'inputs':>6} {'characters':>10} {'seconds':>8} {'x floor':>8}")
    with tempfile.TemporaryDirectory() as name:
        for step in steps(Path(name)):
            row = f"{step.name:<36} {step.inputs:>6} {step.characters:>10} {step.seconds:>8.1f}"
            print(f"{row} {step.seconds / least:>8.1f}")
