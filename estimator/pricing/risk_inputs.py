"""What may come out otherwise in a job: each input with its range, and the sums in closed form."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from estimator.catalog.records import Books
from estimator.measures import to_decimal
from estimator.money import minor_unit
from estimator.pricing.records import Hours, LaborLine, PriceBuild
from estimator.pricing.risk_moments import Moments, Range, added, by_chance, moments, scaled
from estimator.pricing.risk_records import InputKind, RangeInput
from estimator.settings_risk import NamedRisk, RiskTerms
from estimator.survey.records import Survey

PLACES = 6
_PCT2 = 100**2
ALWAYS_PCT = Decimal(100)
ZERO = Decimal(0)
FROM_BOOK, FROM_SETTINGS = "labor book", "settings of the range"


@dataclass(frozen=True, slots=True)
class Case:
    """A job as its range sees it.

    Attributes:
        places: of the currency's minor unit. scale: what the hours of the tasks are multiplied
            by, because the job states its hours; else 1.
        likely_hours: of all tasks, added up; or what the job states. No risk is in them.
    """

    terms: RiskTerms
    build: PriceBuild
    inputs: tuple[RangeInput, ...]
    places: int
    scale: Fraction
    likely_hours: Decimal

    def of_kind(self, *kinds: InputKind) -> tuple[RangeInput, ...]:
        """The inputs of some kinds, in order."""
        return tuple(each for each in self.inputs if each.kind in kinds)

    @property
    def sell_factor(self) -> Fraction:
        """What one unit of listed materials is sold for, not rounded."""
        build = self.build
        small, markup, at_counter = (
            Fraction(pct) / 100
            for pct in (build.small_items_pct, build.markup_pct, build.purchase_rate_pct)
        )
        cost = (1 + small) / (1 + at_counter) if build.input_tax else 1 + small
        paid = cost * at_counter if build.purchase_tax else Fraction(0)
        before = paid if build.purchase_tax_how == "before-markup" else 0
        after = paid if build.purchase_tax_how == "after-markup" else 0
        return (cost + before) * (1 + markup) + after


def hours_range(each: RangeInput) -> Range:
    """Its three figures."""
    return Range(each.low, each.likely, each.high)


def parts_range(each: RangeInput) -> Range:
    """The three figures of its parts."""
    return Range(each.parts_low, each.parts_likely, each.parts_high)


def case_of(
    survey: Survey, labor: tuple[LaborLine, ...], hours: Hours, build: PriceBuild, books: Books
) -> Case:
    """Collect the inputs of a job."""
    terms = books.shop.risk
    scale = Fraction(1)
    if hours.basis == "override" and hours.likely:
        scale = Fraction(hours.charged) / Fraction(hours.likely)
    lines = labor if hours.likely or hours.basis != "override" else ()
    found = (
        *(_task(line, scale, terms) for line in lines),
        *_stated(hours, lines),
        *_risks(survey, terms),
        *_materials(terms),
    )
    places = minor_unit(books.shop.currency)
    inputs = tuple(replace(each, swing=to_decimal(_swing(build, each), places)) for each in found)
    likely = hours.charged if hours.basis == "override" else hours.likely
    return Case(terms, build, inputs, places, scale, likely)


def _input(kind: InputKind, name: str, figures: Range, source: str) -> RangeInput:
    """An input that always counts and takes no parts."""
    return RangeInput(
        kind, name, *figures, ZERO, ZERO, ZERO, ALWAYS_PCT, ZERO, ZERO, ZERO, source
    )  # fmt: skip


def _task(line: LaborLine, scale: Fraction, terms: RiskTerms) -> RangeInput:
    ends = (line.hours_low, line.hours_likely, line.hours_high)
    figures = Range(*(to_decimal(Fraction(end) * scale, PLACES) for end in ends))
    name = f"{line.description} ({line.where})" if line.where else line.description
    return _known(_input("hours", name, figures, FROM_BOOK), terms)


def _stated(hours: Hours, lines: tuple[LaborLine, ...]) -> Iterator[RangeInput]:
    """Hours that a job states where its tasks have none to spread them over."""
    if not lines and hours.charged:
        figures = Range(hours.charged, hours.charged, hours.charged)
        stated = _input("hours", "hours as the job states them", figures, "the job")
        yield replace(stated, mean=hours.charged)


def _risks(survey: Survey, terms: RiskTerms) -> Iterator[RangeInput]:
    own = (NamedRisk(**each.model_dump()) for each in survey.risks)
    for risk in (*own, *terms.usual):
        figures = RangeInput(
            kind="risk", name=risk.name,
            low=risk.hours_low, likely=risk.hours_likely, high=risk.hours_high,
            parts_low=risk.parts_low, parts_likely=risk.parts_likely, parts_high=risk.parts_high,
            chance_pct=risk.chance_pct, mean=ZERO, sd=ZERO, swing=ZERO, source=risk.source,
        )  # fmt: skip
        yield _known(figures, terms)


def _materials(terms: RiskTerms) -> Iterator[RangeInput]:
    prices = Range(-terms.price_low_pct, ZERO, terms.price_high_pct)
    waste = Range(-terms.waste_low_pct, ZERO, terms.waste_high_pct)
    for each in (
        _input("material prices", "Prices of materials", prices, FROM_SETTINGS),
        _input("waste", "Materials used up beyond the list", waste, FROM_SETTINGS),
    ):
        yield _known(each, terms)


def _known(each: RangeInput, terms: RiskTerms) -> RangeInput:
    """The input with its mean and spread."""
    known = by_chance(moments(hours_range(each), terms.shape), each.chance_pct)
    mean, sd = to_decimal(known.mean, PLACES), to_decimal(Fraction(known.sd), PLACES)
    return replace(each, mean=mean, sd=sd)


def hours_moments(case: Case) -> Moments:
    """All hours in closed form: tasks that run together, and risks that come on their own.

    Added up from the means and spreads of the inputs as they are shown, to six places each.
    """
    tasks, risks = (
        [Moments(Fraction(each.mean), Fraction(each.sd) ** 2) for each in case.of_kind(kind)]
        for kind in ("hours", "risk")
    )
    return added([added(tasks, case.terms.correlation_pct), *risks])


def built_up_moments(case: Case) -> Moments:
    """The built-up price in closed form, no rounding and no contingency in it."""
    build, shape = case.build, case.terms.shape
    rate = Fraction(build.labor_rate_per_hour)
    tasks = [scaled(moments(hours_range(each), shape), rate) for each in case.of_kind("hours")]
    risks = [by_chance(_impact(case, each), each.chance_pct) for each in case.of_kind("risk")]
    fixed = Fraction(build.trips + build.supply_run.amount)
    fixed += Fraction(build.supply_run.labor_hours) * rate
    base = added(
        [added(tasks, case.terms.correlation_pct), *risks, _sold(case), Moments(fixed, Fraction(0))]
    )
    above = (1 + Fraction(build.overhead_pct) / 100) * (1 + Fraction(build.profit_pct) / 100)
    return scaled(base, above)


def _impact(case: Case, each: RangeInput) -> Moments:
    """Labor and materials that a risk takes where it happens."""
    shape = case.terms.shape
    hours = moments(hours_range(each), shape)
    parts = moments(parts_range(each), shape)
    rate = Fraction(case.build.labor_rate_per_hour)
    return added([scaled(hours, rate), scaled(parts, case.sell_factor)])


def _sold(case: Case) -> Moments:
    """Listed materials as sold: prices times waste, each on its own."""
    prices, waste = (
        moments(hours_range(each), case.terms.shape)
        for each in case.of_kind("material prices", "waste")
    )
    one, other = 1 + prices.mean / 100, 1 + waste.mean / 100
    squares = (prices.variance / _PCT2 + one**2) * (waste.variance / _PCT2 + other**2)
    mean = one * other
    sold = Fraction(case.build.materials_listed) * case.sell_factor
    return scaled(Moments(mean, squares - mean**2), sold)


def _swing(build: PriceBuild, each: RangeInput) -> Fraction:
    """What moves from an input's low to its high, materials at cost; of a risk, the most."""
    rate = Fraction(build.labor_rate_per_hour)
    if each.kind == "hours":
        return Fraction(each.high - each.low) * rate
    if each.kind == "risk":
        return Fraction(each.high) * rate + Fraction(each.parts_high)
    return Fraction(each.high - each.low) / 100 * Fraction(build.materials_listed)
