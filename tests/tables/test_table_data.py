"""All tables: sources resolve, keys are single, rows sorted, figures sane and as printed."""

from __future__ import annotations

import csv
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from estimator.rules.registry import FUNCTIONS
from estimator.rules.screen import LOCAL
from estimator.tables import facts
from estimator.tables.facts import NotOnFile

DATA = Path(facts.__file__).parent / "data"
TABLES = sorted(path.stem for path in DATA.glob("*.csv"))
KEYS = {
    "afci_extension": ("edition",),
    "afci_rooms": ("room",),
    "ambient_factors": ("edition", "most_f"),
    "ampacity": ("edition", "wire", "rating_c"),
    "ampacity_adjustment": ("edition", "least_wires"),
    "assumed": ("finding",),
    "bid_fields": ("line",),
    "boards": ("units", "thickness_mm"),
    "box_cutouts": ("mount", "gangs_count"),
    "box_depths": ("edition", "wire"),
    "cable_kinds": ("kind",),
    "cable_sizes": ("kind",),
    "canada_wire_volume": ("wire",),
    "cautions": ("caution", "country"),
    "circuit_classes": ("circuit",),
    "closet_lights": ("luminaire",),
    "cord_paths": ("edition",),
    "currencies": ("currency",),
    "device_depths": ("device",),
    "device_traits": ("device",),
    "devices": ("device", "units", "rating_a"),
    "drying_times": ("condition",),
    "editions": ("edition",),
    "fan_rooms": ("edition", "use"),
    "gfci_places": ("edition", "place"),
    "ground_ends": ("to",),
    "ground_sizes": ("edition", "material", "breaker_a"),
    "island_receptacles": ("edition",),
    "limits_box": ("figure", "edition"),
    "limits_cable": ("figure",),
    "limits_circuit": ("figure", "edition"),
    "limits_house": ("figure",),
    "limits_place": ("figure", "edition"),
    "limits_wood": ("figure", "edition"),
    "local_words": ("american",),
    "lumber": ("stud",),
    "mileage_rates": ("year",),
    "outlet_measures": ("room",),
    "own_or_hire": ("matter", "country"),
    "receptacle_loads": ("edition", "circuit_a", "receptacle_a"),
    "receptacle_ratings": ("edition", "circuit_a", "receptacle_a"),
    "room_traits": ("room", "trait"),
    "rules": ("rule",),
    "safety_list": ("line",),
    "setting_times": ("bag_min",),
    "source_class": ("row", "circuit", "room", "outlet", "edition"),
    "sources": ("key",),
    "standard_boxes": ("box",),
    "stud_defaults": ("units",),
    "tub_relief": ("edition", "relief"),
    "visits": ("compound", "scope", "number"),
    "wire_resistance": ("material", "wire"),
    "wire_volume": ("edition", "wire"),
}
# Rows that stand in the order of the cases they decide, the first that fits.
BY_CASE = ("source_class",)
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
    assert table in BY_CASE or keys == sorted(keys) or keys == sorted(keys, key=by_number)


def by_number(key: tuple[str, ...]) -> list[tuple[Decimal, str]]:
    """Sort figures by their size, and text as it stands."""
    return [(Decimal(part), "") if part.isdecimal() else (Decimal(0), part) for part in key]


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
    figures = [
        Fraction(text) for one, two, text in NUMBERS if (one, two) == (table, column) and text
    ]
    assert all(0 <= each <= 2500 for each in figures)


def test_wire_of_every_us_cable_has_its_figures() -> None:
    us_wires = {row["wire"] for row in read("cable_kinds") if row["units"] == "us"}
    assert us_wires <= {row["wire"] for row in read("wire_volume")}
    for metal in ("copper", "aluminum"):
        on_file = {row["wire"] for row in read("wire_resistance") if row["material"] == metal}
        assert us_wires <= on_file


def test_every_rule_on_file_is_a_function_and_every_function_a_rule() -> None:
    assert {row["rule"] for row in read("rules")} == {*FUNCTIONS, LOCAL}


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
