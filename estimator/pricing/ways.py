"""Several ways through one house: each taken off and priced alone, then ranked."""

from __future__ import annotations

from decimal import Decimal

from estimator.pricing.records import RouteOption
from estimator.pricing.work import Work
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


def ranked(works: dict[str | None, Work], chosen: str | None) -> tuple[RouteOption, ...]:
    """Options by rank: those that no finding blocks first, then by cost of labor and materials."""
    order = sorted(works.items(), key=lambda named: _rank(named[1]))
    pick = chosen if chosen in works else order[0][0]
    return tuple(
        _option(name, number, work, name == pick)
        for number, (name, work) in enumerate(order, start=1)
    )


def _rank(work: Work) -> tuple[bool, bool, Decimal]:
    return bool(work.blocked_by), bool(work.price.unpriced_items), cost_of(work)


def cost_of(work: Work) -> Decimal:
    """Labor at the shop's rate and listed materials, before small items, markup and trips."""
    return work.price.labor + work.price.materials_listed


def _option(name: str | None, number: int, work: Work, chosen: bool) -> RouteOption:
    takeoff = work.takeoff
    return RouteOption(
        route=name or ONLY,
        rank=number,
        order_text=", ".join(f"{each.order} {each.unit} of {each.kind}" for each in takeoff.cable),
        members=sum(run.bored + run.notched for run in takeoff.runs),
        opening_in2=takeoff.closing.patch_in2,
        hours=work.hours.charged,
        cost=cost_of(work),
        total=work.price.total,
        blocked_by=work.blocked_by,
        chosen=chosen,
    )
