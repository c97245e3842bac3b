"""The form's first sheet: the questions of the survey, one row each, to answer or to print."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from openpyxl.utils import get_column_letter

from estimator.form.question_words import (
    HEADS,
    NUMBERS,
    asked_when,
    choices_for,
    meaning,
    shown_default,
    unit_for,
)
from estimator.form.reader import QUESTIONS
from estimator.guide.defaults import say_here
from estimator.guide.from_job import answers_from
from estimator.guide.places import Names
from estimator.guide.questions import Answers, Question, questions
from estimator.outputs import form_page as page_of
from estimator.outputs.form_page import Lists
from estimator.outputs.form_sketch import KEY

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

_WIDTHS = (5, 66, 28, 12, 19, 90)
_ANSWER, _BLANK, _PRINTED = 3, 5, 5
_TITLE = "Survey of the job"
_NOTES = (
    "Write in the column Answer; the first questions are enough for a bid. Empty: what stands "
    "beside it is taken. Write unknown where nobody knows.",
    "Turn the power off and prove it dead before you open a box. Local code and licensed practice "
    "decide. Print this sheet to fill it in with a pencil.",
)
_NAMES = Names()
_CALLED = (
    "The other sheets may add facts. There, what is asked about here has these names: "
    f"wall {_NAMES.wall}, boxes {_NAMES.source} and {_NAMES.new}, run {_NAMES.run}."
)
_FILLED = (
    "This form was made from a job file: its facts stand on the sheets that follow, and here under "
    "If left blank. To change one, change it there; an answer here must agree with them."
)
_FIRST_PART, _REST = "First", "The rest, as far as you know it"
_PAGES = 2
_LONGEST_CHOICES = 120
_LINE_PT, _CHARS = 12.5, 100
_DRAWING_PT = 250
_DRAWING = "Sketch of the wall (an example is on the sheet Sketch)"


class _Ask(NamedTuple):
    """How the questions are asked: of which house, with which answers written in or stated."""

    lists: Lists
    house: Answers
    given: Answers
    stated: Answers


def add_questions(
    book: Workbook, lists: Lists, house: Answers, job: Mapping[str, Any], *, paper: int
) -> None:
    """Add the sheet with every question of the survey, as it is asked of a house.

    Its country, units and locale, as far as known, are written in where the form holds nothing
    else. What a job answers stands where the default would: it holds if a cell stays blank.
    """
    page = book.create_sheet(QUESTIONS)
    page_of.set_text(page.cell(1, 1), _TITLE, page_of.TITLE, wrap=False)
    notes = (*_NOTES, _FILLED if job else _CALLED)
    for row, note in enumerate(notes, start=2):
        page_of.set_text(page.cell(row, 1), note, page_of.NOTE, wrap=False)
    head = len(notes) + 2
    for at, (name, width) in enumerate(zip(HEADS, _WIDTHS, strict=True), start=1):
        page_of.heading(page.cell(head, at), name)
        page.column_dimensions[get_column_letter(at)].width = width
    ask = _Ask(lists, house, {} if job else house, answers_from(job))
    asked = _rows(page, head + 1, ask)
    page_of.table(page, (head, asked), HEADS)
    last = _drawing(page, asked + 2, house)
    page.freeze_panes = f"A{head + 1}"
    page.print_title_rows = f"{head}:{head}"
    page.print_area = f"A1:E{last}"
    page_of.paper(page, size=paper, wide=False, tall_pages=_PAGES)


def _rows(page: Worksheet, row: int, ask: _Ask) -> int:
    """Every question below the heading of its part; gives the last row."""
    part = ""
    for question in questions():
        here = f"{_FIRST_PART if question.first else _REST}: {question.section}"
        if here != part:
            page_of.set_text(page.cell(row, 2), here, page_of.HEAD)
            row, part = row + 1, here
        _question(page, row, question, ask)
        row += 1
    return row - 1


def _drawing(page: Worksheet, row: int, house: Answers) -> int:
    """Room to draw under the questions, with what to measure; gives its row."""
    page_of.set_text(page.cell(row, 1), _DRAWING, page_of.HEAD, wrap=False)
    for words in KEY:
        row += 1
        page_of.set_text(page.cell(row, 1), say_here(house)(words), page_of.NOTE, wrap=False)
    row += 1
    page.row_dimensions[row].height = _DRAWING_PT
    for at in range(1, _PRINTED + 1):
        page_of.framed(page.cell(row, at), first=at == 1, last=at == _PRINTED)
    return row


def _question(page: Worksheet, row: int, question: Question, ask: _Ask) -> None:
    words = choices_for(question, ask.house)
    asked = say_here(ask.house)(_asked(question, words))
    texts = (str(NUMBERS[question.key]), asked, "", unit_for(question, ask.house),
             ask.stated.get(question.key, shown_default(question, ask.house)),
             meaning(question, ask.house))  # fmt: skip
    for at, text in enumerate(texts, start=1):
        page_of.set_text(page.cell(row, at), text)
    page_of.entry(page.cell(row, _ANSWER), ask.given.get(question.key, ""))
    if words:
        page_of.drop_down(page, f"C{row}", words, ask.lists)
    page.row_dimensions[row].height = _LINE_PT * _lines(asked) + 3


def _lines(text: str) -> int:
    return sum(-(-len(line) // _CHARS) for line in text.split("\n"))


def _asked(question: Question, words: Mapping[str, str]) -> str:
    """The question with its condition, and its choices on a line of their own."""
    when = asked_when(question)
    asked = f"({when}) {question.ask}" if when else question.ask
    choices = " / ".join(words)
    if question.kind == "yes-no" or not words or len(choices) > _LONGEST_CHOICES:
        return asked
    return f"{asked}\n[ {choices} ]"
