"""A local change names a rule on file, and a changed figure is a number."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.problems import InputError
from estimator.survey.reader import job_from_text

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"


def read(rule: str, change: str, value: str) -> None:
    """Read a sample with one local change."""
    lines = f'rule = "{rule}"\nchange = "{change}"\nvalue = "{value}"\nreason = "ordinance"\n'
    lines += 'figure = "hole-edge"\n' if change == "figure" else ""
    job_from_text(f"{SAMPLE.read_text(encoding='utf-8')}\n[[amendments]]\n{lines}", SAMPLE)


@pytest.mark.parametrize(("change", "value"), [("off", ""), ("note", ""), ("figure", "5/4")])
def test_a_local_change_is_read(change: str, value: str) -> None:
    read("protection-plates", change, value)


@pytest.mark.parametrize("value", ["", "abc", "1/0", "1 in"])
def test_a_figure_that_is_no_number_is_told(value: str) -> None:
    with pytest.raises(InputError, match="is not a number") as caught:
        read("protection-plates", "figure", value)
    assert "amendments[0].value" in caught.value.problems[0].where


def test_a_rule_that_is_not_on_file_is_told_with_the_nearest() -> None:
    with pytest.raises(InputError, match=r'no rule "box-fil"') as caught:
        read("box-fil", "off", "")
    assert caught.value.problems[0].write.startswith('Did you mean "box-fill"?')
