"""Names in a job that nothing answers to: said, so that nobody trusts a line without effect."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.pricing.records import Bid


def stray_names(bid: Bid) -> tuple[str, ...]:
    """One line for each acceptance, override or truck stock that this bid has no use for.

    They are no errors: an accepted finding may be gone after a new measure, and the truck may
    hold what this job does not take.
    """
    return tuple(_strays(bid))


def _strays(bid: Bid) -> Iterator[str]:
    findings = {each.finding_id for each in bid.findings}
    for each in bid.survey.acceptances:
        if each.finding not in findings:
            yield f'acceptances: there is no finding "{each.finding}" in this job.'
    tasks = {line.task for line in bid.takeoff.tasks}
    for task in bid.survey.overrides.hours:
        if task not in tasks:
            yield f'overrides.hours: this job has no task "{task}".'
    items = {line.item for line in bid.takeoff.parts}
    for item in bid.survey.overrides.prices:
        if item not in items:
            yield f'overrides.prices: this job takes no item "{item}".'
    for stock in bid.survey.truck_stock:
        if stock.item not in items:
            yield f'truck_stock: this job takes no item "{stock.item}".'
