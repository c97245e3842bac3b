"""Any way through the questions: saved and found again after each, and a job in the end."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from estimator.guide.defaults import bare_unit, choices_of
from estimator.guide.job_text import answered, job_text, new_job
from estimator.guide.questions import UNKNOWN, by_key
from estimator.guide.session import State, begin, offered, reply
from estimator.survey.reader import survey_from
from estimator.units import read_length

LENGTHS = ("3", "15 in", "34", "8' 6", "1.2 m", "7 ft")
LINES = {
    "length": LENGTHS,
    "number": ("0", "1", "15", "20", "1950"),
    "volume": ("18", "12.5 in3", "300 cm3"),
    "area": ("90 ft2", "8 m2"),
    "text": ("Ann", "hall", '"=1+1" & <b>', "O'Hara \\ Söhne"),
    "date": ("2026-03-02",),
}
FAR = "40 ft"
TRIES = 5


def lines_for(state: State) -> list[str]:
    """What a person may type at a question: answers, refused ones, and the words that go back."""
    question = by_key()[state.key or ""]
    if question.key == "country":
        return ["US", "CA", "GB", ""]
    if question.key == "wall_length":
        return [FAR, UNKNOWN]
    typed = list(LINES.get(question.kind, choices_of(question, state.answers)))
    return [*typed, *typed, "", UNKNOWN, "back", "undo", "?", "nonsense"]


def meaning(answers: Mapping[str, str]) -> dict[str, object]:
    """Answers by what they mean: a job keeps edges, so a width comes back in other words."""
    unit = bare_unit(answers)
    lengths = {
        key: read_length(text, bare_unit=unit).inches
        for key, text in answers.items()
        if by_key()[key].kind == "length" and text != UNKNOWN
    }
    return {**answers, **lengths}


@settings(max_examples=TRIES, deadline=None, phases=[Phase.generate])
@given(st.data())
def test_any_way_through_is_saved_and_ends_in_a_job(data: st.DataObject) -> None:
    state, job = begin({}), new_job("job.toml")
    for _ in range(150):
        if state.key is None:
            break
        line = data.draw(st.sampled_from(lines_for(state)))
        state, _ = reply(state, line)
        if state.answers != job.answers:
            job = answered(job, state.answers)
            found = job_text(job.text, "job.toml").answers
            assert meaning(found) == meaning(state.answers)
    while state.key is not None:
        usual = offered(state) or ("34 in" if by_key()[state.key].kind == "length" else "Ann")
        state, _ = reply(state, usual)
        job = answered(job, state.answers)
    survey_from(tomllib.loads(job.text))
