"""The drawing of a job: every wall it touches, then the runs that were only typed."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.drawing.dimensions import dimensions
from estimator.drawing.fixtures import (
    box_rect,
    boxes_on,
    edges_of,
    opening_rect,
    openings_on,
    trim_lines,
)
from estimator.drawing.framing import frame_rects
from estimator.drawing.kind_words import opening_called, room_called
from estimator.drawing.records import Drawing, Elevation, Line
from estimator.drawing.runs import legs_on, plate_rects, run_lines
from estimator.drawing.sentences import wall_sentences
from estimator.drawing.strip import strip
from estimator.drawing.view import ZERO, View, view_of
from estimator.drawing.wall_words import wall_labels
from estimator.language import ENGLISH, Language
from estimator.route.members import frames
from estimator.route.paths import run_paths
from estimator.route.records import RunPath
from estimator.saying import capital, said
from estimator.settings import Practice
from estimator.survey.records import Survey

_FLOOR_OUT = 2  # heights of letters that the floor goes on beyond the wall


def draw(survey: Survey, practice: Practice, language: Language = ENGLISH) -> Drawing:
    """Draw one way of a job.

    Args:
        survey: with the runs and openings of one way. A run between boxes or walls that it does
            not list is left out.
        practice: the shop's conventions, which say where protection plates go.
        language: what the labels are told in, so that there is room for them.

    Raises:
        InputError: walls that no corner joins, or a level whose height is unknown.
    """
    survey, known = _as_listed(survey), frames(survey)
    paths = run_paths(survey)
    walls = tuple(
        _elevation(view_of(survey, known[wall], language), paths, practice)
        for wall in _walls(survey, paths)
    )
    boxes = {box.id: box for box in survey.boxes}
    strips = tuple(
        strip(path, number, boxes, survey.job.units, language)
        for number, path in enumerate(paths)
        if path.legs and not any(leg.stretch for leg in path.legs)
    )
    return Drawing((*walls, *strips), tuple(_remarks(survey)))


def _as_listed(survey: Survey) -> Survey:
    """The survey with those runs and openings alone whose boxes and walls it lists."""
    walls = {None, *(wall.id for wall in survey.walls)}
    boxes = {box.id: {box.wall} for box in survey.boxes}
    nowhere: set[str | None] = {""}
    runs = tuple(
        run
        for run in survey.runs
        if boxes.get(run.from_box, nowhere) | boxes.get(run.to_box, nowhere) | {*run.walls} <= walls
    )
    openings = tuple(each for each in survey.openings if each.wall in walls)
    return survey.model_copy(update={"runs": runs, "openings": openings})


def _walls(survey: Survey, paths: tuple[RunPath, ...]) -> tuple[str, ...]:
    """Walls that the job touches: in the order the cable passes them, then those opened."""
    found: dict[str, None] = {}
    boxes = {box.id: box for box in survey.boxes}
    for path in paths:
        ends = [boxes[path.run.from_box].wall, boxes[path.run.to_box].wall]
        passed = [leg.stretch.wall for leg in path.legs if leg.stretch is not None]
        found |= dict.fromkeys(wall for wall in (ends[0], *passed, ends[1]) if wall is not None)
    found |= dict.fromkeys(each.wall for each in survey.openings if each.wall is not None)
    return tuple(found)


def _elevation(view: View, paths: tuple[RunPath, ...], practice: Practice) -> Elevation:
    seen = legs_on(view, paths)
    rects = (
        *frame_rects(view),
        *(opening_rect(view, each) for each in openings_on(view)),
        *plate_rects(view, seen, practice),
        *(box_rect(view, box) for box in boxes_on(view)),
    )
    measured, room = dimensions(view, seen), room_called(view.wall.room)
    out = _FLOOR_OUT * view.text_in
    floor = Line("floor", ((-out, ZERO), (view.wall.length_in + out, ZERO)), said("floor"))
    return Elevation(
        title=said("Wall {wall}, seen from the {room}", wall=view.wall.id, room=room),
        rects=rects,
        lines=(floor, *trim_lines(view), *run_lines(seen), *measured.lines),
        labels=wall_labels(view, seen, measured.labels, rects),
        text_in=view.text_in,
        said=tuple(wall_sentences(view, seen, rects)),
    )


def _remarks(survey: Survey) -> Iterator[str]:
    """What the job has and no view shows."""
    for door in (gap for gap in survey.doors if gap.left_in is None):
        yield said(
            "A door in wall {wall} is not drawn: nobody measured where it is.", wall=door.wall
        )
    for window in (gap for gap in survey.windows if gap.left_in is None):
        yield said(
            "A window in wall {wall} is not drawn: nobody measured where it is.", wall=window.wall
        )
    for box in survey.boxes:
        if box.wall is not None and (box.x_in is None or box.height_in is None):
            yield said(
                "Box {box} is not drawn: nobody measured where on wall {wall} it is.",
                box=box.id,
                wall=box.wall,
            )
    for each in survey.openings:
        if each.surface == "ceiling":
            yield said(
                "{opening} is not drawn: it is in a ceiling.",
                opening=capital(opening_called(each.id)),
            )
        elif each.wall is None or edges_of(each) is None:
            yield said(
                "{opening} is not drawn: its place on a wall was not given.",
                opening=capital(opening_called(each.id)),
            )
    if not survey.walls:
        yield said("No wall was drawn in the survey, so each run is laid out flat, leg by leg.")
