"""What holds of any run: seen from its other end, in a mirror, and as the crow flies."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.route.paths import run_paths
from estimator.route.plan import spread
from estimator.survey.records import Survey
from tests.route.made_house import Table, box, house, met, path, room

LENGTH = 240

eighths = st.integers(0, LENGTH * 8).map(lambda number: Fraction(number, 8))
heights = st.integers(1, 90)
spacings = st.sampled_from([Fraction(16), Fraction(24), Fraction(96, 5), Fraction(3000, 127)])


def _spans(draw: Callable[..., Any]) -> tuple[Fraction, Fraction]:
    left, right = sorted((draw(eighths), draw(eighths)))
    return left, right


@st.composite
def walls(draw: Callable[..., Any]) -> Table:
    """One wall with studs, a window, members, a tee and obstacles, all in fractions of an inch."""
    left, right = _spans(draw)
    pipe = _spans(draw)
    step = draw(spacings)
    bottom = draw(heights)
    return {
        "length": Fraction(LENGTH),
        "spacing": step,
        "first": draw(st.one_of(st.none(), eighths)),
        "gap": (left, max(Fraction(1), right - left), bottom, draw(heights)),
        "uprights": draw(st.lists(eighths, max_size=3)),
        "kings": (left - 2, right + 3),
        "nogs": draw(st.lists(st.tuples(heights, eighths, eighths), max_size=2)),
        "tee": draw(eighths),
        "pipe": (*pipe, 0, draw(heights)),
        "run": draw(heights),
        "ends": (draw(eighths), draw(heights), draw(eighths), draw(heights)),
    }  # fmt: skip


def _in_wall(x: Fraction) -> Fraction:
    return min(max(x, Fraction(0)), Fraction(LENGTH))


def drawn(made: Table) -> Survey:
    """The house of a drawn-up wall."""
    left, width, bottom, height = made["gap"]
    pipe_left, pipe_right, low, high = made["pipe"]
    from_x, from_height, to_x, to_height = made["ends"]
    first = "unknown" if made["first"] is None else made["first"]
    wall = {"id": "w", "length": made["length"], "spacing": made["spacing"], "layout_from": first}
    return house(
        walls=[wall],
        windows=[{"wall": "w", "left": left, "width": width, "bottom": bottom, "height": height,
                  "kings": [_in_wall(each) for each in made["kings"]]}],
        members=[{"wall": "w", "kind": "post", "at": each} for each in made["uprights"]]
        + [{"wall": "w", "kind": "nog", "height": high, "from": min(one, two), "to": max(one, two)}
           for high, one, two in made["nogs"]],
        tees=[{"wall": "w", "at": made["tee"]}],
        obstacles=[{"wall": "w", "kind": "pipe", "left": pipe_left, "right": pipe_right,
                    "bottom": low, "top": high}],
        boxes=[box("a", "w", from_x, from_height), box("b", "w", to_x, to_height)],
        run={"height": made["run"]},
    )  # fmt: skip


def mirrored(made: Table) -> Table:
    """The same wall seen from behind: every x counts from the other end."""
    length, first, step = made["length"], made["first"], made["spacing"]
    left, width, *gap = made["gap"]
    pipe_left, pipe_right, *pipe = made["pipe"]
    from_x, from_height, to_x, to_height = made["ends"]
    return made | {
        "first": None if first is None else (length - first) % step,
        "gap": (length - left - width, width, *gap),
        "uprights": [length - each for each in made["uprights"]],
        "kings": tuple(length - each for each in made["kings"]),
        "nogs": [(high, length - one, length - two) for high, one, two in made["nogs"]],
        "tee": length - made["tee"],
        "pipe": (length - pipe_right, length - pipe_left, *pipe),
        "ends": (length - from_x, from_height, length - to_x, to_height),
    }


def turned_round(made: Table) -> Table:
    """The same run laid from its other end."""
    from_x, from_height, to_x, to_height = made["ends"]
    return made | {"ends": (to_x, to_height, from_x, from_height)}


def seen(survey: Survey) -> tuple[object, ...]:
    """Path, members, obstacles and what blocks it: all that must not depend on how one looks."""
    made = path(survey)
    blocked = {leg.passes_gap for leg in made.legs} - {""}
    return made.path_in, met(made), sum(leg.obstacles for leg in made.legs), blocked


@settings(max_examples=200, deadline=None)
@given(walls())
def test_from_the_other_end_a_run_is_the_same(made: Table) -> None:
    assert seen(drawn(made)) == seen(drawn(turned_round(made)))


@settings(max_examples=200, deadline=None)
@given(walls())
def test_in_a_mirror_a_run_is_the_same(made: Table) -> None:
    assert seen(drawn(made)) == seen(drawn(mirrored(made)))


@settings(max_examples=200, deadline=None)
@given(walls())
def test_no_run_is_shorter_than_the_crow_flies(made: Table) -> None:
    from_x, from_height, to_x, to_height = made["ends"]
    path_in = path(drawn(made)).path_in
    assert path_in >= abs(from_x - to_x) + abs(from_height - to_height)


ROOM = room(156, 144, 156, 144)
places = st.tuples(st.sampled_from(["n0", "n1", "n2", "n3"]), st.integers(0, 144), heights)


@settings(max_examples=200, deadline=None)
@given(start=places, end=places, high=heights, run=st.sampled_from(["wall", "over", "under"]))
def test_round_a_room_and_back_is_the_same(
    start: tuple[str, int, int], end: tuple[str, int, int], high: int, run: str
) -> None:
    """And no way along the walls is shorter than straight across the floor."""
    ways: dict[str, Table] = {
        "wall": {"way": "wall", "height": high},
        "over": {"way": "over", "level": "attic", "method": "fished"},
        "under": {"way": "under", "level": "crawlspace", "method": "fished"},
    }
    levels = [{"kind": "attic", "height": 100}, {"kind": "crawlspace", "below_floor": 10}]
    there, back = (
        house(boxes=[box("a", *one), box("b", *two)], run=ways[run], levels=levels, **ROOM)
        for one, two in ((start, end), (end, start))
    )
    assert seen(there)[:2] == seen(back)[:2]
    floor = spread(there, there.boxes[0], there.boxes[1])
    assert floor is not None
    assert run_paths(there)[0].path_in >= sum(floor)
