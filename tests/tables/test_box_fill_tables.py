"""Figures that boxes are counted by, against the printed tables, typed here a second time."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import floor

import pytest

from estimator.tables.box_fill import (
    canada_fill_rules,
    has_fill_rules,
    standard_boxes,
    us_fill_rules,
)
from estimator.tables.facts import NotOnFile, rows, sources

EDITIONS = ("nec-2017", "nec-2020", "nec-2023")
SIZES = ("18", "16", "14", "12", "10", "8", "6")
# NEC 2023 Table 314.16(B)(1), in3.
PER_WIRE = {"18": "1.50", "16": "1.75", "14": "2.00", "12": "2.25", "10": "2.50", "8": "3.00",
            "6": "5.00"}  # fmt: skip
# NEC 2023 Table 314.16(A): in3, cm3, most wires of 18 / 16 / 14 / 12 / 10 / 8 / 6 AWG.
PRINTED = """
    OCT-125 12.5 205 8/7/6/5/5/4/2; OCT-150 15.5 254 10/8/7/6/6/5/3;
    OCT-2125 21.5 353 14/12/10/9/8/7/4; SQ4-125 18.0 295 12/10/9/8/7/6/3;
    SQ4-150 21.0 344 14/12/10/9/8/7/4; SQ4-2125 30.3 497 20/17/15/13/12/10/6;
    SQ411-125 25.5 418 17/14/12/11/10/8/5; SQ411-150 29.5 484 19/16/14/13/11/9/5;
    SQ411-2125 42.0 689 28/24/21/18/16/14/8; DEV-15 7.5 123 5/4/3/3/3/2/1;
    DEV-2 10.0 164 6/5/5/4/4/3/2; DEV-225 10.5 172 7/6/5/4/4/3/2;
    DEV-25 12.5 205 8/7/6/5/5/4/2; DEV-275 14.0 230 9/8/7/6/5/4/2;
    DEV-35 18.0 295 12/10/9/8/7/6/3; HAN-150 10.3 169 6/5/5/4/4/3/2;
    HAN-1875 13.0 213 8/7/6/5/5/4/2; HAN-2125 14.5 238 9/8/7/6/5/4/2;
    MAS-25 14.0 230 9/8/7/6/5/4/2; MAS-35 21.0 344 14/12/10/9/8/7/4;
    FS-1 13.5 221 9/7/6/6/5/4/2; FS-m 18.0 295 12/10/9/8/7/6/3;
    FD-1 18.0 295 12/10/9/8/7/6/3; FD-m 24.0 395 16/13/12/10/9/8/4
"""
LINES = {line.split()[0]: line.split()[1:] for line in PRINTED.split(";")}
PER_GANG = {"DEV-15", "DEV-2", "DEV-225", "DEV-25", "DEV-275", "DEV-35", "MAS-25", "MAS-35",
            "FS-1", "FS-m", "FD-1", "FD-m"}  # fmt: skip


def test_the_standard_boxes_are_the_24_of_the_table() -> None:
    assert len(LINES) == 24
    assert set(standard_boxes()) == set(LINES)


@pytest.mark.parametrize("box", sorted(LINES))
def test_a_standard_box_is_as_printed(box: str) -> None:
    volume, cm3, most = LINES[box]
    row = standard_boxes()[box]
    assert (row.box, row.volume_in3, row.volume_cm3) == (box, Decimal(volume), int(cm3))
    assert row.most == dict(zip(SIZES, map(int, most.split("/")), strict=True))
    assert row.per_gang == (box in PER_GANG)
    assert row.description


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("box", sorted(LINES))
def test_the_count_of_a_standard_box_is_volume_over_room_of_a_wire(box: str, size: str) -> None:
    row = standard_boxes()[box]
    assert row.most[size] == floor(row.volume_in3 / Decimal(PER_WIRE[size]))


@pytest.mark.parametrize("edition", EDITIONS)
def test_room_of_a_wire_is_as_printed_in_each_edition(edition: str) -> None:
    rules = us_fill_rules(edition)
    assert rules.volume == {size: Decimal(room) for size, room in PER_WIRE.items()}
    assert (rules.rule, rules.unit, rules.table_boxes) == ("box-fill", "in3", True)


# NEC 314.16(B): what does not change from one edition to the next.
@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize(
    ("name", "count"),
    [("clamps", 1), ("stud", 1), ("hickey", 1), ("device", 2), ("loop", 2), ("passing", 1),
     ("grounds", 1), ("connector_pair", 0), ("canopy_wires", 4)],
)  # fmt: skip
def test_allowances_of_every_edition(edition: str, name: str, count: int) -> None:
    assert getattr(us_fill_rules(edition).counts, name) == count


# NEC 314.16(B)(5) and (6) by edition; 2017 from older examples and memory.
@pytest.mark.parametrize(
    ("edition", "free", "extra", "isolated", "jumper", "block"),
    [("nec-2017", "0", "0", "1", "1", "0"), ("nec-2020", "4", "0.25", "0", "1", "0"),
     ("nec-2023", "4", "0.25", "0", "0", "1")],
)  # fmt: skip
def test_allowances_that_differ_by_edition(
    edition: str, free: str, extra: str, isolated: str, jumper: str, block: str
) -> None:
    counts = us_fill_rules(edition).counts
    assert (counts.grounds_free, counts.extra_ground) == (Decimal(free), Decimal(extra))
    assert (counts.isolated_grounds, counts.bonding_jumper) == (Decimal(isolated), Decimal(jumper))
    assert counts.terminal_block == Decimal(block)


@pytest.mark.parametrize("edition", EDITIONS)
def test_an_unmarked_barrier_and_the_thin_wires_of_a_canopy(edition: str) -> None:
    rules = us_fill_rules(edition)
    assert rules.barrier == {"metal": Decimal("0.5"), "nonmetallic": Decimal(1)}
    assert (rules.thin_below, rules.deep_over_cm, rules.deep_per_cm) == ("14", None, None)


@pytest.mark.parametrize(("edition", "remembered"), [("nec-2017", 7), ("nec-2023", 0)])
def test_rooms_that_were_not_read_are_known(edition: str, remembered: int) -> None:
    assert len(us_fill_rules(edition).from_memory) == remembered


def test_an_edition_without_rows_names_those_on_file() -> None:
    with pytest.raises(NotOnFile, match="nec-2017, nec-2020, nec-2023"):
        us_fill_rules("nec-2011")


def test_a_local_change_of_a_figure_goes_before_the_edition() -> None:
    changed = us_fill_rules("nec-2023", (("box-fill-clamps", "0"), ("box-fill-device", "3")))
    assert (changed.counts.clamps, changed.counts.device, changed.counts.stud) == (0, 3, 1)


@pytest.mark.parametrize(
    ("edition", "country", "known"),
    [("nec-2023", "US", True), ("nec-2023", "CA", False), ("nec-1999", "US", False)],
)
def test_an_edition_belongs_to_its_country(edition: str, country: str, known: bool) -> None:
    assert has_fill_rules(edition, country) is known


# CE Code Table 22 and Rule 12-3034: 12 and 8 AWG from a training guide, the others from memory.
def test_canadian_rooms_and_allowances() -> None:
    rules = canada_fill_rules()
    assert rules.volume == {
        "18": 0, "16": 0, "14": Decimal("24.6"), "12": Decimal("28.7"), "10": Decimal("36.9"),
        "8": Decimal("45.1"), "6": Decimal("73.7"),
    }  # fmt: skip
    counts = rules.counts
    assert (counts.device, counts.stud, counts.hickey, counts.connector_pair) == (2, 1, 1, 1)
    assert (counts.grounds, counts.extra_ground, counts.clamps) == (0, 0, 0)
    assert (counts.loop, counts.passing, counts.terminal_block) == (2, 1, 0)
    assert (rules.deep_over_cm, rules.deep_per_cm) == (Fraction("2.54"), 32)
    assert (rules.rule, rules.unit, rules.table_boxes) == ("box-fill-canada", "mL", False)
    assert (rules.barrier, rules.thin_below) == ({}, "")
    assert rules.from_memory == {"14", "10", "6", "clamps"}


TABLES = ("wire_volume", "standard_boxes", "canada_wire_volume", "box_depths", "device_depths",
          "fan_rooms", "limits_box")  # fmt: skip
KEYS = {
    "wire_volume": ("edition", "wire"),
    "standard_boxes": ("box",),
    "canada_wire_volume": ("wire",),
    "box_depths": ("edition", "wire"),
    "device_depths": ("device",),
    "fan_rooms": ("edition", "use"),
    "limits_box": ("figure", "edition"),
}


@pytest.mark.parametrize("table", TABLES)
def test_every_row_has_a_source_and_a_confidence(table: str) -> None:
    for row in rows(table):
        assert row["source"] in sources(), row
        assert row["confidence"] in ("seen", "memory", "inferred", "common practice"), row


@pytest.mark.parametrize("table", TABLES)
def test_rows_are_sorted_and_none_stands_twice(table: str) -> None:
    keys = [tuple(row[column] for column in KEYS[table]) for row in rows(table)]
    assert keys == sorted(set(keys))


def test_figures_have_a_unit_of_the_trade() -> None:
    assert {row["unit"] for row in rows("limits_box")} == {
        "conductors", "grounds", "wires", "AWG", "in3", "in", "lb", "cm", "mL per cm",
    }  # fmt: skip
