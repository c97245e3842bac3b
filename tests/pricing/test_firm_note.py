"""A firm's lines that are still those that come along are told before the customer reads them."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.pricing.firm_note import firm_note
from tests.cli.run import NIGHTSTAND, estimator
from tests.worked.job import changed, worked

OWN = Path("my-job.toml")
TERMS = '\n[settings.terms]\nfirm_name = "Made-up Wiring"\nfirm_contact = "Nowhere 2"\n'


@pytest.mark.parametrize("sample", ["nightstand", "terrace-bedroom"])
def test_the_lines_that_come_along_are_named(sample: str) -> None:
    (line,) = firm_note(worked(sample), OWN)
    assert "the sample's firm name, contact, license on" in line


def test_only_what_is_still_the_samples_is_named() -> None:
    bid = changed("nightstand", ("\n[circuit]", TERMS + "\n[circuit]"))
    (line,) = firm_note(bid, OWN)
    assert "the sample's firm license on" in line


def test_a_firm_of_ones_own_is_no_note() -> None:
    licensed = TERMS + 'firm_license = "none asked"\n'
    assert firm_note(changed("nightstand", ("\n[circuit]", licensed + "\n[circuit]")), OWN) == ()


def test_a_sample_keeps_its_lines_without_a_word() -> None:
    assert firm_note(worked("nightstand"), NIGHTSTAND) == ()


def test_the_bid_says_so_on_stderr(tmp_path: Path) -> None:
    (tmp_path / OWN).write_text(NIGHTSTAND.read_text(encoding="utf-8"), encoding="utf-8")
    done = estimator("bid", str(OWN), folder=tmp_path)
    assert (done.returncode, "estimator catalog copy" in done.stderr) == (0, True)
    assert "sample's firm" not in done.stdout
