"""S21, do it yourself or hire, on the job S1; worked by hand."""

from __future__ import annotations

from decimal import Decimal

from tests.worked.compare_job import only, own, s21


def test_cash_of_doing_it_yourself() -> None:
    """41.30 + 9.60 + 87.00 + 65.00."""
    assert own(s21()).cash == Decimal("202.90")


def test_each_line_all_in() -> None:
    """Half of the tool stays; 9.5 h x 18.00; 15 % of 350.00."""
    assert [(line.kind, line.all_in) for line in own(s21()).lines] == [
        ("parts", Decimal("41.30")),
        ("consumables", Decimal("9.60")),
        ("tool", Decimal("43.50")),
        ("permit", Decimal("65.00")),
        ("rework", Decimal("52.50")),
        ("time", Decimal("171.00")),
    ]


def test_doing_it_yourself_all_in() -> None:
    """41.30 + 9.60 + 43.50 + 65.00 + 52.50 = 211.90, and 171.00 of time."""
    assert own(s21()).before_time == Decimal("211.90")
    assert own(s21()).all_in == Decimal("382.90")
    assert own(s21()).left_out == ()
    assert (own(s21()).kind, own(s21()).name) == ("own", "Do it yourself")


def test_hiring() -> None:
    """365.00 + 180.00; and 1.5 h x 18.00."""
    (hire,) = s21().hires
    assert (hire.name, hire.cash, hire.all_in) == (
        "Sample electrician", Decimal("545.00"), Decimal("572.00"),
    )  # fmt: skip
    assert hire.unstated == ()


def test_doing_it_yourself_is_better_by() -> None:
    """572.00 - 382.90."""
    assert (only(s21()).better, only(s21()).by) == ("own", Decimal("189.10"))


def test_the_break_even_hour() -> None:
    """(545.00 - 211.90) / (9.5 - 1.5) = 333.10 / 8 = 41.6375."""
    assert only(s21()).break_even == Decimal("41.64")


def test_nothing_has_to_be_assumed() -> None:
    assert s21().assumed == ()
    assert s21().stops == ()
