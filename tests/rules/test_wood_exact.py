"""Wood, seals and walls, word for word, where the other tests look at a part of what is said."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.told import Told, told
from tests.rules.wood_case import BORED, TYPED, findings, hole, job, one

EDGE = "IRC 2021 R602.6 (from memory: check)"
R302_11 = "IRC 2021 R302.11 (from memory: check)"
SEALED = "Fill each such hole with a material that resists flame and hot gas; it is in the takeoff."
RATED_ASK = "Walls to a garage, another dwelling or a shaft may be rated: ask your inspector."
GARAGE = "IRC 2021 R302.5 (from memory: check)"
BLOCK = {"wall": "w", "kind": "block", "left": "50 in", "right": "60 in", "bottom": "10 in",
         "top": "20 in"}  # fmt: skip


@pytest.mark.parametrize(
    ("said", "want"),
    [
        ("no", Told("pass", "no hole at the section of a notch or cut, as surveyed", EDGE)),
        (
            "yes",
            Told(
                "fail",
                "a hole at the section of a notch or cut",
                EDGE,
                "Bore above or below the notch.",
            ),
        ),
        (
            "unknown",
            Told(
                "unknown",
                "nobody has said whether holes meet notches",
                EDGE,
                "Look at the members for old notches and cuts before boring.",
            ),
        ),
    ],
)
def test_a_hole_beside_a_notch(said: str, want: Told) -> None:
    assert told(one("hole-and-notch", job(run={"hole_and_notch": said}))) == want


def two_runs(first: dict[str, Any], second: dict[str, Any]) -> dict[str, Any]:
    """A run along the wall, and another from its end along typed legs."""
    raw = job(run=first)
    raw["boxes"].append({"id": "far", "wall": "w", "x": "130 in", "height": "16 in"})
    run = {**raw["runs"][0], **second, "id": "2", "from": "new", "to": "far"}
    raw["runs"].append(run)
    return raw


@pytest.mark.parametrize("rule", ["hole-and-notch", "plate-cut"])
def test_a_run_that_cuts_nothing_does_not_hide_the_next(rule: str) -> None:
    cuts = {**TYPED, **BORED, "legs": [{"go": "up", "length": "5 ft", "plates": 2, "studs": 1}]}
    nothing = {**TYPED, "method": "exposed"}
    raw = two_runs(nothing, cuts)
    assert [each.subject for each in findings(rule, raw)] == ["run 2"]


def test_studs_of_wood_or_steel() -> None:
    assert told(one("steel-studs", job(wall={"framing": "unknown"}))) == Told(
        "unknown",
        "4 members of wood or steel, nobody has said which",
        "NEC 2023 300.4(B)",
        "Find out with a magnet; each hole in steel gets a bushing.",
    )


def test_a_block_to_pass() -> None:
    assert told(one("fire-seal", job(obstacles=[BLOCK]))) == Told(
        "unknown",
        "no hole through plates or floors, 0 filled in the takeoff;"
        " 1 block to pass, bored or passed by is not known",
        R302_11,
        f"A hole through a block between floors is filled too. {SEALED}",
    )


@pytest.mark.parametrize(
    ("rated", "want"),
    [
        ("no", Told("pass", "not rated: wall w", "NEC 2023 300.21")),
        (
            "unknown",
            Told(
                "unknown",
                "nobody has said whether a fire rating holds for wall w",
                "NEC 2023 300.21",
                RATED_ASK,
            ),
        ),
    ],
)
def test_rated_or_not(rated: str, want: Told) -> None:
    assert told(one("rated-wall", job(wall={"fire_rated": rated}))) == want


@pytest.mark.parametrize(
    ("side", "want"),
    [
        (
            "yes",
            Told(
                "note",
                "between house and garage",
                GARAGE,
                "Close it with board at least 0.5 in thick on the garage side, and fill every hole"
                " and the gap round every box.",
            ),
        ),
        (
            "unknown",
            Told(
                "unknown",
                "nobody has said whether it stands between house and garage",
                GARAGE,
                "Look what is on its other side.",
            ),
        ),
    ],
)
def test_the_wall_to_the_garage(side: str, want: Told) -> None:
    assert told(one("garage-separation", job(wall={"garage_side": side}))) == want


def doubled(row: int | None, said: str, size: str = "2 in") -> str:
    """The verdict on a hole of 57 % of a bearing 2x4 by doubling and how many in a row."""
    run = {"doubled_in_a_row": row} if row is not None else {}
    raw = hole(size, wall={"bearing": "yes", "doubled_studs": said}, run=run)
    found = next(each for each in findings("stud-hole", raw))
    return found.verdict


@pytest.mark.parametrize(
    ("row", "said", "verdict"),
    [
        (2, "yes", "pass"),
        (3, "yes", "fail"),
        (2, "no", "fail"),
        (2, "unknown", "unknown"),
        (3, "unknown", "fail"),
        (None, "yes", "fail"),  # four studs of the run in a row
    ],
)
def test_the_relief_of_doubled_studs(row: int | None, said: str, verdict: str) -> None:
    """40 % of 3 1/2 in is 1.4 in, 60 % is 2.1 in: a hole of 2 in needs the relief."""
    assert doubled(row, said) == verdict


@pytest.mark.parametrize(("size", "relief"), [("2 in", True), ("2-1/4 in", False)])
def test_the_relief_is_told_where_it_would_do(size: str, relief: bool) -> None:
    found = next(each for each in findings("stud-hole", hole(size, wall={"bearing": "yes"})))
    assert ("Doubled studs take a larger hole" in found.remedy) == relief


JOIST = {"wall": "w", "kind": "joist", "at": "50 in", "depth": "7.25 in"}
NOTCH = {**JOIST, "span": "144 in", "hole_at": "12 in", "notch_depth": "1 in",
         "notch_length": "2 in", "thickness": "1.5 in"}  # fmt: skip


def notched(**changes: str) -> str:
    """The figures on one notched joist, 7 1/4 in deep and 144 in long."""
    return one("joist-cut", job(run={"method": "notched"}, members=[NOTCH | changes])).figures


def test_a_notch_in_a_joist() -> None:
    # a sixth is 1.20833 in, a third 2.41667 in, both rounded down to 1/16
    said = notched()
    assert "joist 1, notch 1 in deep: at most 1-3/16 in" in said
    assert "joist 1, notch 2 in long: at most 2-3/8 in" in said
    assert "joist 1, notch 12 in" in said


def test_a_notch_that_is_within_asks_for_nothing() -> None:
    found = one("joist-cut", job(run={"method": "notched"}, members=[NOTCH]))
    assert (found.verdict, found.remedy) == ("pass", "")


def test_a_notch_nobody_placed() -> None:
    said = notched(hole_at="unknown")
    assert "joist 1: whether the notch is in the middle of the span is unknown" in said


def test_a_joist_of_which_too_little_is_known() -> None:
    member = {"wall": "w", "kind": "joist", "at": "50 in", "engineered": "unknown"}
    found = one("joist-cut", job(members=[member]))
    assert found.figures.startswith("joist 1: nobody has said whether it is solid wood or eng")
    assert found.remedy.endswith("Measure the depth of the joist.")


def test_a_hole_off_the_middle_of_a_joist() -> None:
    found = one("joist-cut", job(run={"edge": "1 in"}, members=[JOIST]))
    assert (found.verdict, found.remedy) == ("fail", "Bore at mid depth.")
    assert found.figures.endswith("2 in of wood round it; 1 in left at an edge")
