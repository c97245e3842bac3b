"""Several ways through one house: each taken off and priced alone, then ranked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal
from functools import partial

from estimator.money import show_money
from estimator.pricing.records import FindingCounts, RouteOption
from estimator.pricing.way_reasons import reasons_for
from estimator.pricing.work import Work
from estimator.rules.records import Finding
from estimator.survey.records import Survey

ONLY = "the only way"


def routes_of(survey: Survey) -> tuple[str | None, ...]:
    """Names of the ways, in the order the runs give them; None for a job with one way."""
    names = dict.fromkeys(run.route for run in survey.runs if run.route is not None)
    return tuple(names) or (None,)


def on_route(survey: Survey, route: str | None) -> Survey:
    """The survey with the runs and openings of one way, and those of no way in particular."""
    if route is None:
        return survey
    kept = (None, route)
    return survey.model_copy(
        update={
            "runs": tuple(run for run in survey.runs if run.route in kept),
            "openings": tuple(each for each in survey.openings if each.route in kept),
        }
    )


def ranked(
    works: Mapping[str | None, Work], chosen: str | None, currency: str, locale: str
) -> tuple[RouteOption, ...]:
    """Options by rank: those that no finding blocks first, then by cost of labor and materials.

    Args:
        works: each way worked out, by name.
        chosen: the way the job names, if any.
        currency: of the amounts in the reasons.
        locale: how they are written.
    """
    order = sorted(works.items(), key=lambda named: _rank(named[1]))
    pick = chosen if chosen in works else order[0][0]
    show = partial(show_money, currency=currency, locale=locale)
    reasons = reasons_for([(name or ONLY, work) for name, work in order], show)
    return tuple(
        _option(name, number, work, why, name == pick)
        for number, ((name, work), why) in enumerate(zip(order, reasons, strict=True), start=1)
    )


def _rank(work: Work) -> tuple[bool, bool, Decimal]:
    return bool(work.blocked_by), bool(work.price.unpriced_items), cost_of(work)


def cost_of(work: Work) -> Decimal:
    """Labor at the shop's rate and listed materials, before small items, markup and trips."""
    return work.price.labor + work.price.materials_listed


def _option(name: str | None, number: int, work: Work, why: str, chosen: bool) -> RouteOption:
    takeoff, price = work.takeoff, work.price
    return RouteOption(
        route=name or ONLY,
        rank=number,
        order_text=", ".join(f"{each.order} {each.unit} of {each.kind}" for each in takeoff.cable),
        members=sum(run.bored + run.notched for run in takeoff.runs),
        openings=takeoff.closing.openings,
        opening_in2=takeoff.closing.patch_in2,
        hours=price.labor_hours or price.hours_charged,
        labor=price.labor,
        materials=price.materials_listed,
        cost=cost_of(work),
        total=price.total,
        findings=finding_counts(work.findings),
        blocked_by=work.blocked_by,
        unpriced_items=price.unpriced_items,
        why=why,
        chosen=chosen,
    )


def finding_counts(findings: Iterable[Finding]) -> FindingCounts:
    """How many findings of each kind."""
    met = tuple(findings)
    fails = [each for each in met if each.verdict == "fail"]
    put_right = sum(each.remedied for each in fails)
    accepted = sum(bool(each.accepted) and not each.remedied for each in fails)
    return FindingCounts(
        failed=len(fails) - put_right - accepted,
        put_right=put_right,
        accepted=accepted,
        unknown=sum(each.verdict == "unknown" for each in met),
        notes=sum(each.verdict == "note" for each in met),
        passed=sum(each.verdict == "pass" for each in met),
    )
