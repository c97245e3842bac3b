"""Reads the sheet of questions, and brings its answers together with the other sheets."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from estimator.form.book_in import Grid
from estimator.form.layout import Kind
from estimator.form.question_words import ANSWER, NUMBER, NUMBERS, QUESTION
from estimator.form.tables_in import Facts, Row, rows_of
from estimator.form.typed import NotTyped, typed_text
from estimator.guide.defaults import say_here, value_of
from estimator.guide.questions import UNKNOWN, Question, by_key, questions
from estimator.guide.typed import AnswerRefused, read_answer
from estimator.survey.locales import writes_comma

_KINDS: dict[str, Kind] = {
    "length": "measure", "area": "measure", "volume": "measure", "number": "number",
    "date": "date", "choice": "choice", "yes-no": "choice",
}  # fmt: skip
_MOST_DIGITS = 9
_BRITISH = {"country": "GB"}
_FRAME = ("country", "units", "locale")
_SAME = {"true": "yes", "false": "no", "?": UNKNOWN}


@dataclass(slots=True)
class Answered:
    """Answers of the sheet by the key of the question, and the cell of each."""

    answers: dict[str, str] = field(default_factory=dict)
    cells: dict[str, str] = field(default_factory=dict)


def read_questions(grid: Grid, facts: Facts) -> Answered:
    """Read every answer that there is; what is none becomes a problem of `facts`."""
    found = Answered()
    rows = {question.key: row for row in rows_of(grid, [NUMBER, QUESTION, ANSWER], facts)
            if (question := _question(row)) is not None}  # fmt: skip
    for key in (*_FRAME, *(key for key in NUMBERS if key not in _FRAME)):
        row = rows.get(key)
        if row is None:
            continue
        found.cells[key] = row.place(ANSWER)
        _read_answer(by_key()[key], row, found, facts)
    return found


def _question(row: Row) -> Question | None:
    """The question of a row, by its number."""
    value = row[NUMBER].value if NUMBER in row else ""
    text = str(value).removesuffix(".0").strip().rstrip(".")
    number = int(text) if text.isdecimal() and len(text) <= _MOST_DIGITS else 0
    numbered = questions()[number - 1] if 0 < number <= len(NUMBERS) else None
    return _by_its_words(row, numbered) if number else None


def _by_its_words(row: Row, numbered: Question | None) -> Question | None:
    """The question that a row asks: on a form of another day its number may be another's."""
    asked = str(row[QUESTION].value) if QUESTION in row else ""
    if numbered is not None and any(each in asked for each in _spoken(numbered)):
        return numbered
    said = [each for each in questions() if any(words in asked for words in _spoken(each))]
    return said[0] if len(said) == 1 else numbered


@cache
def _spoken(question: Question) -> tuple[str, ...]:
    """A question in the words of every country."""
    return question.ask, say_here(_BRITISH)(question.ask)


def _plain(text: str) -> str:
    """A question mark is unknown; true and false, as programs write them, are yes and no."""
    return _SAME.get(text.lower(), text)


def _read_answer(question: Question, row: Row, found: Answered, facts: Facts) -> None:
    if ANSWER not in row:
        return
    comma = writes_comma(value_of("locale", found.answers))
    try:
        kind = _KINDS.get(question.kind, "text")
        text = typed_text(row[ANSWER], kind, question.unit, comma=comma)
        if text:
            known = found.answers
            known[question.key] = read_answer(question, _plain(text), known).value
    except (NotTyped, AnswerRefused) as error:
        facts.problem(row.place(ANSWER), error.read, error.write)
