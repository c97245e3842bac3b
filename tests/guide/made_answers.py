"""Answers to the questions for a job worked by hand (S1), on a drawn wall and in the quick form.

Worked by hand: down 15 - 3 = 12 in, along 105 - 34 = 71 in, up 12 in; with two tails of 12 in
119 in, and 10 % more 130.9 in: 11 ft of 14-2. Studs at 48, 64, 80 and 96 in: 4. Hole edge
(3.5 - 0.75) / 2 = 1.375 in: no plate. Three cables in the source: 3 pigtails, 3 connectors, and
(6 + 1 + 2) x 2.00 = 18.0 of 18.0 in3.
"""

from __future__ import annotations

from decimal import Decimal

from estimator.guide.facts import job_from
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.survey.reader import survey_from
from tests.pricing.made_books import shipped

FIRST = {
    "year_built": "1996",
    "source_box": "plastic",
    "source_volume": "18 in3",
    "source_cables": "2",
    "breaker": "15",
    "wire": "14",
    "way": "trim",
}
DRAWN = FIRST | {
    "wall_length": "12 ft",
    "source_x": "34 in",
    "source_height": "15 in",
    "new_x": "8' 9",
    "first_stud": "16 in",
    "more": "no",
}
QUICK = FIRST | {"source_height": "15 in", "distance": "71 in", "studs": "4", "more": "no"}
WANTED = {"cable-14-2": 11, "pigtail-14": 3, "connector-medium": 3}


def bid_for(answers: dict[str, str]) -> Bid:
    return estimate(survey_from(job_from(answers)), shipped())


def parts(bid: Bid) -> dict[str, Decimal]:
    """How much of each item the takeoff has."""
    found: dict[str, Decimal] = {}
    for line in bid.takeoff.parts:
        found[line.item] = found.get(line.item, Decimal(0)) + line.quantity
    return found


def source_room(bid: Bid) -> str:
    """The figures of the finding on the room in the source box."""
    found = (each for each in bid.findings if (each.rule, each.subject) == ("box-fill", "source"))
    return next(found).figures
