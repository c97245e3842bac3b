"""S7, outlet to switch to ceiling light by the attic; worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from tests.worked.job import box, cut_in, parts, run, tasks, worked

NAME = "closet-light"


@pytest.mark.parametrize(
    ("run_id", "path", "cut"), [("a", 33 + 6, 63), ("b", 52 + 26 + 44 + 4, 150)]
)
def test_paths_and_cuts(run_id: str, path: int, cut: int) -> None:
    assert run(worked(NAME), run_id).path_in == path
    assert cut_in(worked(NAME), run_id) == cut


def test_order() -> None:
    order = worked(NAME).takeoff.cable[0]
    assert order.with_allowance_in == Fraction("234.3")
    assert (order.kind, order.order) == ("14-2", 20)


def test_two_plates_by_one_hole_and_no_studs() -> None:
    counts = [run(worked(NAME), each) for each in "ab"]
    assert [count.studs for count in counts] == [0, 0]
    assert (counts[1].plates_pierced, counts[1].plate_holes) == (2, 1)
    assert tasks(worked(NAME))["bore-plate"] == 1


@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("protection-plate", 0),
        ("firestop-sealant", 1),
        ("cable-staple", 2),
        ("box-old-work-1g-20", 1),
        ("box-ceiling-old-work-14", 1),
        ("switch-1p", 1),
        ("plate-switch-1g", 1),
        ("luminaire-ceiling", 1),
        ("pigtail-14", 4),
        ("joint-tape", 0),
    ],
)
def test_parts(item: str, count: int) -> None:
    assert parts(worked(NAME))[item] == count


@pytest.mark.parametrize(
    ("box_id", "pigtails", "joints"),
    [("source", 3, (4, 4, 4)), ("switch", 1, (2, 3)), ("light", 0, (2, 2, 2))],
)
def test_joints(box_id: str, pigtails: int, joints: tuple[int, ...]) -> None:
    found = box(worked(NAME), box_id)
    assert (found.pigtails, found.joints) == (pigtails, joints)


def test_eight_connectors_in_all() -> None:
    found = parts(worked(NAME))
    assert sum(found[f"connector-{size}"] for size in ("small", "medium", "large")) == 8


@pytest.mark.parametrize(
    ("box_id", "fill", "volume"), [("source", "18.0", "18.0"), ("switch", "16.0", "20.0")]
)
def test_box_fill(box_id: str, fill: str, volume: str) -> None:
    found = box(worked(NAME), box_id)
    assert (found.fill_after, found.volume_in3) == (Decimal(fill), Decimal(volume))


def test_nothing_to_patch() -> None:
    assert worked(NAME).takeoff.closing.patch_in2 == 0
