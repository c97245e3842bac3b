"""A short job for the rules of places: one old box in the hall, one new outlet somewhere."""

from __future__ import annotations

from copy import deepcopy
from pathlib import Path
from typing import Any

from estimator.catalog.books import read_books
from estimator.pricing.stock import stock_of
from estimator.pricing.work import Work, work_out
from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import FUNCTIONS
from estimator.rules.screen import screen
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey
from estimator.takeoff.take_off import take_off

BOOKS = read_books(Path(__file__).parents[2] / "catalogs")
EDITIONS = ("nec-2017", "nec-2020", "nec-2023")
Raw = dict[str, Any]
JOB: Raw = {
    "job": {"id": "1", "title": "Rules of places", "edition": "nec-2023"},
    "circuit": {
        "breaker": 20,
        "wire": "12",
        "kind": "general",
        "protection": [],
        "grounded": "yes",
        "multiwire": "no",
    },
    "boxes": [
        {"id": "old", "existing": True, "room": "hall", "volume": "34 in3", "cables": ["12-2"]},
        {"id": "new", "room": "bedroom"},
    ],
    "runs": [],
}


def run(start: str, end: str, **keys: Any) -> Raw:
    """A run of 10 ft along a wall."""
    legs = [{"go": "along", "length": "10 ft"}]
    return {"id": f"{start}-{end}", "from": start, "to": end, "cable": "12-2", "legs": legs} | keys


def job(room: str = "bedroom", *, new: Raw | None = None, **tables: Any) -> Raw:
    """The job with its outlet in a room; lists replace, tables are laid over.

    `old` and `more` are keys of the old box and further boxes; `rooms` and `runs` are lists.
    """
    raw = deepcopy(JOB)
    raw["boxes"][1] |= {"room": room} | (new or {})
    raw["boxes"][0] |= tables.pop("old", {})
    raw["boxes"] += tables.pop("more", [])
    raw["runs"] = tables.pop("runs", [run("old", "new")])
    raw["job"]["edition"] = tables.pop("edition", "nec-2023")
    for table, values in tables.items():
        raw[table] = raw.get(table, {}) | values if isinstance(values, dict) else values
    return raw


LIGHT: Raw = {"device": "luminaire"}
SWITCH: Raw = {"device": "switch"}
HEATER: Raw = {"device": "none", "spot": {"appliance": "other"}}
HOOD: Raw = {"device": "none", "spot": {"appliance": "hood"}}
# Nothing that asks for ground-fault protection: no water near, a dry place.
CLEAR = {"sink_distance": "20 ft", "tub_distance": "20 ft", "moisture": "dry", "countertop": "no"}


def on(kind: str, room: str, new: Raw | None = None, **tables: Any) -> Raw:
    """The job on a circuit of one kind, with the breaker that such a circuit has."""
    circuit = {"kind": kind, "breaker": 10 if kind == "ten ampere" else 20}
    return job(room, new=new, circuit=circuit | tables.pop("circuit", {}), **tables)


def at(room: str, edition: str = "nec-2023", **spot: Any) -> Raw:
    """The new receptacle in a room where nothing else asks for ground-fault protection."""
    return job(room, new={"spot": CLEAR | spot}, edition=edition)


def inside(room: str, new: Raw | None = None, **tables: Any) -> Raw:
    """The old box and the new one in the same room."""
    return job(room, new=new, old={"room": room} | tables.pop("old", {}), **tables)


def facts(raw: Raw) -> Facts:
    """The facts of a job's only way, with the shipped books."""
    return facts_of(survey_from(raw))


def facts_of(survey: Survey) -> Facts:
    """The facts of a survey, with the shipped books."""
    practice = BOOKS.shop.practice
    paths = run_paths(survey)
    takeoff = take_off(survey, paths, practice, stock_of(BOOKS))
    return Facts(survey, paths, takeoff, practice)


def findings(rule: str, raw: Raw) -> dict[str, Finding]:
    """What one rule says of a job, by subject; no subject is spoken of twice."""
    found = list(FUNCTIONS[rule](facts(raw)))
    assert len({each.subject for each in found}) == len(found)
    return {each.subject: each for each in found}


def finding(rule: str, raw: Raw, subject: str = "new") -> Finding:
    """What one rule says of one subject."""
    return findings(rule, raw)[subject]


def verdict(rule: str, raw: Raw, subject: str = "new") -> str:
    """The verdict on one subject; empty where the rule says nothing of it."""
    found = findings(rule, raw).get(subject)
    return found.verdict if found is not None else ""


def screened(raw: Raw) -> dict[str, Finding]:
    """Every finding of every rule by its id, local changes applied."""
    return {each.finding_id: each for each in screen(facts(raw))}


def worked(raw: Raw, *, bad_case: bool = False) -> Work:
    """The job carried through to its price."""
    return work_out(survey_from(raw), BOOKS, bad_case=bad_case)


def remedy_items(work: Work, finding_id: str) -> list[str]:
    """Items and tasks that a remedy put into the takeoff."""
    parts = [line.item for line in work.takeoff.parts if line.remedy == finding_id]
    return parts + [line.task for line in work.takeoff.tasks if line.remedy == finding_id]
