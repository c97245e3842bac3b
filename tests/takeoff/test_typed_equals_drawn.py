"""The quick form and drawn walls give the same takeoff for the same facts."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from estimator.pricing.ways import on_route, routes_of
from estimator.route.paths import run_paths
from estimator.route.records import PathLeg, RunPath
from estimator.survey.electrical import Leg, Run
from estimator.survey.reader import read_job
from estimator.survey.records import Survey
from estimator.takeoff.records import Takeoff
from estimator.takeoff.run_lines import trim_in
from tests.route.made_house import Table, box, house, room
from tests.takeoff.made_takeoff import taken

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def typed_leg(leg: PathLeg) -> Leg:
    """A drawn leg as a person would type what it passes."""
    corner = [each for each in leg.crossed if each.kind == "corner stud"]
    others: dict[str, int] = {}
    for each in leg.crossed:
        if each not in corner:
            others[each.kind] = others.get(each.kind, 0) + each.count
    return Leg.model_validate(
        {
            "go": leg.go, "length": leg.length_in, "method": leg.method, "studs": leg.studs,
            "members": others, "corners": leg.corners,
            "corner_members": sum(each.count for each in corner),
            "corner_edge": corner[0].edge_in if corner else None,
            "obstacles": leg.obstacles, "plates": leg.wall_plates,
            "floor_holes": leg.floor_holes,
        }
    )  # fmt: skip


def typed_run(made: RunPath) -> Run:
    """A drawn run in the quick form: its legs, the depth of its studs, its walls and its trim."""
    depths = {leg.depth_in for leg in made.legs if leg.wall}
    assert len(depths) <= 1
    walls = tuple(dict.fromkeys(leg.wall for leg in made.legs if leg.wall))
    return made.run.model_copy(
        update={
            "way": None,
            "height_in": None,
            "walls": walls,
            "legs": tuple(typed_leg(leg) for leg in made.legs),
            "stud_depth_in": next(iter(depths), None),
            "trim_length_in": trim_in(made) or None,
        }
    )


def typed(survey: Survey) -> Survey:
    """The same job with every run typed."""
    runs = tuple(typed_run(made) for made in run_paths(survey))
    return survey.model_copy(update={"runs": runs})


def figures(made: Takeoff) -> tuple[object, ...]:
    """A takeoff without its words."""
    parts = [
        (line.line_id, line.group, line.item, line.quantity, line.unit, line.where, line.remedy)
        for line in made.parts
    ]
    tasks = [
        (line.line_id, line.phase, line.task, line.quantity, line.unit, line.where,
         line.conditions, line.remedy)
        for line in made.tasks
    ]  # fmt: skip
    counts = [
        (run.path_in, run.studs, dict(run.listed), run.corners, run.obstacles, run.plates_pierced,
         run.protection_plates, run.staples, run.sealant, run.bored, run.notched)
        for run in made.runs
    ]  # fmt: skip
    return parts, tasks, counts, made.cable, made.boxes, made.closing, made.visits


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_typed_is_the_sample_drawn(path: Path) -> None:
    survey = read_job(path).survey
    for route in routes_of(survey):
        drawn = on_route(survey, route)
        assert figures(taken(typed(drawn))) == figures(taken(drawn))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_so_it_is_where_the_shop_plates_all_behind_trim(path: Path) -> None:
    survey = read_job(path).survey
    for route in routes_of(survey):
        drawn = on_route(survey, route)
        practice: Table = {"plate_behind_trim_always": True, "allowance_pct": Decimal("7.5")}
        assert figures(taken(typed(drawn), **practice)) == figures(taken(drawn, **practice))


inches = st.integers(0, 144 * 4).map(lambda quarters: f"{quarters}/4 in")
small = st.integers(1, 90)
maybe_layout = st.one_of(st.just("unknown"), st.integers(0, 16))
WAYS: list[Table] = [
    {"way": "wall"}, {"way": "wall", "height": 60}, {"way": "trim", "height": 3},
    {"way": "over", "height": 92}, {"way": "over", "level": "attic"},
    {"way": "under", "level": "crawlspace"},
]  # fmt: skip
LEVELS = [{"kind": "attic", "height": 100}, {"kind": "crawlspace", "below_floor": 10}]
NAMES = ("n0", "n1", "n2", "n3")


@st.composite
def houses(draw: Callable[..., Any]) -> Survey:
    """A room with studs, a door, members, obstacles, and one or two runs of any way."""
    walls = room(156, 144, 156, 144)
    stud = draw(st.sampled_from(["2x3", "2x4", "2x6"]))
    finish = draw(st.sampled_from(["gypsum board", "plaster"]))
    more = {"stud": stud, "finish": finish, "layout_from": draw(maybe_layout)}
    on = st.sampled_from(NAMES)
    ends = [
        box(name, draw(on), draw(inches), draw(small), existing=name == "a",
            cables=["14-2"] * (name == "a"), metal=draw(st.sampled_from(["yes", "no"])))
        for name in "abc"
    ]  # fmt: skip
    runs = [
        {"id": one, "from": one, "to": two, "cable": "14-2", "tail": draw(st.integers(6, 12)),
         "method": draw(st.sampled_from(["bored", "notched", "fished", "exposed"])),
         "hole": draw(st.sampled_from(["3/4 in", "1-1/8 in"]))} | draw(st.sampled_from(WAYS))
        for one, two in ("ab", "bc")
    ]  # fmt: skip
    return house(
        walls=[wall | more for wall in walls["walls"]],
        corners=[each | {"members": draw(st.integers(0, 4))} for each in walls["corners"]],
        doors=[{"wall": draw(on), "left": 60, "width": 30, "height": 80, "header_top": 90,
                "kings": [58, 92], "jacks": [59, 91]}],
        tees=[{"wall": draw(on), "at": draw(inches), "members": draw(st.integers(0, 3))}],
        members=[{"wall": draw(on), "kind": "nog", "height": draw(small)},
                 {"wall": draw(on), "kind": "block", "height": draw(small)}],
        obstacles=[{"wall": draw(on), "kind": "pipe", "left": 40, "right": 44, "bottom": 0,
                    "top": draw(small)}],
        openings=[{"id": "o", "wall": draw(on), "left": 20, "right": 60, "bottom": 0,
                   "top": draw(small)}],
        levels=LEVELS, boxes=ends, runs=runs,
    )  # fmt: skip


@settings(max_examples=120, deadline=None)
@given(drawn=houses(), always=st.booleans())
def test_any_house_typed_is_the_house_drawn(drawn: Survey, always: bool) -> None:
    assume(all(made.legs for made in run_paths(drawn)))
    practice: Table = {"plate_behind_trim_always": always}
    assert figures(taken(typed(drawn), **practice)) == figures(taken(drawn, **practice))
