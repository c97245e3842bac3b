"""The Wall drawing sheet: native charts true to scale, drawn from the points in its tables."""

from __future__ import annotations

import zipfile
from functools import cache
from io import BytesIO
from typing import Any
from xml.etree import ElementTree

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from estimator.outputs.book_described import NoPlaceForWords, describe
from estimator.outputs.workbook import bid_workbook
from tests.drawing.made_view import SAMPLES, drawn, view
from tests.outputs.bid_factory import bid_of, sample_file
from tests.outputs.spreadsheet import opened

NAME = "Wall drawing"
C = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"


@cache
def sheet(sample: str) -> Worksheet:
    return opened(sample_file(sample), values=True)[NAME]


def charts(sample: str) -> list[Any]:
    return sheet(sample)._charts  # type: ignore[attr-defined, no-any-return]


def table(sample: str, name: str) -> list[list[Any]]:
    """The rows of a table under its headers."""
    page = sheet(sample)
    return [[cell.value for cell in row] for row in page[page.tables[name].ref][1:]]


def chart_parts(data: bytes) -> list[ElementTree.Element]:
    """The scatter charts of a file."""
    with zipfile.ZipFile(BytesIO(data)) as archive:
        names = sorted(name for name in archive.namelist() if name.startswith("xl/charts/chart"))
        roots = [ElementTree.fromstring(archive.read(name)) for name in names]
    return [root for root in roots if root.find(f".//{C}scatterChart") is not None]


@pytest.mark.parametrize("sample", SAMPLES)
def test_one_chart_for_each_view(sample: str) -> None:
    assert len(charts(sample)) == len(drawn(sample).elevations)


@pytest.mark.parametrize("sample", SAMPLES)
def test_charts_are_true_to_scale(sample: str) -> None:
    """As many inches of wall to a centimetre across as upwards; the plot fills the chart."""
    for chart in charts(sample):
        across = (chart.x_axis.scaling.max - chart.x_axis.scaling.min) / chart.anchor.ext.width
        up = (chart.y_axis.scaling.max - chart.y_axis.scaling.min) / chart.anchor.ext.height
        assert across == pytest.approx(up, rel=0.001)
        place = chart.layout.manualLayout
        assert (place.layoutTarget, place.x, place.y, place.w, place.h) == ("inner", 0, 0, 1, 1)


def test_the_cable_is_drawn_from_the_points_in_the_table() -> None:
    """S1: 34,15 down to 3, along to 105, up to 15; wherever the series says its cells are."""
    page = sheet("nightstand")
    (run,) = (each for each in charts("nightstand")[0].series if each.tx.v == "run")
    cells = [ref.split("!")[1].replace("$", "") for ref in (run.xVal.numRef.f, run.yVal.numRef.f)]
    across, up = ([row[0].value for row in page[ref]] for ref in cells)
    assert list(zip(across, up, strict=True)) == [(34, 15), (34, 3), (105, 3), (105, 15)]


def test_studs_are_one_line_with_gaps_between() -> None:
    """S1: 8 studs of five points, between them a row without figures; 3 plates before them."""
    rows = [row for row in table("nightstand", "Points_1") if row[1] in ("plate", "stud")]
    lifted = [row for row in rows if row[3] is None]
    assert len(lifted) == 3 + 8 - 1
    assert {row[2] for row in lifted} == {"end of this shape"}
    assert len(rows) - len(lifted) == (3 + 8) * 5
    (chart,) = chart_parts(sample_file("nightstand"))
    assert chart.find(f".//{C}dispBlanksAs").get("val") == "gap"  # type: ignore[union-attr]


def test_every_word_of_the_drawing_is_a_label_of_the_chart() -> None:
    wanted = [label.text for label in view("nightstand").labels]
    series = charts("nightstand")[0].series
    labels = [each.tx.strRef.strCache.pt[0].v for each in series if each.tx.strRef is not None]
    assert labels == wanted == [row[2] for row in table("nightstand", "Points_1")
                                if row[1] == "words"]  # fmt: skip


def test_words_stay_on_one_line() -> None:
    (chart,) = chart_parts(sample_file("nightstand"))
    bodies = [each.get("wrap") for each in chart.iter() if each.tag.endswith("}bodyPr")]
    assert bodies == ["none"] * len(view("nightstand").labels)


def test_metric_jobs_have_their_points_in_millimetres() -> None:
    page = sheet("lounge")
    headers = [cell.value for cell in page[page.tables["Points_1"].ref][0]]
    assert headers[3:] == ["From the left, mm", "Height, mm"]
    runs = [row[3:] for row in table("lounge", "Points_1") if row[1] == "run"]
    assert runs == [[950, 300], [2750, 300], [2750, 300], [3500, 300], [3500, 1250]]


@pytest.mark.parametrize("sample", SAMPLES)
def test_the_same_is_said_in_words(sample: str) -> None:
    said = [row[2] for row in table(sample, "Drawn")]
    made = drawn(sample)
    assert said == [*(each for seen in made.elevations for each in seen.said), *made.remarks]


@pytest.mark.parametrize("sample", SAMPLES)
def test_every_chart_of_the_workbook_has_a_description(sample: str) -> None:
    with zipfile.ZipFile(BytesIO(sample_file(sample))) as archive:
        names = [each for each in archive.namelist() if each.startswith("xl/drawings/drawing")]
        frames = [
            each.attrib
            for name in names
            for each in ElementTree.fromstring(archive.read(name)).iter()
            if each.tag.endswith("}cNvPr")
        ]
    assert len(frames) == 4 + len(drawn(sample).elevations)
    assert all(each["descr"] and not each["name"].startswith("Chart") for each in frames)


def test_bars_are_described_by_their_figures() -> None:
    with zipfile.ZipFile(BytesIO(sample_file("nightstand"))) as archive:
        text = archive.read("xl/drawings/drawing1.xml").decode()
    (frame,) = (each for each in ElementTree.fromstring(text).iter() if each.tag.endswith("cNvPr"))
    assert frame.get("name") == "Hours by phase"
    assert frame.get("descr", "").startswith("Hours by phase, as bars (Low, Likely, High). set-up:")


def test_a_chart_that_nobody_described_is_not_let_through() -> None:
    parts = {"xl/drawings/drawing1.xml": b'<cNvPr id="1" name="Chart 1" />' * 2}
    with pytest.raises(NoPlaceForWords):
        describe(parts, [[("one", "words")]])


def test_what_a_user_typed_stays_text_in_a_description() -> None:
    parts = {"xl/drawings/drawing1.xml": b'<w><cNvPr id="1" name="Chart 1" /></w>'}
    typed = 'a "b" <c> & d'
    describe(parts, [[(typed, typed)]])
    frame = ElementTree.fromstring(parts["xl/drawings/drawing1.xml"])[0]
    assert (frame.get("name"), frame.get("descr")) == (typed, typed)


def test_a_job_with_typed_legs_has_its_run_laid_out() -> None:
    walls = {
        'way = "trim"\nheight = "3 in"\n': 'legs = [{ go = "along", length = "71 in" }]\n',
        'wall = "north"\nx = "2\' 10\\""\nheight = "15 in"\n': 'room = "bedroom"\n',
    }
    data = bid_workbook(bid_of("nightstand", walls))
    titles = [str(cell.value) for cell in opened(data)[NAME]["A"]]
    assert any(each.startswith("Run 1 laid out flat") for each in titles)


def test_names_that_look_like_formulas_stay_text() -> None:
    data = bid_workbook(bid_of("nightstand", {'id = "strip"': 'id = "=1+1"'}))
    values = [cell.value for row in opened(data)[NAME].iter_rows() for cell in row]
    assert 'opening =1+1: 6\'-1" x 4 1/2"' in values


def test_no_chart_has_more_lines_and_words_than_programs_draw() -> None:
    more = "".join(
        f'\n[[boxes]]\nid = "b{at}"\nexisting = true\nwall = "north"\nx = {at + 4}\nheight = {at}\n'
        for at in range(1, 101)
    )
    data = bid_workbook(bid_of("nightstand", more=more))
    page = opened(data, values=True)[NAME]
    (chart,) = page._charts
    labels = [row for row in page[page.tables["Points_1"].ref] if row[1].value == "words"]
    assert len(labels) > 255 == len(chart.series)
