"""Limits and rows as whole records, read off the tables by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.tables import box_places, circuit, place
from estimator.tables.box_fill import canada_fill_rules, us_fill_rules
from estimator.tables.facts import NotOnFile
from estimator.tables.house import caution
from estimator.tables.limits import Limit
from estimator.tables.place import DeviceTraits
from estimator.tables.source_class import CircuitClass, circuit_classes, source_row

CE = "nec-2023"


def of(figure: str, value: int | Fraction, unit: str, where: str, source: str = CE) -> Limit:
    """A limit that was read in its source."""
    return Limit(figure, Fraction(value), unit, source, where, "seen")


def test_ampacity_whole() -> None:
    want = of("ampacity-12-90", 30, "A", "Table 310.16")
    assert circuit.ampacity("12", 90, "nec-2023") == want


def test_ampacity_of_an_older_edition_is_from_memory() -> None:
    found = circuit.ampacity("12", 60, "nec-2017")
    assert found is not None
    assert (found.where, found.confidence) == ("Table 310.15(B)(16)", "memory")


@pytest.mark.parametrize(
    ("wires", "share", "confidence"),
    [(0, 100, "inferred"), (1, 100, "inferred"), (3, 100, "inferred"), (4, 80, "seen")],
)
def test_adjustment_whole(wires: int, share: int, confidence: str) -> None:
    """The table starts at four wires; that fewer take nothing off is worked out."""
    found = of("ampacity-adjustment", share, "%", "Table 310.15(C)(1)")
    assert circuit.adjustment(wires, "nec-2023") == replace(found, confidence=confidence)


def test_ambient_factor_whole() -> None:
    want = of("ambient-factor", Fraction("0.96"), "x", "Table 310.15(B)(1)(1)")
    assert circuit.ambient_factor(Decimal(95), "nec-2023") == want


def test_receptacle_ratings_whole() -> None:
    where = "Table 210.21(B)(3)"
    want = tuple(of("receptacle-rating", each, "A", where) for each in (15, 20))
    assert circuit.receptacle_ratings(20, "nec-2023") == want


def test_receptacle_load_whole() -> None:
    want = of("receptacle-load", 16, "A", "Table 210.21(B)(2)")
    assert circuit.receptacle_load(20, 20, "nec-2023") == want


def test_ground_size_whole() -> None:
    want = of("ground-size", 10, "AWG", "Table 250.122")
    assert circuit.ground_size(20, "aluminum", "nec-2023") == want


def test_depth_of_a_box_whole() -> None:
    found = box_places.depth_rule("12", "nec-2017")
    assert found is not None
    assert found.least == Limit(
        "box-depth-12", Fraction(19, 16), "in", "nec-2017", "314.24(B)", "memory"
    )
    assert found.device_over.value == 1
    assert found.behind_device.value == Fraction(1, 4)


@pytest.mark.parametrize(
    ("device", "traits"),
    [
        ("afci receptacle", DeviceTraits(True, False, False, True, "dry")),
        ("damp gfci receptacle", DeviceTraits(True, False, True, False, "damp")),
        ("receptacle", DeviceTraits(True, False, False, False, "dry")),
        ("switch", DeviceTraits(False, True, False, False, "dry")),
    ],
)
def test_device_traits_whole(device: str, traits: DeviceTraits) -> None:
    assert place.device_traits(device) == traits


def test_a_place_that_asks_for_ground_fault_protection_whole() -> None:
    found = {each.place: each for each in place.ground_fault_places("nec-2017", "receptacle")}
    assert found["sinks"] == place.GroundFaultPlace(
        "sinks", "sink", "gfci-sink", "receptacle", 20, "near a sink", "210.8(A)", "memory"
    )


@pytest.mark.parametrize(
    ("circuit_kind", "want"),
    [
        (
            "laundry",
            CircuitClass("laundry", "laundry circuit", 20, 20, True, "210.11(C)(2)", "seen"),
        ),
        (
            "individual",
            CircuitClass(
                "individual",
                "circuit of one appliance alone",
                None,
                None,
                False,
                "422.12",
                "inferred",
            ),
        ),
    ],
)
def test_a_circuit_class_whole(circuit_kind: str, want: CircuitClass) -> None:
    assert circuit_classes()[circuit_kind] == want


@pytest.mark.parametrize(
    ("kind", "breaker_a", "takes"),
    [
        ("general", 14, False),
        ("general", 15, True),
        ("general", 20, True),
        ("general", 21, False),
        ("general", None, True),
        ("individual", 50, True),
    ],
)
def test_the_breaker_of_a_circuit_class(kind: str, breaker_a: int | None, takes: bool) -> None:
    assert circuit_classes()[kind].takes(breaker_a) is takes


def test_half_a_range_takes_any_breaker() -> None:
    odd = CircuitClass("odd", "odd", 15, None, True, "", "seen")
    assert odd.takes(50)


def refusal(look: object, *keys: object) -> tuple[str, str, tuple[str, ...]]:
    """Table, key and first key on file of what a look-up says of a missing key."""
    assert callable(look)
    with pytest.raises(NotOnFile) as refused:
        look(*keys)
    found = refused.value
    return found.table, found.key, found.on_file[:1]


def test_what_is_missing_names_the_table_and_the_key() -> None:
    assert refusal(caution, "fog", "US") == ("cautions", "fog in US", ("asbestos",))
    assert refusal(source_row, "fog", "den", "light", CE) == (
        "source_class", "fog", ("bathrooms",),
    )  # fmt: skip
    assert refusal(circuit.ground_end, "fog") == ("ground_ends", "fog", ("electrode",))
    assert refusal(place.receptacle_for, "fog", True) == ("device_traits", "fog", ("damp",))
    assert refusal(place.arc_fault_room, "fog", CE)[:2] == ("afci_rooms", "fog")
    assert refusal(place.device_traits, "fog")[:2] == ("device_traits", "fog")


def test_a_changed_figure_of_the_box_rules() -> None:
    assert us_fill_rules("nec-2023", (("box-fill-clamps", "0"),)).counts.clamps == 0
    assert us_fill_rules("nec-2023", (("box-fill-device", "0"),)).counts.clamps == 1


def test_what_is_from_memory_in_canada() -> None:
    assert "clamps" in canada_fill_rules().from_memory
    assert canada_fill_rules().counts.device == 2
