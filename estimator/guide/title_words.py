"""Title and scope as the survey writes them, made as sayings so that they can be told."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.drawing.kind_words import room_called
from estimator.saying import Saying, said, word
from estimator.survey.records import Survey
from estimator.tables.local_words import local_words


def title_said(device: str, room: str) -> Saying:
    """The title of a job with one new box; the device in the words of the country."""
    return said("New {device}, {room}", device=word(device), room=room_called(room))


def work_said(device: str, room: str) -> Saying:
    """The scope of a job with one new box."""
    return said(
        "Add one {device} in the {room}, fed from the box that is there.",
        device=word(device),
        room=room_called(room),
    )


def title_of(survey: Survey) -> str:
    """The title: as a saying where it is what the survey writes, else as somebody typed it."""
    title = survey.job.title
    made = (title_said(*facts) for facts in _facts(survey))
    return next((each for each in made if each == title), title)


def scope_of(survey: Survey) -> str:
    """The scope: as a saying where it is what the survey writes, else as somebody typed it."""
    scope = survey.job.scope
    made = (work_said(*facts) for facts in _facts(survey))
    return next((each for each in made if each == scope), scope)


def _facts(survey: Survey) -> Iterator[tuple[str, str]]:
    """Device and room of each new box."""
    say = local_words(survey.job.country, survey.job.locale)
    walls = {wall.id: wall.room for wall in survey.walls}
    for box in survey.boxes:
        if not box.existing and (room := box.room or walls.get(box.wall or "", "")):
            yield say(box.device), room
