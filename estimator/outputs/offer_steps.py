"""Steps of the price build-up from trips to the price before tax."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.outputs import looks
from estimator.outputs.cells import formula, number
from estimator.outputs.draft import Draft, percent, price
from estimator.outputs.price_step import Step, by_word, choice, rate, text

GOVERNS = "The larger of the two: the minimum charge governs."
DOES_NOT_GOVERN = "The larger of the two: the built-up price governs."
LABOR, BUILT_UP = "labor", "built-up"
CONTINGENCY_ON = {
    LABOR: "a share of the labor",
    BUILT_UP: "a share of labor, materials, trips, overhead and profit",
}
PERCENT, CONFIDENCE = "percent", "confidence"
CONTINGENCY_FROM = {
    PERCENT: "the percentage below",
    CONFIDENCE: "an amount read off the range of the job, a stored figure",
}
SHOWN = {
    "yes": "a line of its own on the Bid",
    "no": "inside the price: the Bid shows no line for it",
}
NEAREST, UP = "nearest", "up"
OFFER_ROUNDING = {
    NEAREST: "to the nearest multiple, never below the minimum",
    UP: "up to the next multiple",
}
_FINE = 6


def offer_steps(draft: Draft) -> Iterator[Step]:
    """Trips, overhead, profit, contingency, minimum, rounding of the offer."""
    yield from _base(draft)
    yield from _overhead(draft)
    yield from _contingency(draft)
    yield from _offered(draft)


def before_tax_steps(draft: Draft) -> Iterator[Step]:
    """What stands beside the price offered: allowances, and the permit."""
    build = draft.bid.price
    names = []
    for at, each in enumerate(build.allowances, start=1):
        names.append(f"allowance_{at}")
        yield rate(names[-1], f"Allowance: {each.name}", price(each.amount), each.kind)
    together = draft.money("+".join(names) or "0", build.allowances_total)
    yield Step("allowances", "Allowances", together, "sums for what is not chosen yet")
    how = "charged by the permit office"
    yield rate("permit_cost", "Permit", price(build.permit_cost), how)
    handling = price(build.permit_handling)
    yield rate("permit_handling", "Handling of the permit", handling, "for getting it")
    before = "offered+allowances+permit_cost+permit_handling"
    how = "price offered + allowances + permit + handling"
    yield Step("before_tax", "Price before tax", draft.money(before, build.before_tax), how)


def _base(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    visits = number(build.trips_count - build.permit_visits)
    yield rate("work_trips", "Trips for the work", visits, "visits to the job")
    permit = number(build.permit_visits)
    yield rate("permit_trips", "Trips for the permit", permit, "to meet the inspector")
    count = formula("work_trips+permit_trips", build.trips_count)
    yield rate("trip_count", "Trips", count, "added up")
    yield rate("trip_charge", "Charge for one trip", price(build.trip_charge))
    trips = draft.money(draft.round_to("trip_count*trip_charge"), build.trips)
    yield Step("trips_amount", "Trips", trips, "trips x charge")
    base = draft.money("labor_amount+materials_sold+trips_amount+supply_run", build.base)
    yield Step("base_amount", "Labor, materials, trips, supply run", base, "added up")


def _overhead(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    yield rate("overhead_rate", "Overhead", percent(build.overhead_pct), "on the line above")
    overhead = draft.money(draft.round_to("base_amount*overhead_rate"), build.overhead)
    yield Step("overhead_amount", "Overhead", overhead, "the same x overhead")
    yield rate("profit_rate", "Profit", percent(build.profit_pct), "on these and the overhead")
    profit = draft.money(draft.round_to("(base_amount+overhead_amount)*profit_rate"), build.profit)
    yield Step("profit_amount", "Profit", profit, "(the same + overhead) x profit")


def _contingency(draft: Draft) -> Iterator[Step]:
    """What is put by for what may be found: a share, or read off the range."""
    found = draft.bid.price.contingency
    yield choice("contingency_from", "Contingency from", found.source, CONTINGENCY_FROM)
    yield rate("contingency_rate", "Contingency share", percent(found.pct), "for what may be found")
    yield choice("contingency_on", "Contingency on", found.on, CONTINGENCY_ON)
    on = by_word(
        "contingency_on",
        {LABOR: "labor_amount", BUILT_UP: "base_amount+overhead_amount+profit_amount"},
    )
    basis = draft.money(on, found.basis_amount)
    yield Step("contingency_basis", "Contingency is a share of", basis, "as the word above says")
    typed = price(found.amount if found.source == CONFIDENCE else found.amount * 0)
    how = "used only with the word confidence"
    yield rate("contingency_stored", "Contingency, if read off", typed, how)
    shares = draft.round_to("contingency_basis*contingency_rate")
    amount = by_word("contingency_from", {CONFIDENCE: "contingency_stored", PERCENT: shares})
    yield Step("contingency", "Contingency", draft.money(amount, found.amount), "basis x share")
    shown = "yes" if found.shown else "no"
    yield choice("contingency_shown", "Contingency on the Bid", shown, SHOWN)


def _offered(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    parts = "base_amount+overhead_amount+profit_amount+contingency"
    yield Step("built_up", "Built-up price", draft.money(parts, build.built_up), "added up")
    least = price(build.minimum_charge)
    yield rate("minimum_charge", "Minimum charge", least, "the least a job costs")
    floor = draft.round_to("minimum_charge")
    more = draft.money(f"MAX(0,{floor}-built_up)", build.offered - build.offer_rounding
                       - build.built_up)  # fmt: skip
    governs = formula(
        f"IF(minimum_step>0,{text(GOVERNS)},{text(DOES_NOT_GOVERN)})",
        GOVERNS if build.minimum_governs else DOES_NOT_GOVERN,
        looks.TEXT,
    )
    yield Step("minimum_step", "Step up to the minimum", more, governs)
    step = price(build.offer_step)
    yield rate("offer_step", "The offer is a multiple of", step, "0: it is not rounded")
    yield choice("offer_rounding_how", "Rounding of the offer", build.offer_rounding_how,
                 OFFER_ROUNDING)  # fmt: skip
    moved = draft.money(_moved(floor), build.offer_rounding)
    yield Step("offer_rounding", "Rounding of the offer", moved, "to the multiple")
    offered = draft.money("built_up+minimum_step+offer_rounding", build.offered)
    yield Step("offered", "Price offered", offered, "built-up + minimum + rounding")


def _moved(floor: str) -> str:
    """How far rounding moves the offer; a nearest multiple below the floor is not taken."""
    before = "(built_up+minimum_step)"
    steps = f"ROUND({before}/offer_step,{_FINE})"
    up = f"ROUNDUP({steps},0)*offer_step"
    near = f"ROUND({steps},0)*offer_step"
    nearest = f"IF(({near}<{floor})+({near}=0)>0,{up},{near})"
    return (
        f"IF(offer_step=0,0,{by_word('offer_rounding_how', {UP: up, NEAREST: nearest})}-{before})"
    )
