"""The wall drawing in other languages: nothing is left untold, nothing moves, no figure changes."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from functools import cache
from xml.etree import ElementTree

import pytest

from estimator.drawing.draw import draw
from estimator.drawing.records import Drawing, Elevation
from estimator.language import ENGLISH, Language, OtherWord
from estimator.outputs.cells import Sheet
from estimator.outputs.draft import Draft
from estimator.outputs.drawing_sheet import write_drawing
from estimator.outputs.drawing_svg import elevation_svg, key_items
from estimator.pricing.records import Bid
from tests.drawing.made_view import overlaps
from tests.outputs.bid_factory import NAMES, bid_of, full_bid, sample_bid
from tests.words.marked import CLOSE, OPEN, Marked, bare

TYPED = {
    'way = "trim"\nheight = "3 in"\n': 'legs = [{ go = "along", length = "71 in", studs = 4 },'
    ' { go = "up", length = "1 ft", studs = 0, corners = 1, members = { nog = 2, king = 1 } }]\n',
    'wall = "north"\nx = "2\' 10\\""\nheight = "15 in"\n': 'room = "bedroom"\n',
}
MORE = """
[[doors]]
wall = "north"
left = "40 in"
width = "30 in"
height = "80 in"
header_top = "90 in"
kings = ["38 in", "72 in"]
[[windows]]
wall = "north"
left = "76 in"
width = "20 in"
height = "30 in"
bottom = "36 in"
[[windows]]
wall = "north"
width = "20 in"
height = "30 in"
[[obstacles]]
wall = "north"
kind = "duct"
left = "116 in"
right = "122 in"
bottom = "20 in"
top = "70 in"
[[members]]
wall = "north"
kind = "nog"
height = "48 in"
[[boxes]]
id = "ceiling light"
existing = true
mount = "ceiling"
wall = "north"
x = "60 in"
height = "96 in"
room = "kitchen"
[[boxes]]
id = "lost"
existing = true
wall = "north"
[[openings]]
id = "above"
surface = "ceiling"
width = "6 in"
height = "6 in"
[[openings]]
id = "somewhere"
width = "6 in"
height = "6 in"
"""
LONGER = {
    "{length} from the left end to {boxes}": "{length} desde el extremo izquierdo hasta {boxes}",
    "{length} wall": "{length}, largo de la pared",
    "existing box": "caja existente",
    "new receptacle": "tomacorriente nuevo",
    "new socket": "tomacorriente nuevo",
    "new luminaire": "luminaria nueva",
    "new switch": "interruptor nuevo",
    "new box": "caja nueva",
    "on the ceiling": "en el techo",
    "in the {room}": "en: {room}",
    "opening {opening}": "abertura {opening}",
    "top of the trim {height}": "borde superior del z\u00f3calo {height}",
    "door {wide} x {high}": "puerta {wide} x {high}",
    "window {wide} x {high}": "ventana {wide} x {high}",
    "run {run}: {length}": "tendido {run}: {length}",
    "corner with wall {wall}": "esquina con la pared {wall}",
    "{length} in the attic": "{length} en el desv\u00e1n",
    "{length} in the crawlspace": "{length} en el espacio bajo el piso",
    "{length} out from the wall": "{length} hacia fuera de la pared",
}
OTHER = Language("en", {english: OtherWord(text) for english, text in LONGER.items()})


@cache
def bids() -> dict[str, Bid]:
    """Samples, a job with everything, typed legs, and a wall full of things."""
    return {name: sample_bid(name) for name in NAMES} | {
        "full": full_bid(),
        "typed": bid_of("nightstand", TYPED),
        "more": bid_of("nightstand", more=MORE),
        "abroad": bid_of("nightstand", {'country = "US"': 'country = "GB"'}),
    }


CASES = (*NAMES, "full", "typed", "more", "abroad")


def drawn_in(name: str, language: Language) -> Drawing:
    made = bids()[name]
    return draw(made.survey, made.books.shop.practice, language)


def own(name: str) -> tuple[str, ...]:
    """What the job's own writer called things, and units."""
    survey = bids()[name].survey
    rooms = {wall.room for wall in survey.walls} | {box.room or "" for box in survey.boxes}
    ids = {wall.id for wall in survey.walls} | {box.id for box in survey.boxes}
    ids |= {run.id for run in survey.runs} | {each.id for each in survey.openings}
    return tuple(sorted({"mm", "in", *rooms, *ids} - {""}))


def figures(text: str) -> Counter[str]:
    return Counter(re.findall(r"\d+", text))


def sheet_in(name: str, language: Language) -> Sheet:
    made = bids()[name]
    told = replace(made, books=replace(made.books, language=language))
    return write_drawing(Draft.of(told))


def cells_of(sheet: Sheet) -> list[str]:
    return [cell.value for cell in sheet.placed if isinstance(cell.value, str)]


def texts_of(seen: Elevation, mark: str, language: Language) -> list[str]:
    svg = ElementTree.fromstring(elevation_svg(seen, mark, language))
    return [text for each in svg.iter() if (text := (each.text or "").strip())]


@pytest.mark.parametrize("name", CASES)
def test_nothing_in_a_picture_is_left_untold(name: str) -> None:
    marked = Marked()
    made = drawn_in(name, marked)
    found = [text for seen in made.elevations for text in texts_of(seen, "v1", marked)]
    found += [words for _, words in key_items(made, marked)]
    found += [marked.say(text) for text in made.remarks]
    assert found
    assert [text for text in found if bare(text, own(name))] == []


@pytest.mark.parametrize("name", CASES)
def test_nothing_on_the_sheet_is_left_untold(name: str) -> None:
    sheet = sheet_in(name, Marked())
    texts = [sheet.name, *cells_of(sheet)]
    texts += [header for table in sheet.tables for header in table.headers]
    for picture in sheet.drawings:
        texts += [picture.title, picture.said, *(each.text for each in picture.words)]
        texts += [each.name for each in picture.traces]
    assert [text for text in texts if bare(text, own(name))] == []


@pytest.mark.parametrize("name", CASES)
def test_names_of_tables_are_the_same_in_every_language(name: str) -> None:
    told, english = sheet_in(name, Marked()), sheet_in(name, ENGLISH)
    assert [table.name for table in told.tables] == [table.name for table in english.tables]


@pytest.mark.parametrize("name", CASES)
def test_a_chart_draws_the_words_that_stand_in_its_cells(name: str) -> None:
    sheet = sheet_in(name, Marked())
    cells = {("ABCDE"[cell.column - 1], cell.row): cell.value for cell in sheet.placed}
    for each in (word for picture in sheet.drawings for word in picture.words):
        place, column, row = each.cell.rsplit("$", 2)
        assert place == f"'{sheet.name}'!"
        assert cells[column, int(row)] == each.text


@pytest.mark.parametrize("name", CASES)
def test_figures_are_the_same_in_every_language(name: str) -> None:
    """Word by word on the sheet: every number of the English text, and no other."""
    english, told = sheet_in(name, ENGLISH), sheet_in(name, Marked())
    pairs = list(zip(cells_of(english), cells_of(told), strict=True))
    assert [pair for pair in pairs if figures(pair[0]) != figures(pair[1])] == []
    numbers = [
        [cell.value for cell in sheet.placed if not isinstance(cell.value, str | None)]
        for sheet in (english, told)
    ]
    assert len(numbers[0]) == len(numbers[1])


@pytest.mark.parametrize("name", CASES)
def test_shapes_are_the_same_in_every_language(name: str) -> None:
    english, told = drawn_in(name, ENGLISH), drawn_in(name, OTHER)
    assert [seen.rects for seen in told.elevations] == [seen.rects for seen in english.elevations]
    assert [seen.lines for seen in told.elevations] == [seen.lines for seen in english.elevations]


@pytest.mark.parametrize("language", [OTHER, Marked()], ids=["longer", "marked"])
@pytest.mark.parametrize("name", CASES)
def test_longer_words_do_not_lie_over_each_other(name: str, language: Language) -> None:
    """Labels of another language are placed by their own length."""
    made = drawn_in(name, language)
    assert [pair for seen in made.elevations for pair in overlaps(seen)] == []


def test_a_longer_label_has_room_on_the_picture() -> None:
    """S1: words after a line of 34 in; letters are 144/52 = 2.77 in high, one takes 0.57 of it.

    90 letters take 90 x 0.57 x 2.77 = 142 in: beyond the wall, which is 144 in long, and beyond
    34 + 142 = 176 in.
    """
    long = "{length} {boxes} " + "e" * 90
    words = {"{length} from the left end to {boxes}": OtherWord(long)}
    seen = drawn_in("nightstand", Language("en", words)).elevations[0]
    assert seen.bounds[1][0] > 176


def test_a_room_with_a_name_of_its_own_keeps_it() -> None:
    """ "bedroom" is a word of the tool; "study of Ann" is somebody's own."""
    titles = []
    for room in ("bedroom", "study of Ann"):
        made = bid_of("nightstand", {'room = "bedroom"': f'room = "{room}"'})
        view = draw(made.survey, made.books.shop.practice).elevations[0]
        titles.append(Marked().say(view.title))
    assert titles[0].endswith(f"{OPEN}bedroom{CLOSE}{OPEN}{CLOSE}")
    assert titles[1].endswith(f"{CLOSE}study of Ann{OPEN}{CLOSE}")
