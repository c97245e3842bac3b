"""The two sets of books that ship: complete, invented, and within sane bounds."""

from __future__ import annotations

import csv
import re
from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.catalog.books import read_books
from estimator.catalog.check import check_books
from estimator.catalog.records import Books
from estimator.catalog.shipped import Units, shipped_catalogs

US, METRIC = (read_books(shipped_catalogs(units)) for units in ("us", "metric"))  # type: ignore[arg-type]
BOTH = pytest.mark.parametrize("books", [US, METRIC], ids=["us", "metric"])

# Keys that the takeoff asks for, with the unit that it counts in.
US_ITEMS = """
    cable-14-2 ft; cable-14-3 ft; cable-12-2 ft; cable-12-3 ft; cable-10-2 ft; cable-10-3 ft;
    box-old-work-1g-14 ea; box-old-work-1g-16 ea; box-old-work-1g-18 ea; box-old-work-1g-20 ea;
    box-old-work-1g-22.5 ea; box-old-work-2g-32 ea; box-old-work-2g-42 ea; box-old-work-3g-44 ea;
    box-ceiling-old-work-14 ea; box-ceiling-old-work-16 ea; box-ceiling-old-work-20 ea;
    box-metal-old-work-1g-12.5 ea; box-metal-old-work-1g-14 ea; extender-1g ea;
    extender-2g ea; box-fan-old-work-16 ea; box-fan-old-work-21.5 ea; receptacle-15 ea;
    receptacle-20 ea; receptacle-gfci-15 ea; receptacle-gfci-20 ea; receptacle-afci-15 ea;
    receptacle-afci-20 ea; receptacle-weather-15 ea; receptacle-weather-20 ea; switch-1p ea;
    switch-3w ea; luminaire-closet ea; luminaire-ceiling ea; plate-receptacle-1g ea;
    plate-rectangular-1g ea; plate-switch-1g ea; plate-2g ea; plate-blank-1g ea;
    connector-small ea; connector-medium ea; connector-large ea; pigtail-14 ea; pigtail-12 ea;
    pigtail-10 ea; ground-wire-14 ft; ground-wire-12 ft; ground-wire-10 ft; ground-clamp ea;
    afci-breaker ea; breaker-handle-tie ea; cable-staple ea; gypsum-board ft2; gypsum-board-5-8 ft2;
    gypsum-board-3-8 ft2; backing-strip ft; joint-tape ft; compound-drying gal;
    compound-setting gal; plaster-base gal;
    primer gal; paint-wall gal; texture ft2; caulk ft
"""
METRIC_ITEMS = """
    cable-2.5-2e m; cable-1.5-2e m; box-dry-lining-1g-35 ea; box-dry-lining-1g-47 ea;
    box-dry-lining-2g-47 ea; box-ceiling-round ea; box-fan-old-work ea;
    socket-twin ea; socket-single ea;
    switch-1-way ea; switch-2-way ea; luminaire-ceiling ea; connector-lever-2 ea;
    connector-lever-3 ea; connector-lever-5 ea; pigtail-2.5 ea; pigtail-1.5 ea; cable-clip ea;
    gypsum-board m2; backing-strip m; joint-tape m; compound-drying L; compound-setting L;
    plaster-base L; primer L; paint-wall L; texture m2; caulk m
"""
COMMON_ITEMS = """
    ground-pigtail-screw ea; cable-clamp ea; protection-plate ea; stud-bushing ea;
    firestop-sealant application; mesh-patch ea; screw-drywall ea; nail-finish ea; blade-saw ea;
    blade-multi-tool ea; drop-cloth ea; sanding-sponge ea; painters-tape ea; dust-mask ea;
    plastic-sheet ea; trash-bag ea
"""
TASKS = """
    set-up job; identify-circuit job; lead-rule-room ea; fit-plate-tie ea;
    open-source-box ea; replace-box ea; cut-box-opening ea;
    fit-box ea; fit-box-extender ea; fit-fan-box ea; fill-box-gap ea;
    cut-access-opening ea; open-strip ft; bore-member ea; bore-plate ea;
    bore-floor ea; notch-member ea; fish-drop ea; fish-horizontal ft; pull-bored ft;
    pull-exposed ft; set-up-attic job; set-up-basement job; set-up-crawlspace job; cable-end ea;
    make-joint ea; remake-terminals ea; fit-afci-breaker ea; fit-handle-tie ea; pull-ground-wire ft;
    connect-ground ea; mount-receptacle ea; mount-protective-receptacle ea; mount-switch ea;
    mount-switch-3w ea; mount-luminaire ea; test-outlet ea; trim-off-on ft; caulk-trim ft;
    close-hidden-opening ea; patch-opening ea; patch-area ft2; texture-patch ft2;
    prime-patch ft2; paint-wall ft2; clean-up job; return-visit ea; supply-run job
"""
METRES = {"ft": "m", "ft2": "m2"}


def pairs(listing: str) -> Iterator[tuple[str, str]]:
    for entry in listing.split(";"):
        key, unit = entry.split()
        yield key, unit


@pytest.mark.parametrize(
    ("books", "listing"),
    [(US, US_ITEMS), (US, COMMON_ITEMS), (METRIC, METRIC_ITEMS), (METRIC, COMMON_ITEMS)],
    ids=["us", "us common", "metric", "metric common"],
)
def test_every_item_is_on_file_in_its_unit(books: Books, listing: str) -> None:
    wanted = set(pairs(listing))
    assert wanted <= {(item, ways[0].unit) for item, ways in books.materials.items()}


def test_every_task_is_on_file_in_its_unit() -> None:
    us = dict(pairs(TASKS))
    metric = {task: METRES.get(unit, unit) for task, unit in us.items()}
    assert {task: one.unit for task, one in US.labor.items()} == us
    assert {task: one.unit for task, one in METRIC.labor.items()} == metric


def test_the_us_book_has_rows_enough_and_two_made_up_suppliers() -> None:
    rows = [one for ways in US.materials.values() for one in ways]
    assert len(rows) >= 150
    assert {one.supplier for one in rows} == {"Sample supply house", "Corner hardware (sample)"}


@BOTH
def test_prices_are_above_zero_dated_and_said_to_be_invented(books: Books) -> None:
    rows = [one for ways in books.materials.values() for one in ways]
    assert all(one.pack_price is None or one.pack_price > 0 for one in rows)
    assert {one.source for one in rows} == {"invented price"}
    assert all(one.priced_on and one.priced_on > date(2026, 1, 1) for one in rows)


@BOTH
def test_nails_do_not_stand_with_the_paint(books: Books) -> None:
    aisles = {way.item: way.aisle for ways in books.materials.values() for way in ways}
    assert (aisles["nail-finish"], aisles["caulk"]) == ("fasteners", "paint")


@BOTH
def test_a_larger_pack_never_costs_more_for_each(books: Books) -> None:
    """A mistyped price shows as a pack that nobody would buy."""
    packs = defaultdict(list)
    for item, ways in books.materials.items():
        for one in ways:
            if one.pack_price is not None and one.properties.get("sold_as") != "length":
                packs[item, one.supplier].append((one.pack_size, one.pack_price / one.pack_size))
    for key, sizes in packs.items():
        each = [price for _, price in sorted(sizes)]
        assert each == sorted(each, reverse=True), key


@BOTH
def test_hours_rise_from_low_to_high_and_say_that_they_are_judgement(books: Books) -> None:
    for one in books.labor.values():
        assert 0 < one.hours_low <= one.hours_likely <= one.hours_high <= 6
        assert one.source == "judgement, common practice"


# Starter units for finished walls, common practice: low, likely, high.
@pytest.mark.parametrize(
    ("task", "hours"),
    [
        ("set-up", "0.25 0.50 0.75"),
        ("open-source-box", "0.25 0.40 0.75"),
        ("cut-box-opening", "0.10 0.20 0.35"),
        ("bore-member", "0.03 0.05 0.10"),
        ("notch-member", "0.10 0.20 0.30"),
        ("fish-drop", "0.25 0.50 1.50"),
        ("fish-horizontal", "0.03 0.06 0.10"),
        ("pull-exposed", "0.015 0.025 0.04"),
        ("cable-end", "0.05 0.10 0.15"),
        ("mount-receptacle", "0.20 0.30 0.40"),
        ("mount-protective-receptacle", "0.25 0.40 0.60"),
        ("mount-switch-3w", "0.30 0.45 0.60"),
        ("mount-luminaire", "0.40 0.75 1.25"),
        ("patch-opening", "0.40 0.75 1.25"),
        ("patch-area", "0.15 0.30 0.50"),
        ("paint-wall", "0.004 0.006 0.010"),
    ],
)
def test_hours_are_those_of_the_starter_list(task: str, hours: str) -> None:
    one = US.labor[task]
    assert [one.hours_low, one.hours_likely, one.hours_high] == [Decimal(h) for h in hours.split()]


def test_metric_hours_are_the_us_hours_for_a_metre() -> None:
    """Within the rounding to two places: 1 m = 3.28084 ft, 1 m2 = 10.7639 ft2."""
    per = {"m": Decimal("3.28084"), "m2": Decimal("10.7639")}
    for task, one in METRIC.labor.items():
        factor = per.get(one.unit, Decimal(1))
        assert abs(one.hours_likely - US.labor[task].hours_likely * factor) <= Decimal("0.05")


@pytest.mark.parametrize(
    ("books", "measures"),
    [(US, {"volume_in3", "depth_in"}), (METRIC, {"volume_ml", "depth_mm"})],
    ids=["us", "metric"],
)
def test_boxes_say_what_the_takeoff_asks_of_them(books: Books, measures: set[str]) -> None:
    boxes = {item: ways for item, ways in books.materials.items() if item.startswith("box-")}
    for item, ways in boxes.items():
        properties = ways[0].properties
        assert measures | {"gangs", "clamps", "metal", "mount"} == properties.keys(), item
        assert all(one.properties == properties for one in ways), item


def test_the_name_of_a_box_says_its_volume() -> None:
    for item, ways in US.materials.items():
        found = re.fullmatch(r"box-.*-(\d+(?:\.\d)?)", item)
        if found:
            assert Decimal(ways[0].properties["volume_in3"]) == Decimal(found[1])


@pytest.mark.parametrize(
    ("books", "prefix", "size", "counts"),
    [
        (US, "connector-", "14", range(2, 7)),
        (US, "connector-", "12", range(2, 7)),
        (US, "connector-", "10", range(2, 7)),
        (METRIC, "connector-lever-", "2.5", range(2, 6)),
        (METRIC, "connector-lever-", "1.5", range(2, 6)),
    ],
)
def test_every_group_of_conductors_has_a_connector(
    books: Books, prefix: str, size: str, counts: range
) -> None:
    held: set[int] = set()
    for item, ways in books.materials.items():
        if item.startswith(prefix):
            for part in ways[0].properties["holds"].split():
                name, least, most = re.split("[:-]", part)
                held |= set(range(int(least), int(most) + 1)) if name == size else set()
    assert held == set(counts)


@BOTH
def test_conditions_of_tasks_have_a_factor(books: Books) -> None:
    used = {condition for one in books.labor.values() for condition in one.conditions}
    assert used == books.shop.conditions.keys()


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_check_finds_nothing(units: Units) -> None:
    assert check_books(shipped_catalogs(units), date(2026, 12, 1)) == ((), ())


def test_the_metric_books_hold_no_us_words() -> None:
    text = "".join(path.read_text("utf-8") for path in shipped_catalogs("metric").iterdir())
    words = re.findall(r"\b(?:AWG|NEC|GFCI|AFCI|in3|ft2?|gal|inch|inches|USD)\b", text)
    american = r"(?i)gypsum board|drywall screw|ground wire|\bpigtail\b(?!-)"
    trade = re.findall(american, text)
    assert set(words) | set(trade) == set()


@pytest.mark.parametrize("units", ["us", "metric"])
def test_rows_of_a_book_are_all_as_long_as_its_headings(units: Units) -> None:
    for path in shipped_catalogs(units).glob("*.csv"):
        rows = list(csv.reader(path.read_text("utf-8").splitlines()))
        assert {len(row) for row in rows} == {len(rows[0])}, path


def test_the_readme_says_that_prices_are_invented() -> None:
    assert "invented" in Path(shipped_catalogs() / "README.md").read_text("utf-8")
