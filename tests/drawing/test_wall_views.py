"""What is drawn of the walls of the worked jobs; places worked by hand from the survey."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.drawing.made_view import (
    SAMPLES,
    bid,
    drawing_of,
    drawn,
    lines,
    middles,
    overlaps,
    places,
    plates,
    view,
    way,
    words,
)

HALF = Fraction(1, 2)


def test_studs_stand_on_the_grid() -> None:
    """S1: 16, 32 ... 128 along a wall of 144; each 1-1/2 in thick, from plate to plates."""
    seen = view("nightstand")
    assert middles(seen, "stud") == [16, 32, 48, 64, 80, 96, 112, 128]
    assert places(seen, "stud")[0] == (16 - 3 * HALF / 2, 3 * HALF, 16 + 3 * HALF / 2, 93)


def test_plates_lie_at_the_floor_and_under_the_ceiling() -> None:
    tops = [(bottom, top) for _, bottom, _, top in places(view("nightstand"), "plate")]
    assert tops == [(0, 3 * HALF), (93, 189 * HALF), (189 * HALF, 96)]


def test_the_cable_goes_as_surveyed() -> None:
    seen = view("nightstand")
    assert lines(seen, "run") == [[(34, 15), (34, 3), (105, 3), (105, 15)]]
    assert lines(seen, "trim")[0][1][0] == 144
    assert places(seen, "opening") == [(33, 0, 106, 9 * HALF)]


def test_boxes_stand_where_they_were_measured() -> None:
    seen = view("nightstand")
    assert (middles(seen, "existing box"), middles(seen, "new box")) == ([34], [105])


@pytest.mark.parametrize(
    "figure",
    ["2'-10\" from the left end to source", "8'-9\" from the left end to new", "12'-0\" wall",
     "1'-3\"", "3\"", "8'-0\"", "run 1: 5'-11\"", "opening strip: 6'-1\" x 4 1/2\"",
     "top of the trim 5 1/4\"", "source (existing box)", "new (new receptacle)"],
)  # fmt: skip
def test_dimensions_of_the_nightstand(figure: str) -> None:
    """S1: boxes at 34 and 105, 15 up; run at 3, 71 along; strip 73 x 4-1/2."""
    assert figure in words(view("nightstand"))


def test_round_a_corner_there_are_two_views() -> None:
    west, north = drawn("printer-corner").elevations
    assert west.title == "Wall west, seen from the office"
    assert lines(west, "run") == [[(78, 16), (120, 16)]]
    assert lines(north, "run") == [[(0, 16), (23, 16)], [(23, 16), (87, 16), (87, 30)]]
    assert "corner with wall north" in words(west)
    assert "corner with wall west" in words(north)


def test_runs_are_told_apart_by_their_number() -> None:
    north = drawn("printer-corner").elevations[1]
    assert [(each.name, each.pattern) for each in north.lines if each.kind == "run"] == [
        ("run 1", 0), ("run 2", 1),
    ]  # fmt: skip


def test_by_the_attic() -> None:
    """S7: up 52 from the switch, 44 along at 100, 4 down to the light, which is 26 out."""
    seen = view("closet-light")
    assert lines(seen, "run")[1] == [(42, 48), (42, 100), (86, 100), (86, 96)]
    assert "3'-8\" in the attic, 2'-2\" out from the wall" in words(seen)
    assert "light (new luminaire, on the ceiling, in the closet)" in words(seen)


def test_metric_jobs_are_drawn_in_millimetres() -> None:
    """S10: sockets at 2750 and 3500, a nog at 800."""
    seen = view("lounge")
    said = words(seen)
    assert "2750 mm from the left end to 1" in said
    assert "opening strip: 2650 mm x 120 mm" in said
    assert "2 (new socket)" in said
    assert '"' not in "".join(said)
    assert [round(float(b + t) / 2 * 25.4) for _, b, _, t in places(seen, "nog")] == [800]


def test_a_door_with_what_frames_it() -> None:
    """S14 A: kings 67.75 and 104.25, cripples 80 and 96 above 90; no stud in 70-102."""
    (seen,) = way("A").elevations
    assert middles(seen, "king") == [Fraction("67.75"), Fraction("104.25")]
    assert middles(seen, "stud") == [16, 32, 48, 64, 112, 128, 144]
    assert [(b, t) for _, b, _, t in places(seen, "cripple")] == [(90, 93)] * 2
    assert places(seen, "door") == [(70, 0, 102, 82)]
    assert places(seen, "header") == [(Fraction("68.5"), 82, Fraction("103.5"), 90)]
    assert [(left, right) for left, b, right, _ in places(seen, "plate") if b == 0] == [
        (0, 70), (102, 156),
    ]  # fmt: skip


def test_round_the_room_there_are_four_views() -> None:
    titles = [each.title.split(",")[0] for each in way("B").elevations]
    assert titles == ["Wall south", "Wall east", "Wall north", "Wall west"]


def test_under_the_floor() -> None:
    (seen,) = way("C").elevations
    assert lines(seen, "run") == [[(52, 15), (52, -10), (120, -10), (120, 15)]]
    assert "run C: 5'-8\" in the crawlspace" in words(seen)


@pytest.mark.parametrize("sample", SAMPLES)
def test_no_words_lie_over_each_other(sample: str) -> None:
    assert [pair for seen in drawn(sample).elevations for pair in overlaps(seen)] == []


@pytest.mark.parametrize("sample", SAMPLES)
def test_as_many_protection_plates_as_the_takeoff_counts(sample: str) -> None:
    made = bid(sample)
    counted = sum(run.protection_plates for run in made.takeoff.runs)
    assert plates(drawing_of(made)) == counted


def test_the_corner_of_the_printer_has_two_plates() -> None:
    """S2: two members bored 3/4 in from the face."""
    assert plates(drawn("printer-corner")) == 2


def test_a_plate_behind_the_trim_on_every_stud_passed() -> None:
    """S1 where the shop always plates behind trim: studs 48, 64, 80, 96."""
    always = ("[finish]", "[settings.practice]\nplate_behind_trim_always = true\n\n[finish]")
    seen = view("nightstand", always)
    assert middles(seen, "protection plate") == [48, 64, 80, 96]
