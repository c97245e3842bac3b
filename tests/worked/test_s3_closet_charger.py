"""S3, back to back through a partition, with a minimum charge; worked by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tests.worked.job import box, changed, cut_in, parts, run, tasks, verdicts, worked

NAME = "closet-charger"


def test_path_cut_and_order() -> None:
    order = worked(NAME).takeoff.cable[0]
    assert (run(worked(NAME), "1").path_in, cut_in(worked(NAME), "1")) == (5, 29)
    assert (order.kind, order.order) == ("14-2", 3)


@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("box-old-work-1g-22.5", 1),
        ("box-old-work-1g-14", 1),
        ("receptacle-15", 1),
        ("plate-receptacle-1g", 1),
        ("pigtail-14", 3),
        ("connector-medium", 3),
        ("protection-plate", 0),
        ("cable-staple", 0),
        ("joint-tape", 0),
    ],
)
def test_parts(item: str, count: int) -> None:
    assert parts(worked(NAME))[item] == count


def test_no_member_is_crossed() -> None:
    assert run(worked(NAME), "1").bored == 0
    assert tasks(worked(NAME))["bore-member"] == 0


def test_the_old_box_was_over_and_is_replaced() -> None:
    hall = box(worked(NAME), "hall")
    assert (hall.fill_before, hall.old_volume_in3) == (Decimal("16.0"), Decimal("12.5"))
    assert (hall.fill_after, hall.volume_in3) == (Decimal("20.0"), Decimal("22.5"))
    assert hall.replaced


def test_the_larger_box_is_marked_as_the_finding_s_remedy() -> None:
    lines = [line for line in worked(NAME).takeoff.parts if line.remedy]
    assert [(line.item, line.remedy) for line in lines] == [
        ("box-old-work-1g-22.5", "box-fill:hall")
    ]


def test_declined_remedy_leaves_the_box_and_fails() -> None:
    declined = '[[acceptances]]\nfinding = "box-fill:hall"\nreason = "owner"\n'
    declined += 'decision = "decline remedy"\n\n[finish]'
    bid = changed(NAME, ("[finish]", declined))
    assert verdicts(bid)["box-fill:hall"] == "fail"
    assert parts(bid)["box-old-work-1g-22.5"] == 0


def test_new_box_fill() -> None:
    assert box(worked(NAME), "closet").fill_after == Decimal("12.0")


def test_price_to_the_cent_and_that_the_minimum_governs() -> None:
    price = worked(NAME).price
    assert (price.labor, price.materials_sell) == (Decimal("148.75"), Decimal("36.92"))
    assert price.built_up == Decimal("185.67")
    assert (price.total, price.minimum_governs) == (Decimal("225.00"), True)
