"""Can the cable go that way: doors and windows in the wall, and levels nobody can enter."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.told import Told, told
from tests.rules.wood_case import findings, job, one

Gap = dict[str, str]
OVER = {"way": "over", "level": "attic"}
DOOR = {"wall": "w", "left": "40 in", "width": "30 in", "height": "80 in", "bottom": "0 in"}
WINDOW = {**DOOR, "left": "75 in", "width": "10 in", "bottom": "10 in", "height": "40 in"}
MEASURES = "the survey's own measures"
AROUND = "Go over the header, under the sill, or another way round."


def gaps(doors: list[Gap], windows: list[Gap]) -> dict[str, Any]:
    """The run from x = 20 to x = 92 at 16 in through a wall with doors and windows."""
    return job(doors=doors, windows=windows)


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (([DOOR], []), "a door"),
        (([], [WINDOW]), "a window"),
        (([DOOR], [WINDOW]), "a door and a window"),
    ],
)
def test_a_run_through_a_door_or_a_window(found: tuple[list[Gap], list[Gap]], words: str) -> None:
    want = Told("fail", f"the level part meets {words}", MEASURES, AROUND)
    blocked = one("way-blocked", gaps(*found))
    assert (blocked.subject, told(blocked)) == ("run 1", want)


@pytest.mark.parametrize("left", ["100 in", None])
def test_a_door_beside_the_run_or_none_blocks_nothing(left: str | None) -> None:
    beside = [] if left is None else [{**DOOR, "left": left}]
    assert findings("way-blocked", gaps(beside, [])) == []


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (([{**DOOR, "left": "unknown"}], []), "the door in wall w stands"),
        (([], [{**WINDOW, "left": "unknown"}]), "the window in wall w stands"),
    ],
    ids=["door", "window"],
)
def test_a_door_whose_place_is_unknown_is_asked_about(
    found: tuple[list[Gap], list[Gap]], words: str
) -> None:
    want = Told(
        "unknown", f"nobody has said where {words}", MEASURES,
        "Measure from the wall's left end to its left edge (left = ...).",
    )  # fmt: skip
    asked = one("way-blocked", gaps(*found))
    assert (asked.subject, told(asked)) == ("run 1", want)


def test_both_are_named_and_a_gap_in_the_way_goes_before() -> None:
    unplaced = ([{**DOOR, "left": "unknown"}], [{**WINDOW, "left": "unknown"}])
    figures = one("way-blocked", gaps(*unplaced)).figures
    assert figures.endswith("the door in wall w and the window in wall w stand")
    assert one("way-blocked", gaps([*unplaced[0], DOOR], [])).verdict == "fail"


@pytest.mark.parametrize(
    ("bottom", "height", "asked"),
    [("10 in", "6 in", []), ("10 in", "6-1/16 in", ["unknown"]), ("16 in", "8 in", ["unknown"]),
     ("16-1/16 in", "8 in", [])],
    ids=["ends at the run", "just over it", "sill at the run", "sill over it"],
)  # fmt: skip
def test_a_window_over_or_under_the_run_is_not_asked_about(
    bottom: str, height: str, asked: list[str]
) -> None:
    """The run goes level at 16 in: 10 and 6 in are 16 in."""
    window = {**WINDOW, "left": "unknown", "bottom": bottom, "height": height}
    assert [each.verdict for each in findings("way-blocked", gaps([], [window]))] == asked


def test_a_run_that_leaves_the_wall_asks_about_no_door() -> None:
    raw = job(doors=[{**DOOR, "left": "unknown"}], run=OVER, levels=attic("yes"))
    assert findings("way-blocked", raw) == []


def attic(accessible: str) -> list[dict[str, str]]:
    return [{"kind": "attic", "accessible": accessible, "height": "100 in"}]


@pytest.mark.parametrize(
    ("accessible", "want"),
    [
        (
            "no",
            Told(
                "fail",
                "the attic cannot be entered",
                MEASURES,
                "Choose another way, or make an access opening and survey it.",
            ),
        ),
        (
            "unknown",
            Told(
                "unknown",
                "nobody has said whether the attic can be entered",
                MEASURES,
                "Look for the hatch.",
            ),
        ),
    ],
)
def test_a_level_that_cannot_be_entered(accessible: str, want: Told) -> None:
    found = one("level-access", job(run=OVER, levels=attic(accessible)))
    assert (found.subject, told(found)) == ("run 1", want)


def test_a_level_that_can_be_entered_says_nothing() -> None:
    assert findings("level-access", job(run=OVER, levels=attic("yes"))) == []


def test_a_run_that_uses_no_level_does_not_hide_the_next() -> None:
    raw = job(levels=attic("no"))
    raw["boxes"].append({"id": "far", "wall": "w", "x": "130 in", "height": "16 in"})
    raw["runs"].append({**raw["runs"][0], **OVER, "id": "2", "from": "new", "to": "far"})
    assert [each.subject for each in findings("level-access", raw)] == ["run 2"]
