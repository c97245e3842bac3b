"""The wall drawing as a picture: plain shapes, words that stay words, no colour."""

from __future__ import annotations

import re
from fractions import Fraction
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

import pytest

from estimator.drawing.records import Elevation, Label, Line, Rect
from estimator.outputs.drawing_style import RUNS, run_stroke
from estimator.outputs.drawing_svg import LETTER, elevation_svg, key_items
from tests.drawing.made_view import SAMPLES, drawn, view, way

SVG = "{http://www.w3.org/2000/svg}"
GREYS = {"#000", "#fff", "#eee", "#444", "none"}


def picture(seen: Elevation) -> Element:
    return ElementTree.fromstring(elevation_svg(seen, "v1"))


def texts(svg: Element) -> list[str]:
    return ["".join(each.itertext()) for each in svg.iter(f"{SVG}text")]


def flat(*labels: Label, name: str = "wall") -> Elevation:
    """A square of 100 in with words in it."""
    wall = Rect("wall", Fraction(0), Fraction(0), Fraction(100), Fraction(100), name)
    return Elevation(name, (wall,), (), labels, Fraction(2), (name,))


@pytest.mark.parametrize("sample", SAMPLES)
def test_title_and_description_say_what_is_seen(sample: str) -> None:
    for seen in drawn(sample).elevations:
        svg = picture(seen)
        assert svg.findtext(f"{SVG}title") == seen.title
        assert svg.findtext(f"{SVG}desc") == " ".join(seen.said)
        assert svg.get("role") == "img"
        assert svg.get("aria-labelledby") == "v1-title v1-desc"


@pytest.mark.parametrize("sample", SAMPLES)
def test_all_words_are_there_as_words(sample: str) -> None:
    seen = view(sample)
    assert texts(picture(seen)) == [label.text for label in seen.labels]


@pytest.mark.parametrize("sample", SAMPLES)
def test_black_white_and_grey_alone(sample: str) -> None:
    svg = elevation_svg(view(sample), "v1")
    used = set(re.findall(r'(?:fill|stroke)="([^"]+)"', svg))
    assert {each for each in used if not each.startswith("url(#v1-")} <= GREYS


@pytest.mark.parametrize("sample", SAMPLES)
def test_everything_stands_inside_the_picture(sample: str) -> None:
    svg = picture(view(sample))
    _, _, wide, high = map(float, str(svg.get("viewBox")).split())
    for each in svg.iter(f"{SVG}rect"):
        x, y, w, h = (float(each.get(name, "")) for name in ("x", "y", "width", "height"))
        assert 0 <= x <= x + w <= wide
        assert 0 <= y <= y + h <= high


def test_sizes_are_true_to_scale() -> None:
    """S1: the wall is 144 x 96, so 3 to 2; a letter is 144/52 in high and 10 units."""
    (wall,) = (each for each in picture(view("nightstand")).iter(f"{SVG}rect")
               if float(each.get("height", "")) > 300 < float(each.get("width", "")))  # fmt: skip
    wide, high = float(wall.get("width", "")), float(wall.get("height", ""))
    assert wide == pytest.approx(52 * LETTER, abs=0.01)
    assert wide / high == pytest.approx(1.5, abs=0.001)


def test_up_is_up() -> None:
    """The cable of S1 goes down 12, along, and up again; a picture counts from the top."""
    svg = picture(view("nightstand"))
    run = [each for each in svg.iter(f"{SVG}polyline") if each.get("stroke-width") == "3"]
    points = [tuple(map(float, pair.split(","))) for pair in str(run[0].get("points")).split()]
    assert points[0][1] < points[1][1] == points[2][1] > points[3][1]


def test_what_a_user_typed_stays_text() -> None:
    typed = '</text><script>alert("1")</script>&'
    svg = picture(flat(Label(typed, (Fraction(50), Fraction(50))), name=typed))
    assert texts(svg) == [typed]
    assert svg.findtext(f"{SVG}title") == typed
    assert list(svg.iter(f"{SVG}script")) == []


def test_characters_that_xml_forbids_do_not_break_it() -> None:
    assert texts(picture(flat(Label("a\x00b", (Fraction(1), Fraction(1)))))) == ["a\ufffdb"]


def test_ids_of_two_views_differ() -> None:
    found = [
        re.findall(r' id="([^"]+)"', elevation_svg(seen, f"v{at}"))
        for at, seen in enumerate(way("B").elevations)
    ]
    listed = [each for ids in found for each in ids]
    assert len(listed) == len(set(listed)) == 4 * 4


def test_four_runs_have_four_patterns_and_then_they_begin_again() -> None:
    assert len({run_stroke(number) for number in range(4)}) == len(RUNS) == 4
    assert run_stroke(4) == run_stroke(0)


def test_a_dashed_line_is_dashed() -> None:
    one = Line("run", ((Fraction(0), Fraction(0)), (Fraction(9), Fraction(0))), "run 2", 1)
    seen = Elevation("x", (), (one,), (), Fraction(2), ())
    assert 'stroke-dasharray="6 4"' in elevation_svg(seen, "v1")


def test_the_key_lists_what_is_drawn_and_nothing_else() -> None:
    said = [words for _, words in key_items(drawn("nightstand"))]
    assert said == [
        "run 1 of cable: thick line",
        "box that is there: white rectangle with a thick edge",
        "new box: black rectangle",
        "opening cut in the wall: rectangle with a dashed edge",
        "studs, plates and other framing: thin lines; a stud shows its narrow side",
        "top of the trim: thin line of dashes and dots",
    ]


def test_the_swatches_of_the_key_are_hidden_from_readers_of_words() -> None:
    for swatch, _ in key_items(drawn("printer-corner")):
        assert ElementTree.fromstring(swatch).get("aria-hidden") == "true"
