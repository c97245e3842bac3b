"""What one more outlet costs while the tools are out: the job estimated again with it.

The outlet is like the last new one of the job, fed from it by `price.one_more_path` of cable
that passes studs as often as the last run does. No opening is added for it, and no patch.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import ceil

from estimator.catalog.records import Books
from estimator.pricing.engine import estimate
from estimator.pricing.price_records import OneMore
from estimator.pricing.records import Bid
from estimator.pricing.ways import on_route, routes_of
from estimator.pricing.work import Work, work_out
from estimator.saying import said
from estimator.survey.electrical import Box, Leg, Run
from estimator.survey.records import Survey

NO_NEW_BOX = said("the job adds no outlet that another could be like")
BLOCKED = said("a finding stops the job itself")
UNPRICED = said("it takes parts that the book has no price for")
SAME = said("nothing more: the minimum charge covers both")


def one_more_outlet(survey: Survey, books: Books, bid: Bid | None = None) -> OneMore:
    """The difference of the totals with and without one more outlet.

    Args:
        survey: as the job file has it, not as a bid changed it.
        books: as for the bid.
        bid: of this very survey and books, where it has been worked out; else it is here.

    Raises:
        InputError: what no stage can go on with.
    """
    bid = bid or estimate(survey, books)
    here = on_route(survey, _route(survey, bid))
    last = _last_new(here)
    if last is None:
        return OneMore(None, NO_NEW_BOX)
    if any(each.stops_the_bid for each in bid.findings):
        return OneMore(None, BLOCKED)
    more = _with_stated(here, _with_one_more(here, *last, bid, books), books)
    work = work_out(more, books)
    why_not = _why_not(work, bid)
    if why_not:
        return OneMore(None, why_not)
    amount = work.price.total - bid.price.total
    path = books.shop.shown["price.one_more_path"]
    more_of_it = said(
        "like the last new outlet, {path} of cable further; no more opening or patching in it",
        path=path,
    )
    return OneMore(amount, more_of_it if amount else SAME)


def _route(survey: Survey, bid: Bid) -> str | None:
    """The way that was chosen; None for a job with one way."""
    chosen = next(option.route for option in bid.routes if option.chosen)
    return chosen if chosen in routes_of(survey) else None


def _last_new(survey: Survey) -> tuple[Run, Box] | None:
    """The last run that ends at a new box, and that box."""
    boxes = {box.id: box for box in survey.boxes}
    ends = [(run, boxes[run.to_box]) for run in survey.runs]
    return next(((run, box) for run, box in reversed(ends) if not box.existing), None)


def _why_not(work: Work, bid: Bid) -> str:
    """What stands against one more outlet; empty for nothing."""
    stops = [each for each in work.findings if each.stops_the_bid]
    if stops:
        return f"it would be stopped: {stops[0].title.lower()} ({stops[0].subject})"
    return UNPRICED if set(work.price.unpriced_items) - set(bid.price.unpriced_items) else ""


def _with_one_more(survey: Survey, run: Run, box: Box, bid: Bid, books: Books) -> Survey:
    path_in = books.shop.price.one_more_path_in
    count = next(each for each in bid.takeoff.runs if each.run_id == run.id)
    studs = ceil(count.studs * path_in / count.path_in) if count.path_in else 0
    new = box.model_copy(
        update={
            "id": _free(box.id, {each.id for each in survey.boxes}),
            "x_in": _beside(survey, box, path_in),
        }
    )
    leg = Leg.model_validate({"go": "along", "length": path_in, "studs": studs})
    cable = run.model_copy(
        update={
            "id": _free(run.id, {each.id for each in survey.runs}),
            "from_box": box.id,
            "to_box": new.id,
            "legs": (leg,),
            "way": None,
            "walls": (),
            "height_in": None,
            "level": None,
            "stapled_at": (),
            "trim_length_in": None,
            "caulk_length_in": None,
        }
    )
    return survey.model_copy(update={"boxes": (*survey.boxes, new), "runs": (*survey.runs, cable)})


def _free(name: str, taken: set[str]) -> str:
    """A name like this one that nothing has yet."""
    name = f"{name} and one more"
    while name in taken:
        name += " again"
    return name


def _beside(survey: Survey, box: Box, path_in: Fraction) -> Fraction | None:
    """Where on its wall it would be: to the right, else to the left; None where neither fits."""
    length_in = next((wall.length_in for wall in survey.walls if wall.id == box.wall), None)
    if box.x_in is None or length_in is None:
        return None
    places = (box.x_in + path_in, box.x_in - path_in)
    return next((place for place in places if 0 < place < length_in), None)


def _with_stated(before: Survey, after: Survey, books: Books) -> Survey:
    """Where the job states hours or materials: the same, and more by what the lists are more."""
    stated = before.overrides
    if stated.labor_hours is None and stated.materials_cost is None:
        return after
    listed = stated.model_copy(update={"labor_hours": None, "materials_cost": None})
    less, more = (
        work_out(survey.model_copy(update={"overrides": listed}), books)
        for survey in (before, after)
    )
    changes = {}
    if stated.labor_hours is not None:
        changes["labor_hours"] = stated.labor_hours + more.hours.charged - less.hours.charged
    if stated.materials_cost is not None:
        changes["materials_cost"] = stated.materials_cost + _listed(more) - _listed(less)
    return after.model_copy(update={"overrides": stated.model_copy(update=changes)})


def _listed(work: Work) -> Decimal:
    return work.price.materials_listed + work.price.small_items
