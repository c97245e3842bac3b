"""Asbestos, plaster, dust, ladders, hidden lines, digging, permit and tests."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import RemedyTask
from tests.rules.wood_case import TYPED, by_subject, findings, job, one, screened

BRITISH = {"country": "GB", "units": "us"}
PIPE = {"wall": "w", "left": "50 in", "right": "52 in", "bottom": "0 in", "top": "90 in"}


@pytest.mark.parametrize(
    ("year", "verdict"),
    [(1979, "note"), (1980, "pass"), ("unknown", "unknown")],
)
def test_asbestos_by_the_year(year: Any, verdict: str) -> None:
    found = one("asbestos-age", job(job={"year_built": year}))
    assert (found.verdict, found.subject) == (verdict, "job")
    assert found.cite.startswith("16 CFR 1304, consumer patching compounds")


def test_the_words_of_the_year() -> None:
    found = one("asbestos-age", job(job={"year_built": 1979}))
    assert found.figures == "built 1979, not tested; asked about before about 1980"
    assert found.remedy.startswith("Joint compound, texture and plaster of that age")
    assert one("asbestos-age", job()).figures == "built 1990, 1980 or later"
    unknown = one("asbestos-age", job(job={"year_built": "unknown"}))
    assert unknown.figures == "year built unknown, not tested; asked about before about 1980"
    assert unknown.remedy.startswith("Find out when the house was built. Joint compound")


@pytest.mark.parametrize("year", [1979, 1990])
@pytest.mark.parametrize(
    ("tested", "verdict", "figures"),
    [("none found", "pass", "tested, none found"), ("found", "fail", "tested, asbestos found")],
)
def test_asbestos_by_a_test(year: int, tested: str, verdict: str, figures: str) -> None:
    raw = job(job={"year_built": year}, house={"asbestos_tested": tested})
    found = one("asbestos-age", raw)
    assert (found.verdict, found.figures) == (verdict, figures)
    assert found.blocking == (verdict == "fail")


def test_a_survey_that_the_office_asks_for() -> None:
    raw = job(house={"local_survey_first": "yes"})
    assert by_subject("asbestos-age", raw) == {"job": "pass", "survey": "note"}
    raw["house"]["asbestos_tested"] = "none found"
    assert by_subject("asbestos-age", raw) == {"job": "pass"}


@pytest.mark.parametrize("year", [1950, 1999, "unknown"])
def test_no_year_settles_asbestos_elsewhere(year: Any) -> None:
    found = one("asbestos-age", job(job=BRITISH | {"year_built": year}))
    assert found.verdict == "note"
    assert "differs from country to country" in found.remedy


NOTHING_CUT = {"existing": True, "cables": ["14-2"]}
HOLE = {"id": "hole", "wall": "w", "width": "6 in", "height": "6 in"}


@pytest.mark.parametrize("rule", ["asbestos-age", "silica"])
def test_nothing_cut_no_caution(rule: str) -> None:
    assert findings(rule, job(new=NOTHING_CUT)) == []
    assert len(findings(rule, job(new=NOTHING_CUT, openings=[HOLE]))) == 1


@pytest.mark.parametrize(
    ("finish", "expected"),
    [
        ("plaster", {"wall w": "note"}),
        ("unknown", {"wall w": "unknown"}),
        ("gypsum board", {}),
    ],
)
def test_plaster_is_told_of_the_walls_that_are_cut(finish: str, expected: dict[str, str]) -> None:
    assert by_subject("plaster", job(wall={"finish": finish})) == expected
    assert by_subject("plaster", job(wall={"finish": finish}, new=NOTHING_CUT)) == {}
    cut = job(wall={"finish": finish}, new=NOTHING_CUT, openings=[HOLE])
    assert by_subject("plaster", cut) == expected


def test_plaster_of_typed_openings() -> None:
    hole = {"id": "hole", "width": "6 in", "height": "6 in", "fill": "plaster"}
    assert by_subject("plaster", job(openings=[hole])) == {"job": "note"}
    assert by_subject("plaster", job(openings=[hole | {"fill": "re-set"}])) == {}
    assert by_subject("plaster", job(openings=[hole | {"wall": "w"}])) == {}


def test_the_words_about_plaster() -> None:
    found = one("plaster", job(wall={"finish": "plaster"}))
    assert found.figures == "plaster is cut"
    assert found.remedy.startswith("Find the lath, centre the cut between two laths")
    found = one("plaster", job(wall={"finish": "unknown"}))
    assert found.remedy.startswith("Look at the edge inside a box with the circuit off. If plaster")


def test_dust() -> None:
    found = one("silica", job())
    assert (found.verdict, found.subject) == ("note", "job")
    assert found.figures == "0 openings and 1 place for new boxes cut"
    assert "25 ug/m3" in found.remedy
    assert found.cite.startswith("OSHA 29 CFR 1926.1153")
    sanded = one("silica", job(openings=[HOLE])).figures
    assert sanded == "1 opening and 1 place for new boxes cut, seams sanded"


@pytest.mark.parametrize(
    ("changes", "figures"),
    [
        ({"new": {"height": "72.1 in"}}, "box new at 72.1 in"),
        ({"new": {"mount": "ceiling", "out": "20 in"}, "run": TYPED}, "box new in the ceiling"),
        ({"run": {"way": "over", "height": "91 in"}}, "run 1 at 91 in"),
        (
            {
                "run": {"way": "over", "level": "attic"},
                "levels": [{"kind": "attic", "height": "100 in", "accessible": "yes"}],
            },
            "run 1 by the attic",
        ),
        (
            {"openings": [HOLE | {"top": "73 in", "bottom": "67 in"}]},
            "opening hole up to 73 in",
        ),
        ({"openings": [HOLE | {"surface": "ceiling"}]}, "opening hole in the ceiling"),
        (
            {"new": {"height": "80 in"}, "run": {"way": "over", "height": "91 in"}},
            "box new at 80 in, run 1 at 91 in",
        ),
    ],
)
def test_work_from_a_ladder(changes: dict[str, Any], figures: str) -> None:
    found = one("ladder", job(**changes))
    assert (found.verdict, found.subject, found.figures) == ("note", "job", figures)
    assert found.remedy.startswith("Set a ladder 1 ft out for every 4 ft up")


def test_work_within_reach() -> None:
    at_reach = {"top": "72 in", "bottom": "66 in"}
    raw = job(new={"height": "72 in"}, run={"height": "72 in"}, openings=[HOLE | at_reach])
    assert findings("ladder", raw) == []
    typed = job(run=TYPED, openings=[HOLE])
    typed["boxes"] = [{"id": "old", "existing": True}, {"id": "new"}]
    assert findings("ladder", typed) == []


@pytest.mark.parametrize(
    ("wall", "obstacles", "expected"),
    [
        ({}, [], {"job": "unknown"}),
        ({"hidden_lines": "no"}, [], {"job": "pass"}),
        ({"hidden_lines": "yes"}, [], {"wall w": "note"}),
        ({"hidden_lines": "no"}, [PIPE | {"kind": "pipe"}], {"wall w": "note"}),
        ({}, [PIPE | {"kind": "duct"}], {"wall w": "note"}),
        ({}, [PIPE | {"kind": "wire"}], {"wall w": "note"}),
        ({}, [PIPE | {"kind": "other"}], {"wall w": "note"}),
        ({"hidden_lines": "no"}, [PIPE | {"kind": "block"}], {"job": "pass"}),
    ],
)
def test_hidden_lines(
    wall: dict[str, str], obstacles: list[dict[str, str]], expected: dict[str, str]
) -> None:
    assert by_subject("hidden-lines", job(wall=wall, obstacles=obstacles)) == expected


def test_the_words_about_hidden_lines() -> None:
    assert one("hidden-lines", job()).figures == "nobody has said what is inside wall w"
    assert one("hidden-lines", job(wall={"hidden_lines": "no"})).figures == (
        "looked, nothing in wall w"
    )
    raw = job(run=TYPED)
    raw["boxes"] = [{"id": "old", "existing": True}, {"id": "new"}]
    found = one("hidden-lines", raw)
    assert found.verdict == "unknown"
    assert found.figures == "nobody has said what is inside the walls of typed legs"


def test_one_wall_looked_at_and_one_not() -> None:
    raw = job(wall={"hidden_lines": "no"}, new={"wall": "v", "x": "20 in"})
    raw["walls"].append(raw["walls"][0] | {"id": "v", "hidden_lines": "unknown"})
    raw["corners"] = [{"walls": ["w", "v"]}]
    found = one("hidden-lines", raw)
    assert (found.verdict, found.figures) == ("unknown", "nobody has said what is inside wall v")
    raw["walls"][0]["hidden_lines"] = "unknown"
    assert one("hidden-lines", raw).figures == "nobody has said what is inside walls w, v"
    raw["walls"][0]["hidden_lines"] = "yes"
    assert by_subject("hidden-lines", raw) == {"wall w": "note", "job": "unknown"}


def test_digging_is_told_of_outdoor_boxes() -> None:
    assert findings("digging", job()) == []
    found = one("digging", job(new={"room": "outdoors"}))
    assert (found.verdict, found.subject) == ("note", "job")
    assert found.figures == "outdoors: box new"
    assert "call 811" in found.remedy
    named = job(new={"room": "yard"}, rooms=[{"id": "yard", "use": "outdoors"}])
    assert len(findings("digging", named)) == 1


VISIT = (RemedyTask("close", "return-visit", Decimal(1), "ea"),)


@pytest.mark.parametrize(
    ("said", "verdict", "figures"),
    [
        ("needed", "note", "a permit is needed"),
        ("not needed", "pass", "no permit is needed, as surveyed"),
        ("unknown", "unknown", "nobody has said whether a permit is needed"),
    ],
)
def test_permit(said: str, verdict: str, figures: str) -> None:
    found = findings("permit", job(house={"permit": said}))[0]
    assert (found.verdict, found.subject, found.figures) == (verdict, "job", figures)
    assert found.cite.startswith("Two public pages")


@pytest.mark.parametrize(
    ("said", "verdict", "remedies"),
    [("yes", "fail", VISIT), ("no", "pass", ()), ("unknown", "unknown", VISIT)],
)
def test_inspection_before_closing(
    said: str, verdict: str, remedies: tuple[RemedyTask, ...]
) -> None:
    raw = job(house={"permit": "needed", "inspection_before_closing": said})
    found = findings("permit", raw)[1]
    assert (found.verdict, found.subject, found.remedies) == (verdict, "inspection", remedies)
    assert not found.blocking


def test_without_a_permit_there_is_no_inspection_unless_said() -> None:
    raw = job(house={"permit": "not needed"})
    assert by_subject("permit", raw) == {"job": "pass"}
    raw["house"]["inspection_before_closing"] = "yes"
    assert by_subject("permit", raw) == {"job": "pass", "inspection": "fail"}


def test_the_words_about_inspection() -> None:
    yes = findings("permit", job(house={"inspection_before_closing": "yes"}))[1]
    assert yes.figures == "an inspection before closing; no visit for it in the plan"
    no = findings("permit", job(house={"inspection_before_closing": "no"}))[1]
    assert no.figures == "no inspection before closing, as surveyed"
    unknown = findings("permit", job())[1]
    assert unknown.figures == "nobody has said whether an inspection comes before closing"


def test_tests_after_the_work() -> None:
    found = one("tests-after", job())
    assert (found.verdict, found.subject) == ("note", "job")
    assert found.figures == "1 new outlet, and every outlet beyond"
    for word in ("ground runs unbroken", "polarity", "voltage", "trip", "load"):
        assert word in found.remedy
    assert "cannot see a neutral joined to ground" in found.remedy
    assert "trip button" not in found.remedy


@pytest.mark.parametrize("grounded", ["no", "unknown"])
def test_without_a_ground_the_trip_button_proves_nothing(grounded: str) -> None:
    found = one("tests-after", job(circuit={"grounded": grounded}))
    assert found.remedy.endswith("use the device's own button; no trip then proves nothing.")


US_WORDS = (
    "EPA", "OSHA", "CFR", "NEC", "IRC", "811", "CPSC", "GFCI", "AFCI", "AWG", "ft2", " ft ",
    "1978", "1980", "Journal", "township",
)  # fmt: skip


def test_elsewhere_no_us_law_is_named() -> None:
    raw = job(
        job={"country": "GB", "units": "metric", "year_built": 1950},
        run={"cable": "2.5 mm2 2-core and earth", "way": "over", "height": "2.3 m"},
        new={"room": "outdoors"},
        circuit={"grounded": "unknown"},
        house={"local_survey_first": "yes"},
        wall={"finish": "plaster", "garage_side": "yes", "fire_rated": "yes"},
        openings=[HOLE],
    )
    found = screened(raw)
    assert {each.rule for each in found.values()} >= {
        "asbestos-age", "plaster", "silica", "ladder", "hidden-lines", "digging", "permit",
        "tests-after",
    }  # fmt: skip
    assert not {"lead-paint", "rated-wall", "fire-seal", "stud-hole"} & {
        each.rule for each in found.values()
    }
    said = " ".join(f"{e.figures} {e.cite} {e.remedy}" for e in found.values())
    assert [word for word in US_WORDS if word in said] == []
