"""The Canadian box-fill rule, Rule 12-3034: verdicts by hand in millilitres."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.records import Finding
from tests.rules.box_case import by_subject, job, of, screened

RULE = "box-fill-canada"
CANADA = {"country": "CA"}
CARRY_ON = {"finding": f"{RULE}:old", "reason": "owner", "decision": "decline remedy"}
INSIDE = {"device_depth": "1 in", "wire_connectors": 0}


def old(volume: str, contents: dict[str, Any] | None = None, **keys: Any) -> Finding:
    box = keys | {"volume": volume, "contents": INSIDE | (contents or {})}
    return of(RULE, "old", job(job=CANADA, old=box, acceptances=[CARRY_ON]))


# Two 14-2 at a receptacle: 4 wires, strap 2, three connectors make one pair: 7 x 24.6 = 172.2.
@pytest.mark.parametrize(
    ("volume", "verdict"), [("172.2 cm3", "pass"), ("172.1 cm3", "fail"), ("18 in3", "pass")]
)
def test_equality_passes_in_millilitres(volume: str, verdict: str) -> None:
    assert old(volume).verdict == verdict


def test_the_figures_are_millilitres_before_and_after() -> None:
    found = old("230 cm3")
    assert found.figures == "before 98.4 mL, after (4 + 2 + 1) x 24.6 = 172.2 of 230.0 mL"


@pytest.mark.parametrize(("found", "verdict"), [(3, "pass"), (4, "fail")])
def test_connectors_found_there_count_in_pairs(found: int, verdict: str) -> None:
    assert old("172.2 cm3", {"wire_connectors": found}).verdict == verdict


def test_a_deep_device_takes_its_depth() -> None:
    # 2 in is 5.08 cm: 98.4 + 24.6 + 162.56 = 285.56
    found = old("285.56 cm3", {"device_depth": "2 in"})
    assert (found.verdict, "= 285.56 of 285.56 mL" in found.figures) == ("pass", True)
    assert old("285.5 cm3", {"device_depth": "2 in"}).verdict == "fail"


def test_the_depth_of_an_old_device_must_be_known() -> None:
    found = old("400 cm3", {"device_depth": "unknown"})
    assert found.verdict == "unknown"
    assert found.figures == "no figure without knowing how far the device reaches behind its strap"


def test_a_box_whose_connectors_nobody_counted_has_no_before() -> None:
    found = old("230 cm3", {"wire_connectors": "unknown"})
    assert found.figures == "(4 + 2 + 1) x 24.6 = 172.2 of 230.0 mL"


def test_a_replaced_box_whose_connectors_nobody_counted() -> None:
    box = {"volume": "150 cm3", "contents": {"device_depth": "1 in"}}
    found = of(RULE, "old", job(job=CANADA, old=box))
    assert (found.verdict, found.remedied) == ("fail", True)
    assert found.figures.startswith("old box: 150.0 mL for what is in it before the work; new box")


def test_a_new_device_is_taken_to_be_of_the_usual_depth() -> None:
    assert of(RULE, "new", job(job=CANADA)).verdict == "pass"


CODE = "Canadian Electrical Code, Rule 12-3034 and Table 22, as in the Ontario code, Rule 12-3034"


# 14 AWG and clamps are from memory; 12 AWG was read.
@pytest.mark.parametrize(
    ("cable", "clamps", "words"),
    [("14-2", "no", " (from memory: check)"), ("12-2", "no", ""),
     ("12-2", "yes", " (from memory: check)")],
)  # fmt: skip
def test_the_citation_says_what_was_not_read(cable: str, clamps: str, words: str) -> None:
    box = {"cables": [cable], "clamps": clamps, "metal": "yes", "contents": INSIDE}
    found = of(RULE, "old", job(job=CANADA, old=box, cable=cable))
    assert found.cite == f"{CODE}{words}"


def test_canada_hears_no_us_rule_and_the_us_not_the_canadian() -> None:
    ours = {each.rule for each in screened(job(job=CANADA)) if each.rule.startswith("box-")}
    assert ours == {RULE}
    assert RULE not in {each.rule for each in screened(job())}


def test_every_box_is_judged() -> None:
    assert set(by_subject(RULE, job(job=CANADA, old={"contents": INSIDE}))) == {"old", "new"}
