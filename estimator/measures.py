"""The exact factors between units, rounding that no float decides, and measures as shown."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Literal

from estimator.reading import MAX_CHARS

System = Literal["us", "metric"]
LengthUnit = Literal["in", "ft", "mm", "cm", "m"]
AreaUnit = Literal["in2", "ft2", "cm2", "m2"]
VolumeUnit = Literal["in3", "ft3", "cm3", "L", "gal", "qt"]
Exact = int | Decimal | Fraction

# All exact by definition: 1 in = 25.4 mm, 1 US gal = 231 in3, 1 L = 1000 cm3.
IN_PER_FT = 12
MM_PER_IN = Fraction(127, 5)
CM_PER_IN = MM_PER_IN / 10
M_PER_IN = MM_PER_IN / 1000
CM3_PER_L = 1000
IN3_PER_GAL = 231
QT_PER_GAL = 4

LENGTH_IN: dict[str, Fraction] = {
    "in": Fraction(1),
    "ft": Fraction(IN_PER_FT),
    "mm": 1 / MM_PER_IN,
    "cm": 1 / CM_PER_IN,
    "m": 1 / M_PER_IN,
}
AREA_IN2: dict[str, Fraction] = {
    "in2": Fraction(1),
    "ft2": Fraction(IN_PER_FT**2),
    "cm2": 1 / CM_PER_IN**2,
    "m2": 1 / M_PER_IN**2,
}
VOLUME_IN3: dict[str, Fraction] = {
    "in3": Fraction(1),
    "ft3": Fraction(IN_PER_FT**3),
    "cm3": 1 / CM_PER_IN**3,
    "L": CM3_PER_L / CM_PER_IN**3,
    "gal": Fraction(IN3_PER_GAL),
    "qt": Fraction(IN3_PER_GAL, QT_PER_GAL),
}


def _words(lines: str) -> dict[str, str]:
    """Turn lines of "unit way way way" into the unit for each way to write it."""
    rows = [line.split() for line in lines.splitlines()]
    return {word: row[0] for row in rows for word in [row[0].lower(), *row[1:]]}


LENGTH_WORDS = _words("""\
in " inch inches
ft ' foot feet
mm millimeter millimeters millimetre millimetres
cm centimeter centimeters centimetre centimetres
m meter meters metre metres""")
AREA_WORDS = _words("""\
in2 sqin squareinch squareinches
ft2 sqft squarefoot squarefeet
cm2 sqcm squarecentimeter squarecentimeters squarecentimetre squarecentimetres
m2 sqm squaremeter squaremeters squaremetre squaremetres""")
VOLUME_WORDS = _words("""\
in3 cuin cubicinch cubicinches
ft3 cuft cubicfoot cubicfeet
cm3 cc ml milliliter milliliters millilitre millilitres
L liter liters litre litres
gal gallon gallons
qt quart quarts""")

MAX_LENGTH_FT = 10_000
MAX_LENGTH_IN = MAX_LENGTH_FT * IN_PER_FT

_SIXTEENTHS = 16
_SHOW_PLACES = 3
_CM3_PLACES = 1
_MM_PLACES = 2


def ft_to_in(length_ft: Exact) -> Fraction:
    """Feet to inches, exact."""
    return Fraction(length_ft) * IN_PER_FT


def in_to_ft(length_in: Exact) -> Fraction:
    """Inches to feet, exact."""
    return Fraction(length_in) / IN_PER_FT


def mm_to_in(length_mm: Exact) -> Fraction:
    """Millimetres to inches, exact."""
    return Fraction(length_mm) / MM_PER_IN


def in_to_mm(length_in: Exact) -> Fraction:
    """Inches to millimetres, exact."""
    return Fraction(length_in) * MM_PER_IN


def m_to_in(length_m: Exact) -> Fraction:
    """Metres to inches, exact."""
    return Fraction(length_m) / M_PER_IN


def in_to_m(length_in: Exact) -> Fraction:
    """Inches to metres, exact."""
    return Fraction(length_in) * M_PER_IN


def ft2_to_in2(area_ft2: Exact) -> Fraction:
    """Square feet to square inches, exact."""
    return Fraction(area_ft2) * AREA_IN2["ft2"]


def in2_to_ft2(area_in2: Exact) -> Fraction:
    """Square inches to square feet, exact."""
    return Fraction(area_in2) / AREA_IN2["ft2"]


def m2_to_in2(area_m2: Exact) -> Fraction:
    """Square metres to square inches, exact."""
    return Fraction(area_m2) * AREA_IN2["m2"]


def in2_to_m2(area_in2: Exact) -> Fraction:
    """Square inches to square metres, exact."""
    return Fraction(area_in2) / AREA_IN2["m2"]


def cm3_to_in3(volume_cm3: Exact) -> Fraction:
    """Cubic centimetres (millilitres) to cubic inches, exact."""
    return Fraction(volume_cm3) * VOLUME_IN3["cm3"]


def in3_to_cm3(volume_in3: Exact) -> Fraction:
    """Cubic inches to cubic centimetres (millilitres), exact."""
    return Fraction(volume_in3) / VOLUME_IN3["cm3"]


def gal_to_in3(volume_gal: Exact) -> Fraction:
    """US gallons to cubic inches, exact."""
    return Fraction(volume_gal) * IN3_PER_GAL


def in3_to_gal(volume_in3: Exact) -> Fraction:
    """Cubic inches to US gallons, exact."""
    return Fraction(volume_in3) / IN3_PER_GAL


def in3_to_l(volume_in3: Exact) -> Fraction:
    """Cubic inches to litres, exact."""
    return Fraction(volume_in3) / VOLUME_IN3["L"]


def ceil_to_step(amount: Exact, step: Exact) -> Fraction:
    """Round up to a whole number of steps; what is already whole stays.

    Raises:
        ValueError: a step that is not above zero.

    >>> ceil_to_step(Fraction(55, 2) * Fraction(6, 5), 1)
    Fraction(33, 1)
    """
    if step <= 0:
        raise ValueError(f"a step must be above zero, not {step}")
    exact_step = Fraction(step)
    return -(-Fraction(amount) // exact_step) * exact_step


def to_decimal(amount: Exact, places: int) -> Decimal:
    """Round to a number of decimal places, half away from zero, with no limit on digits.

    >>> to_decimal(Fraction(1, 8), 2)
    Decimal('0.13')
    """
    over, under = Fraction(amount).as_integer_ratio()
    whole = (2 * abs(over) * 10**places + under) // (2 * under)
    return Decimal(f"{'-' if over < 0 and whole else ''}{whole}E-{places}")


def show_length(length_in: Fraction, system: System) -> str:
    r"""Show a length for people, rounded (half up) and read back without doubt.

    US: to 1/16 in, as 12'-6 1/2", with zero inches kept (7'-0"), and inches alone under
    a foot (6 1/2"). Metric: whole millimetres at every size, so that no decimal mark is needed.

    >>> show_length(Fraction(301, 2), "us")
    '12\'-6 1/2"'
    """
    if system == "metric":
        return f"{to_decimal(length_in * MM_PER_IN, 0)} mm"
    over, under = length_in.as_integer_ratio()
    sixteenths = (2 * abs(over) * _SIXTEENTHS + under) // (2 * under)
    sign = "-" if over < 0 and sixteenths else ""
    feet, rest = divmod(sixteenths, _SIXTEENTHS * IN_PER_FT)
    inches = _inches(rest, keep_zero=feet > 0)
    return f"{sign}{feet}'-{inches}\"" if feet else f'{sign}{inches}"'


def write_length(length_in: Fraction, system: System) -> str:
    """Write a length exactly: `read_length` gives the very same fraction back.

    US: inches with a fraction (150 1/2 in). Metric: millimetres, with up to two decimals
    (3822.7 mm) or else a fraction (3 1/3 mm).

    Raises:
        ValueError: what `read_length` would refuse: negative, more than 10,000 ft, or a
            fraction of so many digits that the text passes 200 characters.
    """
    if not 0 <= length_in <= MAX_LENGTH_IN:
        raise ValueError(f"a length to write is from 0 to {MAX_LENGTH_FT:,} ft")
    text = f"{_mixed(*length_in.as_integer_ratio())} in"
    if system == "metric":
        text = f"{_millimetres(length_in * MM_PER_IN)} mm"
    if len(text) > MAX_CHARS:
        raise ValueError(f"a length that takes more than {MAX_CHARS} characters to write exactly")
    return text


def _millimetres(length_mm: Fraction) -> str:
    """Write up to two decimals where they are exact, else a mixed fraction."""
    short = to_decimal(length_mm, _MM_PLACES)
    return _trimmed(short) if short == length_mm else _mixed(*length_mm.as_integer_ratio())


@cache
def _inches(sixteenths: int, *, keep_zero: bool) -> str:
    """Write less than a foot in inches; `keep_zero` gives 0 1/2 instead of 1/2."""
    text = _mixed(*Fraction(sixteenths, _SIXTEENTHS).as_integer_ratio())
    return f"0 {text}" if keep_zero and 0 < sixteenths < _SIXTEENTHS else text


def _mixed(over: int, under: int) -> str:
    """Write over / under, in lowest terms, as "6", "1/2" or "6 1/2"."""
    whole, rest = divmod(over, under)
    if not rest:
        return str(whole)
    return f"{whole} {rest}/{under}" if whole else f"{rest}/{under}"


def _trimmed(amount: Decimal) -> str:
    """Write a rounded number without zeros at its end."""
    text = f"{amount:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def show_area(area_in2: Fraction, system: System) -> str:
    """Show an area in ft2 or m2, rounded half up to at most three decimals."""
    if system == "metric":
        return f"{_trimmed(to_decimal(in2_to_m2(area_in2), _SHOW_PLACES))} m2"
    return f"{_trimmed(to_decimal(in2_to_ft2(area_in2), _SHOW_PLACES))} ft2"


def show_volume(volume_in3: Fraction, system: System) -> str:
    """Show a volume in in3 (at most three decimals) or cm3 (at most one), rounded half up."""
    if system == "metric":
        return f"{_trimmed(to_decimal(in3_to_cm3(volume_in3), _CM3_PLACES))} cm3"
    return f"{_trimmed(to_decimal(volume_in3, _SHOW_PLACES))} in3"
