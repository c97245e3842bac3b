"""Charts for the eye, as bars in greys that print well in black and white."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.outputs.xlsx_values import clean_text, escape, plain_number

_GREYS = ("D0D0D0", "8C8C8C", "404040")
_CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart"
_DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main"
_SHEET_DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing"
_RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_EMU_PER_CM = 360_000
_GENERAL = "General"
_TITLE_SIZE, _TEXT_SIZE = 1100, 800  # hundredths of a point


@dataclass(frozen=True, slots=True)
class Bars:
    """One row of bars.

    Attributes:
        name: what the bars show. cells: the range they are drawn from.
        values: what stands there, for programs that draw without reckoning.
    """

    name: str
    cells: str
    values: tuple[Decimal, ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A bar chart: its title, what stands beside the bars, and one or more rows of bars.

    Attributes:
        labels: range and texts of the names beside the bars. form: format code of the figures.
        size_cm: height and width. lying: bars lie instead of standing, for long names.
        row: row of the sheet, counted from 1, at whose left end the chart begins.
    """

    title: str
    labels: tuple[str, tuple[str, ...]]
    bars: tuple[Bars, ...]
    form: str
    size_cm: tuple[int, int]
    row: int
    lying: bool = False


def drawing_xml(picture: Picture) -> str:
    """Write the part that puts the chart (its relation is rId1) on the sheet."""
    height, width = (length * _EMU_PER_CM for length in picture.size_cm)
    return (
        f'{_DECLARATION}<xdr:wsDr xmlns:xdr="{_SHEET_DRAWING}" xmlns:a="{_DRAWING}">'
        "<xdr:oneCellAnchor><xdr:from><xdr:col>0</xdr:col><xdr:colOff>0</xdr:colOff>"
        f"<xdr:row>{picture.row - 1}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>"
        f'<xdr:ext cx="{width}" cy="{height}"/><xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>'
        f'<xdr:cNvPr id="2" name="{picture.title}" descr="{picture.title}"/>'
        "<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>"
        '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>'
        f'<a:graphic><a:graphicData uri="{_CHART}"><c:chart xmlns:c="{_CHART}" '
        f'xmlns:r="{_RELATIONS}" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>'
        "<xdr:clientData/></xdr:oneCellAnchor></xdr:wsDr>"
    )


def chart_xml(picture: Picture) -> str:
    """Write the chart: figures at the bars' ends; a legend only where there are several rows."""
    rows = "".join(_row_of_bars(picture, at) for at in range(len(picture.bars)))
    beside, figures = ("l", "b") if picture.lying else ("b", "l")
    order = "maxMin" if picture.lying else "minMax"
    legend = '<c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend>'
    return (
        f'{_DECLARATION}<c:chartSpace xmlns:c="{_CHART}" xmlns:a="{_DRAWING}">'
        f'<c:roundedCorners val="0"/><c:chart><c:title><c:tx><c:rich><a:bodyPr/><a:p>'
        f'<a:pPr><a:defRPr sz="{_TITLE_SIZE}" b="1"/></a:pPr><a:r>'
        f'<a:rPr lang="en-US" sz="{_TITLE_SIZE}" b="1"/><a:t>{picture.title}</a:t></a:r></a:p>'
        '</c:rich></c:tx><c:overlay val="0"/></c:title><c:autoTitleDeleted val="0"/>'
        f'<c:plotArea><c:layout/><c:barChart><c:barDir val="{"bar" if picture.lying else "col"}"/>'
        f'<c:grouping val="clustered"/><c:varyColors val="0"/>{rows}<c:gapWidth val="60"/>'
        '<c:axId val="10"/><c:axId val="100"/></c:barChart>'
        f'<c:catAx><c:axId val="10"/><c:scaling><c:orientation val="{order}"/></c:scaling>'
        f'{_axis(beside, _GENERAL)}<c:crossAx val="100"/><c:crosses val="autoZero"/></c:catAx>'
        '<c:valAx><c:axId val="100"/><c:scaling><c:orientation val="minMax"/></c:scaling>'
        f'{_axis(figures, picture.form)}<c:crossAx val="10"/>'
        f'<c:crosses val="{"max" if picture.lying else "autoZero"}"/>'
        '<c:crossBetween val="between"/></c:valAx></c:plotArea>'
        f"{legend if len(picture.bars) > 1 else ''}"
        '<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>'
    )


def _axis(place: str, form: str) -> str:
    return (
        f'<c:delete val="0"/><c:axPos val="{place}"/>{_number_format(form)}'
        '<c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>'
        f"{_small_text()}"
    )


def _number_format(form: str) -> str:
    code = escape(form).replace('"', "&quot;")
    return f'<c:numFmt formatCode="{code}" sourceLinked="0"/>'


def _small_text() -> str:
    return (
        f'<c:txPr><a:bodyPr/><a:p><a:pPr><a:defRPr sz="{_TEXT_SIZE}"/></a:pPr>'
        '<a:endParaRPr lang="en-US"/></a:p></c:txPr>'
    )


def _row_of_bars(picture: Picture, at: int) -> str:
    """One row of bars with its figures, and the values it was drawn from."""
    bars, (cells, names) = picture.bars[at], picture.labels
    return (
        f'<c:ser><c:idx val="{at}"/><c:order val="{at}"/>'
        f"<c:tx><c:v>{escape(bars.name)}</c:v></c:tx>"
        f'<c:spPr><a:solidFill><a:srgbClr val="{_GREYS[at]}"/></a:solidFill><a:ln w="6350">'
        '<a:solidFill><a:srgbClr val="000000"/></a:solidFill></a:ln></c:spPr>'
        f'<c:invertIfNegative val="0"/><c:dLbls>{_number_format(picture.form)}'
        f"<c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr>{_small_text()}"
        '<c:dLblPos val="outEnd"/><c:showLegendKey val="0"/><c:showVal val="1"/>'
        '<c:showCatName val="0"/><c:showSerName val="0"/><c:showPercent val="0"/>'
        '<c:showBubbleSize val="0"/></c:dLbls>'
        f"<c:cat><c:strRef><c:f>{escape(cells)}</c:f><c:strCache>{_points(names)}</c:strCache>"
        f"</c:strRef></c:cat><c:val><c:numRef><c:f>{escape(bars.cells)}</c:f><c:numCache>"
        f"<c:formatCode>{escape(picture.form)}</c:formatCode>"
        f"{_points([plain_number(value) for value in bars.values])}"
        "</c:numCache></c:numRef></c:val></c:ser>"
    )


def _points(texts: Sequence[str]) -> str:
    points = (
        f'<c:pt idx="{at}"><c:v>{escape(clean_text(text))}</c:v></c:pt>'
        for at, text in enumerate(texts)
    )
    return f'<c:ptCount val="{len(texts)}"/>{"".join(points)}'
