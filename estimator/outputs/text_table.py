"""Simple tables for the terminal: names on the left, figures set right, within 80 columns."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.outputs.text_layout import COLUMNS, GAP, printable

_CUT = "..."


def table(heads: Sequence[str], rows: Sequence[Sequence[str]], left: int = 1) -> list[str]:
    """Set rows under their heads; the first `left` columns stand left, the others right.

    Where the table would be wider than the terminal, the first column is cut and says so.
    """
    cells = [[printable(cell) for cell in row] for row in (heads, *rows)]
    widths = [max(len(row[at]) for row in cells) for at in range(len(heads))]
    spare = COLUMNS - 1 - len(GAP) * (len(widths) - 1) - sum(widths)
    widest = widths.index(max(widths[:left]))
    widths[widest] = max(widths[widest] + min(spare, 0), len(_CUT))
    return [_row(row, widths, left) for row in cells]


def _row(row: Sequence[str], widths: Sequence[int], left: int) -> str:
    shown = [
        f"{_cut(cell, width):<{width}}" if at < left else f"{cell:>{width}}"
        for at, (cell, width) in enumerate(zip(row, widths, strict=True))
    ]
    return GAP.join(shown).rstrip()


def _cut(cell: str, width: int) -> str:
    return cell if len(cell) <= width else cell[: width - len(_CUT)] + _CUT
