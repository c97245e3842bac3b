"""Sealed holes, rated walls, the wall to the garage."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import RemedyPart
from tests.rules.wood_case import TYPED, by_subject, findings, job, one

ATTIC = {"kind": "attic", "accessible": "yes", "height": "100 in"}
CRAWL = {"kind": "crawlspace", "accessible": "yes", "below_floor": "10 in"}
R302_11 = "IRC 2021 R302.11 (from memory: check)"


def seal(count: int) -> tuple[RemedyPart, ...]:
    return (RemedyPart("protection", "firestop-sealant", Decimal(count), "application"),)


@pytest.mark.parametrize(
    ("run", "levels", "figures"),
    [
        (
            {"way": "over", "level": "attic"},
            [ATTIC],
            "2 holes through wall plates, 2 filled in the takeoff",
        ),
        (
            {"way": "under", "level": "crawlspace"},
            [CRAWL],
            "2 floor holes, 2 filled in the takeoff",
        ),
        (
            {
                **TYPED,
                "legs": [{"go": "up", "length": "9 ft", "plates": 2, "members": {"block": 1}}],
            },
            [],
            "1 hole through wall plates, 1 hole through a block, 2 filled in the takeoff",
        ),
    ],
)
def test_holes_through_plates_floors_and_blocks(
    run: dict[str, Any], levels: list[dict[str, str]], figures: str
) -> None:
    found = one("fire-seal", job(run=run, levels=levels))
    assert (found.verdict, found.subject, found.cite) == ("pass", "run 1", R302_11)
    assert found.figures == figures
    assert found.remedy.startswith("Fill each such hole")


def test_the_edition_of_the_seal() -> None:
    raw = job(run={"way": "over", "level": "attic"}, levels=[ATTIC])
    raw["job"]["building_edition"] = "irc-2018"
    assert one("fire-seal", raw).cite == "IRC 2018 R302.11"


def test_holes_from_stud_to_stud_need_no_seal() -> None:
    assert findings("fire-seal", job()) == []


@pytest.mark.parametrize("kind", ["block", "other"])
def test_a_block_to_pass_is_asked_about_and_priced(kind: str) -> None:
    block = {"wall": "w", "kind": kind, "left": "50 in", "right": "60 in",
             "bottom": "10 in", "top": "20 in"}  # fmt: skip
    found = one("fire-seal", job(obstacles=[block]))
    assert (found.verdict, found.remedies) == ("unknown", seal(1))
    assert found.figures == (
        "no hole through plates or floors, 0 filled in the takeoff;"
        " 1 block to pass, bored or passed by is not known"
    )


def test_a_pipe_is_no_block() -> None:
    pipe = {"wall": "w", "kind": "pipe", "left": "50 in", "right": "60 in",
            "bottom": "10 in", "top": "20 in"}  # fmt: skip
    assert findings("fire-seal", job(obstacles=[pipe])) == []


def test_obstacles_of_typed_legs_may_be_blocks() -> None:
    legs = [{"go": "along", "length": "6 ft", "obstacles": 2}]
    found = one("fire-seal", job(run={**TYPED, "legs": legs}))
    assert (found.verdict, found.remedies) == ("unknown", seal(2))


def test_a_wall_of_unknown_rating() -> None:
    found = one("rated-wall", job())
    assert (found.verdict, found.subject, found.cite) == ("unknown", "job", "NEC 2023 300.21")
    assert found.figures == "nobody has said whether a fire rating holds for wall w"


def test_typed_legs_have_walls_of_unknown_rating() -> None:
    raw = job(run=TYPED)
    raw["boxes"] = [{"id": "old", "existing": True}, {"id": "new"}]
    found = one("rated-wall", raw)
    assert found.verdict == "unknown"
    assert found.figures.endswith("the walls of typed legs")


def test_a_wall_without_rating() -> None:
    found = one("rated-wall", job(wall={"fire_rated": "no"}))
    assert (found.verdict, found.subject, found.figures) == ("pass", "job", "not rated: wall w")


def test_a_rated_wall_is_a_note() -> None:
    found = one("rated-wall", job(wall={"fire_rated": "yes"}))
    assert (found.verdict, found.subject) == ("note", "wall w")
    assert "24 in apart" in found.remedy
    assert found.cite == "NEC 2023 300.21; IRC 2021 R302.4.2 (from memory: check)"


def boxes(gangs: list[int], **wall: str) -> dict[str, Any]:
    """A rated wall 12 ft by 8 ft, 96 ft2, with a new box of each of some numbers of gangs."""
    raw = job(wall={"fire_rated": "yes"} | wall, new={"gangs": gangs[0]})
    raw["boxes"] = raw["boxes"][1:] + [
        {"id": f"b{number}", "existing": True, "wall": "w", "x": "20 in", "height": "50 in",
         "gangs": each} for number, each in enumerate(gangs[1:])
    ]  # fmt: skip
    raw["boxes"].append({"id": "old", "existing": True, "room": "hall"})
    raw["runs"][0] |= TYPED
    return raw


# A box is 2-1/4 x 3-3/4 in, 8.44 in2; each gang more is 29/16 in wide: 15.23, 22.03 in2.
@pytest.mark.parametrize(
    ("gangs", "verdict", "words"),
    [
        ([1], "note", "largest box 8.44 in2, at most 16 in2; boxes together 8.44 in2"),
        ([2], "note", "largest box 15.23 in2, at most 16 in2; boxes together 15.23 in2"),
        ([3], "fail", "largest box 22.03 in2, at most 16 in2; boxes together 22.03 in2"),
        ([1] * 11, "note", "boxes together 92.81 in2, at most 100 in2 in any 100 ft2"),
        ([1] * 12, "fail", "boxes together 101.25 in2, at most 100 in2 in any 100 ft2"),
    ],
)
def test_boxes_take_up_little_of_a_rated_wall(gangs: list[int], verdict: str, words: str) -> None:
    """R302.4.2: 16 in2 each, 100 in2 in 100 ft2 of wall."""
    found = next(each for each in findings("rated-wall", boxes(gangs)) if each.subject == "wall w")
    assert (found.verdict, found.blocking) == (verdict, False)
    assert words in found.figures


@pytest.mark.parametrize(
    ("wall", "want"),
    [
        ({"height": "100 in"}, "fail"),
        ({"height": "100.1 in"}, "unknown"),
        ({"height": "unknown"}, "unknown"),
    ],
)
def test_a_large_wall_may_have_them_spread_out(wall: dict[str, str], want: str) -> None:
    # 144 in x 100 in is 100 ft2 exactly
    found = next(
        each for each in findings("rated-wall", boxes([1] * 12, **wall)) if each.subject == "wall w"
    )
    assert found.verdict == want
    assert found.remedy


def test_a_rated_wall_without_a_box_is_a_note() -> None:
    raw = boxes([1])
    raw["boxes"][0] |= {"mount": "ceiling", "out": "20 in"}
    found = next(each for each in findings("rated-wall", raw) if each.subject == "wall w")
    assert (found.verdict, found.figures) == ("note", "a fire-rated wall is opened")


def test_rated_and_unknown_walls_each_have_their_say() -> None:
    raw = job(wall={"fire_rated": "yes"}, new={"wall": "v"})
    raw["walls"] += [raw["walls"][0] | {"id": "v", "fire_rated": "unknown"}]
    raw["corners"] = [{"walls": ["w", "v"]}]
    assert by_subject("rated-wall", raw) == {"wall w": "note", "job": "unknown"}
    raw["walls"][1]["fire_rated"] = "no"
    assert by_subject("rated-wall", raw) == {"wall w": "note"}


def test_walls_that_the_job_does_not_touch_are_not_asked_about() -> None:
    raw = job(wall={"fire_rated": "no"})
    raw["walls"] += [raw["walls"][0] | {"id": "far", "fire_rated": "yes"}]
    assert by_subject("rated-wall", raw) == {"job": "pass"}
    raw["openings"] = [{"id": "hole", "wall": "far", "width": "6 in", "height": "6 in"}]
    assert by_subject("rated-wall", raw) == {"wall far": "note"}


@pytest.mark.parametrize(("x", "verdict"), [("44 in", "pass"), ("43.9 in", "fail")])
def test_boxes_on_two_sides_of_a_rated_wall(x: str, verdict: str) -> None:
    # 44 - 20 = 24 in
    raw = job(wall={"fire_rated": "yes"}, run={"way": "through"}, new={"x": x, "room": "hall"})
    found = findings("rated-wall", raw)[1]
    assert (found.verdict, found.subject, found.blocking) == (verdict, "run 1", False)
    assert found.figures.endswith(" in apart, usual least 24 in")
    assert found.cite == "NEC 2023 300.21 note"


def test_a_run_through_another_wall_is_not_measured() -> None:
    raw = job(wall={"fire_rated": "no"}, run={"way": "through"}, new={"room": "hall"})
    raw["walls"] += [raw["walls"][0] | {"id": "far", "fire_rated": "yes"}]
    raw["openings"] = [{"id": "hole", "wall": "far", "width": "6 in", "height": "6 in"}]
    assert by_subject("rated-wall", raw) == {"wall far": "note"}


@pytest.mark.parametrize(
    ("wall", "verdict"),
    [
        ({"garage_side": "yes"}, "note"),
        ({"garage_side": "unknown"}, "unknown"),
        ({"room": "garage"}, "unknown"),
        ({"room": "garage", "exterior": "yes"}, None),
        ({"room": "garage", "garage_side": "no"}, None),
        ({}, None),
    ],
)
def test_the_wall_to_the_garage(wall: dict[str, str], verdict: str | None) -> None:
    expected = {} if verdict is None else {"wall w": verdict}
    assert by_subject("garage-separation", job(wall=wall)) == expected


def test_the_words_about_the_garage_wall() -> None:
    found = one("garage-separation", job(wall={"garage_side": "yes"}))
    assert found.cite == "IRC 2021 R302.5 (from memory: check)"
    assert found.figures == "between house and garage"
    assert "board at least 0.5 in thick on the garage side" in found.remedy
    found = one("garage-separation", job(wall={"garage_side": "unknown"}))
    assert found.remedy == "Look what is on its other side."


def test_the_garage_wall_is_from_memory_in_every_edition() -> None:
    raw = job(wall={"garage_side": "yes"}, job={"building_edition": "irc-2018"})
    assert one("garage-separation", raw).cite == "IRC 2018 R302.5 (from memory: check)"
