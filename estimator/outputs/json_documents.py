"""The documents that `--json` prints, as records: one a command, each with its version."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.catalog.records import Account, LaborUnit, Material
from estimator.measures import System
from estimator.outputs.batch_totals import BatchDocument
from estimator.outputs.clear_bid import StatedField
from estimator.outputs.crew_records import CrewSheet
from estimator.outputs.ledger_documents import BooksDocument, CloseOutDocument
from estimator.outputs.update_document import CatalogUpdateDocument
from estimator.pricing.calendar_records import Calendar
from estimator.pricing.change_bought import CountedAsBought
from estimator.pricing.change_records import ChangedLine, ChangePrice, ItemChange, Recheck
from estimator.pricing.compare_records import Comparison
from estimator.pricing.price_records import OneMore, RateBuild
from estimator.pricing.records import (
    BookLine,
    Hours,
    LaborLine,
    PriceBuild,
    RouteOption,
    ShoppingLine,
    VersionNote,
)
from estimator.pricing.risk_records import PriceRange
from estimator.problems import Problem
from estimator.rules.records import Finding
from estimator.survey.differences import ChangedFact
from estimator.tables.own_or_hire import Matter
from estimator.takeoff.records import Assumption, Takeoff


@dataclass(frozen=True, slots=True)
class JobHead:
    """Which job a document is about.

    Attributes:
        currency: ISO 4217 code of every amount of money in the document.
        edition, building_edition: of the rules that the job was held against, electrical and
            building; they are held against it only in the country they are for.
    """

    id: str
    title: str
    customer: str
    address: str
    scope: str
    bid_date: date | None
    country: str
    locale: str
    units: System
    currency: str
    edition: str
    building_edition: str


@dataclass(frozen=True, slots=True)
class BidDocument:
    """What `estimator bid --json` prints: the whole bid.

    Attributes:
        workbook: where the workbook was written; null where a finding blocks the bid.
        blocked_by: ids (rule:subject) of the findings that block it and nobody accepted.
        second_total: the total if every unknown that moves the price turns out badly.
        one_more: what one more outlet would cost while there.
        states: the fields that a clear bid states; `said` is empty where this one says nothing.
        settings: each setting used, as written in the books or the job.
        books: the file that each book was read from.
        notes: how measures and books were read, where there is something to say.
    """

    schema: Literal["estimator-bid-3"]
    job: JobHead
    workbook: str | None
    blocked_by: tuple[str, ...]
    price: PriceBuild
    second_total: Decimal | None
    second_total_why: str
    one_more: OneMore | None
    states: tuple[StatedField, ...]
    hours: Hours
    calendar: Calendar
    takeoff: Takeoff
    findings: tuple[Finding, ...]
    shopping: tuple[ShoppingLine, ...]
    labor: tuple[LaborLine, ...]
    routes: tuple[RouteOption, ...]
    book_lines: tuple[BookLine, ...]
    versions: tuple[VersionNote, ...]
    settings: Mapping[str, str]
    books: Mapping[str, str]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TakeoffDocument:
    """What `estimator takeoff --json` prints: parts and work with their reasons."""

    schema: Literal["estimator-takeoff-2"]
    job: JobHead
    blocked_by: tuple[str, ...]
    takeoff: Takeoff
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ShoppingDocument:
    """What `estimator shopping-list --json` prints.

    Attributes:
        cost: of all lines with a price, before any percentage for small items.
        unpriced_items: items that the books hold no price for; they are not in `cost`.
    """

    schema: Literal["estimator-shopping-2"]
    job: JobHead
    blocked_by: tuple[str, ...]
    cost: Decimal
    unpriced_items: tuple[str, ...]
    shopping: tuple[ShoppingLine, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CrewDocument:
    """What `estimator crew --json` prints: the crew sheet, told in each language asked for."""

    schema: Literal["estimator-crew-1"]
    job: JobHead
    blocked_by: tuple[str, ...]
    sheets: tuple[CrewSheet, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CheckDocument:
    """What `estimator check --json` prints: every finding, passes too, worst first.

    Attributes:
        assumptions: what is taken where a finding is not known, and what was left as it is.
        tests: the list of tests and cautions of this job, by heading.
    """

    schema: Literal["estimator-check-2"]
    job: JobHead
    blocked_by: tuple[str, ...]
    findings: tuple[Finding, ...]
    assumptions: tuple[Assumption, ...]
    tests: Mapping[str, tuple[str, ...]]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ChangeDocument:
    """What `estimator change --json` prints: what differs between two bids, and its price.

    Attributes:
        job: as it stands after the change.
        workbook: where the change order was written; null where a finding stops the job.
        stopped_by: ids of the findings that stop it and nobody accepted.
        bought: the parts that a file says were bought; null where none was given, so that all
            or none of the first list counts (materials_bought).
        total_anew: what the changed job would cost if it were bid now from the start.
    """

    schema: Literal["estimator-change-2"]
    job: JobHead
    workbook: str | None
    stopped_by: tuple[str, ...]
    why: str
    materials_bought: bool
    bought: CountedAsBought | None
    facts: tuple[ChangedFact, ...]
    lines: tuple[ChangedLine, ...]
    items: tuple[ItemChange, ...]
    rechecks: tuple[Recheck, ...]
    price: ChangePrice
    total_anew: Decimal
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CompareDocument:
    """What `estimator compare --json` prints: ways, and doing it yourself against hiring.

    Attributes:
        routes: best first, each with why. matters: what money does not show, either side.
    """

    schema: Literal["estimator-compare-1"]
    job: JobHead
    blocked_by: tuple[str, ...]
    routes: tuple[RouteOption, ...]
    comparison: Comparison
    matters: tuple[Matter, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RangeDocument:
    """What `estimator range --json` prints: how far hours and total may come out otherwise."""

    schema: Literal["estimator-range-1"]
    job: JobHead
    blocked_by: tuple[str, ...]
    range: PriceRange
    unpriced_items: tuple[str, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RateDocument:
    """What `estimator rate --json` prints: the labor rate, step by step.

    Attributes:
        stated: the rate that shop.toml states; null where it is to be built.
        markup_pct: what the rate built adds to the cost of a billable hour, in percent of it.
        margin_pct: the same in percent of the rate.
    """

    schema: Literal["estimator-rate-1"]
    currency: str
    stated: Decimal | None
    built: RateBuild
    markup_pct: Decimal
    margin_pct: Decimal


@dataclass(frozen=True, slots=True)
class ProblemsDocument:
    """What any command prints with `--json` when the input was bad."""

    schema: Literal["estimator-problems-1"]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class CatalogCheckDocument:
    """What `estimator catalog check --json` prints for books that can be used.

    Attributes:
        warnings: what to look at, such as stale prices; none of it stops a bid.
    """

    schema: Literal["estimator-catalog-check-1"]
    folder: str
    warnings: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class CatalogDocument:
    """What `estimator catalog show --json` prints: the books as they were read.

    Attributes:
        books: the file that each book was read from. origins: the file that set each setting.
    """

    schema: Literal["estimator-catalog-2"]
    currency: str
    books: Mapping[str, str]
    materials: tuple[Material, ...]
    labor: tuple[LaborUnit, ...]
    accounts: tuple[Account, ...]
    settings: Mapping[str, str]
    origins: Mapping[str, str]


DOCUMENTS: Mapping[str, type] = {
    "bid": BidDocument,
    "takeoff": TakeoffDocument,
    "shopping-list": ShoppingDocument,
    "crew": CrewDocument,
    "check": CheckDocument,
    "compare": CompareDocument,
    "range": RangeDocument,
    "change": ChangeDocument,
    "close-out": CloseOutDocument,
    "books": BooksDocument,
    "rate": RateDocument,
    "batch": BatchDocument,
    "catalog-check": CatalogCheckDocument,
    "catalog-show": CatalogDocument,
    "catalog-update": CatalogUpdateDocument,
    "problems": ProblemsDocument,
}
