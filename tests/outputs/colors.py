"""Colors of cells, and how far two colors stand apart as WCAG 2.2 and W3C reckon it."""

from __future__ import annotations

from openpyxl.cell.cell import Cell

BLACK, WHITE = "000000", "FFFFFF"


def ink_of(cell: Cell) -> str:
    """The color of a cell's text as six digits; without one programs take black."""
    color = cell.font.color
    if color is None:
        return BLACK
    assert color.type == "rgb", f"{cell.coordinate}: a color of a theme, whose contrast may change"
    return str(color.rgb)[2:]


def ground_of(cell: Cell) -> str:
    """The color behind a cell's text."""
    if cell.fill.patternType is None:
        return WHITE
    assert cell.fill.patternType == "solid", f"{cell.coordinate}: text on a pattern"
    assert cell.fill.fgColor.type == "rgb"
    return str(cell.fill.fgColor.rgb)[2:]


def contrast(one: str, other: str) -> float:
    """How many times lighter the lighter of two colors is: 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def luminance(color: str) -> float:
    """Relative luminance of an sRGB color, as W3C defines it for WCAG 2.2."""
    parts = (int(color[at : at + 2], 16) / 255 for at in (0, 2, 4))
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
