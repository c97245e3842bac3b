"""The looks of the workbook as the spreadsheet library's styles, each made once a workbook."""

from __future__ import annotations

from array import array
from collections.abc import Mapping
from typing import Any, cast

from openpyxl.cell.cell import Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.worksheet.worksheet import Worksheet

from estimator.outputs.looks import GENERAL, Look

FONT = "Arial"
_FILLS = {
    "head": PatternFill("solid", fgColor="FFE4E4E4"),
    "entry": PatternFill("solid", fgColor="FFFFFAE6"),
}
_PALE = Side("thin", "FFA6A6A6")
_DARK = Side("thin", "FF000000")
_DASHED = Side("dashed", "FF404040")
_EDGES = {
    "line": Border(left=_PALE, right=_PALE, top=_PALE, bottom=_PALE),
    "entry": Border(left=_DASHED, right=_DASHED, top=_DASHED, bottom=_DASHED),
    "total": Border(left=_PALE, right=_PALE, top=_DARK, bottom=_DARK),
    "under": Border(bottom=_DARK),
}
_BESIDE = "_)"
"""Leaves room between a figure and the edge of its cell; the general format cannot have it, as
it must stay free to show fewer digits in a narrow cell."""


class Styles:
    """Styles of one workbook by look.

    The library works a style out when it is set on a cell, which costs far more than writing
    the cell; so each look is set once, on a cell apart, and its style shared from there.
    """

    def __init__(self, sheet: Worksheet, forms: Mapping[str, str]) -> None:
        """Begin with no style.

        Args:
            sheet: any sheet of the workbook.
            forms: the job's own format codes, for MONEY and DATE.
        """
        self._sheet, self._forms = sheet, forms
        self._known: dict[Look, array[int]] = {}

    def put_on(self, cell: Cell, look: Look) -> None:
        """Give a cell its look."""
        cast("Any", cell)._style = self._style(look)

    def _style(self, look: Look) -> array[int]:
        found = self._known.get(look)
        if found is None:
            found = self._known[look] = self._made(look)
        return found

    def _made(self, look: Look) -> array[int]:
        cell = Cell(self._sheet, row=1, column=1)
        cell.font = Font(name=FONT, size=look.size, bold=look.bold, italic=look.italic)
        cell.alignment = Alignment(horizontal=look.align, vertical="top", wrap_text=look.wrap)
        cell.number_format = self._code(look)
        if look.fill:
            cell.fill = _FILLS[look.fill]
        if look.edge:
            cell.border = _EDGES[look.edge]
        style: array[int] = cast("Any", cell)._style
        if look.quoted:
            cast("Any", style).quotePrefix = 1
        return style

    def _code(self, look: Look) -> str:
        code = self._forms.get(look.form, look.form)
        return code + _BESIDE if look.align == "right" and code != GENERAL else code
