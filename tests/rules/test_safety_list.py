"""The one-page test and safety list."""

from __future__ import annotations

from typing import Any

from estimator.rules.safety_list import safety_list
from estimator.rules.screen import screen
from estimator.tables.facts import rows
from tests.rules.wood_case import facts, job

HEADINGS = [
    "This job", "Before the work", "While cutting and boring", "Before closing", "After the work",
]  # fmt: skip
# A page of 66 lines of 80 characters, as a printer's default has it.
PAGE_LINES, PAGE_COLUMNS = 66, 80


def listed(raw: dict[str, Any]) -> dict[str, tuple[str, ...]]:
    known = facts(raw)
    return dict(safety_list(known.survey, screen(known)))


def everything() -> dict[str, Any]:
    """A job that calls for as many lines as one can."""
    return job(
        job={"year_built": 1950},
        wall={"finish": "plaster", "fire_rated": "yes", "framing": "unknown"},
        new={"room": "outdoors", "height": "80 in"},
        circuit={"multiwire": "yes", "grounded": "no"},
    )


def test_headings_in_the_order_of_the_work() -> None:
    assert list(listed(job())) == HEADINGS


def test_the_breaker_and_the_boxes_come_first() -> None:
    raw = job(circuit={"serves": ["den", "hall"]})
    raw["boxes"].append({"id": "far", "existing": True})
    assert listed(raw)["This job"] == (
        "Turn off: breaker 15 A, den, hall",
        "Open and prove dead: old",
        "Test after the work: new",
    )


def test_what_nobody_knows_is_said() -> None:
    raw = job(circuit={"breaker": "unknown"}, new={"existing": True, "cables": ["14-2"]})
    assert listed(raw)["This job"] == (
        "Turn off: breaker of unknown rating",
        "Open and prove dead: old, new",
        "Test after the work: none",
    )
    raw = job()
    del raw["boxes"][0]["existing"]
    assert listed(raw)["This job"][1] == "Open and prove dead: none listed"


def test_lines_without_a_rule_are_always_there() -> None:
    always = {row["text"] for row in rows("safety_list") if not row["rule"]}
    told = {line for lines in listed(job()).values() for line in lines}
    assert {text for text in always if not text.startswith("Nor does it")} <= told


def test_a_line_of_a_rule_needs_a_finding_that_is_not_a_pass() -> None:
    ladder = "Ladder: 1 ft out for every 4 ft up, three points of contact, not on the top cap."
    assert ladder not in listed(job())["While cutting and boring"]
    assert ladder in listed(everything())["While cutting and boring"]
    # built 1990: both rules pass
    assert not [line for line in listed(job())["Before the work"] if "asbestos" in line.lower()]
    lead = [line for line in listed(job())["Before the work"] if line.startswith("Built before")]
    assert lead == []


def test_an_old_house_calls_for_its_lines() -> None:
    before = listed(everything())["Before the work"]
    assert [line.split(":")[0] for line in before if line.startswith("Built")] == [
        "Built before 1978"
    ]
    assert (
        "Old joint compound, texture or plaster is tested before it is cut, sanded or"
        in " ".join(before)
    )


def test_without_findings_only_the_general_lines() -> None:
    known = facts(job())
    lines = dict(safety_list(known.survey, ()))
    assert "Ask about permit and inspection before the first cut." not in lines["Before the work"]


def test_the_longest_list_fits_a_page() -> None:
    lines = listed(everything())
    wrapped = sum(-(-len(line) // (PAGE_COLUMNS - 10)) for each in lines.values() for line in each)
    assert wrapped + 2 * len(lines) <= PAGE_LINES


def test_elsewhere_the_list_is_general() -> None:
    raw = everything()
    raw["job"] |= {"country": "GB"}
    told = " ".join(line for lines in listed(raw).values() for line in lines)
    assert "Have buried lines marked" in told
    assert "811" not in told
    assert "1978" not in told
