"""Formulas that round money as the sheet's own cell says: half up, down, or half to even."""

from __future__ import annotations

HALF_UP, DOWN, HALF_EVEN = "half-up", "down", "half-even"
_FINE = 9
"""Decimals at which a figure counts as exact; binary sums differ only far behind them."""


def rounded_as_named(text: str, places: int, name: str) -> str:
    """Round a formula to `places` decimals by the word that stands in the cell `name`.

    Half to even: only where the figure lies halfway does the half of it, rounded and doubled,
    stand in: half of it never lies halfway itself. Down is towards zero.

    >>> rounded_as_named("A1", 2, "how")[:31]
    'IF(how="down",ROUNDDOWN(ROUND(A'
    """
    up = f"ROUND({text},{places})"
    halfway = f"ROUND(ABS({up}-({text})),{_FINE})={_half(places)}"
    even = f"IF({halfway},2*ROUND(({text})/2,{places}),{up})"
    down = f"ROUNDDOWN(ROUND({text},{_FINE}),{places})"
    return f'IF({name}="{DOWN}",{down},IF({name}="{HALF_EVEN}",{even},{up}))'


def _half(places: int) -> str:
    """Half of one unit of the last place: 0.005 for two places."""
    return f"0.{'0' * places}5"
