"""From answers to facts of the job file: the quick form, or a drawn wall where places are given."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from typing import Any

from estimator.guide.defaults import (
    has_places,
    is_asked,
    length_in,
    system_of,
    value_of,
)
from estimator.guide.legs import legs_of
from estimator.guide.places import Facts, Names, raw_job
from estimator.guide.questions import NO_NAME, UNKNOWN, Answers, Question, by_key, questions
from estimator.units import write_length

LEVELS = ("attic", "basement", "crawlspace")
WAYS = {"attic": "over", "basement": "under", "crawlspace": "under"}
# Answers that stay out of the file where they are unknown: the record knows no such word.
LEFT_OUT = ("address", "date", "protection", "wall_length")
Fact = tuple[str, Any]


def job_from(answers: Answers, names: Names | None = None) -> dict[str, Any]:
    """A whole job file's values; what was not answered is taken by default, else left out.

    The result goes to `estimator.survey.reader.survey_from` or into a file. Places on the wall
    make a drawn wall; without the wall's length the legs of the run are typed.
    """
    return raw_job(facts_of(answers, names))


def facts_of(answers: Answers, names: Names | None = None, *, finished: bool = True) -> Facts:
    """Every value of the job file that the answers make, by path.

    Args:
        answers: by the key of the question. Answers to what is not asked are not looked at.
        names: what the parts are called; the usual names where there are none yet.
        finished: take defaults for what was not answered; else leave it out.
    """
    kept = pruned(answers)
    names = names or Names()
    known = with_defaults(kept, names.job) if finished else kept
    found: dict[str, Any] = {"format": 1}
    found |= dict(_framed(names))
    for key, value in known.items():
        found |= dict(_facts(by_key()[key], value, known))
    found |= dict(_way(known)) if "way" in known else {}
    found |= dict(_drawn(known, names)) if has_places(known) else {}
    found |= dict(_opening(known, names))
    return found


def pruned(answers: Answers) -> dict[str, str]:
    """The answers to what is asked, in the order of the questions."""
    kept: dict[str, str] = {}
    for question in questions():
        if question.key in answers and is_asked(question, kept):
            kept[question.key] = answers[question.key]
    return kept


def with_defaults(answers: Answers, job: str = NO_NAME) -> dict[str, str]:
    """The answers, and what Enter would take for the rest; unknown is left out.

    Args:
        answers: by the key of the question.
        job: the job number, where none was answered.
    """
    known: dict[str, str] = dict(answers)
    for question in questions():
        value = job if question.key == "job_number" else value_of(question.key, known)
        if question.key not in known and is_asked(question, known) and value not in ("", UNKNOWN):
            known[question.key] = value
    return known


def lacking(answers: Answers) -> tuple[str, ...]:
    """The questions without an answer that a bid cannot be made without: nothing is usual."""
    known = with_defaults(pruned(answers))
    return tuple(
        each.key
        for each in questions()
        if each.first and not each.may_be_unknown
        if each.key not in known and is_asked(each, known)
    )


def _framed(names: Names) -> Iterator[Fact]:
    """The two boxes and the run between them."""
    yield from (("source.id", names.source), ("source.existing", True), ("new.id", names.new))
    yield from (("run.id", names.run), ("run.from", names.source), ("run.to", names.new))


def _facts(question: Question, value: str, known: Answers) -> Iterator[Fact]:
    if question.key in TOGETHER:
        return
    if question.key in MADE:
        yield from MADE[question.key](known)
    elif value != UNKNOWN or question.key not in LEFT_OUT:
        yield question.path, stored(question, value)


def stored(question: Question, value: str) -> object:
    """An answer as the job file holds it."""
    if value == UNKNOWN:
        return value
    if question.kind == "number":
        return int(value)
    return date.fromisoformat(value) if question.kind == "date" else value


def _room(known: Answers) -> Iterator[Fact]:
    value = known["room"]
    yield from ((f"{role}.room", value) for role in ("source", "new"))
    yield "room.id", value


def _source_box(known: Answers) -> Iterator[Fact]:
    value = known["source_box"]
    is_known = value != UNKNOWN
    yield "source.metal", _yes(value.startswith("metal")) if is_known else UNKNOWN
    yield "source.clamps", _yes(value.endswith("clamps")) if is_known else UNKNOWN


def _yes(answer: bool) -> str:
    return "yes" if answer else "no"


def _cables(known: Answers) -> Iterator[Fact]:
    value = known["source_cables"]
    if value == UNKNOWN:
        yield "source.unknown_cables", True
    else:
        yield "source.cables", [value_of("source_cable", known)] * int(value)


def _names(known: Answers) -> Iterator[Fact]:
    value = known["serves"]
    yield "circuit.serves", [each.strip() for each in value.split(",") if each.strip()]


def _protection(known: Answers) -> Iterator[Fact]:
    value = known["protection"]
    kinds = {"none": [], "both": ["afci", "gfci"], UNKNOWN: None}
    found = kinds.get(value, [value])
    if found is not None:
        yield "circuit.protection", found


def _stud_depth(known: Answers) -> Iterator[Fact]:
    value = known["stud_depth"]
    yield ("wall.stud_depth" if has_places(known) else "run.stud_depth"), value


def _trim_length(known: Answers) -> Iterator[Fact]:
    value = known["trim_length"]
    yield from (("run.trim_length", value), ("run.caulk_length", value))


MADE: dict[str, Callable[[Answers], Iterator[Fact]]] = {
    "room": _room,
    "source_box": _source_box,
    "source_cables": _cables,
    "serves": _names,
    "protection": _protection,
    "stud_depth": _stud_depth,
    "trim_length": _trim_length,
}


# Answers that make a fact only together with others.
TOGETHER = (
    "source_cable", "way", "distance", "studs",
    "opening_width", "opening_height", "fill", "hidden",
)  # fmt: skip


def _way(known: Answers) -> Iterator[Fact]:
    """The way of the run by name on a drawn wall, by typed legs without."""
    way = known["way"]
    if way in LEVELS:
        yield from (("run.level", way), ("level.kind", way), ("level.accessible", "yes"))
    if has_places(known):
        yield "run.way", WAYS.get(way, way)
        return
    yield "guide.way", way
    legs = legs_of(known)
    if legs:
        yield "run.legs", legs


def _drawn(known: Answers, names: Names) -> Iterator[Fact]:
    yield from (("wall.id", names.wall), ("source.wall", names.wall), ("new.wall", names.wall))
    if "room" in known:
        yield "wall.room", known["room"]


def _opening(known: Answers, names: Names) -> Iterator[Fact]:
    """The strip that is cut out, by its edges where the wall is drawn."""
    if value_of("opened", known) != "yes" or "opening_width" not in known:
        return
    yield from (("opening.id", names.opening), ("opening.fill", value_of("fill", known)))
    yield "opening.hidden", value_of("hidden", known)
    yield "run.stapled_at", [names.source, names.new]
    if has_places(known):
        yield "opening.wall", names.wall
        yield from _edges(known)
    else:
        yield "opening.room", value_of("room", known)
        yield "opening.width", known["opening_width"]
        yield "opening.height", value_of("opening_height", known)


def _edges(known: Answers) -> Iterator[Fact]:
    """Edges of a strip that lies evenly over the way between the boxes."""
    wide, high = length_in("opening_width", known), length_in("opening_height", known)
    start, end = length_in("source_x", known), length_in("new_x", known)
    level = length_in("source_height", known)
    wall = length_in("wall_length", known)
    if wide is None or high is None or start is None or end is None:
        return
    if level is None or wall is None:
        return
    left = max((start + end - wide) / 2, 0 * wide)
    bottom = 0 * high if value_of("way", known) == "trim" else max(level - high / 2, 0 * high)
    edges = {"left": left, "right": min(left + wide, wall), "bottom": bottom, "top": bottom + high}
    for edge, place in edges.items():
        yield f"opening.{edge}", write_length(place, system_of(known))
