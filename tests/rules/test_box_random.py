"""Random boxes: no box rule raises, and none passes what nobody has looked at."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.rules.registry import FUNCTIONS
from tests.rules.box_case import by_subject, facts, job

RULES = ("box-fill", "box-fill-canada", "box-depth", "box-setback", "box-gap", "box-buried",
         "box-back-to-back", "luminaire-box")  # fmt: skip
YES_NO = st.sampled_from(["yes", "no", "unknown"])
WIRES = st.sampled_from(["18", "14", "12", "10", "6", "2", "unknown"])
CABLES = st.lists(st.sampled_from(["14-2", "14-3", "12-2", "10-3"]), max_size=4)
LENGTHS = st.sampled_from(["0 in", "1/8 in", "1/4 in", "1 in", "2-3/4 in", "unknown"])
VOLUMES = st.sampled_from(["7.5 in3", "12.5 in3", "18 in3", "295 cm3", "42 in3", "unknown"])
SIDES = st.lists(
    st.fixed_dictionaries({"cables": CABLES, "takes_new": st.booleans(),
                           "gangs": st.integers(1, 2)}), max_size=2,
)  # fmt: skip
CONTENTS = st.fixed_dictionaries(
    {},
    optional={
        "table_box": st.sampled_from(["DEV-25", "SQ4-150", "unknown"]),
        "added_volumes": st.lists(VOLUMES, max_size=2),
        "barrier": st.sampled_from(["none", "metal", "nonmetallic"]),
        "sides": SIDES,
        "luminaire_stud": st.booleans(),
        "terminal_blocks": st.lists(WIRES, max_size=2),
        "loops": st.integers(0, 2),
        "passing": st.integers(0, 2),
        "through_wire": WIRES,
        "fixture_wires": st.lists(st.fixed_dictionaries({"wire": WIRES, "count": st.just(5)}),
                                  max_size=2),
        "canopy": st.booleans(),
        "isolated_grounds": st.integers(0, 2),
        "bonding_jumpers": st.integers(0, 2),
        "yokes": st.integers(0, 3),
        "wide_gangs": st.integers(0, 2),
        "device_wire": WIRES,
        "wire_connectors": st.integers(0, 6),
        "device_depth": LENGTHS,
        "setback": LENGTHS,
        "gap": LENGTHS,
        "ground_present": YES_NO,
        "buried": YES_NO,
        "fan_rated": YES_NO,
    },
)  # fmt: skip
BOX: st.SearchStrategy[dict[str, Any]] = st.fixed_dictionaries(
    {
        "contents": CONTENTS,
        "cables": CABLES,
        "clamps": YES_NO,
        "metal": YES_NO,
        "gangs": st.integers(1, 4),
        "volume": VOLUMES,
        "depth": LENGTHS,
        "device": st.sampled_from(["receptacle", "gfci receptacle", "switch", "luminaire", "none"]),
        "mount": st.sampled_from(["wall", "ceiling"]),
        "spot": st.fixed_dictionaries({"fan": YES_NO}),
    }
)
WALL = st.fixed_dictionaries(
    {"finish": st.sampled_from(["gypsum board", "plaster", "unknown"]),
     "combustible_finish": YES_NO, "fire_rated": YES_NO}
)  # fmt: skip
EDITION = st.sampled_from(["nec-2017", "nec-2020", "nec-2023"])


@settings(max_examples=60, deadline=None)
@given(old=BOX, new=BOX, wall=WALL, edition=EDITION, country=st.sampled_from(["US", "CA"]))
def test_no_rule_raises_and_no_guess_passes(
    old: dict[str, Any], new: dict[str, Any], wall: dict[str, Any], edition: str, country: str
) -> None:
    raw = job(old=old, new=new | {"room": "closet"}, wall=wall,
              job={"country": country, "edition": edition})  # fmt: skip
    known = facts(raw)
    mine = RULES[:1] + RULES[2:] if country == "US" else ("box-fill-canada", "box-back-to-back")
    found = {each.finding_id: each for rule in mine for each in FUNCTIONS[rule](known)}
    fill = found[f"{mine[0]}:old"]
    if not old["cables"]:
        assert fill.verdict != "pass"
    assert all(each.figures and each.cite for each in found.values())


@settings(max_examples=25, deadline=None)
@given(mm=st.integers(0, 40), rule=st.sampled_from(["box-setback", "box-gap"]))
def test_no_verdict_flips_with_the_unit(mm: int, rule: str) -> None:
    key = rule.removeprefix("box-")
    inches = Fraction(mm) / Fraction("25.4")
    verdicts = {
        by_subject(rule, job(old={"contents": {key: text}}))["old"].verdict
        for text in (f"{mm} mm", f"{inches.numerator}/{inches.denominator} in")
    }
    assert len(verdicts) == 1


@settings(max_examples=25, deadline=None)
@given(cables=st.permutations(["14-2", "12-2", "14-3"]))
def test_no_verdict_flips_with_the_order_of_the_cables(cables: list[str]) -> None:
    raw = job(old={"cables": cables, "volume": "27 in3", "contents": {"device_wire": "12"}})
    # 14: 5 x 2.00, 12: 2 x 2.25, the new 14-2: 2 x 2.00, grounds 2.25, device 4.5: 25.25
    found = by_subject("box-fill", raw)["old"]
    assert (found.verdict, "25.25 of 27.0" in found.figures) == ("pass", True)
