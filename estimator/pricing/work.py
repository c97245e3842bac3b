"""One way of a job carried through every stage, from legs to price."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache

from estimator.catalog.records import Books
from estimator.pricing.hours import labor_lines, total_hours
from estimator.pricing.price import build_price
from estimator.pricing.records import Hours, LaborLine, PriceBuild, ShoppingLine
from estimator.pricing.shopping import shopping_list
from estimator.pricing.stock import stock_of
from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.remedies import changed_survey, is_taken, with_remedies
from estimator.rules.remedy_marks import with_marks
from estimator.rules.screen import by_rank, screen
from estimator.survey.records import Survey
from estimator.takeoff.records import Takeoff
from estimator.takeoff.take_off import take_off

_BOOKS_KEPT = 8
Screened = tuple[Takeoff, tuple[Finding, ...]]


@dataclass(frozen=True, slots=True)
class Work:
    """Everything worked out for one way.

    Attributes:
        survey: as planned, with what taken remedies changed in it.
        screened: takeoff and findings before any remedy.
    """

    survey: Survey
    screened: Screened
    takeoff: Takeoff
    findings: tuple[Finding, ...]
    shopping: tuple[ShoppingLine, ...]
    labor: tuple[LaborLine, ...]
    hours: Hours
    price: PriceBuild

    @property
    def blocked_by(self) -> tuple[str, ...]:
        """Ids of the findings that stop this way."""
        return tuple(each.finding_id for each in self.findings if each.stops_the_bid)


def work_out(
    survey: Survey, books: Books, *, bad_case: bool = False, screened: Screened | None = None
) -> Work:
    """Carry a survey of one way through every stage, remedies included.

    Args:
        survey: with the runs of one way.
        books: the shop's.
        bad_case: take the remedies of findings that are unknown as well.
        screened: of this very survey, where it has been screened before.

    Raises:
        InputError: walls that do not join, tasks without hours, a currency not on file.
    """
    screened = screened or _screened(survey, books)
    takeoff, findings = screened
    taken = tuple(each for each in findings if is_taken(each, bad_case=bad_case))
    if taken:
        planned = changed_survey(survey, taken)
        if planned is not survey:
            survey = planned
            changed, findings = _screened(survey, books)
            takeoff = with_marks(changed, takeoff, taken, survey.runs)
        takeoff = with_remedies(takeoff, taken, stock_of(books))
        findings = _as_remedied(findings, taken)
    shopping = shopping_list(survey, takeoff, books)
    labor = labor_lines(survey, takeoff, books)
    hours = total_hours(survey, labor, books)
    price = build_price(survey, takeoff, shopping, hours, books)
    if books.shop.price.contingency_from == "confidence":
        from estimator.pricing.risk import put_by  # draws by chance, and only here

        enough = put_by(survey, labor, hours, price, books)
        price = build_price(survey, takeoff, shopping, hours, books, enough)
    return Work(survey, screened, takeoff, findings, shopping, labor, hours, price)


def _screened(survey: Survey, books: Books) -> Screened:
    paths = run_paths(survey)
    takeoff = take_off(survey, paths, books.shop.practice, stock_of(books))
    hours_each = _hours_each(books) | survey.overrides.hours
    return takeoff, screen(Facts(survey, paths, takeoff, books.shop.practice, hours_each))


@lru_cache(maxsize=_BOOKS_KEPT)
def _hours_each(books: Books) -> dict[str, Decimal]:
    """Likely hours for one unit of each task, made once for each set of books."""
    return {task: row.hours_likely for task, row in books.labor.items()}


def _as_remedied(findings: tuple[Finding, ...], taken: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The findings, with those whose remedy was taken as they were found and marked so."""
    remedied = {each.finding_id: replace(each, remedied=True) for each in taken}
    kept = [remedied.pop(each.finding_id, each) for each in findings]
    return by_rank((*kept, *remedied.values()))
