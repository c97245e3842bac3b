"""Each finding that is not known leads to one numbered assumption, told with the takeoff's own."""

from __future__ import annotations

from collections import Counter
from decimal import Decimal

import pytest

from estimator.pricing.records import Bid
from estimator.takeoff.records import Assumption
from tests.outputs.bid_factory import NAMES, sample_bid
from tests.pricing.made_books import bid, plain
from tests.pricing.test_worst_case import KNOWN, KNOWN_WALL, NEW, SCREWS, SOURCE, made
from tests.pricing.test_worst_case_rules import BEDROOM, NOBODY_LOOKED, circuit, no_word_of
from tests.route.made_house import Table


def line_of(found: Bid, finding: str) -> Assumption:
    (line,) = (each for each in found.assumptions if finding in each.findings)
    return line


def each_once(found: Bid) -> None:
    named = Counter(name for each in found.assumptions for name in each.findings)
    unknown = {each.finding_id for each in found.findings if each.verdict == "unknown"}
    assert {name: named[name] for name in unknown} == dict.fromkeys(unknown, 1)
    assert [each.number for each in found.assumptions] == [
        at + 1 for at in range(len(found.assumptions))
    ]


@pytest.mark.parametrize("sample", NAMES)
def test_each_unknown_of_a_sample_is_told_once(sample: str) -> None:
    each_once(sample_bid(sample))


@pytest.mark.parametrize("more", [{}, BEDROOM, {"walls": [KNOWN_WALL | {"stud": "unknown"}]}])
def test_each_unknown_is_told_once_where_nobody_looked(more: Table) -> None:
    found = made(**NOBODY_LOOKED | more)
    each_once(found)
    assert sum(each.verdict == "unknown" for each in found.findings) > 10


def test_what_is_known_is_not_assumed() -> None:
    named = {name for each in made().assumptions for name in each.findings}
    assert named.isdisjoint({"multiwire:circuit", "wire-material:circuit", "terminals:a"})


def test_a_fact_of_the_takeoff_and_its_findings_are_one_line() -> None:
    found = made(**circuit(material="unknown"))
    line = line_of(found, "wire-material:circuit")
    assert line is line_of(found, "breaker-wire:circuit")
    assert line.about == "whether the old wire is aluminum"
    assert line.taken == "copper; look in the source box"


@pytest.mark.parametrize(
    ("unseen", "about"),
    [
        ({"unknown_cables": True}, "box a: the cables in it"),
        ({"volume": "unknown"}, "box a: its volume"),
        ({"volume": 16, "device": "none", "unknown_cables": True, "clamps": "unknown"},
         "box a: the cables in it"),
    ],
)  # fmt: skip
def test_what_nobody_saw_in_a_box_names_its_findings(unseen: Table, about: str) -> None:
    found = made(boxes=[SOURCE | unseen, NEW])
    assert line_of(found, "box-fill:a").about == about


def test_clamps_are_told_with_the_check_of_clamps() -> None:
    found = made(boxes=[SOURCE | {"clamps": "unknown"}, NEW])
    assert line_of(found, "cable-clamped:a").about == "box a: whether it has inner clamps"


def test_a_run_in_a_wall_hangs_on_the_studs_of_that_wall() -> None:
    """Studs that nobody measured in another wall have nothing to do with it."""
    other = KNOWN_WALL | {"id": "v", "stud": "unknown"}
    walls = [other, KNOWN_WALL | {"stud": "unknown"}]
    found = made(walls=walls, run={"height": 60})
    line = line_of(found, "protection-plates:run 1")
    assert line.about == "wall w: the depth of its studs"


THROUGH: Table = {
    "walls": [KNOWN_WALL | {"id": "v", "finish": "unknown"}, KNOWN_WALL | {"stud": "unknown"}],
    "boxes": [SOURCE, NEW | {"x": 20, "room": "closet"}, NEW | {"id": "c"}],
    "runs": [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "way": "through"},
             {"id": "2", "from": "a", "to": "c", "cable": "14-2", "way": "wall"}],
}  # fmt: skip


@pytest.mark.parametrize("finding", ["box-back-to-back:b", "protection-plates:run 2"])
def test_boxes_and_runs_hang_on_the_studs_of_their_own_wall(finding: str) -> None:
    found = made(**THROUGH)
    assert line_of(found, finding).about == "wall w: the depth of its studs"


def test_a_wall_hangs_on_its_own_finish() -> None:
    unseen = KNOWN_WALL | {"finish": "unknown"}
    found = made(walls=[unseen | {"id": "v"}, unseen])
    assert line_of(found, "plaster:wall w").about == "wall w: what it is finished with"


def test_a_run_elsewhere_has_a_line_of_its_own() -> None:
    """Studs of typed legs are of no wall, so the wall's unknown depth is not theirs."""
    legs = [{"go": "along", "length": "6 ft", "studs": 4}]
    typed = {"id": "3", "from": "e", "to": "d", "cable": "14-2", "legs": legs}
    ends = [{"id": "e", "existing": True, "cables": ["14-2"], "volume": 18, "clamps": "no"},
            {"id": "d"}]  # fmt: skip
    found = made(
        walls=THROUGH["walls"],
        boxes=[*THROUGH["boxes"], *ends],
        runs=[*THROUGH["runs"], typed],
    )
    assert line_of(found, "protection-plates:run 3").about == "the depth of the studs"
    each_once(found)


TWO_SOURCES: Table = {
    "boxes": [SOURCE, SOURCE | {"id": "c", "x": 60}, NEW],
    "runs": [{"id": at, "from": at, "to": "b", "cable": "14-2", "way": "wall", "method": "bored",
              "height": 60} for at in ("a", "c")],
}  # fmt: skip


def test_one_rule_over_several_boxes_is_one_line() -> None:
    assert line_of(made(**TWO_SOURCES), "box-gap:a").findings == ("box-gap:a", "box-gap:c")


@pytest.mark.parametrize(
    ("tables", "finding", "about"),
    [
        (circuit(multiwire="unknown"), "multiwire:circuit", "whether two hots share one white"),
        ({"house": {}}, "permit:job", "whether a permit is needed"),
        ({"house": {}}, "permit:inspection", "whether an inspector looks before closing"),
        ({}, "box-gap:a", "box a: the gap round it"),
        (TWO_SOURCES, "box-setback:c", "boxes a, c: how far it is behind the surface"),
    ],
)  # fmt: skip
def test_what_it_is_about(tables: Table, finding: str, about: str) -> None:
    assert line_of(made(**tables), finding).about == about


NO_WORD_OF_ARC_FAULT = BEDROOM | no_word_of("protection")


def test_it_says_what_is_taken_and_that_the_second_total_has_it() -> None:
    line = line_of(made(**NO_WORD_OF_ARC_FAULT), "afci-extension:circuit")
    assert line.about == "arc-fault protection of the circuit"
    assert line.taken == "there already; its remedy is not in the price"
    assert (line.moves_price, line.in_second_total) == (True, True)


def test_without_a_remedy_it_does_not_move_the_price() -> None:
    line = line_of(made(), "box-gap:a")
    assert (line.moves_price, line.in_second_total) == (False, False)


def test_where_there_is_one_total_none_is_in_the_second() -> None:
    kept = {**KNOWN, **NO_WORD_OF_ARC_FAULT}
    found = bid(plain(minimum_charge=Decimal(9999)), **kept)
    assert found.second_total is None
    line = line_of(found, "afci-extension:circuit")
    assert (line.moves_price, line.in_second_total) == (False, False)


IN_SECOND: list[tuple[Table, str, bool]] = [
    ({"walls": [KNOWN_WALL | {"finish": "unknown"}]}, "finish", True),
    ({"walls": [KNOWN_WALL | {"stud": "unknown"}]}, "stud depth", True),
    ({"walls": [KNOWN_WALL | {"layout_from": "unknown", "finish": "unknown"}]}, "stud places",
     False),
    ({"job": {"id": "J", "title": "t", "occupied": "unknown"}}, "occupied", True),
]  # fmt: skip


@pytest.mark.parametrize(("tables", "fact", "held"), IN_SECOND)
def test_facts_that_the_second_total_sets_are_marked(tables: Table, fact: str, held: bool) -> None:
    (line,) = (each for each in made(**tables).assumptions if each.fact == fact)
    assert (line.moves_price, line.in_second_total) == (True, held)


def test_what_the_second_total_has_comes_first_and_decisions_last() -> None:
    kept = [{"finding": "box-gap:a", "reason": "The owner fills it."}]
    walls = [KNOWN_WALL | {"room": "bedroom", "layout_from": "unknown"}]
    found = made(walls=walls, acceptances=kept, **no_word_of("protection"))
    order = [(each.decided, each.in_second_total, each.moves_price) for each in found.assumptions]
    assert order == sorted(order, key=lambda each: (each[0], not each[1], not each[2]))
    assert {(False, True, True), (False, False, True), (True, False, False)} <= set(order)


WIDE_GAP: Table = {"boxes": [SOURCE | {"contents": SCREWS | {"gap": "1/2 in"}}, NEW]}


@pytest.mark.parametrize(
    ("decision", "said"),
    [
        (["accept"], "accepted: The owner fills it."),
        (["decline remedy"], "its remedy is declined: The owner fills it."),
        (["accept", "decline remedy"],
         "accepted: The owner fills it.; its remedy is declined: The owner fills it."),
    ],
)  # fmt: skip
def test_what_was_found_and_left_is_told_with_the_reason(decision: list[str], said: str) -> None:
    reason = {"finding": "box-gap:a", "reason": "The owner fills it."}
    found = made(acceptances=[reason | {"decision": each} for each in decision], **WIDE_GAP)
    line = line_of(found, "box-gap:a")
    assert (line.decided, line.about, line.taken) == (True, "Gap round the box, a", said)
    assert line.number == len(found.assumptions)


def test_a_fail_put_right_is_no_assumption() -> None:
    found = made(**WIDE_GAP)
    assert not [each for each in found.assumptions if "box-gap:a" in each.findings]


def test_an_unknown_that_was_accepted_stays_with_the_fact_it_hangs_on() -> None:
    kept = [{"finding": "wire-material:circuit", "reason": "Seen last year."}]
    found = made(acceptances=kept, **circuit(material="unknown"))
    line = line_of(found, "wire-material:circuit")
    assert line.taken == "copper; look in the source box; accepted: Seen last year."
    assert not line.decided


def test_the_takeoffs_own_lines_are_all_kept() -> None:
    found = made(**NOBODY_LOOKED)
    own = [each.about for each in found.assumptions if each.fact]
    assert "box a: the cables in it" in own and "the breaker's rating" in own
    assert len(own) == len(set(own))
