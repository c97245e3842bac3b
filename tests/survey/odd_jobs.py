"""Odd values, and sound jobs with odd values in them, for tests that nothing breaks the readers."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from estimator.survey.records import Survey
from estimator.survey.shape import keys_at
from tests.survey.made_job import TEXT, values

SAMPLES = [
    path.read_text(encoding="utf-8")
    for path in sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
]

numbers = st.one_of(
    st.integers(),
    st.decimals(allow_nan=False, allow_infinity=False, places=2, min_value=-99, max_value=9999),
)
dates = st.one_of(st.just(date(2026, 3, 9)), st.just(datetime(2026, 3, 9, 1)), st.just(time(1)))
words = st.one_of(
    st.text(max_size=12),
    st.sampled_from(["unknown", "north", "source", "14-2", "wall", "12' 6\"", "2x4", "yes", "\0"]),
)
scalars = st.one_of(numbers, st.booleans(), words, dates)
SOME_KEYS = ("job", "walls", "boxes", "runs", "legs", "id", "wall", "length", "x", "from", "to")
KEYS = st.one_of(st.text(max_size=6), st.sampled_from(SOME_KEYS))
anything = st.recursive(
    scalars,
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(KEYS, inner, max_size=3)),
    max_leaves=8,
)
shapes = st.dictionaries(st.one_of(KEYS, st.sampled_from(list(Survey.model_fields))), anything)


def places(value: object, here: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Every place in nested values."""
    found = [here]
    if isinstance(value, dict | list):
        keys = value if isinstance(value, dict) else range(len(value))
        for key in keys:
            found += places(value[key], (*here, key))
    return found


def put(raw: dict[str, Any], place: tuple[Any, ...], new: object) -> None:
    """Set one place."""
    inner: Any = raw
    for key in place[:-1]:
        inner = inner[key]
    inner[place[-1]] = new


@st.composite
def mutants(draw: Callable[..., Any]) -> dict[str, Any]:
    """A sound job in which up to three places hold something else."""
    raw = values(draw(st.sampled_from([TEXT, *SAMPLES])))
    for _ in range(draw(st.integers(1, 3))):
        place = draw(st.sampled_from(places(raw)[1:]))
        put(raw, place, draw(anything))
    return raw


# What people may well write at each key, sound or not quite.
LENGTH_KEYS = (
    "length", "height", "x", "left", "right", "bottom", "top", "width", "tail", "hole", "edge",
    "spacing", "layout_from", "stud_depth", "trim_height", "finish_thickness", "below_floor",
    "out", "depth", "trim_length", "caulk_length", "corner_extra", "header_top", "at",
)  # fmt: skip
YES_KEYS = ("bearing", "exterior", "insulated", "clamps", "metal", "accessible", "occupied")
PLAUSIBLE: dict[str, list[Any]] = {
    **{key: ["unknown", 0, 1, 12, "5 ft", "1/16 in", 100, 500] for key in LENGTH_KEYS},
    **{key: ["yes", "no", "unknown"] for key in YES_KEYS},
    "finish": ["plaster", "unknown"],
    "framing": ["steel", "unknown"],
    "stud": ["2x3", "2x6", "unknown"],
    "volume": ["unknown", 1, 18, 100],
    "gangs": [1, 2, 3, 4],
    "device": ["switch", "luminaire", "none", "gfci receptacle", "three-way switch", "receptacle"],
    "device_rating": [15, 20, "unknown"],
    "mount": ["ceiling", "wall"],
    "existing": [True, False],
    "reuse_plate": [True, False],
    "unknown_cables": [True],
    "cables": [[], ["14-2"], ["14-2", "12-2"], ["12-3"] * 4],
    "cable": ["14-2", "12-2", "10-3"],
    "way": ["wall", "trim", "over", "under", "through"],
    "level": ["attic", "basement", "crawlspace"],
    "method": ["bored", "notched", "fished", "exposed"],
    "breaker": [15, 20, 60, "unknown"],
    "wire": ["14", "12", "8", "2.5 mm2", "unknown"],
    "edition": ["nec-2017", "nec-2020"],
    "country": ["GB", "us", "CA"],
    "scope": ["none", "closed", "taped", "painted"],
    "compound": ["setting", "drying"],
    "paint": ["wall", "spot", "none"],
    "fill": ["re-set", "new board", "mesh", "plaster"],
    "hidden": ["yes", "no", "partly"],
    "members": [0, 1, 8],
    "top_plates": [0, 1, 4],
    "trips": [0, 3],
    "labor_hours": [0, 1000],
    "from": ["source", "new", "A", "switch"],
    "to": ["source", "new", "B", "light"],
    "walls": [["south", "west"], ["north"]],
}


@st.composite
def plausible_jobs(draw: Callable[..., Any]) -> dict[str, Any]:
    """A sound job in which a few known keys hold something else, or are there or missing."""
    raw = values(draw(st.sampled_from([TEXT, *SAMPLES])))
    for _ in range(draw(st.integers(1, 4))):
        place, table = draw(st.sampled_from(_tables(raw)))
        keys = sorted(set(keys_at(place)) & set(PLAUSIBLE))
        if keys and draw(st.integers(0, 7)):
            key = draw(st.sampled_from(keys))
            table[key] = draw(st.sampled_from(PLAUSIBLE[key]))
        elif table:
            del table[draw(st.sampled_from(sorted(table)))]
    return raw


def _tables(raw: dict[str, Any]) -> list[tuple[tuple[str | int, ...], dict[str, Any]]]:
    """Every table of a job with its place, its lists of tables among them."""
    single = [((name,), each) for name, each in raw.items() if isinstance(each, dict)]
    return single + [
        ((name, number), row)
        for name, each in raw.items()
        if isinstance(each, list)
        for number, row in enumerate(each)
        if isinstance(row, dict)
    ]
