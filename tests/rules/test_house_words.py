"""The words and citations of the house rules, where a figure alone does not tell."""

from __future__ import annotations

from typing import Any

from tests.rules.test_house_lead import EPA, TRIM, lead, opening
from tests.rules.wood_case import findings, job, one

TRADE = "Trade habit; common practice, no source"


def test_a_sum_at_the_limit_is_under_by_nothing() -> None:
    # 855.6 + 8.4 = 864 in2 = 6 ft2
    figures = lead(opening("855.6")).figures
    assert "= 6 of 6 ft2 in 30 days, under by 0; openings alone under by 0.05" in figures


def test_openings_at_the_limit_alone() -> None:
    # 864 in2 of openings; the cut-out of 8.4 in2 goes over: 0.058333, said as 0.06
    figures = lead(opening("864")).figures
    assert figures.endswith("= 6.06 of 6 ft2 in 30 days, over by 0.06; openings alone under by 0")


def test_openings_alone_are_said_only_beside_something_else() -> None:
    raw: dict[str, Any] = {"existing": True, "cables": ["14-2"]}
    assert "alone" not in lead(opening("100"), new=raw).figures


def test_a_square_inch_over_is_over() -> None:
    # 856.6 + 8.4 = 865 in2 = 6.00694 ft2
    assert "= 6.01 of 6 ft2 in 30 days, over by 0.01" in lead(opening("856.6")).figures
    # 854.9 + 8.4 = 863.3 in2 = 5.99514 ft2
    assert "= 6 of 6 ft2 in 30 days, under by 0;" in lead(opening("854.9")).figures


def test_every_hammered_opening_is_named() -> None:
    first, second = opening("10", cut_out="hammered"), opening("10", cut_out="hammered", id="b")
    found = lead(first, second)
    assert found.figures.startswith("built 1964; openings 0.14 + box cut-outs 0.06")
    assert found.figures.endswith("; hammered out: hole, b")


def test_what_is_not_known_about_lead_is_cited_too() -> None:
    assert lead(run=TRIM).cite == f"{EPA}, 745.83, questions 15677 and 18379"
    assert lead(opening("900"), year="unknown").cite.startswith(EPA)
    both = lead(run=TRIM, room={"disturbed_before": "unknown"})
    assert both.remedy == (
        "Ask what paint was disturbed in this room in the last 30 days."
        " Measure the height of the trim that comes off: it counts whole."
    )


def test_inspections_are_cited_as_trade_habit() -> None:
    for said in ("yes", "no", "unknown"):
        found = findings("permit", job(house={"inspection_before_closing": said}))[1]
        assert found.cite == TRADE
        if said != "no":
            assert found.remedy == (
                "Keep walls and boxes open until the inspector has signed; that is one more visit."
            )


def test_the_permit_is_asked_for_in_words() -> None:
    assert findings("permit", job())[0].remedy.startswith("Ask the electrical office before work.")
    elsewhere = findings("permit", job(job={"country": "CA"}))[0]
    assert (elsewhere.cite, elsewhere.remedy[:27]) == (TRADE, "Ask the electrical office, ")


def test_tests_after_are_cited() -> None:
    assert one("tests-after", job()).cite == "Journal of Light Construction, on plug-in testers"
    assert one("tests-after", job(job={"country": "GB"})).cite == TRADE


def test_asbestos_elsewhere_says_the_year_and_no_line() -> None:
    found = one("asbestos-age", job(job={"country": "GB", "year_built": 1950}))
    assert found.figures == "built 1950, not tested"
    unknown = one("asbestos-age", job(job={"country": "GB", "year_built": "unknown"}))
    assert unknown.figures == "year built unknown, not tested"
