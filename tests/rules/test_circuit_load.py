"""Loads and receptacle ratings: CS-12 to CS-18."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from estimator.rules.registry import FUNCTIONS
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey
from tests.rules.circuit_case import facts, facts_of, findings, job, one, screened, verdict
from tests.rules.metric_case import in_metres, said_of

LOAD = "circuit-load"
RATING = "receptacle-rating"
REST = {"load": 0, "fixed": 0, "other_load": 0, "continuous": 0}
TOTAL = "NEC 2023 210.20(A)"
OWN = "Too much for a shared circuit: this load wants a circuit of its own."


@pytest.mark.parametrize(
    ("edition", "where", "memory"),
    [
        ("nec-2017", "NEC 2017 220.14(J)", " (from memory: check)"),
        ("nec-2020", "NEC 2020 220.14(J)", ""),
        ("nec-2023", "NEC 2023 220.41", ""),
    ],
    ids=lambda each: f"CS-18 {each}",
)
def test_nothing_stated_is_one_note(edition: str, where: str, memory: str) -> None:
    found = findings(LOAD, job(edition=edition))
    assert list(found) == ["circuit"]
    assert found["circuit"].verdict == "note"
    assert found["circuit"].cite == where + memory
    assert found["circuit"].figures == (
        "no load was stated; a dwelling's general circuit has no set number of receptacles"
        " (180 VA for each is not counted there)"
    )
    assert found["circuit"].remedy == (
        "Ask what will be plugged in, and what else the breaker feeds."
    )


@pytest.mark.parametrize(
    ("key", "breaker_a", "at", "over"),
    [
        ("largest_portable", 15, 12, "12.01"),
        ("largest_portable", 20, 16, "16.01"),
        ("fixed", 15, "7.5", "7.51"),
        ("fixed", 20, 10, "10.01"),
        ("continuous", 15, 12, "12.01"),
        ("continuous", 20, 16, "16.01"),
        ("other_load", 15, 15, "15.01"),
        ("load", 15, 12, "12.01"),
        ("load", 20, 12, "12.01"),
    ],
    ids=str,
)
def test_at_the_limit_and_just_over(key: str, breaker_a: int, at: float | str, over: str) -> None:
    """CS-15 80 %, CS-16 50 %, CS-17 125 %, the sum, and CS-14 for a 15 A receptacle."""
    circuit = {"breaker": breaker_a, **REST}
    assert verdict(LOAD, job(**{**circuit, key: at})) == "pass"
    assert verdict(LOAD, job(**{**circuit, key: over})) == "fail"


@pytest.mark.parametrize(
    ("edition", "portable", "fixed"),
    [
        ("nec-2017", "NEC 2017 210.23(A)(1)", "NEC 2017 210.23(A)(2)"),
        ("nec-2020", "NEC 2020 210.23(A)(1)", "NEC 2020 210.23(A)(2)"),
        ("nec-2023", "NEC 2023 210.23(B)(1)", "NEC 2023 210.23(B)(2)"),
    ],
)
def test_each_edition_has_its_own_place(edition: str, portable: str, fixed: str) -> None:
    circuit = {**REST, "edition": edition}
    assert one(LOAD, job(**{**circuit, "largest_portable": 17})).cite.startswith(portable)
    assert one(LOAD, job(**{**circuit, "fixed": 11})).cite.startswith(fixed)


def test_the_words_of_all_parts_together() -> None:
    # 16 of 20 A is 80 %; 4 of 10; 5 + 4 + 3 + 1.25 x 6.4 = 20 of 20
    raw = job(load=5, fixed=4, other_load=3, continuous="6.4", largest_portable=16)
    found = one(LOAD, raw)
    assert found.figures == (
        "largest plug-in load 16 A, at most 16 A (80 %);"
        " load at the new outlet 5 A, a 15 A receptacle carries 12 A;"
        " fixed load beside others 4 A, at most 10 A (50 %);"
        " new outlet 5 + fixed 4 + other 3 + 125 % x continuous 6.4 = 20 A of 20 A"
    )
    assert (found.verdict, found.remedy) == ("pass", "")
    assert found.cite == (
        "NEC 2023 210.23(B)(1); NEC 2023 Table 210.21(B)(2); NEC 2023 210.23(B)(2);"
        " NEC 2023 210.20(A)"
    )


def test_only_the_parts_that_fail_are_cited() -> None:
    found = one(LOAD, job(**{**REST, "fixed": 11, "largest_portable": 17}))
    assert found.cite == "NEC 2023 210.23(B)(1); NEC 2023 210.23(B)(2)"
    assert found.remedy == OWN


def test_too_much_in_all() -> None:
    found = one(LOAD, job(**{**REST, "other_load": 21}))
    assert (found.verdict, found.cite) == ("fail", TOTAL)
    assert found.figures.endswith("other 21 + 125 % x continuous 0 = 21 A of 20 A")
    assert found.remedy == "More than the breaker carries: use another circuit, or a new one."


def test_too_much_through_one_receptacle() -> None:
    found = one(LOAD, job(**{**REST, "load": 13}))
    assert (found.verdict, found.cite) == ("fail", "NEC 2023 Table 210.21(B)(2)")
    assert found.remedy == "This load wants a circuit of its own."


@pytest.mark.parametrize(
    ("breaker_a", "new", "expected"),
    [
        (20, {"device_rating": 20}, "pass"),
        (20, {}, "fail"),
        (20, {"device": "luminaire"}, "pass"),
        (15, {"device_rating": 20}, "pass"),
    ],
    ids=["20 A receptacle", "15 A receptacle", "a light", "a pair without a row"],
)
def test_what_the_new_outlet_is_decides(breaker_a: int, new: dict[str, Any], expected: str) -> None:
    raw = job(**{**REST, "load": 13, "breaker": breaker_a}, new=new)
    assert verdict(LOAD, raw) == expected


def test_the_fixed_share_is_for_shared_circuits() -> None:
    raw = job(**{**REST, "fixed": 15, "kind": "individual"})
    assert verdict(LOAD, raw) == "pass"
    assert "fixed load beside others" not in one(LOAD, raw).figures


@pytest.mark.parametrize(
    ("circuit", "figures"),
    [
        ({"load": 5}, "new outlet 5 = 5 A of 20 A, without: fixed, other, continuous"),
        (
            {"continuous": 4, "other_load": 1},
            "other 1 + 125 % x continuous 4 = 6 A of 20 A, without: new outlet, fixed",
        ),
        ({"largest_portable": 9}, "no sum, without: new outlet, fixed, other, continuous"),
    ],
)
def test_half_stated_is_not_known(circuit: dict[str, Any], figures: str) -> None:
    found = one(LOAD, job(**circuit))
    assert (found.verdict, found.cite) == ("unknown", TOTAL)
    assert found.figures.endswith(figures)
    assert found.remedy == "State the other loads too; write 0 where there is none."


def test_half_stated_may_be_too_much_already() -> None:
    assert verdict(LOAD, job(continuous="16.01")) == "fail"
    assert verdict(LOAD, job(continuous=16)) == "unknown"


def test_a_load_without_a_breaker_is_not_known() -> None:
    found = one(LOAD, job(breaker="unknown", load=3))
    said = "loads were stated; the breaker is unknown"
    assert (found.verdict, found.figures, found.cite) == ("unknown", said, TOTAL)
    assert found.remedy == "Read the number on the breaker."


@pytest.mark.parametrize(
    ("breaker_a", "rating_a", "expected"),
    [
        (15, 15, "pass"), (15, 20, "fail"), (20, 15, "pass"), (20, 20, "pass"),
        (20, 30, "fail"), (30, 30, "pass"), (30, 20, "fail"), (40, 40, "pass"), (40, 50, "pass"),
        (40, 30, "fail"), (50, 50, "pass"), (50, 40, "fail"),
    ],
)  # fmt: skip
def test_table_210_21_b_3(breaker_a: int, rating_a: int, expected: str) -> None:
    """CS-13; the rating is put in after the takeoff, whose book sells 15 and 20 A alone."""
    known = facts(job(breaker=breaker_a))
    old = known.survey.boxes[0].model_copy(update={"device_rating_a": rating_a})
    survey = known.survey.model_copy(update={"boxes": (old, *known.survey.boxes[1:])})
    found = {each.subject: each for each in FUNCTIONS[RATING](replace(known, survey=survey))}
    assert found["old"].verdict == expected


def test_the_words_of_a_rating() -> None:
    found = one(RATING, job(breaker=15, new={"device_rating": 20}), "new")
    assert found.figures == "20 A receptacle, breaker 15 A, allowed 15 A"
    assert found.remedy == "Use a receptacle rated 15 A."
    assert found.cite == "NEC 2023 Table 210.21(B)(3)"
    both = one(RATING, job(), "new")
    assert both.figures == "15 A receptacle, breaker 20 A, allowed 15 or 20 A"
    assert both.cite == "NEC 2023 Table 210.21(B)(3)"


def test_an_old_receptacle_nobody_read_and_a_light_are_left_alone() -> None:
    assert list(findings(RATING, job())) == ["new"]
    assert findings(RATING, job(new={"device": "luminaire"})) == {}
    assert list(findings(RATING, job(old={"device_rating": 15}))) == ["old", "new"]


@pytest.mark.parametrize(
    ("survey", "figures"),
    [
        (survey_from(job(breaker="unknown")), "15 A receptacle, breaker unknown"),
        (in_metres(survey_from(job())), "unknown receptacle, breaker 20 A"),
    ],
    ids=["breaker", "rating"],
)
def test_a_rating_or_breaker_nobody_knows(survey: Survey, figures: str) -> None:
    found = said_of(RATING, facts_of(survey))["new"]
    assert (found.verdict, found.figures) == ("unknown", figures)
    assert (
        found.remedy == "Read the number on the breaker, and the rating on the receptacle's face."
    )
    assert found.cite == "NEC 2023 210.23(A)"


def test_a_breaker_without_a_row_is_not_known() -> None:
    found = one(RATING, job(breaker=25), "new")
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 Table 210.24")
    assert found.remedy.startswith("Read the breaker again")
    assert found.figures == "15 A receptacle, breaker 25 A"


@pytest.mark.parametrize(
    ("circuit", "figures"),
    [
        ({"breaker": 10}, "15 A receptacle, breaker 10 A, least 15 A"),
        ({"breaker": 14}, "15 A receptacle, breaker 14 A, least 15 A"),
        ({"breaker": 15, "kind": "ten ampere"}, "15 A receptacle, breaker 15 A, least 15 A"),
        (
            {"breaker": "unknown", "kind": "ten ampere"},
            "15 A receptacle, breaker unknown, least 15 A",
        ),
    ],
)
def test_a_ten_ampere_circuit_feeds_no_receptacle(circuit: dict[str, Any], figures: str) -> None:
    """CS-02 and XT-09."""
    found = one(RATING, job(old={"device_rating": 15}, **circuit), "old")
    assert (found.verdict, found.figures) == ("fail", figures)
    assert found.cite == "NEC 2023 210.23(A)"
    assert found.remedy.startswith("A circuit this small is for lights")


@pytest.mark.parametrize("circuit", [{"breaker": 10}, {"kind": "ten ampere"}])
def test_a_new_receptacle_there_is_refused_once(circuit: dict[str, Any]) -> None:
    """XT-09 is told by source-class, with a better box; a second fail would say no more."""
    raw = job(**circuit, old={"room": "hall"}, new={"room": "bedroom"})
    failing = [each.rule for each in screened(raw)
               if each.verdict == "fail" and each.subject == "new"]  # fmt: skip
    assert failing == ["source-class"]


@pytest.mark.parametrize("change", ["off", "note"])
def test_it_is_told_here_where_the_other_rule_is_not_in_force(change: str) -> None:
    raw = job(breaker=10, new={"room": "bedroom"})
    raw["amendments"] = [{"rule": "source-class", "change": change, "reason": "town"}]
    assert verdict(RATING, raw, "new") == "fail"


def test_it_is_told_here_where_nobody_can_say_what_the_circuit_is_for() -> None:
    """No circuit that serves a room has 12 A: the kind stays open, the breaker does not."""
    raw = job(breaker=12, kind="unknown", serves=["bedroom"], new={"room": "bedroom"})
    assert verdict(RATING, raw, "new") == "fail"


@pytest.mark.parametrize("edition", ["nec-2017", "nec-2020"])
@pytest.mark.parametrize(
    "circuit",
    [
        {}, {"kind": "unknown"}, {"kind": "ten ampere"}, {"kind": "unknown", "serves": ["bedroom"]},
    ],
    ids=["general", "unknown", "ten ampere", "serves a bedroom"],
)  # fmt: skip
def test_a_breaker_of_10_a_is_failed_once_before_2023(
    edition: str, circuit: dict[str, Any]
) -> None:
    """No branch circuit is so small there (210.18): the breaker's own rule says it, alone."""
    raw = job(edition=edition, breaker=10, old={"room": "hall", "device_rating": 15},
              new={"room": "bedroom"}, **circuit)  # fmt: skip
    rules = ("breaker-wire", "source-class", "receptacle-rating")
    failing = [each.finding_id for each in screened(raw)
               if each.verdict == "fail" and each.rule in rules]  # fmt: skip
    assert failing == ["breaker-wire:circuit"]


def test_what_else_a_small_circuit_is_kept_for_is_told_beside_it() -> None:
    """XT-04: a laundry circuit feeds no bedroom, whatever its breaker."""
    raw = job(edition="nec-2020", breaker=10, kind="laundry", new={"room": "bedroom"})
    assert verdict("source-class", raw, "new") == "fail"


def test_the_breaker_is_told_by_the_others_where_its_own_rule_is_off() -> None:
    raw = job(edition="nec-2020", breaker=10, kind="ten ampere", new={"room": "bedroom"})
    raw["amendments"] = [{"rule": "breaker-wire", "change": "off", "reason": "town"}]
    assert verdict("source-class", raw, "new") == "fail"


@pytest.mark.parametrize(
    ("kind", "single", "rating_a", "expected"),
    [
        ("individual", "yes", 15, "fail"),
        ("individual", "yes", 20, "pass"),
        ("individual", "no", 15, "pass"),
        ("individual", "unknown", 15, "unknown"),
        ("individual", "unknown", 20, "pass"),
        ("unknown", "yes", 15, "unknown"),
        ("general", "yes", 15, "pass"),
    ],
)
def test_a_single_receptacle_alone_on_its_circuit(
    kind: str, single: str, rating_a: int, expected: str
) -> None:
    """CS-12: 20 A circuit and one single receptacle asks for 20 A; a duplex is two."""
    new = {"device_rating": rating_a, "contents": {"single_receptacle": single}}
    raw = job(kind=kind, old={"device": "none"}, new=new)
    found = one(RATING, raw, "new")
    assert found.verdict == expected
    alone = "; alone on its circuit it is rated for 100 % of the breaker"
    assert (alone in found.figures) == (expected in ("fail", "unknown"))


def test_the_words_of_a_single_receptacle() -> None:
    new = {"contents": {"single_receptacle": "yes"}}
    sure = one(RATING, job(kind="individual", old={"device": "none"}, new=new), "new")
    assert sure.remedy == "Fit a receptacle with the rating of the breaker, or a duplex."
    assert sure.cite == "NEC 2023 210.21(B)(1)"
    perhaps = one(RATING, job(kind="unknown", old={"device": "none"}, new=new), "new")
    assert perhaps.remedy.startswith("Find out whether the circuit feeds this one single")
    assert perhaps.cite == "NEC 2023 210.21(B)(1)"


def test_two_receptacles_are_not_one() -> None:
    new = {"contents": {"single_receptacle": "yes"}}
    assert verdict(RATING, job(kind="individual", new=new), "new") == "pass"
