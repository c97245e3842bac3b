"""Bar charts as the sheets ask for them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


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

    @property
    def said(self) -> str:
        """The bars in words, for those who cannot see them."""
        rows = (
            f"{name}: {', '.join(f'{bars.values[at].normalize():f}' for bars in self.bars)}"
            for at, name in enumerate(self.labels[1])
        )
        return f"{self.title}, as bars ({', '.join(b.name for b in self.bars)}). {'; '.join(rows)}."
