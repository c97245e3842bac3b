"""One way of a job carried through every stage, from legs to price."""

from __future__ import annotations

from dataclasses import dataclass

from estimator.catalog.records import Books
from estimator.pricing.hours import labor_lines, total_hours
from estimator.pricing.price import build_price
from estimator.pricing.records import Hours, LaborLine, PriceBuild, ShoppingLine
from estimator.pricing.shopping import shopping_list
from estimator.pricing.stock import stock_of
from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.screen import screen
from estimator.survey.records import Survey
from estimator.takeoff.records import Takeoff
from estimator.takeoff.take_off import take_off


@dataclass(frozen=True, slots=True)
class Work:
    """Everything worked out for one way."""

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


def work_out(survey: Survey, books: Books) -> Work:
    """Carry a survey of one way through every stage.

    Raises:
        InputError: walls that do not join, tasks without hours, a currency not on file.
    """
    practice = books.shop.practice
    paths = run_paths(survey)
    takeoff = take_off(survey, paths, practice, stock_of(books))
    findings = screen(Facts(survey, paths, takeoff, practice))
    shopping = shopping_list(survey, takeoff, books)
    labor = labor_lines(survey, takeoff, books)
    hours = total_hours(survey, labor, books)
    price = build_price(survey, takeoff, shopping, hours, books)
    return Work(takeoff, findings, shopping, labor, hours, price)
