"""What holds for any job: not knowing never passes, and no verdict hangs on units or on order.

Each is a property of the survey, so no expected figure is needed.
"""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from typing import Any, get_args

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from estimator.measures import MM_PER_IN, to_decimal
from estimator.problems import InputError
from estimator.survey.place import RoomUse
from estimator.units import read_length
from tests.rules.every_fact import (
    ROOT,
    UNKNOWN,
    Fact,
    Raw,
    facts_of,
    found_in,
    verdicts_of,
    with_fact,
)
from tests.rules.place_case import job as place_job

OPEN = ("fail", "unknown")
# A pass without these is right: the shop's own plan stands where the job names none, or another
# fact of the survey answers the question.
PLANNED = {"hole", "edge", "tail", "yokes", "replacement_volume"}
PLANNED_NEW = {
    "depth", "device_rating", "metal", "device_depth", "wires_per_screw", "push_in_terminals",
}  # fmt: skip
ANSWERED = {
    "asbestos_tested": "the year of the house",
    "stud_depth": "the nominal size of the studs",
    "ground_present": "what is said of the circuit's ground",
    "moisture": "the use of the room",
}


def _read(path: str) -> Raw:
    return tomllib.loads((ROOT / path).read_text("utf-8"))


def _bare() -> Raw:
    """A job whose rooms tell nothing by their names and whose circuit serves none by name."""
    rooms = [{"id": "here", "use": "bedroom"}, {"id": "there", "use": "hall"}]
    members = [{"wall": "w", "kind": "joist", "at": "50 in", "depth": "9-1/4 in", "span": "12 ft",
                "hole_at": "6 ft"}]  # fmt: skip
    wall = {"id": "w", "room": "there", "length": "20 ft", "height": "8 ft", "stud": "2x4",
            "spacing": "16 in", "layout_from": "16 in", "bearing": "no"}  # fmt: skip
    place = {"wall": "w", "height": "15 in"}
    old, new = {"room": "there", "x": "20 in"} | place, {"x": "90 in"} | place
    raw = place_job("here", old=old, new=new, rooms=rooms, members=members, walls=[wall])
    raw["runs"] = [{"id": "1", "from": "old", "to": "new", "cable": "12-2", "way": "wall",
                    "method": "bored", "height": "30 in"}]  # fmt: skip
    return raw


BAD = {f"tr-{number:02}": f"tests/rules/bad_jobs/tr-{number:02}.toml" for number in range(1, 11)}
SAMPLES = {
    name: f"samples/{name}.toml"
    for name in (
        "closet-charger",
        "closet-light",
        "lounge",
        "nightstand",
        "printer-corner",
        "rec-room",
        "terrace-bedroom",
    )
}
FILES = BAD | SAMPLES
FULL = ("bare", "tr-03", "tr-10", "closet-light")


@cache
def raw_of(name: str) -> Raw:
    return _bare() if name == "bare" else _read(FILES[name])


@cache
def base(name: str) -> dict[str, str]:
    return verdicts_of(raw_of(name))


def is_answered(raw: Raw, fact: Fact) -> bool:
    """True where something else in the job says what the fact would say."""
    name = str(fact.path[-1])
    if name in PLANNED or name in ANSWERED:
        return True
    if name == "kind":
        return bool(raw["circuit"].get("serves"))
    if name == "use":
        return raw["rooms"][int(fact.path[1])]["id"] in get_args(RoomUse)
    if name in PLANNED_NEW and fact.path[0] == "boxes":
        return not raw["boxes"][int(fact.path[1])].get("existing", False)
    return False


def verdicts_or_none(raw: Raw) -> dict[str, str] | None:
    """None where the job cannot be read, or no cable can go that way."""
    try:
        return verdicts_of(raw)
    except InputError:
        return None


def passes_without(raw: Raw, fact: Fact) -> Iterator[str]:
    """Findings that fail for some value of a fact, and pass where nobody knows it."""
    blank = verdicts_or_none(with_fact(raw, fact.path, UNKNOWN))
    if blank is None:
        return
    for value in fact.values:
        told = verdicts_or_none(with_fact(raw, fact.path, value)) or {}
        for name, verdict in told.items():
            if verdict == "fail" and blank.get(name) == "pass":
                yield f"{fact.name} = {value}: {name}"


@pytest.mark.parametrize("name", FULL)
def test_no_fact_that_can_fail_a_rule_passes_it_where_nobody_knows_it(name: str) -> None:
    raw = raw_of(name)
    asked = [fact for fact in facts_of(raw) if not is_answered(raw, fact)]
    assert [words for fact in asked for words in passes_without(raw, fact)] == []


@pytest.mark.parametrize("name", [*BAD, *SAMPLES])
def test_blanking_a_fact_turns_no_fail_and_no_question_into_a_pass(name: str) -> None:
    raw, before = raw_of(name), base(name)
    turned = []
    for fact in facts_of(raw):
        after = verdicts_or_none(with_fact(raw, fact.path, UNKNOWN)) or {}
        turned += [
            f"{fact.name}: {found}"
            for found, verdict in before.items()
            if verdict in OPEN and after.get(found) == "pass" and not is_answered(raw, fact)
        ]
    assert turned == []


def test_facts_that_something_else_answers_are_few_and_there() -> None:
    """An exception that no model knows any more is taken off the list."""
    names = {str(fact.path[-1]) for fact in facts_of(raw_of("bare"))}
    assert names >= PLANNED | PLANNED_NEW | set(ANSWERED)


@st.composite
def changed_jobs(draw: st.DrawFn) -> tuple[Raw, Fact]:
    """A job with some of its facts set anew, and one of those facts."""
    raw = raw_of(draw(st.sampled_from(FULL)))
    chosen = draw(st.lists(st.sampled_from(facts_of(raw)), min_size=1, max_size=12, unique=True))
    for fact in chosen:
        raw = with_fact(raw, fact.path, draw(st.sampled_from((*fact.values, UNKNOWN))))
    return raw, chosen[-1]


SLOW = settings(max_examples=120, deadline=None, suppress_health_check=list(HealthCheck))


@SLOW
@given(changed_jobs())
def test_no_rule_raises_and_each_finding_is_whole(drawn: tuple[Raw, Fact]) -> None:
    raw, _ = drawn
    try:
        found = found_in(raw)
    except InputError:
        assume(False)
        return
    twice = Counter(each.finding_id for each in found)
    assert [name for name, count in twice.items() if count > 1] == []
    assert all(each.figures and each.cite and each.title for each in found)
    assert [each.finding_id for each in found if each.verdict in OPEN and not each.remedy] == []


@SLOW
@given(changed_jobs())
def test_forgetting_a_fact_of_any_job_passes_nothing(drawn: tuple[Raw, Fact]) -> None:
    raw, fact = drawn
    before, after = verdicts_or_none(raw), verdicts_or_none(with_fact(raw, fact.path, UNKNOWN))
    assume(before is not None and after is not None and not is_answered(raw, fact))
    failed = [name for name, verdict in (before or {}).items() if verdict == "fail"]
    assert [name for name in failed if (after or {}).get(name) == "pass"] == []


def in_millimetres(value: Any, key: str = "") -> Any:
    """The same file with each length in inches or feet written in millimetres, exact."""
    if isinstance(value, dict):
        return {name: in_millimetres(each, name) for name, each in value.items()}
    if isinstance(value, list):
        return [in_millimetres(each, key) for each in value]
    if not isinstance(value, str) or not value.endswith((" in", " ft", '"', "'")):
        return value
    try:
        inches = read_length(value, bare_unit="in").inches
    except ValueError:
        return value
    return f"{to_decimal(inches * MM_PER_IN, 6):f} mm"


@pytest.mark.parametrize("name", [*BAD, "closet-charger", "closet-light", "printer-corner"])
def test_no_verdict_flips_where_lengths_are_written_in_millimetres(name: str) -> None:
    raw = raw_of(name)
    metric = in_millimetres(raw)
    assert metric != raw
    assert verdicts_of(metric) == base(name)


@pytest.mark.parametrize("name", [*BAD, *SAMPLES])
def test_no_verdict_hangs_on_the_order_of_the_records(name: str) -> None:
    turned = deepcopy(raw_of(name))
    for value in turned.values():
        if isinstance(value, list):
            value.reverse()
    assert verdicts_of(turned) == base(name)


@settings(max_examples=60, deadline=None)
@given(
    held=st.lists(st.sampled_from(["14-2", "14-3", "12-2", "12-3", "10-2"]), min_size=1),
    more=st.sampled_from(["14-2", "12-2", "10-3"]),
    name=st.sampled_from(["tr-03", "tr-07", "tr-10"]),
)
def test_more_wires_never_help_a_box(held: list[str], more: str, name: str) -> None:
    """A box that is full stays full: pass to fail goes, fail to pass never does."""
    source = 0
    path = ("boxes", source, "cables")
    declined = {"finding": f"box-fill:{raw_of(name)['boxes'][source]['id']}",
                "reason": "to see it fail", "decision": "decline remedy"}  # fmt: skip
    raw = raw_of(name) | {"acceptances": [declined]}
    rank = ("fail", "unknown", "note", "pass")
    found = declined["finding"]
    few, many = (verdicts_of(with_fact(raw, path, cables)) for cables in (held, [*held, more]))
    assert rank.index(many[found]) <= rank.index(few[found])
