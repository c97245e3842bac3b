"""The box-fill rule: at the limit, just over, unread, unseen, not on file; by edition."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.records import Finding
from estimator.survey.records import Survey
from tests.route.made_house import Table, house
from tests.rules.made_findings import EDITIONS, finding, findings
from tests.takeoff.made_takeoff import on_file, stock

BOOK = stock(on_file("p12", "12"), on_file("p20", "20"))
SOURCE: Table = {"id": "a", "existing": True, "cables": ["14-2", "14-2"], "volume": 18,
                 "clamps": "no"}  # fmt: skip
DECLINED = {"finding": "box-fill:a", "reason": "the owner will not", "decision": "decline remedy"}


def job(source: Table | None = None, new: Table | None = None, **tables: Any) -> Survey:
    """Two cables in a source of 18 in3, and a third to a new box."""
    legs = [{"go": "along", "length": 9}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}]
    boxes = [SOURCE | (source or {}), {"id": "b"} | (new or {})]
    return house(**({"boxes": boxes, "runs": runs} | tables))


def judged(source: Table | None = None, **tables: Any) -> Finding:
    return finding(job(source, **tables), "box-fill:a", BOOK)


@pytest.mark.parametrize(
    ("volume", "verdict"), [(18, "pass"), ("18.1 in3", "pass"), ("17.9 in3", "fail")]
)
def test_equality_fits_and_there_is_no_tolerance(volume: object, verdict: str) -> None:
    """(6 + 1 + 2) x 2.00 = 18.0, worked by hand."""
    found = judged({"volume": volume}, acceptances=[DECLINED])
    assert found.verdict == verdict
    assert found.figures.startswith("(6 + 1 + 2) x 2.00 = 18.0 in3 of ")
    assert found.blocking is (verdict == "fail")


def test_a_box_that_is_replaced_passes_with_both_figures() -> None:
    found = judged({"volume": "12.5 in3"})
    assert found.verdict == "pass"
    assert "old box: 12.5 in3 for 14.0 before the work" in found.figures
    assert found.figures.endswith("(6 + 1 + 2 + 1) x 2.00 = 20.0 of 20 in3")
    assert "replaced by a larger one" in found.remedy


def test_a_volume_nobody_read_is_unknown() -> None:
    found = judged({"volume": "unknown"})
    assert found.verdict == "unknown"
    assert "its volume is unknown" in found.figures
    assert "Read the volume stamped" in found.remedy


@pytest.mark.parametrize("source", [{"unknown_cables": True}, {"cables": []}])
def test_cables_nobody_counted_are_unknown_never_a_pass(source: Table) -> None:
    found = judged(source)
    assert (found.verdict, found.blocking) == ("unknown", False)
    assert "cables assumed" in found.figures


def test_cables_nobody_counted_in_a_box_that_is_replaced() -> None:
    found = judged({"unknown_cables": True, "volume": "12.5 in3"})
    assert found.verdict == "unknown"
    assert "new box" in found.figures
    assert "count the cables" in found.remedy


def test_a_new_box_that_no_book_has_fails() -> None:
    found = finding(job(new={"gangs": 3}), "box-fill:b", BOOK)
    assert found.verdict == "fail"
    assert "no box on file holds it" in found.figures
    assert "Put a larger box in the materials book" in found.remedy


@pytest.mark.parametrize(
    ("edition", "want", "cite"),
    [
        ("nec-2017", "(10 + 1 + 2) x 2.00 = 26.0", "NEC 2017 314.16 (from memory, check)"),
        ("nec-2020", "(10 + 1.25 + 2) x 2.00 = 26.5", "NEC 2020 314.16"),
        ("nec-2023", "(10 + 1.25 + 2) x 2.00 = 26.5", "NEC 2023 314.16"),
    ],
)
def test_each_edition_counts_in_its_own_way(edition: str, want: str, cite: str) -> None:
    """Five grounds: one allowance until 2017, one and a quarter since 2020 (BF-G1, BF-G2)."""
    head = {"id": "J", "title": "t", "edition": edition}
    found = judged({"cables": ["14-2"] * 4, "volume": 40}, job=head)
    assert found.figures == f"{want} in3 of 40.0 in3"
    assert (found.edition, found.cite) == (edition, cite)


@pytest.mark.parametrize("country", ["GB", "CA", "DE"])
def test_elsewhere_no_us_rule_speaks(country: str) -> None:
    head = {"id": "J", "title": "t", "country": country}
    assert findings(job(job=head), BOOK) == ()


@pytest.mark.parametrize("edition", EDITIONS)
def test_every_edition_judges_every_box(edition: str) -> None:
    head = {"id": "J", "title": "t", "edition": edition}
    found = findings(job(job=head), BOOK)
    assert {each.subject for each in found if each.rule == "box-fill"} == {"a", "b"}
    assert all(each.edition == edition for each in found)
