"""The engine: a survey and the books in, a bid out; no file, clock or print inside."""

from __future__ import annotations

from decimal import Decimal

from estimator.catalog.records import Books
from estimator.pricing.assumed import subject_words, with_assumptions
from estimator.pricing.book_lines import book_lines
from estimator.pricing.local_bid import in_local_words
from estimator.pricing.records import Bid
from estimator.pricing.ways import ONLY, on_route, ranked, routes_of
from estimator.pricing.work import Work, work_out
from estimator.pricing.worst import if_it_turns_out_badly
from estimator.rules.records import Finding
from estimator.rules.remedies import is_taken
from estimator.saying import listed, lower, said
from estimator.survey.records import Survey


def estimate(survey: Survey, books: Books) -> Bid:
    """Work out a job.

    With several ways every one is worked out and ranked; the bid is for the one the job
    names, else for the best.

    Raises:
        InputError: what no stage can go on with, all of it that the stage found.
    """
    works = {route: work_out(on_route(survey, route), books) for route in routes_of(survey)}
    currency, job = books.shop.currency, survey.job
    options = ranked(works, job.route, currency, job.locale)
    name = next(option.route for option in options if option.chosen)
    route = None if name == ONLY and None in works else name
    work = works[route]
    second_total, why = _second_total(on_route(survey, route), work, books)
    two_totals = second_total is not None
    bid = Bid(
        survey=work.survey,
        books=books,
        takeoff=with_assumptions(work.survey, work.takeoff, work.findings, two_totals=two_totals),
        findings=work.findings,
        shopping=work.shopping,
        labor=work.labor,
        hours=work.hours,
        price=work.price,
        routes=options,
        book_lines=book_lines(work.price, books),
        second_total=second_total,
        second_total_why=why,
    )
    return in_local_words(bid)


def _second_total(survey: Survey, work: Work, books: Books) -> tuple[Decimal | None, str]:
    """The total in the bad case, and what would have to be so; None where it is the same."""
    bad, facts = if_it_turns_out_badly(survey)
    unknown = tuple(
        _said(survey, each)
        for each in work.findings
        if each.verdict == "unknown" and is_taken(each, bad_case=True)
    )
    facts += unknown
    if not facts:
        return None, ""
    screened = work.screened if bad is survey else None
    total = work_out(bad, books, bad_case=True, screened=screened).price.total
    if total == work.price.total:
        return None, ""
    return total, listed(facts, "; ")


def _said(survey: Survey, finding: Finding) -> str:
    """A finding in words: its rule, and what it is about where that is not the whole job."""
    where = subject_words(survey, [finding.subject])
    title = lower(finding.title)
    return said("{title} ({where})", title=title, where=where) if where else title
