"""Contents of a box in a job file: names that must be on file, and what may be left out."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.problems import InputError
from tests.rules.box_case import job, survey


def refused(contents: dict[str, Any]) -> list[tuple[str, str, str]]:
    with pytest.raises(InputError) as caught:
        survey(job(old={"contents": contents}))
    return [(each.where, each.read, each.write) for each in caught.value.problems]


def test_a_standard_box_must_be_one_of_the_table() -> None:
    ((where, read, write),) = refused({"table_box": "DEV-52"})
    assert "boxes" in where and where.endswith("table_box")
    assert read == 'there is no standard box "DEV-52"'
    assert "DEV-25" in write


def test_the_cables_beside_a_barrier_must_be_on_file() -> None:
    side = {"cables": ["14-2", "14-4"]}
    ((where, read, _),) = refused({"barrier": "metal", "sides": [side]})
    assert "sides" in where
    assert read == 'there is no cable kind "14-4"'


def test_what_is_left_out_of_the_contents() -> None:
    inside = survey(job()).boxes[0].contents
    assert (inside.table_box, inside.added_volumes_in3, inside.barrier) == (None, (), "none")
    assert (inside.sides, inside.through_wire, inside.bonding_jumpers_count) == ((), None, 0)
    assert (inside.marked_weight_lb, inside.fan_rated, inside.yokes_count) == (
        None,
        "unknown",
        None,
    )


def test_a_side_of_a_barrier_as_it_is_written() -> None:
    written = {"gangs": 2, "device": "switch", "cables": ["14-2"], "takes_new": True}
    (side,) = survey(job(old={"contents": {"sides": [written]}})).boxes[0].contents.sides
    assert (side.gangs_count, side.device, side.cables, side.takes_new) == (
        2, "switch", ("14-2",), True,
    )  # fmt: skip
