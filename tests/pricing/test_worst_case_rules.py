"""The second total where a rule does not know: the price as if it had failed, told once."""

from __future__ import annotations

import pytest

from estimator.rules.records import Finding
from estimator.rules.remedies import is_taken
from tests.pricing.test_worst_case import CIRCUIT, KNOWN_WALL, NEW, SCREWS, SOURCE, made
from tests.route.made_house import Table

AFCI = "arc-fault protection"
BREAKER = "breaker against wire (run 1)"
GFCI = "ground-fault protection by place (box b)"
INSPECTION = "permit and inspection (inspection)"
MULTIWIRE = "two hots on one neutral"
TERMINALS = "wires on terminals (box a)"
NOT_TIED: Table = {"multiwire": "yes", "handle_tie": "no", "neutral_pigtailed": "no"}
BEDROOM: Table = {"walls": [KNOWN_WALL | {"room": "bedroom"}]}
NOBODY_LOOKED: Table = {
    "job": {"id": "J", "title": "t"}, "house": {}, "circuit": {},
    "boxes": [{"id": "a", "existing": True, "wall": "w", "x": 20, "height": 15}, NEW],
}  # fmt: skip


def circuit(**keys: object) -> Table:
    return {"circuit": CIRCUIT | keys}


def source(**contents: object) -> Table:
    return {"boxes": [SOURCE | {"contents": SCREWS | contents}, NEW]}


def said_of(finding: Finding) -> str:
    """The rule, with the box or the run where it is not about the whole job."""
    title, about = finding.title.lower(), finding.subject
    if about in ("circuit", "job"):
        return title
    return f"{title} (box {about})" if about in ("a", "b") else f"{title} ({about})"


def permit(before_closing: str) -> Table:
    return {"house": {"permit": "needed", "inspection_before_closing": before_closing}}


def no_word_of(key: str) -> Table:
    """The circuit without a word of one thing."""
    return {"circuit": {name: value for name, value in CIRCUIT.items() if name != key}}


# What nobody looked at; the same job with the bad answer found; what is said of it.
FACTS: list[tuple[Table, Table, str]] = [
    (BEDROOM | no_word_of("protection"), BEDROOM | circuit(protection=[]), AFCI),
    (circuit(breaker="unknown"), circuit(breaker=20, wire="12"), BREAKER),
    (circuit(multiwire="yes"), circuit(**NOT_TIED), MULTIWIRE),
    (source(wires_per_screw="unknown"), source(wires_per_screw=2), TERMINALS),
    (permit("unknown"), permit("yes"), INSPECTION),
]


@pytest.mark.parametrize(("unknown", "bad", "said"), FACTS)
def test_it_is_the_total_with_the_bad_answer(unknown: Table, bad: Table, said: str) -> None:
    found, worst = made(**unknown), made(**bad)
    assert found.second_total == worst.price.total
    assert worst.price.total > found.price.total
    assert (found.second_total_why, worst.second_total) == (said, None)


def test_each_that_is_unknown_is_told_once() -> None:
    said = made(**NOBODY_LOOKED).second_total_why.split("; ")
    assert len(set(said)) == len(said)
    assert said[-6:] == [AFCI, BREAKER, GFCI, MULTIWIRE, INSPECTION, TERMINALS]


def test_all_with_a_remedy_are_told_and_no_other() -> None:
    found = made(**NOBODY_LOOKED)
    open_ones = [each for each in found.findings if each.verdict == "unknown"]
    told = {said_of(each): bool(each.remedies) for each in open_ones}
    said = found.second_total_why.split("; ")
    assert {name: name in said for name in told} == told
    assert set(told.values()) == {True, False}


@pytest.mark.parametrize("decision", ["accept", "decline remedy"])
def test_what_the_job_decided_is_not_in_it(decision: str) -> None:
    decided = [{"finding": "multiwire:circuit", "reason": "owner", "decision": decision}]
    assert made(**circuit(multiwire="yes")).second_total is not None
    assert made(acceptances=decided, **circuit(multiwire="yes")).second_total is None


def test_nothing_that_is_unknown_is_taken_in_the_bid_itself() -> None:
    found = made(**NOBODY_LOOKED)
    assert not [each for each in found.findings if each.verdict == "unknown" and each.remedied]
    assert not [each for each in found.findings if each.verdict == "unknown" and is_taken(each)]


# Splices alone, so that the wires and the clamps are all: 4 + 1 and the clamp, 6 x 2.00 = 12.0.
PLACES: list[Table] = [
    {"mount": "wall", "device": "none"}, {"mount": "ceiling", "out": 20, "device": "none"},
]  # fmt: skip


@pytest.mark.parametrize("place", PLACES, ids=["wall", "ceiling"])
@pytest.mark.parametrize(("volume", "verdict"), [(12, "pass"), ("11.9 in3", "unknown")])
def test_clamps_nobody_saw_take_room(place: Table, volume: object, verdict: str) -> None:
    box = SOURCE | place | {"clamps": "unknown", "metal": "unknown", "volume": volume}
    kept = [{"finding": "box-fill:a", "reason": "owner", "decision": "decline remedy"}]
    legs = [{"go": "along", "length": "6 ft", "studs": 4}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}]
    found = made(boxes=[box, NEW], runs=runs, acceptances=kept)
    verdicts = {each.finding_id: each.verdict for each in found.findings}
    assert (verdicts["box-fill:a"], verdicts["cable-clamped:a"]) == (verdict, "unknown")


@pytest.mark.parametrize("place", PLACES, ids=["wall", "ceiling"])
def test_a_source_nobody_read_is_replaced_by_one_for_its_place(place: Table) -> None:
    box = SOURCE | place | {"clamps": "unknown", "metal": "unknown", "volume": "unknown"}
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2",
             "legs": [{"go": "along", "length": "6 ft"}]}]  # fmt: skip
    found = made(boxes=[box, NEW], runs=runs)
    assert found.second_total == made(boxes=[box | {"volume": 1}, NEW], runs=runs).price.total
    assert found.second_total_why == "box a is too small and is replaced"


def test_cables_nobody_saw_are_of_the_roomiest_kind_added_there() -> None:
    """Whatever the order of the runs: two of 14-3 and a device, (6 + 1 + 2) x 2.00 = 18.0."""
    boxes = [SOURCE | {"cables": []}, NEW, NEW | {"id": "c", "x": 150}]
    runs = [{"id": cable, "from": "a", "to": to, "way": "wall", "cable": cable}
            for cable, to in (("14-2", "b"), ("14-3", "c"))]  # fmt: skip
    one, two = (made(boxes=boxes, runs=order) for order in (runs, runs[::-1]))
    assert one.takeoff.boxes[0].fill_before == two.takeoff.boxes[0].fill_before == 18
    assert (one.price.total, one.second_total) == (two.price.total, two.second_total)
