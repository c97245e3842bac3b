"""Brings the answers to the questions together with the facts of the other sheets.

Where the sheet Runs has a row, the sheets are the job and an answer adds to it; where it has
none, the answers make the job and the sheets add to it. Both may say a fact; they must agree.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from estimator.form.book_in import Grid
from estimator.form.question_words import NUMBERS, is_needed
from estimator.form.questions_in import Answered
from estimator.form.tables_in import Facts, read_tables
from estimator.guide.defaults import bare_unit, is_asked, read_in
from estimator.guide.facts import facts_of, job_from, pruned, with_defaults
from estimator.guide.from_job import answers_from
from estimator.guide.places import Names, find, job_name, names_in, place_in, put
from estimator.guide.questions import UNKNOWN, Question, by_key, questions
from estimator.toml_lines import TomlPath

_RUNS = "runs"
_AGREE = "Write the same in both, or empty one of the two cells."


def gather(found: Answered, grids: Mapping[str, Grid], facts: Facts) -> None:
    """Fill `facts` from the answers and from the table sheets."""
    alone = Facts(facts.name, facts.comma)
    read_tables(grids, alone)
    if not found.answers:
        read_tables(grids, facts)
    elif alone.raw.get(_RUNS):
        read_tables(grids, facts)
        _add_answers(found, facts)
    else:
        _start_from(found, facts)
        read_tables(grids, facts)
        _compare(found, facts)


def _start_from(found: Answered, facts: Facts) -> None:
    """Make the job of the answers; what is asked and needed and has none is a problem."""
    kept = pruned(found.answers)
    known = with_defaults(kept)
    for question in questions():
        if is_needed(question) and is_asked(question, known) and question.key not in known:
            cell = found.cells.get(question.key, "Questions")
            facts.problem(cell, f"question {NUMBERS[question.key]} has no answer", "Answer it.")
    _note_unasked(found, kept, facts)
    facts.raw.update(job_from(found.answers, Names(job=job_name(facts.name))))
    facts.made |= set(_leaves(facts.raw, ()))
    for key in kept:
        place = place_of(by_key()[key], facts.raw)
        if place is not None:
            facts.cells[place] = found.cells[key]


def _note_unasked(found: Answered, kept: Mapping[str, str], facts: Facts) -> None:
    for key in found.answers:
        if key not in kept:
            said = "is not asked where the others are answered so; it was not used."
            facts.notes.append(f"{found.cells[key]}: question {NUMBERS[key]} {said}")


def _leaves(raw: Any, path: TomlPath) -> list[TomlPath]:  # noqa: ANN401 - what a job file holds
    """Every place of a value that is no table."""
    if isinstance(raw, dict):
        return [leaf for key, each in raw.items() for leaf in _leaves(each, (*path, key))]
    if isinstance(raw, list) and raw and isinstance(raw[0], dict):
        return [leaf for at, each in enumerate(raw) for leaf in _leaves(each, (*path, at))]
    return [path]


def _add_answers(found: Answered, facts: Facts) -> None:
    """Lay the answers on a job that the sheets state; what they state otherwise is a problem."""
    _compare(found, facts)
    stated = answers_from(facts.raw)
    new = {key: text for key, text in found.answers.items() if key not in stated}
    made = facts_of(stated | new, names_in(facts.raw), finished=False)
    for path, value in made.items():
        if find(facts.raw, path) is None and any(_is_of(path, by_key()[key]) for key in new):
            put(facts.raw, path, value)
    for key in new:
        place = place_of(by_key()[key], facts.raw)
        if place is not None:
            facts.cells.setdefault(place, found.cells[key])


def _is_of(path: str, question: Question) -> bool:
    """True for a fact that a question makes: its own, and those beside it."""
    beside = {"source_box": ("source.clamps",), "source_cables": ("source.unknown_cables",),
              "way": ("run.level", "level.kind", "run.way", "guide.way"),
              "stud_depth": ("wall.stud_depth",), "trim_length": ("run.caulk_length",)}  # fmt: skip
    return path in (question.path, *beside.get(question.key, ()))


def _compare(found: Answered, facts: Facts) -> None:
    """Find facts that a sheet states otherwise than an answer."""
    stated = answers_from(facts.raw)
    for key, text in found.answers.items():
        other = stated.get(key)
        if other is None or _is_same(by_key()[key], text, other, found):
            continue
        place = place_of(by_key()[key], facts.raw)
        cell = facts.cells.get(place or (), "")
        if not cell or cell == found.cells[key]:
            cell = _near(place, facts)
        facts.problem(found.cells[key], f'"{text}" is not what {cell} says, which is "{other}"',
                      _AGREE)  # fmt: skip


def _near(place: TomlPath | None, facts: Facts) -> str:
    """The cell of the row that a fact is worked out from."""
    for length in range(len(place or ()), 0, -1):
        cell = facts.cells.get((place or ())[:length])
        if cell and not cell.startswith("Questions"):
            return cell
    return "another sheet"


def _is_same(question: Question, one: str, other: str, found: Answered) -> bool:
    if one.strip().lower() == other.strip().lower():
        return True
    unit = bare_unit(found.answers)
    lengths = {read_in(each, unit) for each in (one, other)}
    return question.kind == "length" and UNKNOWN not in (one, other) and len(lengths) == 1


def place_of(question: Question, raw: Mapping[str, Any]) -> TomlPath | None:
    """Where a question's fact stands in a job's values; None where its table is not there."""
    return place_in(raw, question.path)
