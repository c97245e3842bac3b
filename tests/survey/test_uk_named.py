"""The UK by its everyday name: its code is GB (ISO 3166-1)."""

from __future__ import annotations

import pytest

from estimator.survey.reader import job_from_text
from tests.worked.job import SAMPLES

PATH = SAMPLES / "terrace-bedroom.toml"
CODE, LOCALE = 'country = "GB"', 'locale = "en_GB"'


@pytest.mark.parametrize(("country", "locale"), [("UK", "en_UK"), ("uk", "en-uk"), ("gb", "en_GB")])
def test_uk_is_read_as_gb(country: str, locale: str) -> None:
    text = PATH.read_text(encoding="utf-8")
    assert CODE in text and LOCALE in text
    text = text.replace(CODE, f'country = "{country}"').replace(LOCALE, f'locale = "{locale}"')
    job = job_from_text(text, PATH).survey.job
    assert (job.country, job.locale) == ("GB", "en_GB")
