"""Box fill by edition, against figures printed with the rules and against published examples."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

import pytest

from estimator.survey.electrical import Device
from estimator.tables.facts import NotOnFile, editions, fill_rules
from estimator.takeoff.fill import Wires, fill_in3, wires_of

EDITIONS = ("nec-2017", "nec-2020", "nec-2023")

# NEC 2023, Table 314.16(A): volume and most conductors of 18, 16, 14, 12, 10, 8 and 6 AWG.
TABLE_A = """\
12.5 8/7/6/5/5/4/2
15.5 10/8/7/6/6/5/3
21.5 14/12/10/9/8/7/4
18.0 12/10/9/8/7/6/3
21.0 14/12/10/9/8/7/4
30.3 20/17/15/13/12/10/6
25.5 17/14/12/11/10/8/5
29.5 19/16/14/13/11/9/5
42.0 28/24/21/18/16/14/8
7.5 5/4/3/3/3/2/1
10.0 6/5/5/4/4/3/2
10.5 7/6/5/4/4/3/2
14.0 9/8/7/6/5/4/2
10.3 6/5/5/4/4/3/2
13.0 8/7/6/5/5/4/2
14.5 9/8/7/6/5/4/2
13.5 9/7/6/6/5/4/2
24.0 16/13/12/10/9/8/4"""
SIZES = ("18", "16", "14", "12", "10", "8", "6")
PRINTED = [
    (Decimal(volume), wire, int(most))
    for volume, counts in (line.split() for line in TABLE_A.splitlines())
    for wire, most in zip(SIZES, counts.split("/"), strict=True)
]


def filled(
    wires: dict[str, int], grounds: int = 0, *, edition: str = "nec-2023",
    device: Device = "none", clamps: bool = False, gangs: int = 1,
) -> Decimal:  # fmt: skip
    """Volume that these wires take, in3."""
    made = Wires(tuple(sorted(wires.items())), grounds)
    return fill_in3(made, device, gangs, clamps, fill_rules(edition))[0]


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize(("volume", "wire", "most"), PRINTED)
def test_the_printed_counts_fit_and_one_more_does_not(
    volume: Decimal, wire: str, most: int, edition: str
) -> None:
    """NEC 2023, Table 314.16(A), every printed count; the volumes are the same since 2017."""
    assert filled({wire: most}, edition=edition) <= volume
    assert filled({wire: most + 1}, edition=edition) > volume


class Example(NamedTuple):
    """A published example; `old` is in3 by the rule up to 2017, `new` since 2020."""

    name: str
    wires: dict[str, int]
    grounds: int
    clamps: bool
    device: Device
    old: str
    new: str


EXAMPLES = [
    Example("BF-13", {"14": 8, "12": 8}, 8, False, "none", "36.25", "38.50"),
    Example("BF-14", {"14": 4}, 2, True, "receptacle", "16.00", "16.00"),
    Example("BF-21", {"12": 18}, 3, False, "none", "42.75", "42.75"),
    Example("BF-28", {"12": 9}, 0, False, "none", "20.25", "20.25"),
]


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize("case", EXAMPLES, ids=lambda case: case.name)
def test_published_examples(case: Example, edition: str) -> None:
    """EC&M, "Code Quiz" and "Code Calculations", recomputed by hand."""
    got = filled(case.wires, case.grounds, edition=edition, clamps=case.clamps, device=case.device)
    assert got == Decimal(case.old if edition == "nec-2017" else case.new)


@pytest.mark.parametrize(("boxes", "fits"), [(("7.5", "10.3", "14.5"), False), (("18.0",), True)])
def test_of_the_boxes_offered_one_fits(boxes: tuple[str, ...], fits: bool) -> None:
    """EC&M BF-14, recomputed by hand: of four device boxes only 18.0 in3 holds 16.00."""
    need = filled({"14": 4}, 2, clamps=True, device="receptacle")
    assert all((need <= Decimal(box)) is fits for box in boxes)


@pytest.mark.parametrize(
    ("cables", "device", "clamps", "want"),
    [
        (("14-2", "14-2"), "receptacle", False, "14.0"),  # S1 before
        (("14-2",) * 3, "receptacle", False, "18.0"),  # S1 after
        (("12-2",) * 2, "receptacle", False, "15.75"),  # S2 source
        (("12-2",) * 2, "receptacle", True, "18.00"),  # S2 A
        (("14-2",) * 2, "receptacle", True, "16.0"),  # S3 before
        (("14-2",) * 3, "receptacle", True, "20.0"),  # S3 after
        (("14-2",), "receptacle", True, "12.0"),  # S3 new
        (("14-2",) * 2, "switch", True, "16.0"),  # S7 switch
        (("14-3",), "luminaire", True, "10.0"),  # 3 + 1 + 1, no yoke
        ((), "receptacle", True, "0"),
    ],
)
def test_worked_jobs(cables: tuple[str, ...], device: Device, clamps: bool, want: str) -> None:
    """S1, S2, S3 and S7, worked by hand."""
    got, _ = fill_in3(wires_of(cables), device, 1, clamps, fill_rules("nec-2023"))
    assert got == Decimal(want)


@pytest.mark.parametrize(
    ("grounds", "old", "new"),
    [(0, "0", "0"), (1, "2", "2"), (4, "2", "2"), (5, "2", "2.5"), (8, "2", "4")],
)
def test_grounds_above_four_count_a_quarter_each_since_2020(
    grounds: int, old: str, new: str
) -> None:
    """BF-G1 and BF-G2, worked by hand at 14 AWG with one insulated wire."""
    for edition, want in (("nec-2017", old), ("nec-2020", new), ("nec-2023", new)):
        assert filled({"14": 1}, grounds, edition=edition) - 2 == Decimal(want)


@pytest.mark.parametrize(("wire", "want"), [("14", "0.5"), ("12", "0.5625"), ("10", "0.625")])
def test_a_quarter_of_each_size(wire: str, want: str) -> None:
    five, four = filled({wire: 1}, 5), filled({wire: 1}, 4)
    assert five - four == Decimal(want)


@pytest.mark.parametrize(("gangs", "want"), [(1, 4), (2, 8), (4, 16)])
def test_a_device_counts_two_a_gang(gangs: int, want: int) -> None:
    """BF-D1 and BF-D2 at 14 AWG: 2 x 2.00 for each gang."""
    assert filled({"14": 1}, device="receptacle", gangs=gangs) - 2 == want


def test_extras_count_at_the_largest_wire() -> None:
    """Worked by hand: 2 x 2.00 + 2 x 2.25 + (1 + 2 + 1) x 2.25 = 17.50."""
    assert filled({"14": 2, "12": 2}, 2, clamps=True, device="switch") == Decimal("17.50")


@pytest.mark.parametrize(
    ("cables", "want"),
    [
        (("14-2",) * 3, "(6 + 1 + 2) x 2.00 = 18.0"),
        (("14-2", "12-2"), "2 x 2.25 + 2 x 2.00 + 3 x 2.25 = 15.25"),
        (("14-2",) * 5, "(10 + 1.25 + 2) x 2.00 = 26.5"),
    ],
)
def test_the_sum_as_a_reader_redoes_it(cables: tuple[str, ...], want: str) -> None:
    said = fill_in3(wires_of(cables), "receptacle", 1, False, fill_rules("nec-2023"))[1]
    assert said == want


def test_a_size_without_a_row_is_never_guessed() -> None:
    with pytest.raises(KeyError):
        filled({"13": 1})


def test_an_edition_without_a_row_names_those_on_file() -> None:
    with pytest.raises(NotOnFile, match="on file are nec-2017, nec-2020, nec-2023"):
        fill_rules("nec-1999")
    assert tuple(sorted(editions())) == EDITIONS
