"""Random houses under every rule at once: none raises, and the order of the tables tells nothing.

What holds is a property of the survey, so no expected figure is needed: a job file with its
boxes, runs and walls in another order is the same job.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.catalog.books import read_books
from estimator.pricing.stock import stock_of
from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.screen import screen
from estimator.survey.reader import survey_from
from estimator.takeoff.take_off import take_off

BOOKS = read_books(Path(__file__).parents[2] / "catalogs")
Raw = dict[str, Any]
UNKNOWN = "unknown"
YES_NO = st.sampled_from(["yes", "no", UNKNOWN])
CABLES = st.sampled_from(["14-2", "14-3", "12-2", "10-3"])
DEVICES = st.sampled_from(["receptacle", "gfci receptacle", "switch", "three-way switch",
                           "luminaire", "none"])  # fmt: skip
USES = st.sampled_from(["bedroom", "bathroom", "kitchen", "garage", "hall", "outdoors", "n-room"])
CIRCUIT = st.fixed_dictionaries(
    {"breaker": st.sampled_from([10, 15, 20, 30, UNKNOWN]),
     "wire": st.sampled_from(["14", "12", "10", "2.5", UNKNOWN]),
     "material": st.sampled_from(["copper", "aluminum", UNKNOWN]),
     "kind": st.sampled_from(["general", "bathrooms", "laundry", UNKNOWN]),
     "grounded": YES_NO, "multiwire": YES_NO, "handle_tie": YES_NO},
    optional={"protection": st.sampled_from([[], ["afci"], ["afci", "gfci"]])},
)  # fmt: skip
BOX = st.fixed_dictionaries(
    {"device": DEVICES, "clamps": YES_NO, "metal": YES_NO, "mount": st.just("wall"),
     "gangs": st.integers(1, 2), "depth": st.sampled_from(["2 in", "2-3/4 in", UNKNOWN]),
     "contents": st.fixed_dictionaries({"setback": st.sampled_from(["0 in", "1 in", UNKNOWN]),
                                        "wires_per_screw": st.sampled_from([1, 2, UNKNOWN]),
                                        "always_live": YES_NO, "ground_present": YES_NO}),
     "spot": st.fixed_dictionaries({"moisture": st.sampled_from(["dry", "wet", UNKNOWN]),
                                    "sink_distance": st.sampled_from(["3 ft", "9 ft", UNKNOWN]),
                                    "readily_accessible": YES_NO})},
)  # fmt: skip
SEEN = st.fixed_dictionaries(
    {"volume": st.sampled_from(["12.5 in3", "18 in3", "34 in3", UNKNOWN]),
     "cables": st.lists(CABLES, max_size=3)},
)  # fmt: skip
WALL = st.fixed_dictionaries(
    {"stud": st.sampled_from(["2x4", "2x6", UNKNOWN]), "bearing": YES_NO, "insulated": YES_NO,
     "exterior": YES_NO, "finish": st.sampled_from(["gypsum board", "plaster", UNKNOWN]),
     "room": USES, "fire_rated": YES_NO, "hidden_lines": YES_NO,
     "height": st.sampled_from(["8 ft", UNKNOWN])},
)  # fmt: skip
RUN = st.fixed_dictionaries(
    {"cable": CABLES, "method": st.sampled_from(["bored", "fished", "notched"]),
     "bundled": st.integers(1, 5), "in_insulation": YES_NO},
)  # fmt: skip


@st.composite
def houses(draw: st.DrawFn) -> Raw:
    """Two walls, an old box on each, two new ones fed one through the other or both from one."""
    walls = [{"id": each, "length": "20 ft"} | draw(WALL) for each in ("north", "south")]
    boxes = [
        {"id": name, "wall": wall, "x": x, "height": "15 in"} | draw(BOX)
        for name, wall, x in (("old", "north", "20 in"), ("other", "south", "30 in"),
                              ("one", "north", "90 in"), ("two", "north", "150 in"))
    ]  # fmt: skip
    for each in boxes[:2]:
        each.update({"existing": True} | draw(SEEN))
    start = draw(st.sampled_from(["old", "one"]))
    runs = [
        {"id": "1", "from": "old", "to": "one", "way": "wall"} | draw(RUN),
        {"id": "2", "from": start, "to": "two", "way": "wall"} | draw(RUN),
    ]
    job = {"id": "1", "title": "Random", "year_built": draw(st.sampled_from([1950, 1990, UNKNOWN])),
           "edition": draw(st.sampled_from(["nec-2017", "nec-2020", "nec-2023"])),
           "country": draw(st.sampled_from(["US", "US", "CA", "GB"]))}  # fmt: skip
    return {"job": job, "circuit": draw(CIRCUIT), "walls": walls, "boxes": boxes, "runs": runs}


def verdicts(raw: Raw) -> dict[str, str]:
    """The verdict of every finding by its id; no id twice, no finding without its words."""
    survey, practice = survey_from(raw), BOOKS.shop.practice
    paths = run_paths(survey)
    takeoff = take_off(survey, paths, practice, stock_of(BOOKS))
    hours = {task: row.hours_likely for task, row in BOOKS.labor.items()}
    found = screen(Facts(survey, paths, takeoff, practice, hours))
    assert [name for name, n in Counter(each.finding_id for each in found).items() if n > 1] == []
    assert all(each.figures and each.title for each in found)
    return {each.finding_id: each.verdict for each in found}


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(raw=houses(), data=st.data())
def test_no_rule_raises_and_no_verdict_hangs_on_the_order(raw: Raw, data: st.DataObject) -> None:
    shuffled = {
        key: data.draw(st.permutations(value)) if key in ("boxes", "runs", "walls") else value
        for key, value in raw.items()
    }
    assert verdicts(shuffled) == verdicts(raw)
