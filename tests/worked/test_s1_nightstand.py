"""S1, the nightstand outlet behind the baseboard; every figure worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from tests.worked.job import box, changed, cut_in, ft2, parts, run, tasks, verdicts, worked

NAME = "nightstand"


def test_path_is_down_across_and_up() -> None:
    assert run(worked(NAME), "1").path_in == 12 + 71 + 12


def test_cut_and_order() -> None:
    order = worked(NAME).takeoff.cable[0]
    assert cut_in(worked(NAME), "1") == 119
    assert order.with_allowance_in == Fraction("130.9")
    assert (order.kind, order.order, order.unit) == ("14-2", 11, "ft")


@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("cable-14-2", 11),
        ("box-old-work-1g-20", 1),
        ("receptacle-15", 1),
        ("plate-receptacle-1g", 1),
        ("cable-clamp", 0),
        ("pigtail-14", 3),
        ("connector-medium", 3),
        ("cable-staple", 2),
        ("protection-plate", 0),
        ("caulk", 12),
        ("joint-tape", 0),
        ("compound-drying", 0),
        ("primer", 0),
        ("paint-wall", 0),
    ],
)
def test_parts(item: str, count: int) -> None:
    assert parts(worked(NAME))[item] == count


@pytest.mark.parametrize(("task", "amount"), [("bore-member", 4), ("trim-off-on", 12)])
def test_tasks(task: str, amount: int) -> None:
    assert tasks(worked(NAME))[task] == amount


def test_four_studs_and_no_plate() -> None:
    count = run(worked(NAME), "1")
    assert (count.studs, count.listed, count.protection_plates) == (4, (), 0)


def test_a_plate_for_each_member_where_the_shop_always_plates_behind_trim() -> None:
    always = ("[finish]", "[settings.practice]\nplate_behind_trim_always = true\n\n[finish]")
    assert parts(changed(NAME, always))["protection-plate"] == 4


def test_source_is_filled_to_its_limit_and_passes() -> None:
    source = box(worked(NAME), "source")
    assert (source.fill_before, source.fill_after) == (Decimal("14.0"), Decimal("18.0"))
    assert source.volume_in3 == Decimal("18.0")
    assert verdicts(worked(NAME))["box-fill:source"] == "pass"


def test_the_strip_is_all_behind_trim() -> None:
    closing = worked(NAME).takeoff.closing
    assert ft2(closing.patch_in2) == Fraction("2.28125")
    assert (closing.openings, closing.visible_openings) == (1, 0)
    assert (closing.tape_in, closing.prime_in2, closing.paint_in2) == (0, 0, 0)
