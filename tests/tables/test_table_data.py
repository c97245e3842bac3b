"""All tables: sources resolve, keys are single, rows sorted, figures sane and as printed."""

from __future__ import annotations

import csv
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from estimator.tables import facts
from estimator.tables.facts import NotOnFile

DATA = Path(facts.__file__).parent / "data"
TABLES = sorted(path.stem for path in DATA.glob("*.csv"))
KEYS = {
    "boards": ("units", "thickness_mm"),
    "box_cutouts": ("mount", "gangs_count"),
    "cable_kinds": ("kind",),
    "cable_limits": ("edition",),
    "currencies": ("currency",),
    "devices": ("device", "units", "rating_a"),
    "editions": ("edition",),
    "fill_rules": ("edition",),
    "lumber": ("stud",),
    "overcurrent": ("edition", "wire"),
    "sources": ("key",),
    "stud_defaults": ("units",),
    "visits": ("compound", "scope", "number"),
    "wire_volume": ("edition", "wire"),
}
FREE = {"row", "title", "where", "description", "url"}


def read(table: str) -> list[dict[str, str]]:
    with (DATA / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_every_table_is_listed_here() -> None:
    assert sorted(KEYS) == TABLES


@pytest.mark.parametrize("table", TABLES)
def test_no_key_stands_twice_and_rows_are_sorted(table: str) -> None:
    keys = [tuple(row[column] for column in KEYS[table]) for row in read(table)]
    assert len(set(keys)) == len(keys)
    assert keys == sorted(keys)


@pytest.mark.parametrize("table", [name for name in TABLES if name != "sources"])
def test_every_row_has_a_source_on_file(table: str) -> None:
    known = {row["key"] for row in read("sources")}
    assert {row["source"] for row in read(table)} <= known


def test_every_source_is_used_and_says_how_far_to_trust_it() -> None:
    used = {row["source"] for name in TABLES if name != "sources" for row in read(name)}
    for row in read("sources"):
        assert row["key"] in used, row
        assert row["confidence"] in ("seen", "memory", "common practice"), row
        assert row["title"], row


@pytest.mark.parametrize("table", TABLES)
def test_rows_are_whole_and_tidy(table: str) -> None:
    for row in read(table):
        assert None not in row and None not in row.values(), row
        assert all(value == value.strip() for value in row.values()), row


NUMBERS = [
    (table, column, row[column])
    for table in TABLES
    for row in read(table)
    for column in row
    if column.endswith(("_in", "_in2", "_in3", "_mm", "_a", "_count", "_h", "_share"))
]


@pytest.mark.parametrize(("table", "column"), sorted({(one, two) for one, two, _ in NUMBERS}))
def test_figures_are_numbers_within_sane_bounds(table: str, column: str) -> None:
    """No measure in these tables is negative or larger than a wall of 2.5 m in mm."""
    figures = [Decimal(text) for one, two, text in NUMBERS if (one, two) == (table, column)]
    assert all(0 <= each <= 2500 for each in figures)


def test_names_that_tables_share_agree() -> None:
    editions = {row["edition"] for row in read("editions")}
    for table in ("cable_limits", "fill_rules"):
        assert {row["edition"] for row in read(table)} == editions
    for table in ("overcurrent", "wire_volume"):
        assert {row["edition"] for row in read(table)} == editions
    us_wires = {row["wire"] for row in read("cable_kinds") if row["units"] == "us"}
    assert us_wires <= {row["wire"] for row in read("overcurrent")}
    assert us_wires <= {row["wire"] for row in read("wire_volume")}


# NEC 2023, Table 314.16(B)(1); the figures are the same in 2017 and 2020.
WIRE_IN3 = {"18": "1.50", "16": "1.75", "14": "2.00", "12": "2.25", "10": "2.50", "8": "3.00",
            "6": "5.00"}  # fmt: skip


@pytest.mark.parametrize("edition", ["nec-2017", "nec-2020", "nec-2023"])
def test_volume_of_a_wire_as_printed(edition: str) -> None:
    got = facts.fill_rules(edition).volume_in3
    assert {wire: str(volume) for wire, volume in got.items()} == WIRE_IN3


@pytest.mark.parametrize("edition", ["nec-2017", "nec-2020", "nec-2023"])
@pytest.mark.parametrize(("wire", "want"), [("14", 15), ("12", 20), ("10", 30), ("8", None)])
def test_largest_breaker_as_printed(edition: str, wire: str, want: int | None) -> None:
    """NEC 240.4(D): 14 copper 15 A, 12 copper 20 A, 10 copper 30 A."""
    assert facts.max_breaker_a(edition, wire) == want


@pytest.mark.parametrize("edition", ["nec-2017", "nec-2020", "nec-2023"])
def test_limits_of_cable_as_printed(edition: str) -> None:
    """NEC 300.4(A)(1): 1-1/4 in; 300.14: 6 in free, 3 in beyond an opening under 8 in."""
    limits = facts.cable_limits(edition)
    assert Fraction(limits["hole_edge_in"]) == Fraction(5, 4)
    assert (limits["free_conductor_in"], limits["beyond_opening_in"]) == ("6", "3")
    assert (limits["small_opening_in"], limits["sheath_in"]) == ("8", "0.25")


@pytest.mark.parametrize(
    ("stud", "want"),
    [("2x3", "5/2"), ("2x4", "7/2"), ("2x6", "11/2"), ("2x8", "29/4"), ("2x10", "37/4"),
     ("2x12", "45/4")],
)  # fmt: skip
def test_depth_of_studs_as_in_ps_20(stud: str, want: str) -> None:
    assert facts.lumber_depths_in()[stud] == Fraction(want)


@pytest.mark.parametrize(
    ("units", "depth", "spacing", "height"),
    [("us", Fraction(7, 2), Fraction(16), Fraction(96)),
     ("metric", Fraction(450, 127), Fraction(3000, 127), Fraction(12000, 127))],
)  # fmt: skip
def test_what_is_taken_for_studs(
    units: str, depth: Fraction, spacing: Fraction, height: Fraction
) -> None:
    """2x4 at 16 in, 8 ft; 90 mm at 600 mm, 2.4 m: x 5/127 = inches exactly."""
    usual = facts.stud_default(units)
    assert (usual.depth_in, usual.spacing_in, usual.wall_height_in) == (depth, spacing, height)


@pytest.mark.parametrize(
    ("device", "rating", "item"),
    [
        ("receptacle", None, "receptacle-15"),  # the smallest where nobody says
        ("receptacle", 20, "receptacle-20"),
        ("switch", 20, "switch-1p"),  # sold in one rating
        ("luminaire", 15, "luminaire-ceiling"),
        ("none", None, ""),
    ],
)
def test_what_a_device_is_bought_as(device: str, rating: int | None, item: str) -> None:
    assert facts.device_kind(device, "us", rating).item == item


@pytest.mark.parametrize(
    ("device", "units", "rating"),
    [("receptacle", "us", 30), ("gfci receptacle", "metric", None), ("lamp", "us", None)],
)
def test_a_device_that_is_not_on_file(device: str, units: str, rating: int | None) -> None:
    with pytest.raises(NotOnFile, match="is not on file; on file are"):
        facts.device_kind(device, units, rating)


def test_ratings_and_devices_on_file() -> None:
    assert facts.device_ratings_a("receptacle", "us") == (15, 20)
    assert facts.device_ratings_a("gfci receptacle", "metric") == ()
    assert facts.devices("metric") == (
        "luminaire", "none", "receptacle", "switch", "three-way switch"
    )  # fmt: skip


@pytest.mark.parametrize(("mount", "gangs", "want"), [("wall", 1, "42/5"), ("wall", 9, "0")])
def test_cut_out_of_a_box(mount: str, gangs: int, want: str) -> None:
    assert facts.box_cutout_in2(mount, gangs) == Fraction(want)


@pytest.mark.parametrize("read_facts", [facts.fill_rules, facts.cable_limits])
def test_an_edition_not_on_file_lists_those_that_are(read_facts: object) -> None:
    assert callable(read_facts)
    with pytest.raises(NotOnFile) as caught:
        read_facts("nec-1996")
    assert caught.value.on_file == ("nec-2017", "nec-2020", "nec-2023")
