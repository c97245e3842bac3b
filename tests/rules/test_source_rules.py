"""The source: neutral, always live, joints in boxes, own dwelling: TR-06, TR-10, XT-07, XT-08."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.source_rules import fed_from
from tests.rules.circuit_case import facts, findings, job, one, screened, verdict

NEUTRAL, SWITCHED = "neutral-source", "switched-source"
SPLICE, DWELLING = "splice-box", "other-dwelling"
LIVE = "the purpose of the job; NEC 2023 210.52"


@pytest.mark.parametrize("device", ["switch", "three-way switch", "none"])
@pytest.mark.parametrize(
    ("bundle", "expected"), [("yes", "pass"), ("no", "fail"), ("unknown", "unknown")]
)
def test_a_neutral_in_the_switch_box(device: str, bundle: str, expected: str) -> None:
    """TR-10."""
    raw = job(old={"device": device}, found={"neutral_bundle": bundle})
    assert verdict(NEUTRAL, raw, "old") == expected


@pytest.mark.parametrize("device", ["receptacle", "luminaire", "gfci receptacle"])
def test_receptacles_and_lights_have_their_neutral(device: str) -> None:
    assert findings(NEUTRAL, job(old={"device": device})) == {}


@pytest.mark.parametrize(
    ("bundle", "figures", "says"),
    [
        ("yes", "the whites are joined here, apart from the switch", ""),
        (
            "no", "no neutral here, only a switch loop: its white is a hot wire",
            "Start from the light's box or from a receptacle, where the whites are. Never use"
            " the ground as a neutral: it would put current on bare metal.",
        ),
        (
            "unknown", "nobody has looked for a neutral in this box",
            "With the power off, draw the switch out: is there a bundle of whites joined"
            " together that is not on the switch? If the only white goes to the switch, there is"
            " no neutral.",
        ),
    ],
)  # fmt: skip
def test_the_words_of_a_neutral(bundle: str, figures: str, says: str) -> None:
    found = one(NEUTRAL, job(old={"device": "switch"}, found={"neutral_bundle": bundle}), "old")
    assert (found.figures, found.cite) == (figures, "NEC 2023 300.3(B)")
    assert found.remedy == says


@pytest.mark.parametrize(
    ("bundle", "expected"), [("yes", "pass"), ("no", "note"), ("unknown", "note")]
)
def test_switches_alone_do_without(bundle: str, expected: str) -> None:
    raw = job(
        old={"device": "switch"}, new={"device": "three-way switch"},
        found={"neutral_bundle": bundle},
    )  # fmt: skip
    found = one(NEUTRAL, raw, "old")
    assert found.verdict == expected
    if expected == "note":
        assert found.cite == "NEC 2023 404.2(C)"
        assert found.figures.startswith("only switches are fed from here")
        assert found.remedy.startswith("A new switch box in most rooms wants a neutral")


def test_a_light_behind_the_switch_wants_a_neutral() -> None:
    raw = chain("switch", "luminaire")
    raw["boxes"][0] |= {"device": "switch"}
    raw["boxes"][0]["contents"]["neutral_bundle"] = "no"
    assert verdict(NEUTRAL, raw, "old") == "fail"


def chain(*devices: str) -> dict[str, Any]:
    """The old box feeding a row of new boxes, one behind the other."""
    raw = job(new={"device": devices[0]})
    for number, device in enumerate(devices[1:], start=2):
        last = raw["boxes"][-1]["id"]
        raw["boxes"].append({"id": f"new{number}", "device": device})
        raw["runs"].append({**raw["runs"][0], "id": str(number), "from": last})
        raw["runs"][-1]["to"] = f"new{number}"
    return raw


def test_everything_behind_a_source_is_found_once() -> None:
    known = facts(chain("switch", "luminaire", "receptacle"))
    assert [box.id for box in fed_from(known, known.boxes["old"])] == ["new", "new2", "new3"]
    assert [box.id for box in fed_from(known, known.boxes["new2"])] == ["new3"]
    assert fed_from(known, known.boxes["new3"]) == ()


def test_a_ring_comes_to_an_end() -> None:
    raw = chain("receptacle", "receptacle")
    raw["runs"].append({**raw["runs"][0], "id": "3", "from": "new2", "to": "old"})
    known = facts(raw)
    assert [box.id for box in fed_from(known, known.boxes["old"])] == ["new", "new2"]


@pytest.mark.parametrize(
    ("found", "expected", "figures"),
    [
        ({}, "pass", "live with every switch off"),
        ({"tab_removed": "unknown"}, "pass", "live with every switch off"),
        ({"half_switched": "unknown"}, "pass", "live with every switch off"),
        (
            {"half_switched": "unknown", "tab_removed": "unknown"}, "unknown",
            "live with every switch off; whether both halves are is not known",
        ),
        (
            {"half_switched": "unknown", "tab_removed": "yes"}, "unknown",
            "live with every switch off; whether both halves are is not known",
        ),
        (
            {"half_switched": "yes", "tab_removed": "yes"}, "note",
            "one half of the receptacle goes with a switch, the other stays live",
        ),
        (
            {"always_live": "unknown"}, "unknown",
            "nobody has said whether the source stays live with every switch off",
        ),
        ({"always_live": "no"}, "fail", "the source dies with a switch"),
        ({"always_live": "no", "half_switched": "yes"}, "fail", "the source dies with a switch"),
    ],
)  # fmt: skip
def test_always_live(found: dict[str, str], expected: str, figures: str) -> None:
    """TR-06 and the half-switched receptacle of TR-05."""
    said = one(SWITCHED, job(found=found), "old")
    assert (said.verdict, said.figures, said.cite) == (expected, figures, LIVE)


@pytest.mark.parametrize(
    ("found", "says"),
    [
        ({"always_live": "no"}, "Find a box that stays live with all switches off."),
        ({"always_live": "unknown"}, "Turn every switch in and near the room off"),
        ({"half_switched": "unknown", "tab_removed": "yes"}, "tab between the two brass screws"),
        ({"half_switched": "yes"}, "Take the new cable from the half that stays live"),
    ],
)
def test_what_to_do_about_a_switched_source(found: dict[str, str], says: str) -> None:
    assert says in one(SWITCHED, job(found=found), "old").remedy


@pytest.mark.parametrize("device", ["switch", "luminaire", "none"])
def test_only_a_receptacle_has_halves(device: str) -> None:
    found = {"half_switched": "unknown", "tab_removed": "unknown"}
    assert verdict(SWITCHED, job(old={"device": device}, found=found), "old") == "pass"


@pytest.mark.parametrize(
    ("devices", "expected"),
    [
        (("luminaire",), "note"),
        (("luminaire", "luminaire"), "note"),
        (("luminaire", "receptacle"), "fail"),
        (("switch", "luminaire"), "fail"),
    ],
    ids=str,
)
def test_one_more_light_on_the_same_switch(devices: tuple[str, ...], expected: str) -> None:
    raw = chain(*devices)
    raw["boxes"][0] |= {"device": "luminaire"}
    raw["boxes"][0]["contents"]["always_live"] = "no"
    found = one(SWITCHED, raw, "old")
    assert (found.verdict, found.figures) == (expected, "the source dies with a switch")
    if expected == "note":
        assert found.remedy == (
            "The new light goes on and off with the old one. If that is not wanted, find a box"
            " that stays live."
        )


def test_in_another_country_the_purpose_alone_is_cited() -> None:
    raw = job(found={"always_live": "no"})
    raw["job"]["country"] = "NZ"
    found = next(each for each in screened(raw) if each.rule == SWITCHED)
    assert (found.verdict, found.cite) == ("fail", "the purpose of the job")


@pytest.mark.parametrize(
    ("without", "expected", "figures"),
    [
        ("no", "pass", "every joint of this run is in a box"),
        ("yes", "fail", "a joint outside a box"),
        ("unknown", "unknown", "nobody has said whether the run is joined outside a box"),
    ],
    ids=lambda each: f"CI-15 {each}",
)
def test_joints_are_in_boxes(without: str, expected: str, figures: str) -> None:
    found = one(SPLICE, job(run={"splice_without_box": without}), "run 1")
    assert (found.verdict, found.figures, found.cite) == (expected, figures, "NEC 2023 300.15")


def test_the_words_of_a_joint_outside_a_box() -> None:
    found = one(SPLICE, job(run={"splice_without_box": "yes"}), "run 1")
    assert found.remedy.startswith("Run the cable in one piece from box to box, or put a box")
    unknown = one(SPLICE, job(run={"splice_without_box": "unknown"}), "run 1")
    assert unknown.remedy == "Plan one piece from box to box."


KINDS = ("general", "small appliance", "bathrooms", "one bathroom", "laundry", "garage")


@pytest.mark.parametrize("kind", KINDS)
def test_circuits_of_this_dwelling(kind: str) -> None:
    found = one(DWELLING, job(kind=kind))
    said = f"kind of circuit: {kind}"
    assert (found.verdict, found.figures, found.cite) == ("pass", said, "NEC 2023 210.25")


@pytest.mark.parametrize(
    ("kind", "figures", "where", "remedy"),
    [
        (
            "other dwelling", "the circuit belongs to another dwelling or to rooms in common",
            "210.25", "Start from a circuit of this dwelling's own panel.",
        ),
        (
            "individual", "the circuit is there for one appliance alone",
            "210.23", "Leave it to that appliance; start from a general circuit.",
        ),
    ],
    ids=["XT-08", "XT-07"],
)  # fmt: skip
def test_circuits_that_are_spoken_for(kind: str, figures: str, where: str, remedy: str) -> None:
    found = one(DWELLING, job(kind=kind))
    assert (found.verdict, found.blocking, found.figures) == ("fail", True, figures)
    assert (found.cite, found.remedy) == (f"NEC 2023 {where}", remedy)


def test_a_circuit_of_which_only_the_rooms_are_known() -> None:
    found = one(DWELLING, job(kind="unknown", serves=["bedroom", "hall"]))
    said = "it serves bedroom, hall; what it was put in for was not said"
    assert (found.verdict, found.figures, found.cite) == ("note", said, "NEC 2023 210.25")
    assert found.remedy.startswith("See that nothing next door")


def test_a_circuit_of_which_nothing_is_known() -> None:
    found = one(DWELLING, job(kind="unknown"))
    said = "nobody has said what the circuit was put in for"
    assert (found.verdict, found.figures, found.cite) == ("unknown", said, "NEC 2023 210.25")
    assert found.remedy.startswith("Turn the breaker off and list all that goes dead.")


@pytest.mark.parametrize(
    ("kind", "expected"),
    [("individual", "fail"), ("other dwelling", "fail"), ("general", "pass"),
     ("unknown", "unknown")],
)  # fmt: skip
def test_a_source_on_another_circuit_is_judged_by_its_own_kind(kind: str, expected: str) -> None:
    found = findings(DWELLING, job(old={"circuit_kind": kind}, serves=["hall"]))
    assert {subject: each.verdict for subject, each in found.items()} == {
        "circuit": "pass", "old": expected,
    }  # fmt: skip
