"""Tables of the circuit, against the figures read in electrical.md section 3."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.tables.circuit import (
    adjustment,
    ambient_factor,
    ampacity,
    circular_mils,
    ground_end,
    ground_size,
    hottest_f,
    least_device_rating_a,
    receptacle_load,
    receptacle_ratings,
    usual_f,
    wires_on_file,
)
from estimator.tables.facts import NotOnFile, rows, sources
from estimator.tables.limits import limit

EDITION = "nec-2023"
MINE = (
    "ambient_factors", "ampacity", "ampacity_adjustment", "ground_ends", "ground_sizes",
    "limits_circuit", "receptacle_loads", "receptacle_ratings",
)  # fmt: skip
CONFIDENCE = {"seen", "memory", "inferred", "common practice"}
SIZES = (14, 12, 10, 8, 6)
EACH_EDITION = pytest.mark.parametrize("edition", ["nec-2017", "nec-2020", "nec-2023"])


@EACH_EDITION
@pytest.mark.parametrize(
    ("rating_c", "printed"),
    [(60, (15, 20, 30, 40, 55)), (75, (20, 25, 35, 50, 65)), (90, (25, 30, 40, 55, 75))],
    ids=["CS-03 60 C", "CS-03 75 C", "CS-03 90 C"],
)
def test_ampacity(edition: str, rating_c: int, printed: tuple[int, ...]) -> None:
    found = [ampacity(str(size), rating_c, edition) for size in SIZES]
    assert tuple(each.value for each in found if each) == printed
    assert {each.unit for each in found if each} == {"A"}


@pytest.mark.parametrize(("wire", "rating_c"), [("4", 60), ("14", 61), ("14.0", 60)])
def test_ampacity_is_never_interpolated(wire: str, rating_c: int) -> None:
    assert ampacity(wire, rating_c, EDITION) is None


@EACH_EDITION
@pytest.mark.parametrize(
    ("wires", "share"),
    [(0, 100), (2, 100), (3, 100), (4, 80), (6, 80), (7, 70), (9, 70), (10, 50), (20, 50),
     (21, 45), (30, 45), (31, 40), (40, 40), (41, 35), (400, 35)],
)  # fmt: skip
def test_adjustment_is_as_printed_in_cs_05(edition: str, wires: int, share: int) -> None:
    assert adjustment(wires, edition).value == share


@EACH_EDITION
@pytest.mark.parametrize(
    ("ambient_f", "factor"),
    [("-10", "1"), ("78", "1"), ("86", "1"), ("86.1", "0.96"), ("87", "0.96"), ("95", "0.96"),
     ("96", "0.91"), ("104", "0.91"), ("105", "0.87"), ("113", "0.87"), ("114", "0.82"),
     ("122", "0.82"), ("123", "0.76"), ("131", "0.76"), ("132", "0.71"), ("140", "0.71"),
     ("141", "0.65"), ("149", "0.65")],
)  # fmt: skip
def test_ambient_factor_is_as_printed_in_cs_08(edition: str, ambient_f: str, factor: str) -> None:
    found = ambient_factor(Decimal(ambient_f), edition)
    assert found is not None
    assert found.value == Fraction(factor)


def test_above_the_ambient_table_nothing_is_said() -> None:
    assert ambient_factor(Decimal("149.1"), EDITION) is None
    assert (usual_f(EDITION), hottest_f(EDITION)) == (86, 149)


@pytest.mark.parametrize(
    ("edition", "places"),
    [
        ("nec-2017", ["Table 310.15(B)(16)", "Table 310.15(B)(3)(a)", "Table 310.15(B)(2)(a)"]),
        ("nec-2020", ["Table 310.16", "Table 310.15(C)(1)", "Table 310.15(B)(1)"]),
        ("nec-2023", ["Table 310.16", "Table 310.15(C)(1)", "Table 310.15(B)(1)(1)"]),
    ],
)
def test_each_edition_has_its_own_places(edition: str, places: list[str]) -> None:
    found = [
        ampacity("14", 60, edition),
        adjustment(4, edition),
        ambient_factor(Decimal(90), edition),
    ]
    assert [each.where for each in found if each] == places


@pytest.mark.parametrize(
    ("circuit_a", "ratings"),
    [(15, [15]), (20, [15, 20]), (30, [30]), (40, [40, 50]), (50, [50]), (25, []), (10, [])],
    ids=lambda each: f"CS-13 {each}",
)
def test_receptacle_ratings(circuit_a: int, ratings: list[int]) -> None:
    assert [each.value for each in receptacle_ratings(circuit_a, EDITION)] == ratings


@pytest.mark.parametrize(
    ("circuit_a", "receptacle_a", "most_a"),
    [(15, 15, 12), (20, 15, 12), (20, 20, 16), (30, 30, 24)],
)
def test_receptacle_load_is_as_printed_in_cs_14(
    circuit_a: int, receptacle_a: int, most_a: int
) -> None:
    found = receptacle_load(circuit_a, receptacle_a, EDITION)
    assert found is not None
    assert (found.value, found.where) == (most_a, "Table 210.21(B)(2)")


def test_no_load_is_on_file_for_a_wrong_pair() -> None:
    assert receptacle_load(15, 20, EDITION) is None


@pytest.mark.parametrize(
    ("material", "printed"),
    [("copper", (14, 12, 10, 10, 8)), ("aluminum", (12, 10, 8, 8, 6)),
     ("copper-clad", (12, 10, 8, 8, 6))],
)  # fmt: skip
def test_ground_size_is_as_printed_in_cs_20(material: str, printed: tuple[int, ...]) -> None:
    found = [ground_size(breaker_a, material, EDITION) for breaker_a in (15, 20, 30, 60, 100)]
    assert tuple(each.value for each in found if each) == printed


@pytest.mark.parametrize(("breaker_a", "size"), [(10, 14), (16, 12), (21, 10), (61, 8)])
def test_a_breaker_between_rows_takes_the_next(breaker_a: int, size: int) -> None:
    found = ground_size(breaker_a, "copper", EDITION)
    assert found is not None
    assert found.value == size


def test_what_is_not_on_file_is_none() -> None:
    assert ground_size(101, "copper", EDITION) is None
    assert ground_size(15, "unknown", EDITION) is None
    assert circular_mils("6") is None
    assert circular_mils("12") == 6530


def test_sizes_come_thinnest_first() -> None:
    assert wires_on_file() == ("14", "12", "10", "8", "6")


@pytest.mark.parametrize(
    ("device", "units", "rating_a"),
    [("receptacle", "us", 15), ("gfci receptacle", "us", 15), ("receptacle", "metric", None),
     ("gfci receptacle", "metric", None)],
)  # fmt: skip
def test_the_smallest_rating_sold(device: str, units: str, rating_a: int | None) -> None:
    assert least_device_rating_a(device, units) == rating_a


@pytest.mark.parametrize(
    ("to", "items"),
    [
        ("electrode", ("ground-clamp",)),
        ("electrode conductor", ("ground-clamp",)),
        ("panel bar", ()),
        ("service neutral", ()),
        ("other circuit, same panel", ("connector-medium",)),
    ],
    ids=lambda each: f"GR-01 {each}",
)
def test_ends_of_a_separate_ground(to: str, items: tuple[str, ...]) -> None:
    assert ground_end(to).items == items


@pytest.mark.parametrize(
    "to", ["outlet neutral", "other circuit, other panel", "water pipe", "ground-fault outlet"]
)
def test_ends_that_the_code_does_not_name(to: str) -> None:
    """GR-01 lists the places; TR-09 forbids a ground tied between ground-fault outlets."""
    assert not ground_end(to).allowed
    assert ground_end("panel bar").allowed


def test_an_end_that_is_not_on_file_is_refused() -> None:
    with pytest.raises(NotOnFile, match="panel bar"):
        ground_end("the moon")


@pytest.mark.parametrize(
    ("figure", "edition", "value", "where"),
    [
        ("breaker-14-copper", "nec-2023", 15, "240.4(D)"),
        ("breaker-12-copper", "nec-2023", 20, "240.4(D)"),
        ("breaker-10-copper", "nec-2023", 30, "240.4(D)"),
        ("breaker-12-aluminum", "nec-2023", 15, "240.4(D)"),
        ("breaker-10-aluminum", "nec-2023", 25, "240.4(D)"),
        ("breaker-12-copper-clad", "nec-2020", 15, "240.4(D)"),
        ("breaker-10-copper-clad", "nec-2020", 25, "240.4(D)"),
        ("breaker-14-copper-clad", "nec-2023", 10, "240.4(D)"),
        ("breaker-8-copper", "nec-2023", 40, "Table 310.16"),
        ("breaker-6-copper", "nec-2017", 55, "Table 310.15(B)(16)"),
        ("portable-share", "nec-2020", 80, "210.23(A)(1)"),
        ("portable-share", "nec-2023", 80, "210.23(B)(1)"),
        ("fixed-share", "nec-2020", 50, "210.23(A)(2)"),
        ("fixed-share", "nec-2023", 50, "210.23(B)(2)"),
        ("continuous-share", "nec-2023", 125, "210.20(A)"),
        ("bundle-length", "nec-2023", 24, "310.15(C)(1)"),
        ("sealed-hole-cables", "nec-2020", 2, "334.80"),
        ("receptacle-va", "nec-2020", 180, "220.14(J)"),
        ("receptacle-va", "nec-2023", 180, "220.41"),
        ("breaker-least", "nec-2020", 15, "210.18"),
        ("breaker-least", "nec-2023", 10, "Table 210.24"),
        ("aluminum-from", "nec-2023", 1965, "years and homes"),
        ("aluminum-to", "nec-2023", 1973, "years and homes"),
        ("aluminum-homes", "nec-2023", 2_000_000, "years and homes"),
    ],
)
def test_figures(figure: str, edition: str, value: int, where: str) -> None:
    found = limit(figure, edition)
    assert (found.value, found.where) == (value, where)


def test_copper_clad_of_14_is_on_file_from_2023_alone() -> None:
    with pytest.raises(NotOnFile):
        limit("breaker-14-copper-clad", "nec-2020")


@pytest.mark.parametrize("table", MINE)
def test_every_row_has_a_source_on_file_and_a_confidence(table: str) -> None:
    for row in rows(table):
        assert row["source"] in sources()
        assert row["where"]
        assert row["confidence"] in CONFIDENCE
        assert (row["source"] == "nec-2017") <= (row["confidence"] == "memory")


@pytest.mark.parametrize("table", MINE)
def test_no_key_stands_twice(table: str) -> None:
    keys = {
        "ambient_factors": 2, "ampacity": 3, "ampacity_adjustment": 2, "ground_ends": 1,
        "ground_sizes": 3, "limits_circuit": 2, "receptacle_loads": 3, "receptacle_ratings": 3,
    }  # fmt: skip
    found = [tuple(row.values())[: keys[table]] for row in rows(table)]
    assert len(set(found)) == len(found)
