"""Bids to write workbooks of: samples, a job with everything in it, and random jobs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from estimator.catalog.records import Books
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.survey.reader import JobFile, job_from_text, survey_from
from tests.outputs.random_shop import random_shop

SAMPLES = Path(__file__).parents[2] / "samples"
NAMES = tuple(sorted(path.stem for path in SAMPLES.glob("*.toml")))

EVERYTHING = """
[[truck_stock]]
item = "cable-12-2"
length = "9 ft"

[[truck_stock]]
item = "receptacle-15"
quantity = 1
unit_cost = 1.50

[settings.price]
permit_cost = 75
permit_handling = 25
overhead_pct = 10
profit_pct = 8

[settings.tax]
mode = "materials-sold"
rate_pct = 7.25
"""
UNMEASURED = {
    "year_built = 1964": 'year_built = "unknown"',
    'occupied = "yes"': 'occupied = "unknown"',
    'cables = ["12-2"]': "unknown_cables = true",
    'volume = "18 in3"': 'volume = "unknown"',
    "breaker = 20": 'breaker = "unknown"',
}


def job(sample: str, changes: Mapping[str, str] | None = None, more: str = "") -> JobFile:
    """A sample with pieces of its text replaced, and more text at its end."""
    path = SAMPLES / f"{sample}.toml"
    text = path.read_text(encoding="utf-8")
    for old, new in (changes or {}).items():
        assert old in text, f"{old!r} is not in {path.name}"
        text = text.replace(old, new)
    return job_from_text(text + more, path)


def bid_of(sample: str, changes: Mapping[str, str] | None = None, more: str = "") -> Bid:
    """The bid of a sample changed so."""
    made = job(sample, changes, more)
    return estimate(made.survey, books_for(made))


@cache
def sample_bid(sample: str) -> Bid:
    """The bid of a sample as shipped."""
    return bid_of(sample)


@cache
def sample_file(sample: str) -> bytes:
    """The workbook of a sample as shipped."""
    return bid_workbook(sample_bid(sample))


@cache
def full_bid() -> Bid:
    """Unknowns, a second total, truck stock, permit, tax, overhead, and two unpriced items."""
    made = job("printer-corner", UNMEASURED, EVERYTHING)
    books = books_for(made)
    materials = {**books.materials}
    plates = materials["protection-plate"]
    materials["protection-plate"] = tuple(replace(row, pack_price=None) for row in plates)
    del materials["joint-tape"]
    return estimate(made.survey, replace(books, materials=materials))


@cache
def full_file() -> bytes:
    """The workbook of that bid."""
    return bid_workbook(full_bid())


def in_currency(sample: str, currency: str, locale: str) -> Bid:
    """A sample priced in another currency, the figures of the books unchanged."""
    made = job(sample)
    books = books_for(made)
    shop = replace(books.shop, currency=currency)
    named = made.survey.job.model_copy(update={"locale": locale})
    survey = made.survey.model_copy(update={"job": named})
    return estimate(survey, replace(books, shop=shop))


class RandomJobs:
    """Valid jobs by chance, US and metric; the same seed gives the same jobs."""

    def __init__(self, seed: int) -> None:
        self._random = Random(seed)
        self._books = {units: books_for(job(sample)) for units, sample in _BOOKS_BY_UNITS.items()}

    def bid(self) -> Bid:
        """The next job, priced."""
        units = self._random.choice(["us", "us", "metric"])
        return estimate(survey_from(self._survey(units)), self._shop(self._books[units]))

    def _shop(self, books: Books) -> Books:
        """Rates by chance."""
        rng, shop = self._random, random_shop(self._random, books.shop)
        materials = {**books.materials}
        small = sorted(item for item in materials if not item.startswith("cable"))
        for item in rng.sample(small, rng.choice([0, 0, 20])):
            materials[item] = tuple(replace(row, pack_price=None) for row in materials[item])
        risk = replace(shop.risk, draws=2_000)  # enough for a made-up job
        return replace(books, materials=materials, shop=replace(shop, risk=risk))

    def _decimal(self, low: int, high: int) -> Decimal:
        return Decimal(self._random.randrange(low * 100, high * 100)) / 100

    def _length(self, units: str, low_in: int, high_in: int) -> str:
        """A length in steps of 1/8 in or 1 mm."""
        if units == "us":
            return f"{Decimal(self._random.randrange(low_in * 8, high_in * 8)) / 8} in"
        return f"{self._random.randrange(low_in * 25, high_in * 25)} mm"

    def _survey(self, units: str) -> dict[str, Any]:
        rng = self._random
        runs = rng.randrange(1, 5)
        cable = rng.choice(_CABLES[units])
        country = "US" if units == "us" else "GB"
        head = {
            "id": f"R{rng.randrange(10_000)}", "title": "A random job", "country": country,
            "units": units, "locale": "en_US" if units == "us" else "en_GB",
            "occupied": rng.choice(["yes", "no", "unknown"]),
            "year_built": rng.choice([1950, 1999, "unknown"]), "date": "2026-05-04",
        }  # fmt: skip
        return {
            "job": head,
            "circuit": {"breaker": rng.choice([15, 20]), "wire": cable.split("-")[0][:3]},
            "boxes": [self._source(cable), *(self._box(at) for at in range(runs))],
            "runs": [self._run(units, cable, at) for at in range(runs)],
            "openings": [self._opening(units, at) for at in range(rng.randrange(4))],
            "finish": {
                "scope": rng.choice(["closed", "taped", "painted"]),
                "compound": rng.choice(["drying", "setting"]), "paint": "spot",
            },
            "settings": {}, "allowances": self._allowances(),
            "truck_stock": self._stock(units, cable),
            "overrides": self._overrides(),
        }  # fmt: skip

    def _source(self, cable: str) -> dict[str, Any]:
        cables = [cable] * self._random.randrange(1, 4)
        volume = self._random.choice(["18 in3", "22.5 in3", "unknown"])
        return {"id": "source", "existing": True, "cables": cables, "volume": volume,
                "clamps": "no", "metal": "no"}  # fmt: skip

    def _box(self, at: int) -> dict[str, Any]:
        return {"id": f"B{at}", "device": self._random.choice(["receptacle", "switch"])}

    def _run(self, units: str, cable: str, at: int) -> dict[str, Any]:
        rng = self._random
        legs = [
            {
                "go": go, "length": self._length(units, 4, 160),
                "studs": rng.randrange(8) if go == "along" else 0,
                "corners": rng.randrange(2) if go == "along" else 0,
            }
            for go in rng.choice([("across",), ("up", "along", "down"), ("along",)])
        ]  # fmt: skip
        before = "source" if at == 0 else f"B{rng.randrange(at)}"
        return {"id": f"{at + 1}", "from": before, "to": f"B{at}", "cable": cable, "legs": legs,
                "method": rng.choice(["bored", "fished"])}  # fmt: skip

    def _opening(self, units: str, at: int) -> dict[str, Any]:
        return {
            "id": f"O{at}", "room": "room", "width": self._length(units, 3, 60),
            "height": self._length(units, 3, 16), "hidden": self._random.choice(["yes", "no"]),
        }  # fmt: skip

    def _stock(self, units: str, cable: str) -> list[dict[str, Any]]:
        """Some pieces of cable and some small parts in the truck."""
        item = _ITEMS[cable]
        pieces = self._random.randrange(3)
        found: list[dict[str, Any]] = [
            {"item": item, "length": self._length(units, 24, 200)} for _ in range(pieces)
        ]
        if self._random.random() < 1 / 2:
            found.append({"item": "drop-cloth", "quantity": 1})
        return found

    def _allowances(self) -> list[dict[str, Any]]:
        """None, one or two sums for what is not chosen yet; two may have one name."""
        kinds = self._random.choices(["materials", "labor", "other"], k=self._random.randrange(3))
        return [
            {"name": "A light", "amount": self._decimal(0, 200), "kind": kind} for kind in kinds
        ]

    def _overrides(self) -> dict[str, Any]:
        """Now and then hours, materials or trips that the job knows better."""
        known = {
            "labor_hours": self._decimal(1, 20), "materials_cost": self._decimal(10, 300),
            "trips": self._random.randrange(4),
        }  # fmt: skip
        return {key: value for key, value in known.items() if self._random.random() < 1 / 6}


_BOOKS_BY_UNITS = {"us": "nightstand", "metric": "lounge"}
_ITEMS = {
    "14-2": "cable-14-2", "12-2": "cable-12-2",
    "2.5 mm2 2-core and earth": "cable-2.5-2e", "1.5 mm2 2-core and earth": "cable-1.5-2e",
}  # fmt: skip
_CABLES = {"us": ["14-2", "12-2"], "metric": [name for name in _ITEMS if "mm2" in name]}
