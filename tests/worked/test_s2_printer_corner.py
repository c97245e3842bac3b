"""S2, two outlets round an inside corner; worked by hand, with one round-up at the end.

The job as first written rounds each cut and orders 20 ft; the takeoff rounds once: 19 ft.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from tests.worked.job import box, cut_in, ft2, parts, places, run, tasks, worked

NAME = "printer-corner"


@pytest.mark.parametrize(
    ("run_id", "path", "cut"), [("1", 42 + 23, 42 + 6 + 23 + 20), ("2", 64 + 14, 78 + 20)]
)
def test_paths_and_cuts(run_id: str, path: int, cut: int) -> None:
    assert run(worked(NAME), run_id).path_in == path
    assert cut_in(worked(NAME), run_id) == cut


def test_order_is_rounded_up_once() -> None:
    order = worked(NAME).takeoff.cable[0]
    assert order.with_allowance_in == Fraction("217.35")  # (91 + 98) x 1.15
    assert (order.kind, order.order) == ("12-2", 19)


@pytest.mark.parametrize(("run_id", "studs", "corner"), [("1", 4, 2), ("2", 4, 0)])
def test_grid_studs_and_corner_members(run_id: str, studs: int, corner: int) -> None:
    count = run(worked(NAME), run_id)
    assert count.studs == studs
    assert dict(count.listed).get("corner stud", 0) == corner


@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("protection-plate", 2),
        ("cable-staple", 3),
        ("box-old-work-1g-20", 2),
        ("receptacle-15", 2),
        ("plate-receptacle-1g", 2),
        ("pigtail-12", 6),
        ("connector-medium", 6),
        ("joint-tape", Decimal("23.5")),
        ("compound-drying", Decimal("0.94")),
        ("primer", Decimal("0.06")),
        ("paint-wall", Decimal("0.891429")),
    ],
)
def test_parts(item: str, count: Decimal) -> None:
    assert parts(worked(NAME))[item] == count


def test_ten_holes() -> None:
    assert tasks(worked(NAME))["bore-member"] == 10


@pytest.mark.parametrize(
    ("box_id", "fill", "volume"), [("source", "15.75", "18.0"), ("A", "18.0", "20.0")]
)
def test_box_fill(box_id: str, fill: str, volume: str) -> None:
    found = box(worked(NAME), box_id)
    assert (found.fill_after, found.volume_in3) == (Decimal(fill), Decimal(volume))


def test_patch_prime_and_paint() -> None:
    closing = worked(NAME).takeoff.closing
    assert (closing.openings, ft2(closing.patch_in2)) == (2, Fraction("5.5"))
    assert closing.tape_in == 100 + 188 - 6
    assert (ft2(closing.prime_in2), ft2(closing.paint_in2)) == (18, 156)
    assert places(closing.paint_in3 / 231, 3) == Decimal("0.891")


def test_one_gallon_each_is_bought() -> None:
    bought = {line.item: line.packs for line in worked(NAME).shopping}
    for item in ("compound-drying", "paint-wall"):
        assert sum(pack.pack_size * pack.count for pack in bought[item]) == 1
