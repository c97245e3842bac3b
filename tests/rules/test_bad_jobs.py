"""Ten jobs that people get wrong, one for each row TR-01 to TR-10 of electrical.md section 8.

What is expected of each was written from that row, by hand.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

from estimator.outputs.finding_words import included
from estimator.outputs.text_check import check_text
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.rules.records import Finding
from estimator.survey.reader import read_job

FOLDER = Path(__file__).parent / "bad_jobs"


class Bad(NamedTuple):
    row: str
    finding: str
    stops: bool
    says: str
    cite: str


BAD = (
    Bad("TR-01", "breaker-wire:run 1", False, "12-2", "NEC 2023 240.4(D)"),
    Bad("TR-02", "source-class:new", True, "", "NEC 2023 210."),
    Bad("TR-04", "terminals:source", False, "under each screw", "push-in terminals"),
    Bad("TR-05", "multiwire:source", False, "Tie the two breaker handles", "NEC 2023 210.7"),
    Bad("TR-06", "switched-source:source", True, "stays live with all switches off", "210.52"),
    Bad("TR-07", "multiwire:circuit", False, "Tie the two breaker handles", "NEC 2023 210.4(B)"),
    Bad("TR-08", "wire-material:circuit", True, "listed for aluminum", "NEC 2023 110.14"),
    Bad("TR-09", "ground-source:source", True, "A GFCI does not cure this", "250.130(C)"),
    Bad("TR-10", "neutral-source:switch", True, "Never use the ground", "NEC 2023 300.3(B)"),
)
EACH = pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad.row)


@cache
def bid_of(row: str) -> Bid:
    job = read_job(FOLDER / f"{row.lower()}.toml")
    return estimate(job.survey, books_for(job))


def finding(bad: Bad) -> Finding:
    return next(each for each in bid_of(bad.row).findings if each.finding_id == bad.finding)


def remedied_by(row: str, finding_id: str) -> set[tuple[str, str]]:
    """Items and tasks with quantities that the takeoff marks as a finding's remedy."""
    takeoff = bid_of(row).takeoff
    parts = {(each.item, f"{each.quantity} {each.unit}", each.remedy) for each in takeoff.parts}
    tasks = {(each.task, f"{each.quantity} {each.unit}", each.remedy) for each in takeoff.tasks}
    return {(key, amount) for key, amount, remedy in parts | tasks if remedy == finding_id}


@EACH
def test_the_inspector_says_so(bad: Bad) -> None:
    found = finding(bad)
    assert (found.verdict, found.blocking) == ("fail", True)
    assert bad.says in found.remedy
    assert bad.cite in found.cite
    assert found.figures


@EACH
def test_the_bid_is_stopped_or_put_right(bad: Bad) -> None:
    found = finding(bad)
    assert (found.stops_the_bid, found.remedied) == (bad.stops, not bad.stops)


@EACH
def test_nothing_else_stops_it(bad: Bad) -> None:
    stopping = {each.finding_id for each in bid_of(bad.row).findings if each.stops_the_bid}
    assert stopping == ({bad.finding} if bad.stops else set())


def test_tr_01_is_priced_with_thicker_cable() -> None:
    assert [order.kind for order in bid_of("TR-01").takeoff.cable] == ["12-2"]
    assert [run.cable for run in bid_of("TR-01").survey.runs] == ["12-2"]


def test_tr_03_the_full_box_is_replaced_by_one_that_holds_it() -> None:
    """TR-03: (6 + 1 + 2 + 1) x 2.00 = 20.0 in3, old box 12.5, next on file 20.0."""
    box = next(each for each in bid_of("TR-03").takeoff.boxes if each.box_id == "source")
    assert box.replaced
    assert not [each for each in bid_of("TR-03").findings if each.stops_the_bid]
    assert ("replace-box", "1 ea") in remedied_by("TR-03", "box-fill:source")
    said = "\n".join(check_text(bid_of("TR-03")))
    assert "PUT RIGHT  Wires in each box (box-fill:source)" in said
    (told,) = included(bid_of("TR-03"))
    assert told.startswith("Wires in each box, source: ") and "fit a larger one" in told


def test_tr_04_the_wires_are_freed_and_the_joints_counted_once() -> None:
    """TR-04: three cables meet, so 3 pigtails are in the takeoff in any case."""
    assert remedied_by("TR-04", "terminals:source") == {("remake-terminals", "1 ea")}
    pigtails = [each for each in bid_of("TR-04").takeoff.parts if each.item == "pigtail-12"]
    assert [each.quantity for each in pigtails] == [3]


@pytest.mark.parametrize(("row", "subject"), [("TR-05", "source"), ("TR-07", "circuit")])
def test_the_handles_get_tied(row: str, subject: str) -> None:
    tied = {("breaker-handle-tie", "1 ea"), ("fit-handle-tie", "1 ea")}
    assert tied <= remedied_by(row, f"multiwire:{subject}")


def test_tr_07_the_whites_are_taken_off_the_device() -> None:
    assert ("remake-terminals", "1 ea") in remedied_by("TR-07", "multiwire:circuit")


def test_tr_09_a_chosen_ground_is_priced() -> None:
    """30 ft of way and two tails of 1 ft, plus 10 %: 35.2 ft, so 36 ft of 14 AWG."""
    path = FOLDER / "tr-09.toml"
    job = read_job(path)
    chosen = {"new_ground_to": "electrode", "new_ground_length_in": 360}
    survey = job.survey.model_copy(update={"circuit": job.survey.circuit.model_copy(update=chosen)})
    bid = estimate(survey, books_for(job))
    lines = {each.item: each.quantity for each in bid.takeoff.parts if each.remedy}
    assert lines == {"ground-wire-14": 36, "ground-clamp": 1}
    assert not [each for each in bid.findings if each.stops_the_bid]
