"""Elements stand in the order that the file format asks for; programs refuse other orders."""

from __future__ import annotations

import zipfile
from functools import cache
from io import BytesIO
from xml.etree import ElementTree

import pytest

from tests.outputs.bid_factory import full_file

# ECMA-376, Part 1: the sequences of CT_Worksheet (18.3.1.99), CT_Workbook (18.2.27),
# CT_Stylesheet (18.8.39), CT_Border (18.8.4), CT_BarChart (21.2.2.16),
# CT_ScatterChart (21.2.2.161), CT_ScatterSer (21.2.2.163), CT_BarSer (21.2.2.170),
# CT_DLbls (21.2.2.49), CT_CatAx (21.2.2.25) and CT_ValAx (21.2.2.226).
ORDERS = {
    "worksheet": "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr "
    "sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate "
    "customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks "
    "printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties "
    "cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF picture "
    "oleObjects controls webPublishItems tableParts extLst",
    "workbook": "fileVersion fileSharing workbookPr workbookProtection bookViews sheets "
    "functionGroups externalReferences definedNames calcPr",
    "styleSheet": "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles "
    "colors extLst",
    "border": "left right top bottom diagonal vertical horizontal",
    "barChart": "barDir grouping varyColors ser dLbls gapWidth overlap serLines axId",
    "ser": "idx order tx spPr invertIfNegative pictureOptions dPt dLbls trendline errBars cat "
    "val shape",
    "scatterChart": "scatterStyle varyColors ser dLbls axId",
    "scatter ser": "idx order tx spPr marker dPt dLbls trendline errBars xVal yVal smooth",
    "dLbls": "dLbl numFmt spPr txPr dLblPos showLegendKey showVal showCatName showSerName "
    "showPercent showBubbleSize separator",
    "catAx": "axId scaling delete axPos majorGridlines minorGridlines title numFmt majorTickMark "
    "minorTickMark tickLblPos spPr txPr crossAx crosses auto lblAlgn lblOffset noMultiLvlLbl",
    "valAx": "axId scaling delete axPos majorGridlines minorGridlines title numFmt majorTickMark "
    "minorTickMark tickLblPos spPr txPr crossAx crosses crossBetween majorUnit",
    "chart": "title autoTitleDeleted pivotFmts view3D floor sideWall backWall plotArea legend "
    "plotVisOnly dispBlanksAs",
}


@cache
def children() -> dict[str, list[list[str]]]:
    """For each kind of element the names of its children, as often as it occurs."""
    found: dict[str, list[list[str]]] = {name: [] for name in ORDERS}
    with zipfile.ZipFile(BytesIO(full_file())) as archive:
        for part in archive.namelist():
            root = ElementTree.fromstring(archive.read(part))
            kin = "scatter " if root.find(".//{*}scatterChart") is not None else ""
            for element in root.iter():
                names = [local(child.tag) for child in element]
                kind = local(element.tag)
                kind = f"{kin}{kind}" if f"{kin}{kind}" in found else kind
                if names and kind in found:
                    found[kind].append(names)
    return found


def local(tag: str) -> str:
    """The name without its namespace."""
    return tag.rsplit("}", 1)[-1]


@pytest.mark.parametrize("name", ORDERS)
def test_children_stand_in_the_order_of_the_standard(name: str) -> None:
    order = ORDERS[name].split()
    assert children()[name]
    for names in children()[name]:
        assert set(names) <= set(order)
        assert names == sorted(names, key=order.index)


def test_no_two_parts_of_the_package_share_a_name() -> None:
    with zipfile.ZipFile(BytesIO(full_file())) as archive:
        names = [name.lower() for name in archive.namelist()]
    assert len(names) == len(set(names))
