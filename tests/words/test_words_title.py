"""The title and scope that the survey writes are told; what somebody typed stays as typed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from estimator.drawing.kind_words import room_called
from estimator.guide.facts import job_from
from estimator.guide.title_words import scope_of, title_of
from estimator.language import Language
from estimator.outputs.text_message import message_text
from estimator.pricing.engine import estimate
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey
from tests.guide.made_answers import DRAWN, QUICK
from tests.pricing.made_books import shipped


def survey(**answers: str) -> Survey:
    return survey_from(job_from({**QUICK, **answers}))


@pytest.mark.parametrize("base", [QUICK, DRAWN], ids=["quick", "drawn"])
@pytest.mark.parametrize(
    ("answers", "title", "scope"),
    [
        ({"room": "living room"}, "New receptacle, living room",
         "Add one receptacle in the living room, fed from the box that is there."),
        ({"room": "the loft", "country": "GB", "units": "us"}, "New socket, the loft",
         "Add one socket in the the loft, fed from the box that is there."),
    ],
)  # fmt: skip
def test_what_the_survey_writes_is_known_again(
    base: dict[str, str], answers: dict[str, str], title: str, scope: str
) -> None:
    made = survey_from(job_from({**base, **answers}))
    assert (title_of(made), scope_of(made)) == (title, scope)
    assert (made.job.title, made.job.scope) == (title, scope)
    words = Language("es", {})
    assert title not in words.say(title_of(made)) and scope not in words.say(scope_of(made))


def test_what_somebody_typed_stays() -> None:
    made = survey(room="living room", title="New receptacle for Ann", work="As agreed.")
    told = [Language("es").say(each) for each in (title_of(made), scope_of(made))]
    assert told == ["New receptacle for Ann", "As agreed."]


def test_the_message_in_spanish_begins_in_spanish() -> None:
    books = shipped()
    words = {"living room": "sala", "receptacle": "tomacorriente"}
    language = Language("es", {key: _other(text) for key, text in words.items()})
    bid = estimate(survey(room="living room"), replace(books, language=language))
    assert "Instalación nueva: tomacorriente, sala" in message_text(bid)[0]


def _other(text: str) -> object:
    from estimator.language import OtherWord

    return OtherWord(text)


@pytest.mark.parametrize(
    ("room", "told"),
    [("living room", "SALA"), ("Living room", "SALA"), ("Ann's den", "Ann's den")],
)
def test_a_room_by_its_use_is_told(room: str, told: str) -> None:
    language = Language("es", {"living room": _other("SALA")})  # type: ignore[dict-item]
    assert (room_called(room), language.say(room_called(room))) == (room, told)
