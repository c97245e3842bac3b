"""Both editions that a US job names must be on file, each of its own code."""

from __future__ import annotations

import pytest

from estimator.problems import InputError
from estimator.survey.reader import survey_from
from tests.rules.wood_case import job


@pytest.mark.parametrize(
    ("key", "name", "known"),
    [
        ("edition", "nec-2031", "nec-2017, nec-2020, nec-2023"),
        ("edition", "irc-2021", "nec-2017, nec-2020, nec-2023"),
        ("building_edition", "irc-1999", "irc-2015, irc-2018, irc-2021"),
        ("building_edition", "nec-2023", "irc-2015, irc-2018, irc-2021"),
    ],
)
def test_an_edition_that_is_not_on_file(key: str, name: str, known: str) -> None:
    with pytest.raises(InputError) as caught:
        survey_from(job(job={key: name}))
    (problem,) = caught.value.problems
    assert problem.where.endswith(key)
    assert problem.read == f'there is no edition "{name}"'
    assert problem.write.endswith(f"On file: {known}.")


def test_elsewhere_no_edition_is_asked_for() -> None:
    raw = job(job={"country": "GB", "edition": "none", "building_edition": "none"})
    assert survey_from(raw).job.edition == "none"
