"""Charts of the workbook: bars in greys that print well in black and white."""

from __future__ import annotations

from collections.abc import Sequence

from openpyxl.chart import BarChart
from openpyxl.chart.data_source import (
    AxDataSource,
    NumData,
    NumDataSource,
    NumRef,
    NumVal,
    StrData,
    StrRef,
    StrVal,
)
from openpyxl.chart.label import DataLabelList
from openpyxl.chart.series import Series, SeriesLabel
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.chart.text import RichText, Text
from openpyxl.chart.title import Title
from openpyxl.drawing.line import LineProperties
from openpyxl.drawing.text import (
    CharacterProperties,
    Paragraph,
    ParagraphProperties,
    RegularTextRun,
)

from estimator.outputs.charts import Bars, Picture
from estimator.outputs.xlsx_values import clean_text, plain_number

_ALONE = "D0D0D0"
_BESIDE = ("FFFFFF", "8C8C8C", "404040")
"""Bars that stand side by side: each differs from the next by more than 3 to 1 in contrast."""
_BLACK = "000000"
_GENERAL = "General"
_TITLE_SIZE, _TEXT_SIZE = 1100, 800  # hundredths of a point
_GAP_PCT = 60


def bar_chart(picture: Picture) -> BarChart:
    """Draw the bars with figures at their ends; a legend only where there are several rows."""
    chart = BarChart()
    chart.type = "bar" if picture.lying else "col"
    chart.title = _title(picture.title)
    chart.height, chart.width = picture.size_cm
    chart.gapWidth = _GAP_PCT
    chart.varyColors = False
    if len(picture.bars) > 1:
        chart.legend.position = "b"
    else:
        chart.legend = None
    for at, bars in enumerate(picture.bars):
        chart.series.append(_series(picture, bars, at))
    _axes(chart, picture)
    return chart


def _axes(chart: BarChart, picture: Picture) -> None:
    for axis, form in ((chart.x_axis, _GENERAL), (chart.y_axis, picture.form)):
        axis.delete = False
        axis.number_format = form
        axis.majorGridlines = None
        axis.majorTickMark = "none"
        axis.tickLblPos = "low"
        axis.txPr = _small()
    chart.y_axis.crossBetween = "between"
    if picture.lying:
        chart.x_axis.scaling.orientation = "maxMin"
        chart.y_axis.crosses = "max"


def _series(picture: Picture, bars: Bars, at: int) -> Series:
    """One row of bars; the values it was drawn from stand beside, for programs that only show."""
    grey = _ALONE if len(picture.bars) == 1 else _BESIDE[at]
    values = [NumVal(idx=each, v=plain_number(value)) for each, value in enumerate(bars.values)]
    cells, names = picture.labels
    cache = NumData(formatCode=picture.form, ptCount=len(values), pt=values)
    series = Series(
        idx=at,
        order=at,
        tx=SeriesLabel(v=bars.name),
        cat=AxDataSource(strRef=StrRef(f=cells, strCache=_texts(names))),
        val=NumDataSource(numRef=NumRef(f=bars.cells, numCache=cache)),
        spPr=GraphicalProperties(solidFill=grey, ln=LineProperties(solidFill=_BLACK)),
        dLbls=_labels(picture.form),
    )
    series.invertIfNegative = False
    return series


def _texts(names: Sequence[str]) -> StrData:
    points = [StrVal(idx=at, v=clean_text(name)) for at, name in enumerate(names)]
    return StrData(ptCount=len(points), pt=points)


def _labels(form: str) -> DataLabelList:
    labels = DataLabelList(numFmt=form, dLblPos="outEnd", showVal=True, txPr=_small())
    labels.showLegendKey = labels.showCatName = labels.showSerName = False
    labels.showPercent = labels.showBubbleSize = False
    return labels


def _title(text: str) -> Title:
    title = Title()
    marks = CharacterProperties(sz=_TITLE_SIZE, b=True)
    title.tx = _rich(text, marks)
    title.overlay = False
    return title


def _rich(text: str, marks: CharacterProperties) -> Text:
    run = RegularTextRun(rPr=marks, t=text)
    line = Paragraph(pPr=ParagraphProperties(defRPr=marks), r=[run])
    return Text(rich=RichText(p=[line]))


def _small() -> RichText:
    marks = CharacterProperties(sz=_TEXT_SIZE)
    return RichText(p=[Paragraph(pPr=ParagraphProperties(defRPr=marks), endParaRPr=marks)])
