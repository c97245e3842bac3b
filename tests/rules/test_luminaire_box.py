"""Boxes that carry a luminaire or a paddle fan: NEC 314.27(A) and (C), 2020 as read."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.records import Finding, RemedyChange
from tests.rules.box_case import by_subject, job, of

RULE = "luminaire-box"
CEILING = {"mount": "ceiling", "out": "30 in", "device": "luminaire"}


def box(
    weight: Any = "unknown",
    *,
    which: str = "new",
    room: str = "closet",
    edition: str = "nec-2020",
    **keys: Any,
) -> Finding:
    """A luminaire box of some weight in a room; `marked` and `fan_rated` are marks in it."""
    marks = {"marked_weight": keys.pop("marked", "unknown")}
    marks["fan_rated"] = keys.pop("fan_rated", "unknown")
    spot = {"luminaire_weight": weight, "fan": keys.pop("fan", "no")}
    made = CEILING | {"room": room, "contents": marks, "spot": spot} | keys
    return of(RULE, which, job(**{which: made}, job={"edition": edition}))


@pytest.mark.parametrize(
    ("weight", "verdict"), [(50, "pass"), ("50.1", "fail"), ("unknown", "unknown")]
)
def test_a_ceiling_box_holds_fifty_pounds(weight: Any, verdict: str) -> None:
    found = box(weight)
    assert (found.verdict, found.cite) == (verdict, "NEC 2020 314.27(A)")


@pytest.mark.parametrize(("weight", "verdict"), [(6, "pass"), ("6.1", "fail")])
def test_a_device_box_in_a_wall_holds_six_pounds(weight: Any, verdict: str) -> None:
    assert box(weight, mount="wall").verdict == verdict


@pytest.mark.parametrize(
    ("marked", "verdict"), [(60, "pass"), (59, "fail"), ("unknown", "unknown")]
)
def test_a_mark_in_an_old_box_lets_it_hold_more(marked: Any, verdict: str) -> None:
    assert box(60, which="old", marked=marked).verdict == verdict


def test_figures_and_remedies_of_weights() -> None:
    assert box(4).figures == "luminaire of 4 lb, unmarked at most 50 lb"
    unknown = box()
    assert unknown.figures == "luminaire of unknown weight, unmarked at most 50 lb"
    assert unknown.remedy == "Look up or weigh what will hang on the box."
    unmarked = box("60.5", which="old")
    assert unmarked.figures == "60.5 lb on the box, unmarked at most 50 lb"
    assert unmarked.remedy.startswith("Read the weight marked in the box")
    marked = box(60, which="old", marked=55)
    assert marked.figures == "60 lb on a box marked for 55 lb"
    assert marked.remedy.startswith("Hang it on the framing, apart from the box")
    assert box(60).remedy == marked.remedy
    assert box(60).blocking


@pytest.mark.parametrize(
    ("weight", "marked", "verdict"),
    [(35, "unknown", "pass"), ("35.5", "unknown", "unknown"), ("35.5", 70, "pass"),
     (70, 70, "pass"), (70, 69, "fail"), ("70.1", 99, "fail"), ("unknown", 70, "unknown")],
)  # fmt: skip
def test_a_fan_on_a_box_made_for_fans(weight: Any, marked: Any, verdict: str) -> None:
    found = box(weight, which="old", fan="yes", fan_rated="yes", marked=marked)
    assert (found.verdict, found.cite, found.remedies) == (verdict, "NEC 2020 314.27(C)", ())


def test_a_new_fan_box_that_says_no_weight_fails_above_thirty_five() -> None:
    found = box(40, fan="yes", fan_rated="yes")
    assert (found.verdict, found.figures) == ("fail", "40 lb on the box, unmarked at most 35 lb")


@pytest.mark.parametrize(
    ("which", "rated", "verdict"),
    [("new", "unknown", "fail"), ("new", "no", "fail"), ("old", "no", "fail"),
     ("old", "unknown", "unknown")],
)  # fmt: skip
def test_a_fan_on_a_box_not_made_for_fans_gets_one_that_is(
    which: str, rated: str, verdict: str
) -> None:
    found = box(20, which=which, fan="yes", fan_rated=rated)
    assert (found.verdict, found.remedies) == (verdict, (RemedyChange("box", which, "fan box"),))
    assert found.cite == "NEC 2020 314.27(C)"
    assert found.figures.startswith("fan of 20 lb, a fan box holds at most 70 lb; ")


def test_what_is_said_of_fans() -> None:
    assert box(71, fan="yes").remedy == "Hang it on the framing, not the box."
    assert box(fan="yes").figures.endswith("; the box is not made for fans")
    assert (
        box(fan="yes").remedy
        == "Use a box made and marked for paddle fans, fastened to the framing."
    )
    assert box(71, fan="yes").figures == "fan of 71 lb, a fan box holds at most 70 lb"
    light = box(20, which="old", fan="yes", fan_rated="yes")
    assert light.figures == "fan of 20 lb, a fan box holds at most 70 lb"
    old = box(which="old", fan="yes")
    assert old.figures.endswith("; nobody has read whether the box is made for fans")
    assert old.remedy.startswith("Read the marks inside the box.")
    heavy = box(which="old", fan="yes", fan_rated="yes")
    assert heavy.remedy.startswith("Look up or weigh")
    assert heavy.figures == "fan of unknown weight, a fan box holds at most 70 lb"
    marked = box(60, which="old", marked=60)
    assert marked.figures == "60 lb on a box marked for 60 lb"


def test_a_fan_nobody_has_ruled_out_is_unknown() -> None:
    found = box(4, fan="unknown")
    assert (found.verdict, found.cite) == ("unknown", "NEC 2020 314.27(C)")
    assert (found.figures, found.remedy) == (
        "nobody has said whether a fan will hang there",
        "Ask; a fan needs a box made for it.",
    )
    assert box(4, fan="unknown", fan_rated="yes").verdict == "pass"


@pytest.mark.parametrize(
    ("room", "edition", "verdict"),
    [("bedroom", "nec-2020", "note"), ("bedroom", "nec-2017", "pass"),
     ("closet", "nec-2020", "pass"), ("office", "nec-2023", "note")],
)  # fmt: skip
def test_a_fan_is_likely_in_a_room_that_is_lived_in(room: str, edition: str, verdict: str) -> None:
    assert box(4, room=room, edition=edition).verdict == verdict


def test_what_is_said_where_a_fan_is_likely() -> None:
    found = box(4, room="bedroom")
    assert (
        found.figures == "luminaire of 4 lb, unmarked at most 50 lb; a fan is likely in a bedroom"
    )
    assert found.cite == "NEC 2020 314.27(C) (from memory: check)"
    assert found.remedy.startswith("Use a box made and marked for paddle fans")
    assert not found.blocking


@pytest.mark.parametrize(
    "keys",
    [{"which": "old"}, {"fan_rated": "yes"}, {"mount": "wall"}],
    ids=["old box", "made for fans", "wall"],
)
def test_no_note_where_it_does_not_matter(keys: dict[str, Any]) -> None:
    assert box(4, room="bedroom", **keys).verdict == "pass"


def test_the_note_does_not_hide_what_is_worse() -> None:
    assert box(room="bedroom").verdict == "unknown"


@pytest.mark.parametrize(
    ("edition", "cite"),
    [("nec-2017", "NEC 2017 314.27(A) (from memory: check)"),
     ("nec-2023", "NEC 2023 314.27(A) (from memory: check)")],
)  # fmt: skip
def test_editions_that_were_not_read_say_so(edition: str, cite: str) -> None:
    assert box(4, edition=edition).cite == cite


def test_boxes_without_a_luminaire_are_not_asked() -> None:
    assert by_subject(RULE, job()) == {}
