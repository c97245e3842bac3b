"""What the sheets of one workbook share while they are written: the bid, formats, named cells."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from estimator.language import ENGLISH, Language
from estimator.measures import (
    in2_to_ft2,
    in2_to_m2,
    in3_to_cm3,
    in3_to_gal,
    in3_to_l,
    in_to_ft,
    in_to_m,
    in_to_mm,
)
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Sheet, formula, number
from estimator.outputs.formats import Formats, formats
from estimator.pricing.records import Bid
from estimator.saying import said

CAUTION = said(
    "Turn the power off and prove it dead before anything is opened. "
    "Local code and licensed practice decide."
)
FRAMED = said("Shaded cells in a dashed frame may be changed; every other figure follows.")
NOT_STATED = said("not stated")
UNKNOWN = said("unknown")


@dataclass(slots=True)
class Draft:
    """The workbook while it is written.

    Attributes:
        names: defined names and the cell each stands for ("labor_rate").
        places: cells that another sheet's formulas use, by what they hold.
        orders: how much of each kind of cable is ordered, by item, and the cell that says so.
    """

    bid: Bid
    formats: Formats
    names: dict[str, str] = field(default_factory=dict)
    places: dict[tuple[str, str], str] = field(default_factory=dict)
    orders: dict[str, tuple[Decimal, str]] = field(default_factory=dict)

    @classmethod
    def of(cls, bid: Bid) -> Draft:
        """Begin the workbook of a bid, its formats those of the job's locale and currency.

        Raises:
            InputError: a currency that is not on file.
        """
        job = bid.survey.job
        return cls(bid, formats(bid.books.shop.currency, job.locale, job.country))

    @property
    def language(self) -> Language:
        """What the customer reads."""
        return self.bid.books.language

    def say(self, text: str) -> str:
        """Tell a saying as the customer reads it."""
        return self.language.say(text)

    def sheet(
        self, name: str, widths: str, *, wide: bool = True, language: Language = ENGLISH
    ) -> Sheet:
        """Begin a sheet; `widths` lists the columns from A on, in characters.

        A sheet for the customer has the customer's language, its name too.
        """
        columns = (chr(ord("A") + at) for at in range(len(widths.split())))
        sized = dict(zip(columns, map(float, widths.split()), strict=True))
        return Sheet(language.say(name), sized, language, wide=wide)

    def heading(self, sheet: Sheet, title: str, advice: str = FRAMED) -> None:
        """Write what every sheet begins with, and what stays in sight: title, caution, use."""
        sheet.title(title)
        sheet.note(CAUTION)
        sheet.note(advice)
        sheet.freeze()

    def round_to(self, formula_text: str) -> str:
        """Round a formula to the currency's minor unit."""
        return f"ROUND({formula_text},{self.formats.places})"

    def money(self, formula_text: str, value: Decimal, *, total: bool = False) -> Cell:
        """An amount of money that follows from other cells."""
        look = looks.total(looks.MONEY) if total else looks.figure(looks.MONEY)
        return formula(formula_text, value, look)

    @property
    def is_us(self) -> bool:
        """Whether US rules, and the units they are written in, belong in this workbook."""
        return self.bid.survey.job.country == "US"

    @property
    def is_metric(self) -> bool:
        """Whether lengths, areas and volumes are shown in metric units."""
        return self.bid.survey.job.units == "metric"

    def length(self, length_in: Fraction) -> tuple[Fraction, str]:
        """A short length as a figure with its unit: inches or millimetres."""
        return (in_to_mm(length_in), "mm") if self.is_metric else (length_in, "in")

    def seam(self, length_in: Fraction) -> tuple[Fraction, str]:
        """A long length as a figure with its unit: feet or metres."""
        return (in_to_m(length_in), "m") if self.is_metric else (in_to_ft(length_in), "ft")

    def area(self, area_in2: Fraction) -> tuple[Fraction, str]:
        """An area as a figure with its unit."""
        return (in2_to_m2(area_in2), "m2") if self.is_metric else (in2_to_ft2(area_in2), "ft2")

    def liquid(self, volume_in3: Fraction) -> tuple[Fraction, str]:
        """Compound or paint as a figure with its unit."""
        return (in3_to_l(volume_in3), "L") if self.is_metric else (in3_to_gal(volume_in3), "gal")

    def box_volume(self, volume_in3: Decimal) -> tuple[Fraction, str]:
        """The room in a box: cubic inches where US rules count them, else cubic centimetres."""
        return (Fraction(volume_in3), "in3") if self.is_us else (in3_to_cm3(volume_in3), "cm3")


def percent(value_pct: Decimal) -> Cell:
    """A rate in percent (10 for 10 %) that may be changed, as the fraction a program shows as %."""
    return number(value_pct.scaleb(-2), looks.entry(looks.PERCENT))


def price(amount: Decimal) -> Cell:
    """A price or charge that may be changed."""
    return number(amount, looks.entry(looks.MONEY))
