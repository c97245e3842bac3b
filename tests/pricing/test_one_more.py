"""One more outlet while there: the job estimated again with it; worked by hand where it can be."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from estimator.catalog.records import Books
from estimator.pricing import one_more
from estimator.pricing.engine import estimate
from estimator.pricing.one_more import one_more_outlet
from estimator.survey.records import Survey
from tests.pricing.made_books import HEAD, plain, with_terms, written
from tests.route.made_house import house

BARE: dict[str, Any] = {"finish": {"scope": "none"}}
MATERIALS = (
    HEAD
    + "".join(
        f"{item},{item},{unit},1,{price},S,A,,{sold_as},,,,,,,,2026-01-05,invented\n"
        for item, unit, price, sold_as in (
            ("cable-14-2", "ft", "1.00", "length"),
            ("receptacle-15", "ea", "2.00", "pack"),
        )
    )
    + "box-one,box,ea,1,3.00,S,A,,pack,22.5,1,yes,no,2.5,old-work,,2026-01-05,invented\n"
)


def books(tmp_path: Path, materials: str = MATERIALS, **terms: Any) -> Books:
    """Cable at 1.00 a foot, a receptacle at 2.00, a box at 3.00; 1 h a receptacle; no more."""
    made = written(tmp_path / "b", house(), materials=materials, hours={"mount-receptacle": "1"})
    own = {
        "labor_rate_per_hour": Decimal(50), "materials_markup_pct": Decimal(0),
        "hours_basis": "likely", "small_items_pct": Decimal(0), "minimum_charge": Decimal(0),
        "trip_charge": Decimal(0),
    }  # fmt: skip
    return with_terms(made, **(own | terms))


def test_its_cable_its_receptacle_and_its_hour(tmp_path: Path) -> None:
    """First cut 72 + 24 in, with 10 % 105.6 in: 9 ft. With another of 72 + 24: 211.2 in: 18 ft.
    9.00 of cable, 2.00 for the receptacle, 3.00 for the box, 50.00 for the hour: 64.00."""
    got = one_more_outlet(house(**BARE), books(tmp_path))
    assert got.amount == Decimal("64.00")
    assert got.why == (
        "like the last new outlet, 6 ft of cable further; no more opening or patching in it"
    )


@pytest.mark.parametrize(("path", "more"), [("1 ft", "59.00"), ("12 ft", "71.00")])
def test_the_length_is_a_setting(tmp_path: Path, path: str, more: str) -> None:
    """105.6 + 1.1 x 36 = 145.2 in: 13 ft, 4.00 more; + 1.1 x 168 = 290.4 in: 25 ft, 16.00 more."""
    length = Fraction(path.removesuffix(" ft")) * 12
    own = books(tmp_path, one_more_path_in=length)
    assert one_more_outlet(house(**BARE), own).amount == Decimal(more)


def test_stated_hours_and_materials_grow_by_what_the_lists_do(tmp_path: Path) -> None:
    """3 h and 20.00 stated: one hour and 14.00 more, as on the lists; small items of 10 % on
    those 14.00 are 1.40."""
    own = {"labor_hours": 3, "materials_cost": 20}
    job = house(**BARE, overrides=own)
    assert one_more_outlet(job, books(tmp_path)).amount == Decimal("64.00")
    assert one_more_outlet(job, books(tmp_path, small_items_pct=Decimal(10))).amount == Decimal(
        "65.40"
    )


@pytest.mark.parametrize("stated", ["labor_hours", "materials_cost"])
def test_one_stated_figure_and_one_list(tmp_path: Path, stated: str) -> None:
    job = house(**BARE, overrides={stated: 5})
    assert one_more_outlet(job, books(tmp_path)).amount == Decimal("64.00")


def test_the_minimum_may_hold_both(tmp_path: Path) -> None:
    got = one_more_outlet(house(**BARE), books(tmp_path, minimum_charge=Decimal(500)))
    assert got == (one_more.OneMore(Decimal("0.00"), one_more.SAME))


def test_a_job_that_is_stopped_has_no_price_for_more(tmp_path: Path) -> None:
    """14 AWG on a 20 A breaker: NEC 240.4(D)."""
    job = house(**BARE, circuit={"breaker": 20, "wire": "14"})
    assert one_more_outlet(job, books(tmp_path)) == one_more.OneMore(None, one_more.BLOCKED)


def test_one_more_that_would_be_stopped_says_by_what(tmp_path: Path) -> None:
    """A box of 14.1 in3 takes one cable, clamp and device, (2 + 1 + 2 + 1) x 2.00 = 12; fed on
    it takes two cables: (4 + 1 + 2 + 1) x 2.00 = 16."""
    small = books(tmp_path, materials=MATERIALS.replace("22.5", "14.1"))
    got = one_more_outlet(house(**BARE), small)
    assert got == one_more.OneMore(None, "it would be stopped: wires in each box (b)")


def test_a_job_without_a_new_box() -> None:
    boxes = [{"id": name, "existing": True, "wall": "w", "x": x, "height": 15,
              "cables": ["14-2"]} for name, x in (("a", 20), ("b", 92))]  # fmt: skip
    got = one_more_outlet(house(**BARE, boxes=boxes), plain())
    assert got == one_more.OneMore(None, one_more.NO_NEW_BOX)


def test_parts_without_a_price_are_not_priced_at_nothing(tmp_path: Path) -> None:
    """A book that lost its receptacles since the bid was made."""
    job = house(**BARE)
    own = books(tmp_path)
    fewer = {key: rows for key, rows in own.materials.items() if key != "receptacle-15"}
    bare = Books(fewer, own.labor, own.accounts, own.shop, own.files)
    got = one_more_outlet(job, bare, estimate(job, own))
    assert got == one_more.OneMore(None, one_more.UNPRICED)


def test_studs_are_passed_as_often_as_on_the_last_run(tmp_path: Path) -> None:
    """20 to 92 passes 32, 48, 64, 80: 4 studs in 72 in; 73 in takes 4.06, so 5; 0.3 h a stud."""
    made = written(tmp_path / "s", house(), materials=MATERIALS, hours={"bore-member": "0.3"})
    terms = {"labor_rate_per_hour": Decimal(100), "hours_basis": "likely",
             "materials_markup_pct": Decimal(0), "small_items_pct": Decimal(0),
             "minimum_charge": Decimal(0), "trip_charge": Decimal(0)}  # fmt: skip
    job = house(**BARE)
    for path, studs in ((72, 4), (73, 5), (18, 1)):
        own = with_terms(made, one_more_path_in=Fraction(path), **terms)
        got = one_more_outlet(job, own).amount
        cable = estimate_cable(path)
        assert got == Decimal(studs * 30 + 5 + cable)


def estimate_cable(path: int) -> int:
    """Feet more than the 9 ft of the job: (96 + path + 24) x 1.1 / 12, rounded up."""
    together = -(-(96 + path + 24) * 11 // 120)
    return together - 9


SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_has_a_price_for_one_more(path: Path) -> None:
    from estimator.pricing.books_for import books_for
    from estimator.survey.reader import read_job

    job = read_job(path)
    shop = books_for(job)
    got = one_more_outlet(job.survey, shop)
    assert got.amount is not None and got.amount > 0
    assert got == one_more_outlet(job.survey, shop, estimate(job.survey, shop))


def test_the_second_name_is_free_and_the_place_is_on_the_wall() -> None:
    """240 in of wall: 92 + 72 = 164; from 200 it goes back to 128; from 100 with 200 nowhere."""
    job = house(**BARE)
    box = job.boxes[1]
    assert one_more._beside(job, box, Fraction(72)) == 164
    assert (
        one_more._beside(job, box.model_copy(update={"x_in": Fraction(200)}), Fraction(72)) == 128
    )
    assert one_more._beside(job, box, Fraction(200)) is None
    assert one_more._beside(job, box.model_copy(update={"wall": None}), Fraction(2)) is None
    assert one_more._free("b", {"b", "b and one more"}) == "b and one more again"


def test_only_the_chosen_way_is_carried_on() -> None:
    runs = [
        {"id": name, "from": "a", "to": "b", "cable": "14-2", "way": "wall", "method": "bored",
         "route": name}
        for name in ("left", "right")
    ]  # fmt: skip
    job: Survey = house(**BARE, runs=runs)
    assert one_more_outlet(job, plain()).amount is not None


def test_the_box_and_the_run_that_are_added() -> None:
    """Like the last new ones, at a free place, with one typed leg and no trim of its own; 4 studs
    in 12 + 72 + 12 = 96 in make 3 in 72 in."""
    run = {"id": "1", "from": "a", "to": "b", "cable": "14-2", "way": "trim", "height": 3,
           "walls": ["w"], "stapled_at": ["a"], "trim_length": 100, "caulk_length": 100,
           "method": "bored"}  # fmt: skip
    job = house(**BARE, run=run)
    made = one_more._with_one_more(job, *one_more._last_new(job), estimate(job, plain()), plain())  # type: ignore[misc]
    box, cable = made.boxes[-1], made.runs[-1]
    assert (box.id, box.x_in, box.height_in, box.wall) == ("b and one more", 164, 15, "w")
    assert (cable.id, cable.from_box, cable.to_box) == ("1 and one more", "b", "b and one more")
    (leg,) = cable.legs
    assert (leg.go, leg.length_in, leg.studs_count) == ("along", 72, 3)
    assert (cable.way, cable.walls, cable.height_in, cable.level) == (None, (), None, None)
    assert (cable.stapled_at, cable.trim_length_in, cable.caulk_length_in) == ((), None, None)
    assert (cable.cable, cable.method) == ("14-2", "bored")
    assert (len(made.boxes), len(made.runs)) == (3, 2)


def test_a_run_without_length_passes_no_studs() -> None:
    job = house(92, 92, **BARE)
    made = one_more._with_one_more(job, *one_more._last_new(job), estimate(job, plain()), plain())  # type: ignore[misc]
    assert made.runs[-1].legs[0].studs_count == 0
