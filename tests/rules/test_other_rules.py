"""Breaker against wire, plates, tails, ways that are blocked, levels: at the limit and beyond."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.records import Finding
from tests.route.made_house import WALL, Table, house
from tests.rules.made_findings import EDITIONS, finding, findings


def circuit(breaker: object, wire: object, cable: str = "14-2", edition: str = "nec-2023",
            subject: str = "circuit", **more: object) -> Finding:  # fmt: skip
    survey = house(
        job={"id": "J", "title": "t", "edition": edition},
        circuit={"breaker": breaker, "wire": wire} | more,
        run={"cable": cable},
    )
    return finding(survey, f"breaker-wire:{subject}")


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize(
    ("breaker", "wire", "verdict"),
    [(15, "14", "pass"), (16, "14", "fail"), (20, "14", "fail"), (20, "12", "pass"),
     (25, "12", "fail"), (30, "10", "pass"), (35, "10", "fail"), (15, "10", "pass")],
)  # fmt: skip
def test_the_breaker_protects_the_old_wire(
    breaker: int, wire: str, verdict: str, edition: str
) -> None:
    """NEC 240.4(D): 14 copper 15 A, 12 copper 20 A, 10 copper 30 A."""
    assert circuit(breaker, wire, edition=edition).verdict == verdict


@pytest.mark.parametrize(
    ("breaker", "cable", "verdict"), [(20, "14-2", "fail"), (20, "12-2", "pass")]
)
def test_the_breaker_protects_the_new_cable(breaker: int, cable: str, verdict: str) -> None:
    """CS-27: a single 14 anywhere on a 20 A circuit fails."""
    found = circuit(breaker, "12", cable, subject=cable)
    assert found.verdict == verdict
    assert f"new {cable} cable" in found.figures
    assert found.blocking is (verdict == "fail")


@pytest.mark.parametrize(
    ("breaker", "wire", "said", "remedy"),
    [
        ("unknown", "14", "breaker unknown, at most 15 A", "Read the number on the breaker"),
        (15, "unknown", "old wire is unknown, breaker 15 A", "Look at the wire"),
        (15, "8", "no figure on file for 8", "Ask a licensed electrician"),
        (15, "fourteen", "no figure on file for fourteen", "Ask a licensed electrician"),
    ],
)
def test_what_nobody_knows_is_unknown(
    breaker: object, wire: object, said: str, remedy: str
) -> None:
    found = circuit(breaker, wire)
    assert (found.verdict, found.blocking) == ("unknown", False)
    assert said in found.figures
    assert remedy in found.remedy


def test_figures_for_copper_do_not_judge_aluminum() -> None:
    found = circuit(15, "12", aluminum="yes")
    assert found.verdict == "unknown"
    assert "aluminum" in found.figures


def crossing(hole: object, stud: object = "2x4", method: str = "bored") -> Table:
    walls = [WALL | ({"stud": "unknown"} if stud is None else {"stud": stud})]
    return {"walls": walls, "run": {"hole": hole, "method": method}}


@pytest.mark.parametrize(
    ("hole", "stud", "count"), [("1 in", "2x4", 0), ("1-1/16 in", "2x4", 8), ("3/4 in", "2x3", 8)]
)
def test_plates_are_in_the_takeoff(hole: str, stud: str, count: int) -> None:
    found = finding(house(**crossing(hole, stud)), "protection-plates:run 1")
    assert found.verdict == "pass"
    assert f"{count} plates in the takeoff" in found.figures
    assert bool(found.remedy) is bool(count)
    assert found.cite == "NEC 2023 300.4(A)(1)"


def test_a_notch_always_has_its_plate() -> None:
    found = finding(house(**crossing("1 in", method="notched")), "protection-plates:run 1")
    assert found.figures == "4 notches, 4 plates in the takeoff"


def test_studs_nobody_measured_are_unknown() -> None:
    found = finding(house(**crossing("1-1/8 in", None)), "protection-plates:run 1")
    assert found.verdict == "unknown"
    assert found.figures == "8 plates if the studs are of the usual depth"


@pytest.mark.parametrize(
    ("edge", "verdict"), [(Fraction(1), "fail"), (Fraction(5, 4), "pass"), (Fraction(2), "pass")]
)
def test_a_shop_less_strict_than_the_edition_fails(edge: Fraction, verdict: str) -> None:
    """A hole of 1-1/8 in leaves 1-3/16: no plate by a shop's 1 in, eight by the edition."""
    survey = house(**crossing("1-1/8 in"))
    found = finding(survey, "protection-plates:run 1", plate_edge_in=edge)
    assert found.verdict == verdict


def test_a_less_strict_shop_passes_where_no_hole_is_that_near() -> None:
    survey = house(**crossing("1 in"))
    found = finding(survey, "protection-plates:run 1", plate_edge_in=Fraction(1))
    assert found.verdict == "pass"


def test_a_run_that_bores_nothing_has_no_plates_to_judge() -> None:
    rules = {each.rule for each in findings(house(20, 25))}
    assert "protection-plates" not in rules


def tail(length: object, *depths: object) -> Finding:
    """The tail of a run between boxes of these depths."""
    boxes = [{"id": name, "wall": "w", "x": x, "height": 9, "existing": name == "a",
              "cables": ["14-2"] * (name == "a"), "depth": depth}
             for name, x, depth in zip("ab", (20, 92), depths, strict=True)]  # fmt: skip
    return finding(house(boxes=boxes, run={"tail": length}), "free-conductor:run 1")


@pytest.mark.parametrize(
    ("length", "depths", "verdict"),
    [
        ("6-1/4 in", ("unknown", "unknown"), "pass"),  # 6 free and 1/4 of sheath
        ("6-3/16 in", ("unknown", "unknown"), "fail"),
        ("12 in", ("2-3/4 in", "2-3/4 in"), "pass"),
        ("6-1/4 in", ("3-1/4 in", "2 in"), "pass"),  # 3 to the face and 3 beyond: 6 again
        ("6-1/4 in", ("3-1/2 in", "2 in"), "fail"),  # 3-1/4 and 3
        ("6-1/2 in", ("2 in", "3-1/2 in"), "pass"),
        ("6-7/16 in", ("2 in", "3-1/2 in"), "fail"),
    ],
)
def test_free_conductor_at_the_deeper_box(
    length: object, depths: tuple[object, object], verdict: str
) -> None:
    """NEC 300.14 (CI-06, CI-07), worked by hand: max(6, depth - 1/4 + 3) + 1/4."""
    found = tail(length, *depths)
    assert found.verdict == verdict
    assert found.blocking is (verdict == "fail")


DOOR = {"wall": "w", "left": 40, "width": 30, "height": 80, "header_top": 90}


@pytest.mark.parametrize(("height", "said"), [(15, "meets a door"), (89, "meets a door")])
def test_a_run_through_a_door_is_blocked(height: int, said: str) -> None:
    found = finding(house(run={"height": height}, doors=[DOOR]), "way-blocked:run 1")
    assert (found.verdict, found.blocking, found.edition) == ("fail", True, "")
    assert said in found.figures


def test_over_the_header_nothing_blocks() -> None:
    rules = {each.rule for each in findings(house(run={"height": 90}, doors=[DOOR]))}
    assert "way-blocked" not in rules


def test_a_door_and_a_window_are_named_once_each() -> None:
    window = DOOR | {"left": 75, "width": 10}
    found = finding(house(doors=[DOOR], windows=[window]), "way-blocked:run 1")
    assert found.figures == "the level part meets a door and a window"


@pytest.mark.parametrize(
    ("access", "verdict"), [("yes", None), ("no", "fail"), ("unknown", "unknown")]
)
def test_a_level_needs_a_way_in(access: str, verdict: str | None) -> None:
    levels = [{"kind": "attic", "height": 100, "accessible": access}]
    survey = house(run={"way": "over", "level": "attic"}, levels=levels)
    found = [each for each in findings(survey) if each.rule == "level-access"]
    assert [each.verdict for each in found] == ([] if verdict is None else [verdict])


@pytest.mark.parametrize("country", ["GB", "CA"])
def test_geometry_speaks_in_every_country(country: str) -> None:
    levels = [{"kind": "attic", "height": 100, "accessible": "no"}]
    head = {"id": "J", "title": "t", "country": country}
    survey = house(job=head, run={"way": "over", "level": "attic"}, levels=levels)
    assert [each.rule for each in findings(survey)] == ["level-access"]


def accepted(*said: dict[str, str], **practice: Any) -> tuple[Finding, ...]:
    survey = house(circuit={"breaker": 20, "wire": "14"}, doors=[DOOR], acceptances=list(said))
    return findings(survey, **practice)


def test_accepted_by_id_with_a_reason() -> None:
    said = {"finding": "way-blocked:run 1", "reason": "there is no door any more"}
    found = {each.finding_id: each for each in accepted(said)}
    blocked, wire = found["way-blocked:run 1"], found["breaker-wire:circuit"]
    assert (blocked.verdict, blocked.accepted) == ("fail", "there is no door any more")
    assert (blocked.stops_the_bid, wire.stops_the_bid) == (False, True)


@pytest.mark.parametrize(
    "said",
    [
        {"finding": "way-blocked:run 2", "reason": "another run"},
        {"finding": "way-blocked", "reason": "no subject"},
        {"finding": "way-blocked:run 1", "reason": "no", "decision": "decline remedy"},
    ],
)
def test_another_id_or_a_declined_remedy_accepts_nothing(said: dict[str, str]) -> None:
    blocked = next(each for each in accepted(said) if each.rule == "way-blocked")
    assert blocked.stops_the_bid


def test_worst_first_and_what_was_accepted_after_what_stops() -> None:
    said = {"finding": "way-blocked:run 1", "reason": "fine"}
    found = accepted(said, allowance_pct=Decimal(10))
    order = [(each.stops_the_bid, each.verdict) for each in found]
    assert order == sorted(
        order, key=lambda each: (not each[0], ["fail", "unknown", "note", "pass"].index(each[1]))
    )
    assert order[0] == (True, "fail")
    assert order[-1] == (False, "pass")


def test_no_finding_promises_safety_or_approval() -> None:
    for each in accepted():
        said = f"{each.figures} {each.cite} {each.remedy}".lower()
        assert not any(word in said for word in ("safe", "approved", "compliant", "guarantee"))


def test_every_fail_and_unknown_has_a_remedy() -> None:
    survey = house(circuit={"breaker": 20, "wire": "14"}, doors=[DOOR])
    for each in findings(survey, tail_in=Fraction(6)):
        assert each.remedy or each.verdict == "pass", each
