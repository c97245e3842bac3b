"""Breaker against wire, and aluminum: CS-01, CS-02, CS-11, CS-27, TR-01, TR-08."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.circuit_rules import awg, breaker_limit
from estimator.rules.records import RemedyChange
from estimator.survey.reader import survey_from
from tests.rules.circuit_case import facts, facts_of, findings, job, one, screened, verdict
from tests.rules.metric_case import in_metres, said_of

RULE = "breaker-wire"
METAL = "wire-material"


@pytest.mark.parametrize(
    ("wire", "material", "most_a"),
    [
        ("14", "copper", 15),
        ("12", "copper", 20),
        ("10", "copper", 30),
        ("12", "aluminum", 15),
        ("10", "aluminum", 25),
        ("12", "copper-clad", 15),
        ("10", "copper-clad", 25),
        ("14", "copper-clad", 10),
        ("8", "copper", 40),
        ("6", "copper", 55),
    ],
    ids=lambda each: f"CS-01 {each}",
)
def test_old_wire_at_its_limit_and_one_ampere_over(wire: str, material: str, most_a: int) -> None:
    at, over = (job(breaker=a, wire=wire, material=material) for a in (most_a, most_a + 1))
    assert verdict(RULE, at) == "pass"
    assert verdict(RULE, over) == "fail"
    assert f"at most {most_a} A" in one(RULE, over).figures


def test_the_words_of_a_pass() -> None:
    found = one(RULE, job())
    said = "the smallest old wire, 12 AWG copper: breaker 20 A, at most 20 A"
    assert (found.figures, found.cite, found.remedy) == (said, "NEC 2023 240.4(D)", "")
    assert list(findings(RULE, job())) == ["circuit", "run 1"]


@pytest.mark.parametrize(
    ("circuit", "figures", "remedy"),
    [
        (
            {"wire": "unknown"},
            "the smallest old wire is unknown; breaker 20 A",
            'Look at the wire in the source box and at the breaker; every wire on the circuit'
            ' counts. Write a size such as "12".',
        ),
        (
            {"wire": "2.5 mm2"},
            "the smallest old wire has no figure on file: 2.5 mm2 copper; breaker 20 A",
            'Look at the wire in the source box and at the breaker; every wire on the circuit'
            ' counts. Write a size such as "12".',
        ),
        (
            {"breaker": "unknown"},
            "the smallest old wire, 12 AWG copper: breaker unknown, at most 20 A",
            "Read the number on the breaker.",
        ),
        (
            {"material": "unknown"},
            "the smallest old wire, 12 AWG of a metal not known: breaker 20 A, at most 20 A if it"
            " is copper",
            "Find out what metal it is; aluminum carries less (see the finding wire-material).",
        ),
        (
            {"material": "unknown", "breaker": 15, "wire": "14"},
            "the smallest old wire, 14 AWG of a metal not known: breaker 15 A, at most 15 A if it"
            " is copper",
            "Find out what metal it is; aluminum carries less (see the finding wire-material).",
        ),
    ],
    ids=["wire", "wire not on file", "breaker", "metal", "metal that has no figure"],
)  # fmt: skip
def test_what_is_not_known(circuit: dict[str, Any], figures: str, remedy: str) -> None:
    found = one(RULE, job(**circuit))
    assert (found.verdict, found.figures, found.remedy) == ("unknown", figures, remedy)
    assert found.cite == "NEC 2023 240.4(D)"


def test_the_metal_does_not_matter_where_every_metal_holds() -> None:
    assert verdict(RULE, job(material="unknown", breaker=15)) == "pass"
    assert verdict(RULE, job(material="unknown", breaker=16)) == "unknown"
    assert verdict(RULE, job(material="unknown", breaker=21)) == "fail"


CHANGE = "Have the breaker changed to 15 A by someone who may work in the panel"


@pytest.mark.parametrize(
    ("kind", "remedy"),
    [
        (
            "general",
            f"{CHANGE}, or start from another circuit. New thick cable does not cure old thin"
            " wire.",
        ),
        (
            "unknown",
            f"{CHANGE}, unless this circuit is one that must be 20 A (kitchen, bathroom, laundry,"
            " garage); there the thin wire has to be replaced.",
        ),
    ],
)
def test_old_wire_too_thin_has_the_breaker_changed(kind: str, remedy: str) -> None:
    found = one(RULE, job(wire="14", kind=kind))
    assert (found.verdict, found.remedy, found.remedies) == ("fail", remedy, ())


@pytest.mark.parametrize(
    "kind", ["small appliance", "bathrooms", "one bathroom", "laundry", "garage"]
)
def test_no_smaller_breaker_on_the_circuits_that_must_be_20_a(kind: str) -> None:
    """TR-01."""
    found = one(RULE, job(wire="14", kind=kind))
    assert (found.verdict, found.remedies) == ("fail", ())
    assert found.remedy == (
        f"The circuit ({kind}) must be 20 A (NEC 2023 210.11(C)), so a smaller breaker is no way"
        " out: the thin wire has to be replaced. Start from another circuit."
    )


@pytest.mark.parametrize("kind", ["laundry", "unknown"])
def test_a_breaker_far_too_large_may_come_down_to_20_on_any_circuit(kind: str) -> None:
    found = one(RULE, job(breaker=30, kind=kind))
    assert found.remedy.startswith("Have the breaker changed to 20 A")
    assert "unless" not in found.remedy


@pytest.mark.parametrize(
    ("edition", "breaker_a", "expected"),
    [
        ("nec-2017", 10, "fail"), ("nec-2020", 10, "fail"), ("nec-2023", 10, "pass"),
        ("nec-2023", 9, "fail"), ("nec-2020", 15, "pass"),
    ],
)  # fmt: skip
def test_ten_ampere_circuits_came_with_2023(edition: str, breaker_a: int, expected: str) -> None:
    """CS-02 and CS-10."""
    raw = job(edition=edition, breaker=breaker_a, wire="14", run={"cable": "14-2"})
    assert verdict(RULE, raw) == expected


def test_the_words_of_a_breaker_too_small() -> None:
    found = one(RULE, job(edition="nec-2020", breaker=10))
    assert found.figures == "breaker 10 A, least 15 A for a branch circuit"
    assert (found.cite, bool(found.remedy)) == ("NEC 2020 210.18", True)


@pytest.mark.parametrize(("wire", "expected"), [("14", "pass"), ("15", "fail"), ("16", "fail")])
def test_branch_wire_is_14_awg_at_least(wire: str, expected: str) -> None:
    """CS-27."""
    found = one(RULE, job(wire=wire, breaker=15))
    assert found.verdict == expected
    assert (found.cite == "NEC 2023 210.19(A)(4)") == (expected == "fail")


def test_the_words_of_wire_too_thin_for_any_branch() -> None:
    found = one(RULE, job(wire="16", breaker="unknown"))
    assert found.figures == "the smallest old wire is 16 AWG, least 14 AWG"
    assert found.remedy == "Wire this thin may feed no outlet. Start from another circuit."


@pytest.mark.parametrize(
    ("cable", "breaker_a", "instead"),
    [
        ("14-2", 20, "12-2"), ("14-3", 20, "12-3"), ("12-2", 30, "10-2"), ("14-2", 30, "10-2"),
        ("14-2", 16, "12-2"),
    ],
)  # fmt: skip
def test_new_cable_too_thin_is_planned_thicker(cable: str, breaker_a: int, instead: str) -> None:
    found = one(RULE, job(breaker=breaker_a, wire="10", run={"cable": cable}), "run 1")
    assert found.verdict == "fail"
    assert found.remedies == (RemedyChange("cable", "1", instead),)
    assert found.remedy == (
        f"Use {instead} cable behind a {breaker_a} A breaker. A receptacle for fewer amperes does"
        " not change that; the wire counts."
    )


def test_new_cable_at_its_limit() -> None:
    found = one(RULE, job(breaker=15, run={"cable": "14-2"}), "run 1")
    said = "new 14-2 cable, 14 AWG copper: breaker 15 A, at most 15 A"
    assert (found.verdict, found.figures, found.remedies) == ("pass", said, ())
    assert found.cite == "NEC 2023 240.4(D)"


@pytest.mark.parametrize(
    "circuit", [{"wire": "14"}, {"wire": "10", "breaker": 40}], ids=["old wire", "breaker"]
)
def test_thicker_new_cable_is_no_cure_for_old_wire_or_a_huge_breaker(
    circuit: dict[str, Any],
) -> None:
    found = one(RULE, job(run={"cable": "14-2"}, **circuit), "run 1")
    said = "The old wire is too thin or the breaker too large: see the circuit."
    assert (found.verdict, found.remedies, found.remedy) == ("fail", (), said)


def test_no_cable_on_file_is_thick_enough() -> None:
    found = one(RULE, job(wire="8", breaker=40), "run 1")
    assert (found.verdict, found.remedies) == ("fail", ())


@pytest.mark.parametrize(
    ("cable", "remedies", "remedy"),
    [
        ("14-2", (RemedyChange("cable", "1", "12-2"),), "Read the number on the breaker. Use 12-2"),
        ("12-2", (), "Read the number on the breaker."),
        ("10-2", (), "Read the number on the breaker."),
    ],
)
def test_a_breaker_nobody_read_may_be_one_of_20(
    cable: str, remedies: tuple[RemedyChange, ...], remedy: str
) -> None:
    found = one(RULE, job(breaker="unknown", run={"cable": cable}), "run 1")
    assert (found.verdict, found.remedies) == ("unknown", remedies)
    assert found.remedy.startswith(remedy)
    assert "breaker unknown" in found.figures


def test_a_cable_without_an_awg_size_is_not_known() -> None:
    found = said_of(RULE, facts_of(in_metres(survey_from(job()))))["run 1"]
    said = "new 2.5 mm2 2-core and earth cable: no figure on file for size 2.5"
    assert (found.verdict, found.figures) == ("unknown", said)
    assert found.remedy == "Choose a cable with an AWG size."
    assert found.cite == "NEC 2023 240.4(D)"


def test_each_run_is_judged() -> None:
    raw = job()
    raw["boxes"].append({"id": "far"})
    raw["runs"].append({**raw["runs"][0], "id": "2", "from": "new", "to": "far", "cable": "14-2"})
    found = {subject: each.verdict for subject, each in findings(RULE, raw).items()}
    assert found == {"circuit": "pass", "run 1": "pass", "run 2": "fail"}


def test_a_local_figure_goes_before_the_printed_one() -> None:
    raw = job(wire="12", breaker=15)
    raw["amendments"] = [
        {
            "rule": RULE, "change": "figure", "figure": "breaker-12-copper", "value": "10",
            "reason": "town ordinance",
        }
    ]  # fmt: skip
    found = one(RULE, raw)
    assert (found.verdict, found.cite) == ("fail", "local: town ordinance")


@pytest.mark.parametrize(
    ("text", "size"), [("14", 14), ("8", 8), ("", 0), ("2.5", 0), ("1/0", 0), ("-3", 0)]
)
def test_awg_reads_whole_numbers_alone(text: str, size: int) -> None:
    assert awg(text) == size


def test_no_figure_for_a_wire_is_none() -> None:
    assert breaker_limit(facts(job()), "14", "aluminum") is None


def test_memory_shows_in_the_citation() -> None:
    assert one(RULE, job(edition="nec-2017", wire="8")).cite == (
        "NEC 2017 Table 310.15(B)(16) (from memory: check)"
    )


COMMON = "about 2,000,000 homes of 1965 to 1973 have aluminum (US CPSC, on aluminum branch wiring, years and homes)"  # noqa: E501


@pytest.mark.parametrize(
    ("year", "built"),
    [
        (1964, "; this house is of 1964, outside those years"),
        (1965, "; this house is of 1965, within those years"),
        (1973, "; this house is of 1973, within those years"),
        (1974, "; this house is of 1974, outside those years"),
        ("unknown", "; the year of this house is unknown"),
    ],
)
def test_how_common_aluminum_is(year: int | str, built: str) -> None:
    raw = job(material="unknown")
    raw["job"]["year_built"] = year
    found = one(METAL, raw)
    said = f"the metal of the old wire is unknown; {COMMON}{built}"
    assert (found.verdict, found.figures) == ("unknown", said)
    assert found.remedy.startswith("Scrape nothing; look at a cut end with the power off.")


@pytest.mark.parametrize("material", ["aluminum", "copper-clad"])
def test_new_copper_on_old_aluminum_stops_the_bid(material: str) -> None:
    found = one(METAL, job(material=material, breaker=15))
    assert (found.verdict, found.blocking, found.remedies) == ("fail", True, ())
    assert found.figures.startswith(
        f"the old wire is {material}, the new cable is copper; {COMMON}"
    )
    assert found.remedy.startswith(
        "Do not join new copper to it with ordinary connectors. A joint needs a connector listed"
        " for aluminum with copper, a device must be marked CO/ALR, and CPSC prefers special"
    )
    assert found.cite == "NEC 2023 110.14"


def test_copper_passes() -> None:
    found = one(METAL, job())
    said = "the old wire is copper, as the new cable is"
    assert (found.verdict, found.figures, found.cite) == ("pass", said, "NEC 2023 110.14")


@pytest.mark.parametrize("rule", [RULE, METAL])
def test_the_us_rules_are_silent_elsewhere(rule: str) -> None:
    raw = job(material="aluminum")
    raw["job"]["country"] = "NZ"
    assert [each for each in screened(raw) if each.rule == rule] == []
