"""What nobody measured is not drawn, and the drawing says so; typed legs are laid out flat."""

from __future__ import annotations

from fractions import Fraction

import pytest

from estimator.drawing.draw import draw
from estimator.drawing.framing import Upright
from estimator.drawing.records import Drawing
from estimator.survey.reader import survey_from
from estimator.takeoff.counts import faces_at_risk
from tests.drawing.made_view import bid, drawing_of, lines, middles, view, words
from tests.drawing.made_view import drawn as drawn_job
from tests.route.made_house import Table, box, house, room

PRACTICE = bid("nightstand").books.shop.practice


def drawn(run: Table, **tables: object) -> Drawing:
    return draw(house(run=run, **tables), PRACTICE)


TYPED: Table = {
    "way": None,
    "legs": [
        {"go": "down", "length": "12 in"},
        {"go": "along", "length": "71 in", "studs": 4},
        {"go": "up", "length": "12 in"},
    ],
}


def test_studs_whose_places_are_unknown_are_not_drawn() -> None:
    change = ('layout_from = "16 in"       # centre', 'layout_from = "unknown"  # centre')
    seen = view("nightstand", change)
    assert middles(seen, "stud") == []
    assert "nobody measured where they stand" in seen.said[1]


def test_a_height_that_is_unknown_is_said_so() -> None:
    seen = view("nightstand", ('height = "8 ft"', 'height = "unknown"'))
    assert "height not measured" in seen.said[0]
    assert "8'-0\"" not in words(seen)


def test_an_opening_of_which_only_the_size_is_known() -> None:
    opening = {"id": "patch", "wall": "w", "width": 12, "height": 6}
    remarks = drawn({}, openings=[opening]).remarks
    assert remarks == ("Opening patch is not drawn: its place on a wall was not given.",)


def test_a_door_whose_place_is_unknown() -> None:
    door = {"wall": "w", "width": 32, "height": 80, "left": "unknown"}
    made = drawn({}, doors=[door])
    assert made.remarks == ("A door in wall w is not drawn: nobody measured where it is.",)


def test_a_ceiling_opening_has_no_place_on_a_wall() -> None:
    opening = {"id": "hatch", "surface": "ceiling", "width": 12, "height": 6}
    assert "it is in a ceiling" in drawn({}, openings=[opening]).remarks[0]


def test_typed_legs_are_laid_out_flat() -> None:
    seen = drawn(TYPED).elevations[-1]
    assert seen.title == "Run 1 laid out flat, from box a to box b"
    assert lines(seen, "run") == [[(0, 0), (0, -12), (71, -12), (71, 0)]]
    assert "along 5'-11\", 4 studs" in words(seen)


def test_a_job_without_walls_says_why() -> None:
    boxes = [{"id": "a", "existing": True, "cables": ["14-2"]}, {"id": "b"}]
    raw = {
        "job": {"id": "1", "title": "typed"}, "boxes": boxes,
        "runs": [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": TYPED["legs"]}],
    }  # fmt: skip
    made = draw(survey_from(raw), PRACTICE)
    assert len(made.elevations) == 1
    assert made.remarks == (
        "No wall was drawn in the survey, so each run is laid out flat, leg by leg.",
    )


def test_a_way_from_wall_to_wall_by_the_attic_is_seen_on_both() -> None:
    made = drawn(
        {"way": "over", "level": "attic"},
        boxes=[box("a", "n0", 100), box("b", "n1", 20)],
        levels=[{"kind": "attic", "accessible": "yes", "height": 100}],
        **room(156, 144, 156, 144),
    )
    assert [lines(each, "run") for each in made.elevations] == [
        [[(100, 15), (100, 100)]], [[(20, 100), (20, 15)]],
    ]  # fmt: skip


@pytest.mark.parametrize(("height", "met"), [(79, True), (80, False), (81, False)])
def test_a_jack_ends_under_the_header(height: int, met: bool) -> None:
    assert Upright("jack", 10, high_in=80).is_at(height) is met  # type: ignore[arg-type]


@pytest.mark.parametrize(("height", "met"), [(89, False), (90, True)])
def test_a_cripple_begins_on_the_header(height: int, met: bool) -> None:
    assert Upright("cripple", 10, low_in=90).is_at(height) is met  # type: ignore[arg-type]


def test_plates_on_tees_by_their_own_edge() -> None:
    """A tee of 2 at x 50, bored 3/4 in from the face: near face at risk, far one is 2 in off."""
    assert faces_at_risk(*map(Fraction, ("7/2", "3/4", "3/4", "5/4"))) == 1
    tee = {"wall": "w", "at": 50, "members": 2, "edge": "3/4 in"}
    made = drawn({}, tees=[tee])
    marks = [rect for rect in made.elevations[0].rects if rect.kind == "protection plate"]
    assert [(mark.count, mark.name) for mark in marks] == [(2, "2 protection plates")]


def test_all_that_is_drawn_is_said_too() -> None:
    made = drawn_job("printer-corner")
    said = " ".join(each for seen in made.elevations for each in seen.said)
    for what in ("Box source", "Box A", "Box B", "Run 1", "Run 2", "Opening west strip",
                 "Opening north strip", "A window", "2 protection plates"):  # fmt: skip
        assert what in said
    assert drawing_of(bid("printer-corner")) == made


def test_a_run_without_length_is_drawn_as_nothing() -> None:
    (seen,) = draw(house(20, 20), PRACTICE).elevations
    assert lines(seen, "run") == []


def test_a_run_to_a_box_that_is_not_listed_is_left_out() -> None:
    survey = house(20, 92)
    assert draw(survey.model_copy(update={"boxes": survey.boxes[:1]}), PRACTICE).elevations == ()


def test_more_studs_than_anybody_could_see_are_not_drawn() -> None:
    """300 studs at 16 in are 4800 in of wall; one inch more is too long."""
    wall = {"id": "w", "length": 4800, "height": 96, "spacing": 16, "layout_from": 16}
    assert len(middles(drawn({}, walls=[wall]).elevations[0], "stud")) == 299
    longer = drawn({}, walls=[wall | {"length": 4801}]).elevations[0]
    assert middles(longer, "stud") == []
    assert "too many to draw" in longer.said[1]
