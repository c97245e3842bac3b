"""Small houses to lay runs in, and what a run meets on its way."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from typing import Any

from estimator.route.paths import run_paths
from estimator.route.records import PathLeg, RunPath
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey

Table = dict[str, Any]

WALL: Table = {"id": "w", "length": 240, "height": 96, "spacing": 16, "layout_from": 16}
JOB: Table = {"id": "J", "title": "made"}


def house(
    from_x: object = 20, to_x: object = 92, *, height: object = 15, run: Table | None = None,
    **tables: Any,
) -> Survey:  # fmt: skip
    """One wall with a grid of studs every 16 in, a box at each end of one run; tables go before."""
    raw: Table = {
        "job": JOB,
        "walls": [WALL | {"stud": "2x4"}],
        "boxes": [
            {"id": "a", "existing": True, "wall": "w", "x": from_x, "height": height,
             "cables": ["14-2"]},
            {"id": "b", "wall": "w", "x": to_x, "height": height},
        ],
        "runs": [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "way": "wall",
                  "method": "bored"} | (run or {})],
    }  # fmt: skip
    return survey_from(raw | tables)


def path(survey: Survey) -> RunPath:
    """The first run as it goes."""
    return run_paths(survey)[0]


def met(made: RunPath) -> dict[str, int]:
    """Members of each kind along a run, grid studs among them; kinds not met are left out."""
    kinds = Counter({"stud": sum(leg.studs for leg in made.legs)})
    for leg in made.legs:
        kinds.update({each.kind: each.count for each in leg.crossed})
    return {kind: number for kind, number in kinds.items() if number}


def lengths(made: RunPath) -> list[Fraction]:
    """Length of each leg in order, inches."""
    return [leg.length_in for leg in made.legs]


def goes(made: RunPath) -> list[str]:
    return [leg.go for leg in made.legs]


def level_part(made: RunPath) -> PathLeg:
    """The one leg along the wall."""
    (leg,) = (leg for leg in made.legs if leg.go == "along")
    return leg


def room(*sizes: int, kind: str = "inside") -> Table:
    """Walls n0, n1 ... of these lengths round a room to the right, joined all the way round."""
    names = [f"n{number}" for number in range(len(sizes))]
    walls = [WALL | {"id": name, "length": size} for name, size in zip(names, sizes, strict=True)]
    following = [*names[1:], names[0]]
    corners = [
        {"walls": [left, right], "kind": kind} for left, right in zip(names, following, strict=True)
    ]
    return {"walls": walls, "corners": corners}


def box(name: str, wall: str, x: object, height: object = 15, **more: Any) -> Table:
    """A box on a wall."""
    return {"id": name, "wall": wall, "x": x, "height": height} | more
