"""Several ways: each priced alone, ranked, and the best, or the one named, is the bid."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from estimator.catalog.records import Books
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.survey.reader import job_from_text
from tests.pricing.made_books import HEAD, bid, plain, with_terms, written
from tests.route.made_house import house

SAMPLE = Path(__file__).parents[2] / "samples" / "door-in-the-way.toml"
TEXT = SAMPLE.read_text(encoding="utf-8")
MATERIALS = (
    HEAD
    + """\
cable-14-2,"Cable, two 14",ft,1,0.62,A,wire,goods,length,,,,,,,,2026-11-02,invented
box-plain,Box,ea,1,0,A,boxes,goods,,20,1,yes,no,2.5,old-work,,2026-11-02,invented
"""
)
# S14: 0.12 h a stud, 0.15 a floor hole; patch 0.9 and 0.25 a ft2; baseboard 0.05 a ft;
# crawlspace 1.25 to get ready and 0.02 a ft.
HOURS = {
    "bore-member": "0.12", "bore-floor": "0.15", "patch-opening": "0.9", "patch-area": "0.25",
    "trim-off-on": "0.05", "set-up-crawlspace": "1.25", "pull-exposed": "0.02",
}  # fmt: skip


@pytest.fixture(name="books", scope="module")
def _books(tmp_path_factory: pytest.TempPathFactory) -> Books:
    """Books with the rates of the worked job: cable at 0.62, labor at 80."""
    folder = tmp_path_factory.mktemp("ways") / "own"
    made = written(folder, house(), materials=MATERIALS, hours=HOURS)
    rate = Decimal(80)
    return with_terms(made, labor_rate_per_hour=rate, hours_basis="likely",
                      minimum_charge=Decimal(0), trip_charge=Decimal(0))  # fmt: skip


def job(books: Books, *swaps: tuple[str, str]) -> Bid:
    text = TEXT
    for old, new in swaps:
        assert old in text
        text = text.replace(old, new)
    survey = job_from_text(text, SAMPLE).survey
    return estimate(survey, of_job(books))


def of_job(books: Books) -> Books:
    """The worked job's own practice laid over the books."""
    practice = replace(books.shop.practice, corner_extra_in=Fraction(4), hole_end_supports=False)
    return replace(books, shop=replace(books.shop, practice=practice))


COSTS = [
    ("A", "182.75", "23 ft of 14-2", 6, "2.106111"),  # 0.72 + 0.9 + 0.486; 23 x 0.62 = 14.26
    ("B", "574.99", "53 ft of 14-2", 38, "6.776667"),  # 4.56 + 2.217; 53 x 0.62 = 32.86
    ("C", "141.75", "14 ft of 14-2", 0, "1.663333"),  # 1.25 + 0.1133 + 0.30; 14 x 0.62 = 8.68
]


@pytest.mark.parametrize(("route", "cost", "order", "members", "hours"), COSTS)
def test_the_worked_ways_to_the_cent(
    books: Books, route: str, cost: str, order: str, members: int, hours: str
) -> None:
    """S14, worked by hand: labor at 80.00 rounded to the cent, and the cable."""
    (way,) = (each for each in job(books).routes if each.route == route)
    assert way.cost == Decimal(cost)
    assert way.order_text == order
    assert way.members == members
    assert way.hours == Decimal(hours)


PARTS = [
    ("A", "168.49", "14.26", 1, "280"),  # an opening of 4 x 70 in, seen
    ("B", "542.13", "32.86", 0, "0"),
    ("C", "133.07", "8.68", 0, "0"),
]


WHY = [
    "costs $41.00 less than A (labor -$35.42, materials -$5.58)",
    "costs $41.00 more than C (labor +$35.42, materials +$5.58)",
    "costs $433.24 more than C (labor +$409.06, materials +$24.18)",
]


@pytest.mark.parametrize(("route", "labor", "materials", "openings", "area"), PARTS)
def test_what_each_way_is_made_of(
    books: Books, route: str, labor: str, materials: str, openings: int, area: str
) -> None:
    """S14, worked by hand."""
    (way,) = (each for each in job(books).routes if each.route == route)
    assert (way.labor, way.materials) == (Decimal(labor), Decimal(materials))
    assert (way.openings, way.opening_in2) == (openings, Fraction(area))


def test_why_each_way_has_its_rank(books: Books) -> None:
    """S14: 182.75 - 141.75 = 41.00; 574.99 - 141.75 = 433.24."""
    ways = job(books).routes
    found = [each.why.partition("; its cost leaves out what has no price: ") for each in ways]
    assert [(first, rest.split(", ")) for first, _, rest in found] == [
        (want, list(way.unpriced_items)) for want, way in zip(WHY, ways, strict=True)
    ]


def test_findings_of_each_way_are_counted_for_it_alone(books: Books) -> None:
    made = job(books, ('accessible = "yes"', 'accessible = "no"'))
    assert [each.findings.failed for each in made.routes] == [0, 0, 1]
    assert made.routes[0].findings.passed > 0


def test_the_worked_ranking(books: Books) -> None:
    """S14: C, A, B; the bid is for C."""
    made = job(books)
    assert [each.route for each in made.routes] == ["C", "A", "B"]
    assert [each.rank for each in made.routes] == [1, 2, 3]
    assert [each.chosen for each in made.routes] == [True, False, False]
    assert [run.id for run in made.survey.runs] == ["C"]
    assert made.survey.openings == ()


def test_without_a_way_into_the_crawlspace_the_answer_is_a(books: Books) -> None:
    made = job(books, ('accessible = "yes"', 'accessible = "no"'))
    assert [each.route for each in made.routes] == ["A", "B", "C"]
    assert made.routes[2].blocked_by == ("level-access:run C",)
    assert [each.route for each in made.routes if each.chosen] == ["A"]
    assert made.takeoff.closing.patch_in2 == 280


def test_a_way_in_that_nobody_looked_for_blocks_nothing(books: Books) -> None:
    made = job(books, ('accessible = "yes"', 'accessible = "unknown"'))
    assert [each.route for each in made.routes] == ["C", "A", "B"]
    assert made.routes[0].blocked_by == ()
    found = {each.finding_id: each for each in made.findings}["level-access:run C"]
    assert (found.verdict, found.stops_the_bid) == ("unknown", False)


@pytest.mark.parametrize("name", ["A", "B", "C"])
def test_the_way_that_the_job_names_is_the_bid(books: Books, name: str) -> None:
    made = job(books, ('# route = "C"', f'route = "{name}"'))
    assert [each.route for each in made.routes if each.chosen] == [name]
    assert [run.id for run in made.survey.runs] == [name]
    (own,) = (each for each in made.routes if each.chosen)
    assert made.price.total == own.total


def test_a_blocked_way_may_be_named_and_then_stops_the_bid(books: Books) -> None:
    blocked = ('accessible = "yes"', 'accessible = "no"'), ('# route = "C"', 'route = "C"')
    made = job(books, *blocked)
    assert made.findings[0].stops_the_bid
    assert [each.route for each in made.routes if each.chosen] == ["C"]


def test_an_accepted_block_ranks_by_cost_again(books: Books) -> None:
    said = '[[acceptances]]\nfinding = "level-access:run C"\nreason = "a hatch is made"\n\n[finish]'
    made = job(books, ('accessible = "yes"', 'accessible = "no"'), ("[finish]", said))
    assert [each.route for each in made.routes] == ["C", "A", "B"]


def test_a_way_with_a_price_nobody_knows_comes_after(books: Books) -> None:
    swap = ('id = "C"\nroute = "C"\nfrom = "source"\nto = "new"\ncable = "14-2"',
            'id = "C"\nroute = "C"\nfrom = "source"\nto = "new"\ncable = "12-2"')  # fmt: skip
    items = {each.item for each in job(books).takeoff.parts} | {
        each.item for name in "AB" for each in
        job(books, ('# route = "C"', f'route = "{name}"')).takeoff.parts
    }  # fmt: skip
    prices = "[overrides.prices]\n" + "".join(f'"{item}" = 0\n' for item in sorted(
        items - {"cable-14-2"})) + "\n[finish]"  # fmt: skip
    made = job(books, swap, ("[finish]", prices))
    assert [each.route for each in made.routes] == ["A", "B", "C"]


def test_one_way_has_no_rival() -> None:
    made = bid(plain())
    (only,) = made.routes
    assert (only.route, only.rank, only.chosen) == ("the only way", 1, True)
    assert only.total == made.price.total


def test_runs_of_no_way_in_particular_belong_to_all() -> None:
    runs = [
        {"id": name, "from": "a", "to": "b", "cable": "14-2", "way": "wall", "method": "bored"}
        | ({"route": name} if name in "XY" else {})
        for name in ("X", "Y", "common")
    ]
    made = bid(plain(), runs=runs)
    assert [each.route for each in made.routes] == ["X", "Y"]
    assert [run.id for run in made.survey.runs] == ["X", "common"]
