"""Drawings to look at: samples as shipped or changed, and what is found in them by kind."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

from estimator.drawing.draw import draw
from estimator.drawing.records import Drawing, Elevation, label_box
from estimator.pricing.records import Bid
from tests.worked.job import changed, worked

SAMPLES = (
    "nightstand", "printer-corner", "closet-charger", "closet-light", "lounge", "door-in-the-way",
    "rec-room", "terrace-bedroom",
)  # fmt: skip
Place = tuple[Fraction, Fraction, Fraction, Fraction]


def bid(sample: str, *changes: tuple[str, str]) -> Bid:
    return changed(sample, *changes) if changes else worked(sample)


def drawing_of(made: Bid) -> Drawing:
    return draw(made.survey, made.books.shop.practice)


def drawn(sample: str, *changes: tuple[str, str]) -> Drawing:
    return drawing_of(bid(sample, *changes))


def way(route: str) -> Drawing:
    """The door in the way, by one of its three ways."""
    return drawn("door-in-the-way", ("# route =", f'route = "{route}" #'))


def view(sample: str, *changes: tuple[str, str]) -> Elevation:
    """The first view of a sample."""
    return drawn(sample, *changes).elevations[0]


def middles(seen: Elevation, *kinds: str) -> list[Fraction]:
    """x of the middle of each rectangle of some kinds, from left to right."""
    return sorted((r.left_in + r.right_in) / 2 for r in seen.rects if r.kind in kinds)


def places(seen: Elevation, kind: str) -> list[Place]:
    """Left, bottom, right and top of each rectangle of a kind."""
    return [(r.left_in, r.bottom_in, r.right_in, r.top_in) for r in seen.rects if r.kind == kind]


def lines(seen: Elevation, kind: str) -> list[list[tuple[int, int]]]:
    return [[(int(x), int(y)) for x, y in line.points] for line in seen.lines if line.kind == kind]


def words(seen: Elevation) -> list[str]:
    return [label.text for label in seen.labels]


def plates(seen: Drawing) -> int:
    """Protection plates in all views."""
    rects = [rect for each in seen.elevations for rect in each.rects]
    return sum(rect.count for rect in rects if rect.kind == "protection plate")


def overlaps(seen: Elevation) -> list[tuple[str, str]]:
    """Labels that lie over each other."""
    boxes = [(label.text, label_box(label, seen.text_in)) for label in seen.labels]
    return [
        (one, two)
        for (one, ((l1, b1), (r1, t1))), (two, ((l2, b2), (r2, t2))) in combinations(boxes, 2)
        if min(r1, r2) > max(l1, l2) and min(t1, t2) > max(b1, b2)
    ]
