"""Tables of what is bought and built with: boards, devices, studs, cut-outs, visits, cable.

Expected values are read off the rows of the books by hand; a board of 5/8 in is 15.875 mm.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.tables import facts as tables
from estimator.tables.cable import CableSize, cable_size, wire_resistance
from estimator.tables.facts import CableKind, DeviceKind, NotOnFile, StudDefault
from estimator.tables.limits import cited, confidence_words, figures_on_file, limit

DRYING = "run the cable, close the openings, tape and first coat"


@pytest.mark.parametrize(
    ("units", "thickness", "item"),
    [
        ("us", None, ("gypsum-board", "gypsum board for patches, 1/2 in")),
        ("us", "1/2", ("gypsum-board", "gypsum board for patches, 1/2 in")),
        ("us", "5/8", ("gypsum-board-5-8", "gypsum board for patches, 5/8 in")),
        ("us", "3/8", ("gypsum-board-3-8", "gypsum board for patches, 3/8 in")),
        ("metric", "5/8", ("gypsum-board", "gypsum board for patches")),
        ("metric", None, ("gypsum-board", "gypsum board for patches")),
        ("none", None, ("", "")),
    ],
)
def test_board_for_a_patch(units: str, thickness: str | None, item: tuple[str, str]) -> None:
    thick_in = None if thickness is None else Fraction(thickness)
    assert tables.board_item(units, thick_in) == item


@pytest.mark.parametrize(
    ("device", "units", "rating_a", "kind"),
    [
        (
            "receptacle",
            "us",
            20,
            DeviceKind("receptacle-20", "plate-receptacle-1g", "mount-receptacle"),
        ),
        (
            "receptacle",
            "us",
            None,
            DeviceKind("receptacle-15", "plate-receptacle-1g", "mount-receptacle"),
        ),
        ("receptacle", "metric", 13, DeviceKind("socket-twin", "", "mount-receptacle")),
        ("switch", "us", 20, DeviceKind("switch-1p", "plate-switch-1g", "mount-switch")),
        ("luminaire", "us", 20, DeviceKind("luminaire-ceiling", "", "mount-luminaire")),
    ],
)
def test_device(device: str, units: str, rating_a: int | None, kind: DeviceKind) -> None:
    assert tables.device_kind(device, units, rating_a) == kind


@pytest.mark.parametrize(
    ("device", "units", "rating_a"),
    [("receptacle", "us", 30), ("wet receptacle", "metric", None), ("bell", "us", 15)],
)
def test_a_device_that_is_not_sold(device: str, units: str, rating_a: int | None) -> None:
    with pytest.raises(NotOnFile) as refused:
        tables.device_kind(device, units, rating_a)
    assert (refused.value.table, refused.value.key) == ("devices", f"{device} {rating_a}")
    assert refused.value.on_file[:2] == ("afci receptacle", "damp gfci receptacle")
    assert str(refused.value).startswith(
        f"devices: '{device} {rating_a}' is not on file; on file are afci receptacle, damp gfci"
    )


def test_devices_of_a_unit_system() -> None:
    assert tables.devices("metric") == (
        "luminaire", "none", "receptacle", "switch", "three-way switch",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("device", "units", "ratings"),
    [("receptacle", "us", (15, 20)), ("receptacle", "metric", (0,)), ("bell", "us", ())],
)
def test_ratings_of_a_device(device: str, units: str, ratings: tuple[int, ...]) -> None:
    assert tables.device_ratings_a(device, units) == ratings


@pytest.mark.parametrize(
    ("mount", "gangs", "area"),
    [("ceiling", 1, "12.6"), ("wall", 1, "8.4"), ("wall", 4, "28.5"), ("wall", 5, "0")],
)
def test_cut_out(mount: str, gangs: int, area: str) -> None:
    assert tables.box_cutout_in2(mount, gangs) == Fraction(area)


@pytest.mark.parametrize(
    ("compound", "scope", "plan"),
    [
        (
            "drying",
            "taped",
            (
                (DRYING, Decimal(24)),
                ("second coat", Decimal(24)),
                ("third coat and sand", Decimal(0)),
            ),
        ),
        (
            "setting",
            "painted",
            (
                ("run the cable, close the openings, tape, two setting coats", Decimal(24)),
                ("sand, prime and paint", Decimal(0)),
            ),
        ),
        ("setting", "bare", ()),
    ],
)
def test_visits(compound: str, scope: str, plan: tuple[tuple[str, Decimal], ...]) -> None:
    assert tables.visit_plan(compound, scope) == plan


def test_studs_nobody_measured() -> None:
    # 88.9, 406.4 and 2438.4 mm are 3 1/2, 16 and 96 in
    assert tables.stud_default("us") == StudDefault(Fraction(7, 2), Fraction(16), Fraction(96))


def test_metric_studs_are_exact_in_inches() -> None:
    mm = Fraction("25.4")
    assert tables.stud_default("metric") == StudDefault(90 / mm, 600 / mm, 2400 / mm)


def test_studs_of_a_unit_system_that_is_not_on_file() -> None:
    words = "stud_defaults: 'feet' is not on file; on file are metric, us"
    with pytest.raises(NotOnFile, match=f"^{words}$"):
        tables.stud_default("feet")


def test_stud_depths_of_ps_20() -> None:
    assert tables.lumber_depths_in() == {
        "2x3": Fraction("2.5"), "2x4": Fraction("3.5"), "2x6": Fraction("5.5"),
        "2x8": Fraction("7.25"), "2x10": Fraction("9.25"), "2x12": Fraction("11.25"),
    }  # fmt: skip


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        (
            "12-3",
            CableKind(
                "12-3", "us", "12", 3, "cable-12-3", "12-3 nonmetallic-sheathed cable with ground"
            ),
        ),
        (
            "2.5 mm2 2-core and earth",
            CableKind(
                "2.5 mm2 2-core and earth", "metric", "2.5", 2, "cable-2.5-2e",
                "2.5 mm2 two-core and earth cable",
            ),
        ),
    ],
)  # fmt: skip
def test_cable_kinds(name: str, kind: CableKind) -> None:
    assert tables.cable_kinds()[name] == kind


def test_cable_sizes() -> None:
    assert cable_size("12-2") == CableSize(Fraction("0.422"), Fraction("0.190"), "seen")
    assert cable_size("10-3") is None


def test_resistance() -> None:
    found = wire_resistance("8", "copper")
    assert found is not None
    assert found.ohm_per_kft == Fraction("0.764")
    assert (found.where, found.confidence) == ("Chapter 9 Table 8", "memory")
    assert wire_resistance("6", "copper") is None


def test_a_figure_for_all_editions() -> None:
    found = limit("free-conductor", "nec-2017")
    assert found.value == 6
    assert (found.figure, found.unit) == ("free-conductor", "in")
    assert (found.source, found.where, found.confidence) == ("nec-2023", "300.14", "seen")


def test_a_figure_that_is_not_on_file_names_its_editions() -> None:
    with pytest.raises(NotOnFile) as refused:
        limit("least-wind", "nec-2023")
    assert (refused.value.table, refused.value.key) == ("limits", "least-wind in nec-2023")
    assert refused.value.on_file == ()


def test_a_figure_of_other_editions_names_them() -> None:
    with pytest.raises(NotOnFile) as refused:
        limit("breaker-14-copper-clad", "nec-2017")
    assert refused.value.key == "breaker-14-copper-clad in nec-2017"
    assert refused.value.on_file == ("nec-2023",)


def test_figures_are_named_once_in_order() -> None:
    names = figures_on_file()
    assert list(names) == sorted(set(names))
    assert {"free-conductor", "plate-cut", "garage-board"} <= set(names)


@pytest.mark.parametrize(
    ("confidence", "words"),
    [
        ("memory", " (from memory: check)"),
        ("inferred", " (worked out)"),
        ("seen", ""),
        ("common practice", ""),
    ],
)
def test_words_of_confidence(confidence: str, words: str) -> None:
    assert confidence_words(confidence) == words


@pytest.mark.parametrize(
    ("edition", "confidence", "said"),
    [
        ("nec-2023", "", "NEC 2023 1.1"),
        ("nec-2023", "inferred", "NEC 2023 1.1 (worked out)"),
        ("irc-2021", "", "IRC 2021 1.1 (from memory: check)"),
        ("irc-2021", "seen", "IRC 2021 1.1"),
    ],
)
def test_citation(edition: str, confidence: str, said: str) -> None:
    assert cited(edition, "1.1", confidence) == said
