"""Charts of the wall drawing: native scatter charts with straight lines, true to scale."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any, Literal

from openpyxl.chart import ScatterChart
from openpyxl.chart.axis import NumericAxis, TextAxis
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
from openpyxl.chart.layout import Layout, ManualLayout
from openpyxl.chart.marker import Marker
from openpyxl.chart.series import SeriesLabel, XYSeries
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.chart.text import RichText
from openpyxl.drawing.line import LineProperties
from openpyxl.drawing.text import (
    CharacterProperties,
    Font,
    Paragraph,
    ParagraphProperties,
    RichTextProperties,
)

from estimator.measures import to_decimal
from estimator.outputs.book_styles import FONT
from estimator.outputs.line_charts import Dash, LinePicture, Trace, Word
from estimator.outputs.xlsx_values import clean_text, plain_number

_EMU_PER_PT = 12_700
_GREYS = {"black": "000000", "dark": "444444", "pale": "8C8C8C"}
_DashCode = Literal["solid", "dash", "sysDot", "dashDot"]
_DASHES: dict[Dash, _DashCode] = {
    "solid": "solid",
    "dashed": "dash",
    "dotted": "sysDot",
    "dash-dot": "dashDot",
}
_SIDES = {"left": "l", "right": "r", "middle": "ctr"}
_GENERAL = "General"


def line_chart(picture: LinePicture) -> ScatterChart:
    """Draw the lines, then the words; no axis is shown, for the dimensions are drawn."""
    chart = ScatterChart()
    chart.style = None
    chart.scatterStyle = "lineMarker"
    sized: Any = chart  # the stubs allow whole centimetres alone
    sized.height, sized.width = (float(side) for side in picture.size_cm)
    chart.varyColors = False
    chart.legend = None
    chart.display_blanks = "gap"
    whole = ManualLayout(layoutTarget="inner", xMode="edge", yMode="edge", x=0, y=0, w=1, h=1)
    chart.layout = Layout(manualLayout=whole)
    chart.graphical_properties = GraphicalProperties(ln=LineProperties(noFill=True))
    for at, trace in enumerate(picture.traces):
        chart.series.append(_line(trace, at))
    for at, word in enumerate(picture.words, start=len(picture.traces)):
        chart.series.append(_word(word, at, picture.text_pt))
    (left, bottom), (right, top) = picture.low, picture.high
    _range(chart.x_axis, left, right)
    _range(chart.y_axis, bottom, top)
    return chart


def _range(axis: NumericAxis | TextAxis, low: Fraction, high: Fraction) -> None:
    """Fix an axis from end to end, and hide it."""
    axis.scaling.min, axis.scaling.max = (float(to_decimal(end, 6)) for end in (low, high))
    axis.majorGridlines = None
    axis.delete = True


def _line(trace: Trace, at: int) -> XYSeries:
    look = LineProperties(
        w=int(trace.wide_pt * _EMU_PER_PT),
        cap="flat",
        solidFill=_GREYS[trace.grey],
        prstDash=_DASHES[trace.dash],
    )
    series = _series(at, SeriesLabel(v=clean_text(trace.name)), look)
    across = [None if point is None else point[0] for point in trace.points]
    up = [None if point is None else point[1] for point in trace.points]
    series.xVal = AxDataSource(numRef=NumRef(f=trace.across, numCache=_cache(across)))
    series.yVal = NumDataSource(numRef=NumRef(f=trace.up, numCache=_cache(up)))
    return series


def _word(word: Word, at: int, text_pt: Fraction) -> XYSeries:
    """A point that is not seen, with its series' name beside it."""
    text = StrData(ptCount=1, pt=[StrVal(idx=0, v=clean_text(word.text))])
    name = SeriesLabel(strRef=StrRef(f=word.cell, strCache=text))
    series = _series(at, name, LineProperties(noFill=True))
    x, y = word.at
    series.xVal = AxDataSource(numRef=NumRef(f=word.across, numCache=_cache([x])))
    series.yVal = NumDataSource(numRef=NumRef(f=word.up, numCache=_cache([y])))
    series.dLbls = _label(_SIDES[word.side], text_pt)
    return series


def _series(at: int, name: SeriesLabel, look: LineProperties) -> XYSeries:
    series = XYSeries(idx=at, order=at, tx=name, spPr=GraphicalProperties(ln=look))
    series.marker = Marker(symbol="none")
    series.smooth = False
    return series


def _cache(values: Sequence[Fraction | None]) -> NumData:
    """What stands in the cells, for programs that draw without reckoning."""
    known = ((at, value) for at, value in enumerate(values) if value is not None)
    points = [NumVal(idx=at, v=plain_number(value)) for at, value in known]
    return NumData(formatCode=_GENERAL, ptCount=len(values), pt=points)


def _label(side: str, text_pt: Fraction) -> DataLabelList:
    marks = CharacterProperties(sz=int(text_pt * 100), b=False, latin=Font(typeface=FONT))
    one_line = RichTextProperties(wrap="none")
    plain = RichText(
        bodyPr=one_line, p=[Paragraph(pPr=ParagraphProperties(defRPr=marks), endParaRPr=marks)]
    )
    label = DataLabelList(dLblPos=side, showSerName=True, txPr=plain)
    label.showLegendKey = label.showCatName = label.showVal = False
    label.showPercent = label.showBubbleSize = False
    return label
