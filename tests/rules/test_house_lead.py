"""Painted surface disturbed, by room (40 CFR 745 subpart E and its frequent questions).

A single-gang cut-out is 8.4 in2 (box_cutouts.csv); 6 ft2 are 864 in2. Sums worked by hand.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import Finding, RemedyPart, RemedyTask
from estimator.rules.remedies import is_taken
from tests.rules.wood_case import TYPED, by_subject, findings, job, one
from tests.worked.job import worked

ROOM = "room den"
PRICED = (
    RemedyPart("consumables", "plastic-sheet", Decimal(1), "ea"),
    RemedyTask("set-up", "lead-rule-room", Decimal(1), "ea"),
)
EPA = "EPA Renovation, Repair and Painting rule, 40 CFR 745 subpart E, and its frequent questions"


def opening(area_in2: str, **changes: Any) -> dict[str, Any]:
    return {"id": "hole", "wall": "w", "width": f"{area_in2} in", "height": "1 in"} | changes


def old_house(*openings: dict[str, Any], year: Any = 1964, **changes: Any) -> dict[str, Any]:
    """A job in an old house; nothing else was disturbed in the room unless said otherwise."""
    room = {"id": "den", "use": "den", "disturbed_before": "0 ft2"} | changes.pop("room", {})
    raw = job(openings=list(openings), rooms=[room], **changes)
    raw["job"]["year_built"] = year
    return raw


def lead(*openings: dict[str, Any], **changes: Any) -> Finding:
    return one("lead-paint", old_house(*openings, **changes))


@pytest.mark.parametrize(
    ("area_in2", "verdict"),
    [
        ("567.6", "pass"),  # 567.6 + 8.4 = 576 = 4 ft2: not near
        ("567.7", "note"),
        ("855.6", "note"),  # 855.6 + 8.4 = 864 = 6 ft2: within
        ("855.7", "fail"),
    ],
)
def test_the_sum_of_a_room(area_in2: str, verdict: str) -> None:
    found = lead(opening(area_in2))
    assert (found.verdict, found.subject, found.blocking) == (verdict, ROOM, False)
    assert found.cite == f"{EPA}, 745.83, questions 15677 and 18379"


def test_a_note_near_the_limit_says_both_sums() -> None:
    found = lead(opening("792"))
    # 792 in2 = 5.5 ft2; + 8.4 in2 = 800.4 in2 = 5.55833 ft2, 0.44167 left
    assert found.figures == (
        "built 1964; openings 5.5 + box cut-outs 0.06 = 5.56 of 6 ft2 in 30 days, under by 0.44;"
        " openings alone under by 0.5; near the limit"
    )
    assert found.remedy == "Cut no more than planned, and cut every piece out whole."


def test_epa_15677_openings_of_a_room_are_summed() -> None:
    first, second = opening("500"), opening("400", id="second")
    assert lead(first).verdict == "pass"
    found = lead(first, second)
    # 500 + 400 + 8.4 = 908.4 in2 = 6.3083 ft2
    assert found.verdict == "fail"
    assert "= 6.31 of 6 ft2 in 30 days, over by 0.31" in found.figures
    assert "alone" not in found.figures


def test_openings_in_different_rooms_are_not_summed() -> None:
    raw = old_house(opening("500"), opening("400", id="second", room="hall"))
    raw["rooms"].append({"id": "hall", "disturbed_before": "0 ft2"})
    assert by_subject("lead-paint", raw) == {"room den": "pass", "room hall": "pass"}


def test_epa_18515_a_hammered_hole_is_demolition_at_four_square_feet() -> None:
    # row 16: 2 x 2 ft = 4 ft2, under 6, and the rule holds all the same
    found = lead(opening("576", cut_out="hammered"))
    assert (found.verdict, found.remedies) == ("fail", PRICED)
    assert found.cite == f"{EPA}, question 18515"
    assert found.figures.endswith("; hammered out: hole")
    assert found.remedy.startswith("Cut the piece out whole: hammering out")


def test_epa_18515_the_same_hole_cut_out_whole_is_a_minor_repair() -> None:
    # row 17: with the box cut-out 4.06 ft2, within 6 and past the early warning
    found = lead(opening("576", cut_out="clean"))
    assert (found.verdict, found.remedies) == ("note", ())


def test_epa_18379_other_work_of_thirty_days_counts() -> None:
    # 144 + 8.4 + 720 = 872.4 in2
    found = lead(opening("144"), room={"disturbed_before": "5 ft2"})
    assert found.verdict == "fail"
    assert "openings 1 + box cut-outs 0.06 + other work 5 = 6.06 of 6 ft2" in found.figures


def test_a_tiny_hammered_hole_is_demolition_too() -> None:
    assert lead(opening("1", cut_out="hammered")).verdict == "fail"


def test_over_the_limit_is_priced() -> None:
    found = lead(opening("900"))
    assert (found.remedies, is_taken(found)) == (PRICED, True)
    assert found.remedy.startswith("Only a certified firm may do this for pay")
    assert found.remedy.endswith("(from memory: check)")


def test_worked_job_s2_says_five_and_a_half_and_the_whole() -> None:
    found = next(each for each in worked("printer-corner").findings if each.rule == "lead-paint")
    # openings 792 in2 = 5.5 ft2; with two cut-outs 808.8 in2 = 5.6167 ft2 (worked by hand)
    assert found.subject == "room office"
    assert found.verdict != "pass"
    assert "openings 5.5 + box cut-outs 0.12 = 5.62 of 6 ft2" in found.figures
    assert "under by 0.38; openings alone under by 0.5; near the limit" in found.figures


@pytest.mark.parametrize(
    ("year", "subject", "verdict"),
    [
        (1977, ROOM, "fail"),
        (1978, "job", "pass"),
        (1996, "job", "pass"),
        ("unknown", ROOM, "unknown"),
    ],
)
def test_the_year(year: Any, subject: str, verdict: str) -> None:
    found = lead(opening("900"), year=year)
    assert (found.subject, found.verdict) == (subject, verdict)


def test_the_words_of_the_year() -> None:
    found = lead(opening("900"), year=1978)
    assert (found.figures, found.cite) == ("built 1978, 1978 or later", f"{EPA}, scope")
    found = lead(opening("900"), year="unknown")
    assert found.figures.startswith("year built unknown; openings 6.25")
    assert found.remedies == PRICED
    assert found.remedy.startswith("Find out when the house was built and who pays")


def test_an_unknown_year_does_not_matter_within_the_limit() -> None:
    assert lead(opening("100"), year="unknown").verdict == "pass"
    assert lead(opening("700"), year="unknown").verdict == "note"


def test_unknown_work_before_is_not_known() -> None:
    found = lead(opening("100"), room={"disturbed_before": "unknown"})
    assert (found.verdict, found.remedies) == ("unknown", ())
    assert found.remedy == "Ask what paint was disturbed in this room in the last 30 days."
    near = lead(opening("700"), room={"disturbed_before": "unknown"})
    assert (near.verdict, near.remedies) == ("unknown", PRICED)
    assert near.figures.endswith("near the limit")


def test_a_room_that_is_not_listed_has_unknown_work_before() -> None:
    raw = old_house(opening("100"))
    raw["rooms"] = []
    assert one("lead-paint", raw).verdict == "unknown"


def test_unknown_work_before_cannot_save_a_sum_over_the_limit() -> None:
    assert lead(opening("900"), room={"disturbed_before": "unknown"}).verdict == "fail"


@pytest.mark.parametrize(
    ("house", "verdict", "subject"),
    [
        ({"lead_tested": "none found"}, "pass", "job"),
        ({"lead_tested": "no"}, "fail", ROOM),
        ({"lead_tested": "found"}, "fail", ROOM),
        ({"work_for_pay": "no"}, "note", "job"),
        ({"work_for_pay": "unknown"}, "unknown", ROOM),
    ],
)
def test_tests_and_pay(house: dict[str, str], verdict: str, subject: str) -> None:
    found = lead(opening("900"), house=house)
    assert (found.verdict, found.subject) == (verdict, subject)


def test_found_lead_goes_before_the_year() -> None:
    for year in (1990, "unknown"):
        found = lead(opening("900"), year=year, house={"lead_tested": "found"})
        assert (found.verdict, found.subject) == ("fail", ROOM)


def test_the_words_of_tests_and_pay() -> None:
    tested = lead(opening("900"), house={"lead_tested": "none found"})
    assert tested.figures == "tested, no lead paint"
    assert tested.cite.endswith("745.82 (from memory: check)")
    own = lead(opening("900"), house={"work_for_pay": "no"})
    assert own.figures == "built 1964; the rule speaks of work for pay"
    assert own.remedy.startswith("Lead dust harms all the same")


def test_outdoors_twenty_square_feet() -> None:
    # 20 ft2 = 2,880 in2; 2,871.6 + 8.4
    room = {"use": "outdoors"}
    assert lead(opening("2871.6"), room=room).verdict == "pass"
    found = lead(opening("2871.7"), room=room)
    assert found.verdict == "fail"
    assert found.cite == f"{EPA}, 745.83"


TRIM = {"way": "trim", "height": "3 in"}


def test_trim_taken_off_counts_whole() -> None:
    # 72 in x 5 in = 360 in2 = 2.5 ft2; + 8.4 in2 = 2.5583 ft2
    found = lead(run=TRIM, wall={"trim_height": "5 in"})
    assert found.verdict == "pass"
    assert "box cut-outs 0.06 + trim taken off 2.5 = 2.56 of 6 ft2" in found.figures


def test_trim_of_unknown_height_is_not_known() -> None:
    found = lead(opening("144"), run=TRIM)
    assert found.verdict == "unknown"
    assert found.remedy == "Measure the height of the trim that comes off: it counts whole."
    both = lead(run=TRIM, room={"disturbed_before": "unknown"})
    assert both.remedy.startswith("Ask what paint was disturbed")
    assert both.remedy.endswith("it counts whole.")
    assert lead(opening("900"), run=TRIM).verdict == "fail"


def test_stated_trim_is_shared_out_over_the_walls() -> None:
    # level legs 124 in on w and 20 in on v; 288 in of trim is twice that: 248 and 40 in, 3 in high
    raw = old_house(run=TRIM | {"trim_length": "288 in"}, wall={"trim_height": "3 in"})
    raw["walls"].append(raw["walls"][0] | {"id": "v", "room": "hall"})
    raw["corners"] = [{"walls": ["w", "v"]}]
    raw["boxes"][1] |= {"wall": "v", "x": "20 in"}
    raw["rooms"].append({"id": "hall", "disturbed_before": "0 ft2"})
    den, hall = findings("lead-paint", raw)
    # 744 in2 = 5.1667 ft2; 120 in2 = 0.8333 ft2
    assert "trim taken off 5.17 of 6 ft2" in den.figures
    assert "box cut-outs 0.06 + trim taken off 0.84 = 0.9 of 6 ft2" in hall.figures
    assert [den.verdict, hall.verdict] == ["note", "pass"]


def test_unknown_trim_of_one_wall_makes_the_room_unknown() -> None:
    raw = old_house(run=TRIM, wall={"trim_height": "3 in"})
    raw["walls"].append(raw["walls"][0] | {"id": "v", "trim_height": "unknown"})
    raw["corners"] = [{"walls": ["w", "v"]}]
    raw["boxes"][1] |= {"wall": "v", "x": "20 in"}
    assert by_subject("lead-paint", raw) == {ROOM: "unknown"}
    raw["walls"][0]["trim_height"], raw["walls"][1]["trim_height"] = "unknown", "3 in"
    assert by_subject("lead-paint", raw) == {ROOM: "unknown"}


def test_typed_trim_is_in_the_room_of_the_source() -> None:
    raw = old_house(run=TYPED | {"trim_length": "6 ft"})
    raw["boxes"] = [{"id": "old", "existing": True, "room": "den"}, {"id": "new", "room": "den"}]
    assert by_subject("lead-paint", raw) == {ROOM: "unknown"}


def test_trim_of_a_run_straight_up_is_on_the_wall_of_the_source() -> None:
    run = {"trim_length": "60 in"}
    found = lead(run=run, wall={"trim_height": "4.8 in"}, new={"x": "20 in", "height": "40 in"})
    # 60 x 4.8 = 288 in2 = 2 ft2
    assert "trim taken off 2 = 2.06 of 6 ft2" in found.figures


def test_nothing_cut_in_a_room_is_nothing() -> None:
    room = {"disturbed_before": "0 ft2"}
    raw = old_house(opening("0.0001"), room=room)
    raw["boxes"][1] = {**raw["boxes"][1], "existing": True, "cables": ["14-2"]}
    assert "openings 0.01 of 6 ft2 in 30 days, under by 5.99" in one("lead-paint", raw).figures


def test_a_new_box_of_no_known_cut_out_disturbs_nothing() -> None:
    raw = old_house(new={"mount": "ceiling", "out": "20 in", "gangs": 2}, run=TYPED)
    assert "; nothing of 6 ft2 in 30 days, under by 6" in one("lead-paint", raw).figures
