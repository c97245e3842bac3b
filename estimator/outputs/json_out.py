"""Writes the documents of `--json`, and the JSON Schema of each."""

from __future__ import annotations

import json
from collections.abc import Iterable
from decimal import Decimal
from typing import Any

from estimator.catalog.records import Books
from estimator.measures import System
from estimator.outputs.catalog_rows import rows_with
from estimator.outputs.clear_bid import clear_bid
from estimator.outputs.crew_records import CrewSheet
from estimator.outputs.json_documents import (
    DOCUMENTS,
    BidDocument,
    CatalogCheckDocument,
    CatalogDocument,
    ChangeDocument,
    CheckDocument,
    CompareDocument,
    CrewDocument,
    JobHead,
    ProblemsDocument,
    RangeDocument,
    ShoppingDocument,
    TakeoffDocument,
)
from estimator.outputs.json_shape import measure_schemas, record_schema, records_within, shape_of
from estimator.pricing.calendar import plan_calendar
from estimator.pricing.change_records import ChangeOrder
from estimator.pricing.compare import compare
from estimator.pricing.records import Bid
from estimator.pricing.risk_records import PriceRange
from estimator.problems import Problem
from estimator.rules.safety_list import safety_list
from estimator.tables.own_or_hire import matters

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def bid_json(bid: Bid, workbook: str | None, notes: tuple[str, ...]) -> str:
    """Write the whole bid; `workbook` is where the file went, None where there is none."""
    shop = bid.books.shop
    document = BidDocument(
        schema="estimator-bid-3",
        job=_head(bid),
        workbook=workbook,
        blocked_by=_blocked_by(bid),
        price=bid.price,
        second_total=bid.second_total,
        second_total_why=bid.second_total_why,
        one_more=bid.one_more,
        states=clear_bid(bid),
        hours=bid.hours,
        calendar=plan_calendar(bid),
        takeoff=bid.takeoff,
        findings=bid.findings,
        shopping=bid.shopping,
        labor=bid.labor,
        routes=bid.routes,
        book_lines=bid.book_lines,
        versions=bid.versions,
        settings=shop.shown,
        books=bid.books.files,
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def takeoff_json(bid: Bid, notes: tuple[str, ...]) -> str:
    """Write parts and work, each with its reason."""
    document = TakeoffDocument(
        schema="estimator-takeoff-2",
        job=_head(bid),
        blocked_by=_blocked_by(bid),
        takeoff=bid.takeoff,
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def shopping_json(bid: Bid, notes: tuple[str, ...]) -> str:
    """Write what to buy and what comes from the truck."""
    priced = [line.cost for line in bid.shopping if line.cost is not None]
    document = ShoppingDocument(
        schema="estimator-shopping-2",
        job=_head(bid),
        blocked_by=_blocked_by(bid),
        cost=sum(priced, Decimal(0)),
        unpriced_items=bid.price.unpriced_items,
        shopping=bid.shopping,
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def crew_json(bid: Bid, sheets: tuple[CrewSheet, ...], notes: tuple[str, ...]) -> str:
    """Write the crew sheet as it was told."""
    document = CrewDocument(
        schema="estimator-crew-1",
        job=_head(bid),
        blocked_by=_blocked_by(bid),
        sheets=sheets,
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def check_json(bid: Bid, notes: tuple[str, ...]) -> str:
    """Write every finding, worst first."""
    document = CheckDocument(
        schema="estimator-check-2",
        job=_head(bid),
        blocked_by=_blocked_by(bid),
        findings=bid.findings,
        assumptions=bid.assumptions,
        tests=dict(safety_list(bid.survey, bid.findings)),
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def change_json(order: ChangeOrder, workbook: str | None, notes: tuple[str, ...]) -> str:
    """Write a change order; `workbook` is where the file went, None where there is none."""
    document = ChangeDocument(
        schema="estimator-change-2",
        job=_head(order.after),
        workbook=workbook,
        stopped_by=order.stopped_by,
        why=order.why,
        materials_bought=order.materials_bought,
        bought=order.bought,
        facts=order.facts,
        lines=order.lines,
        items=order.items,
        rechecks=order.rechecks,
        price=order.price,
        total_anew=order.after.price.total,
        notes=notes,
    )
    return written(document, order.after.survey.job.units)


def compare_json(bid: Bid, notes: tuple[str, ...]) -> str:
    """Write the ways, and doing it yourself against each hire bid."""
    document = CompareDocument(
        schema="estimator-compare-1",
        job=_head(bid),
        blocked_by=_blocked_by(bid),
        routes=bid.routes,
        comparison=compare(bid),
        matters=matters(bid.survey.job.country),
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def range_json(bid: Bid, spread: PriceRange, notes: tuple[str, ...]) -> str:
    """Write how far hours and total may come out otherwise."""
    document = RangeDocument(
        schema="estimator-range-1",
        job=_head(bid),
        blocked_by=_blocked_by(bid),
        range=spread,
        unpriced_items=bid.price.unpriced_items,
        notes=notes,
    )
    return written(document, bid.survey.job.units)


def problems_json(problems: Iterable[Problem]) -> str:
    """Write what was wrong with the input."""
    return written(ProblemsDocument("estimator-problems-1", tuple(problems)))


def catalog_check_json(folder: str, warnings: Iterable[Problem]) -> str:
    """Write which books can be used, and what to look at in them."""
    return written(CatalogCheckDocument("estimator-catalog-check-1", folder, tuple(warnings)))


def catalog_json(books: Books, word: str) -> str:
    """Write the rows of the books that hold a word, in file order; all for an empty word."""
    rows = rows_with(books, word)
    document = CatalogDocument(
        schema="estimator-catalog-2",
        currency=books.shop.currency,
        books=books.files,
        materials=rows.materials,
        labor=rows.labor,
        accounts=rows.accounts,
        settings=rows.settings,
        origins=rows.origins,
    )
    return written(document)


def document_schema(name: str) -> dict[str, Any]:
    """Make the JSON Schema of the document that one command prints.

    Args:
        name: a key of `DOCUMENTS`, such as "bid".
    """
    record = DOCUMENTS[name]
    records = records_within(record)
    inner = {key: record_schema(each) for key, each in records.items() if each is not record}
    head = {"$schema": DIALECT, "title": f"estimator {name} --json"}
    return {**head, **record_schema(record), "$defs": {**inner, **measure_schemas()}}


def _head(bid: Bid) -> JobHead:
    job = bid.survey.job
    return JobHead(
        id=job.id,
        title=job.title,
        customer=job.customer,
        address=job.address,
        scope=job.scope,
        bid_date=job.bid_date,
        country=job.country,
        locale=job.locale,
        units=job.units,
        currency=bid.books.shop.currency,
        edition=job.edition,
        building_edition=job.building_edition,
    )


def _blocked_by(bid: Bid) -> tuple[str, ...]:
    return tuple(finding.finding_id for finding in bid.findings if finding.stops_the_bid)


def written(document: object, system: System = "us") -> str:
    """Write a document; letters beyond ASCII are escaped, so that any terminal carries them."""
    return json.dumps(shape_of(type(document), "").write(document, system), indent=2)
