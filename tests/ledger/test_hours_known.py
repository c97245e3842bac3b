"""Hours of a phase or task that nobody knows are refused, with the phases there are."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.ledger.closing import open_job
from estimator.problems import InputError
from tests.ledger.made_close_out import S19

PHASES = "Known phases: set-up, rough-in, terminate, test, close, paint, clean-up"
TYPED = 'labor_hours = 5.5\nphases = [{ phase = "digging", hours = 5.5 }]'


def opened(folder: Path, *changes: tuple[str, str]) -> None:
    text = S19
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = folder / "close-out.toml"
    path.write_text(text, encoding="utf-8")
    open_job(path)


@pytest.mark.parametrize(
    ("hours", "read", "write"),
    [
        ('phase = "rough"', '"rough" is not a phase', 'Did you mean "rough-in"? ' + PHASES),
        ('phase = "xyz"', '"xyz" is not a phase', PHASES),
        ('task = "fish-dorp"', '"fish-dorp" is not a task of labor.csv',
         'Did you mean "fish-drop"? ' + PHASES),
    ],
)  # fmt: skip
def test_a_slip_is_no_new_phase(tmp_path: Path, hours: str, read: str, write: str) -> None:
    with pytest.raises(InputError) as raised:
        opened(tmp_path, ('phase = "rough-in"', hours))
    (problem,) = raised.value.problems
    assert (problem.read, problem.write) == (read, f"{write}.")
    assert "hours[0]" in problem.where


@pytest.mark.parametrize(
    "hours", ['task = "Fish-drop"', 'task = "dig"\nphase = "rough-in"', 'phase = "digging"']
)
def test_known_ones_pass(tmp_path: Path, hours: str) -> None:
    opened(tmp_path, ('phase = "rough-in"', hours), ("labor_hours = 5.5", TYPED))
