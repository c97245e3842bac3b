"""Hours: by the labor book, conditions, the job's own figures, three points, what is charged."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.pricing.hours import three_point
from estimator.pricing.records import Bid, LaborLine
from estimator.problems import InputError
from tests.pricing.made_books import bid, plain
from tests.route.made_house import WALL, Table


@pytest.mark.parametrize(
    ("low", "likely", "high", "want"),
    [
        ("4.5", "6.25", "10.5", "6.666667"),  # S23, worked by hand
        ("1", "1", "1", "1.000000"),
        ("0", "0", "0", "0.000000"),
        ("0.25", "0.50", "0.75", "0.500000"),
        ("0", "0", "0.000003", "0.000001"),  # half up
    ],
)
def test_three_points(low: str, likely: str, high: str, want: str) -> None:
    assert three_point(Decimal(low), Decimal(likely), Decimal(high)) == Decimal(want)


def labor(made: Bid, task: str) -> LaborLine:
    (only,) = (each for each in made.labor if each.task == task)
    return only


def house_where(occupied: str = "no", **wall: object) -> Bid:
    return bid(
        job={"id": "J", "title": "t", "occupied": occupied},
        walls=[WALL | {"stud": "2x4"} | wall],
        openings=[{"id": "o", "wall": "w", "left": 20, "right": 30, "bottom": 30, "top": 40}],
    )


@pytest.mark.parametrize(
    ("occupied", "wall", "task", "factor", "why"),
    [
        ("no", {}, "set-up", "1", ""),
        ("yes", {}, "set-up", "1.175", "occupied room"),
        ("yes", {}, "identify-circuit", "1", ""),  # the book does not name it for this task
        ("no", {"finish": "plaster"}, "cut-access-opening", "1.75", "plaster"),
        ("no", {"finish": "plaster"}, "bore-member", "1", ""),
        ("yes", {"finish": "plaster"}, "cut-access-opening", "1.75", "plaster"),
    ],
)
def test_factors_of_what_holds_and_what_the_book_names(
    occupied: str, wall: Table, task: str, factor: str, why: str
) -> None:
    """Factors and the tasks they touch stand in the shipped shop.toml and labor.csv."""
    made = labor(house_where(occupied, **wall), task)
    assert made.factor == Decimal(factor)
    assert made.factor_why == why


@pytest.mark.parametrize(
    ("wall", "factor"),
    [
        ({"exterior": "yes", "insulated": "yes"}, "1.65"),
        ({"exterior": "yes", "insulated": "no"}, "1"),
        ({"exterior": "no", "insulated": "yes"}, "1"),
    ],
)
def test_an_insulated_outside_wall_is_slow_to_fish(wall: Table, factor: str) -> None:
    made = bid(walls=[WALL | {"stud": "2x4"} | wall], run={"height": 60})
    assert labor(made, "fish-drop").factor == Decimal(factor)


def test_hours_of_a_line_are_quantity_times_unit_times_factor() -> None:
    """Worked by hand: 4 studs at 0.03, 0.05 and 0.10 h."""
    made = labor(bid(), "bore-member")
    assert (made.hours_low, made.hours_likely, made.hours_high) == (
        Decimal("0.12"), Decimal("0.20"), Decimal("0.40")
    )  # fmt: skip


def test_totals_are_the_sums_of_the_lines() -> None:
    made = bid()
    assert made.hours.low == sum(each.hours_low for each in made.labor)
    assert made.hours.likely == sum(each.hours_likely for each in made.labor)
    assert made.hours.high == sum(each.hours_high for each in made.labor)
    assert made.hours.expected == three_point(made.hours.low, made.hours.likely, made.hours.high)
    assert made.hours.low <= made.hours.likely <= made.hours.high


@pytest.mark.parametrize("basis", ["likely", "expected"])
def test_what_is_charged_by_the_book(basis: str) -> None:
    made = bid(plain(hours_basis=basis))
    assert made.hours.basis == basis
    assert made.hours.charged == getattr(made.hours, basis)
    assert made.price.hours_charged == made.hours.charged


def test_a_stated_total_is_charged_and_the_estimate_stays() -> None:
    made = bid(overrides={"labor_hours": Decimal("1.75")})
    assert (made.hours.charged, made.hours.basis) == (Decimal("1.75"), "override")
    assert made.hours.likely == bid().hours.likely


def test_a_stated_task_goes_before_the_book() -> None:
    made = labor(bid(overrides={"hours": {"bore-member": Decimal("0.12")}}), "bore-member")
    assert (made.unit_low, made.unit_likely, made.unit_high) == (Decimal("0.12"),) * 3
    assert made.hours_likely == Decimal("0.48")


def test_a_task_may_take_no_time() -> None:
    made = labor(bid(overrides={"hours": {"bore-member": Decimal(0)}}), "bore-member")
    assert made.hours_high == 0


def test_tasks_without_a_row_are_named_all_at_once() -> None:
    books = plain()
    rows = {key: row for key, row in books.labor.items() if not key.startswith("b")}
    rows.pop("set-up")
    bare = type(books)(books.materials, rows, books.accounts, books.shop, books.files)
    with pytest.raises(InputError) as caught:
        bid(bare)
    assert [each.read for each in caught.value.problems] == [
        'no row for the task "set-up"', 'no row for the task "bore-member"'
    ]  # fmt: skip
    assert all(each.where.endswith("labor.csv") for each in caught.value.problems)
    own = {"hours": {"set-up": Decimal(1), "bore-member": Decimal(1)}}
    assert labor(bid(bare, overrides=own), "set-up").description == "set up"
