"""Random circuits: no rule raises, and not knowing something never turns a fail into a pass."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.rules.facts import rule_rows
from estimator.rules.registry import FUNCTIONS
from tests.rules.circuit_case import facts, job

RULES = tuple(
    rule for rule, row in rule_rows().items() if row["group"] in ("circuit", "source")
)  # fmt: skip
YES_NO = st.sampled_from(["yes", "no", "unknown"])
CABLES = st.sampled_from(["14-2", "14-3", "12-2", "12-3", "10-2", "10-3"])
LOADS = st.one_of(st.just("unknown"), st.integers(0, 60))
CIRCUIT = {
    "breaker": st.one_of(st.just("unknown"), st.integers(0, 110)),
    "wire": st.sampled_from(["unknown", "16", "14", "12", "10", "8", "6", "2.5", "odd"]),
    "material": st.sampled_from(["copper", "aluminum", "copper-clad", "unknown"]),
    "kind": st.sampled_from(["general", "individual", "other dwelling", "laundry", "unknown"]),
    "grounded": YES_NO,
    "ground_wire": st.sampled_from(["unknown", "16", "14", "12", "10", "odd"]),
    "new_ground_to": st.sampled_from(["none", "electrode", "panel bar"]),
    "multiwire": YES_NO,
    "handle_tie": YES_NO,
    "hots_on_two_legs": YES_NO,
    "neutral_pigtailed": YES_NO,
}
NAMES = ("load", "fixed", "continuous", "other_load", "largest_portable")
AMPERES = {
    **dict.fromkeys(NAMES, LOADS),
    "ambient": st.one_of(st.just("unknown"), st.integers(0, 200)),
}
SEEN = (
    "push_in_terminals", "tab_removed", "half_switched", "always_live", "neutral_bundle",
    "ground_present", "single_receptacle",
)  # fmt: skip
FOUND = {
    "wires_per_screw": st.sampled_from(["unknown", 0, 1, 2, 3]),
    **dict.fromkeys(SEEN, YES_NO),
}
RUN = {
    "cable": CABLES,
    "bundled": st.integers(1, 30),
    "bundled_length": st.sampled_from(["unknown", "20 in", "24 in", "10 ft"]),
    "cables_in_hole": st.integers(1, 12),
    "hole_sealed": YES_NO,
    "in_insulation": YES_NO,
    "splice_without_box": YES_NO,
}
OLD = {
    "device": st.sampled_from(["receptacle", "switch", "three-way switch", "luminaire", "none"]),
    "cables": st.lists(CABLES, max_size=3),
}
# What a fact is put down as when nobody knows it, by table.
FORGOTTEN = {
    "circuit": tuple(key for key in CIRCUIT if key != "new_ground_to"),
    "found": tuple(key for key in FOUND if key not in ("ground_present", "single_receptacle")),
    "run": ("bundled_length", "hole_sealed", "in_insulation", "splice_without_box"),
}


@st.composite
def jobs(draw: st.DrawFn, *, loads: bool = True) -> dict[str, Any]:
    circuit = draw(st.fixed_dictionaries(CIRCUIT | AMPERES if loads else CIRCUIT))
    return job(
        edition=draw(st.sampled_from(["nec-2017", "nec-2020", "nec-2023"])),
        found=draw(st.fixed_dictionaries(FOUND)),
        run=draw(st.fixed_dictionaries(RUN)),
        old=draw(st.fixed_dictionaries(OLD)),
        new={"device": draw(st.sampled_from(["receptacle", "switch", "luminaire"]))},
        **circuit,
    )


def verdicts(raw: dict[str, Any]) -> dict[str, str]:
    known = facts(raw)
    found = [each for rule in RULES for each in FUNCTIONS[rule](known)]
    ids = [each.finding_id for each in found]
    assert len(set(ids)) == len(ids)
    assert all(each.figures and each.cite and each.remedy for each in found if bad(each.verdict))
    return {each.finding_id: each.verdict for each in found}


def bad(verdict: str) -> bool:
    return verdict in ("fail", "unknown")


def test_every_rule_of_the_group_is_there() -> None:
    assert set(RULES) <= set(FUNCTIONS)
    assert len(RULES) == 14


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(jobs())
def test_no_rule_raises_and_every_fail_has_words(raw: dict[str, Any]) -> None:
    assert verdicts(raw) == verdicts(deepcopy(raw))


@pytest.mark.parametrize("table", list(FORGOTTEN))
@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
@given(raw=jobs(loads=False), data=st.data())
def test_forgetting_a_fact_never_turns_a_fail_into_a_pass(
    table: str, raw: dict[str, Any], data: st.DataObject
) -> None:
    key = data.draw(st.sampled_from(FORGOTTEN[table]))
    less = deepcopy(raw)
    places = {
        "circuit": less["circuit"],
        "found": less["boxes"][0]["contents"],
        "run": less["runs"][0],
    }
    places[table][key] = "unknown"
    after = verdicts(less)
    failed = [each for each, verdict in verdicts(raw).items() if verdict == "fail"]
    assert [each for each in failed if after.get(each) == "pass"] == []


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(jobs(loads=False), st.integers(1, 40), st.integers(1, 40))
def test_more_cables_together_never_help(raw: dict[str, Any], some: int, more: int) -> None:
    rank = ("fail", "unknown", "pass")
    found = []
    for count in sorted((some, more)):
        raw["runs"][0]["bundled"] = count
        found.append(verdicts(raw).get("ampacity-adjustment:run 1"))
    if None not in found:
        assert rank.index(str(found[0])) >= rank.index(str(found[1]))
