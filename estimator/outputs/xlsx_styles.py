"""The styles part of a workbook: fonts, fills, frames and number formats of the looks in use."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from estimator.outputs.looks import BODY_SIZE, GENERAL, Look
from estimator.outputs.xlsx_values import escape

FONT = "Arial"
_DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_FILLS = {"": 0, "head": 2, "entry": 3}
_FILL_XML = (
    '<fill><patternFill patternType="none"/></fill>'
    '<fill><patternFill patternType="gray125"/></fill>'
    '<fill><patternFill patternType="solid"><fgColor rgb="FFE4E4E4"/></patternFill></fill>'
    '<fill><patternFill patternType="solid"><fgColor rgb="FFFFFAE6"/></patternFill></fill>'
)
_PALE = 'style="thin"><color rgb="FFA6A6A6"/>'
_DARK = 'style="thin"><color rgb="FF000000"/>'
_DASHED = 'style="dashed"><color rgb="FF404040"/>'
_EDGES = {
    "": ("", "", "", ""),
    "line": (_PALE, _PALE, _PALE, _PALE),
    "entry": (_DASHED, _DASHED, _DASHED, _DASHED),
    "total": (_PALE, _PALE, _DARK, _DARK),
    "under": ("", "", "", _DARK),
}
_BESIDE = "_)"
"""Leaves room between a figure and the edge of its cell; the general format cannot have it, as
it must stay free to show fewer digits in a narrow cell."""
_SIDES = ("left", "right", "top", "bottom")
_FIRST_OWN_FORMAT = 164
"""Numbers below are the formats that every spreadsheet program has built in."""


def styles_xml(looks: Sequence[Look], formats: Mapping[str, str]) -> str:
    """Write the part; the first cell style is the plain one, then each look in its order.

    Args:
        looks: in the order of their numbers, from 1.
        formats: the job's own format codes, for MONEY and DATE.
    """
    codes = {GENERAL: 0}
    fonts = {_font(BODY_SIZE, bold=False, italic=False): 0}
    cells = [_cell(look, codes, fonts, formats) for look in looks]
    own = [(number, code) for code, number in codes.items() if number]
    number_formats = "".join(
        f'<numFmt numFmtId="{number}" formatCode="{_attribute(code)}"/>' for number, code in own
    )
    edges = "".join(_border(sides) for sides in _EDGES.values())
    plain = '<xf numFmtId="0" fontId="0" fillId="0" borderId="0"'
    return (
        f'{_DECLARATION}<styleSheet xmlns="{_MAIN}">'
        f'<numFmts count="{len(own)}">{number_formats}</numFmts>'
        f'<fonts count="{len(fonts)}">{"".join(fonts)}</fonts>'
        f'<fills count="{len(_FILLS) + 1}">{_FILL_XML}</fills>'
        f'<borders count="{len(_EDGES)}">{edges}</borders>'
        f'<cellStyleXfs count="1">{plain}/></cellStyleXfs>'
        f'<cellXfs count="{len(cells) + 1}">{plain} xfId="0"/>{"".join(cells)}</cellXfs>'
        '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>'
        "</styleSheet>"
    )


def _attribute(text: str) -> str:
    return escape(text).replace('"', "&quot;")


def _font(size: int, *, bold: bool, italic: bool) -> str:
    marks = ("<b/>" if bold else "") + ("<i/>" if italic else "")
    return f'<font>{marks}<sz val="{size}"/><name val="{FONT}"/><family val="2"/></font>'


def _border(sides: Sequence[str]) -> str:
    drawn = (
        f"<{side} {line}</{side}>" if line else f"<{side}/>"
        for side, line in zip(_SIDES, sides, strict=True)
    )
    return f"<border>{''.join(drawn)}<diagonal/></border>"


def _cell(
    look: Look, codes: dict[str, int], fonts: dict[str, int], formats: Mapping[str, str]
) -> str:
    """Write the style of one look; new number formats and fonts are added to those given."""
    code = formats.get(look.form, look.form)
    if look.align == "right" and code != GENERAL:
        code += _BESIDE
    number = codes.setdefault(code, _FIRST_OWN_FORMAT + len(codes) - 1)
    font = fonts.setdefault(_font(look.size, bold=look.bold, italic=look.italic), len(fonts))
    wrap = ' wrapText="1"' if look.wrap else ""
    quoted = ' quotePrefix="1"' if look.quoted else ""
    return (
        f'<xf numFmtId="{number}" fontId="{font}" fillId="{_FILLS[look.fill]}" '
        f'borderId="{list(_EDGES).index(look.edge)}" xfId="0"{quoted} applyNumberFormat="1" '
        'applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1">'
        f'<alignment horizontal="{look.align}" vertical="top"{wrap}/></xf>'
    )
