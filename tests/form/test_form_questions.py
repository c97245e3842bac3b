"""The sheet of questions: one row for each, answers that make a job, and other sheets beside it."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.form.question_words import NUMBERS
from estimator.form.reader import read_form
from estimator.guide.facts import job_from
from estimator.guide.places import Names
from estimator.guide.questions import questions
from estimator.survey.reader import survey_from
from tests.form.made_form import S1, answer_cell, answered, book, cell_of, problems, read

# The same answers as the guided questions keep them: worked by hand from S1.
S1_KEPT = {
    "year_built": "1996", "source_box": "plastic", "source_volume": "18 in3",
    "source_cables": "2", "breaker": "15", "wire": "14", "way": "trim",
    "wall_length": "12 ft", "source_x": "2' 10\"", "source_height": "15 in",
    "new_x": "8' 9\"", "first_stud": "16 in",
}  # fmt: skip


def test_the_sheet_has_exactly_the_questions_of_the_list() -> None:
    page = book()["Questions"]
    asked = [row[1].value for row in page.iter_rows() if str(row[0].value).isdecimal()]
    assert len(asked) == len(questions())
    for question, text in zip(questions(), asked, strict=True):
        assert question.ask in str(text)


def blank_cells(name: str) -> dict[str, str | None]:
    """What the form of a sample says beside each question."""
    opened = book(name)
    return {key: answer_cell(opened, key).offset(column=2).value for key in NUMBERS}


def test_a_form_made_from_a_job_shows_its_answers_and_leaves_the_cells_free() -> None:
    """As typed in the sample nightstand; it leaves protection out."""
    shown, empty = blank_cells("nightstand"), blank_cells("")
    wanted = {
        "year_built": "1996", "breaker": "15", "wire": "14", "source_box": "plastic",
        "source_cables": "2", "way": "trim", "wall_length": "12 ft",
    }  # fmt: skip
    assert {key: shown[key] for key in wanted} == wanted
    assert shown["protection"] == empty["protection"]
    assert (shown["source_height"], empty["source_height"]) == ("15 in", "needed")
    opened = book("nightstand")
    assert not any(answer_cell(opened, key).value for key in NUMBERS)


def test_every_question_with_choices_has_them_in_a_list() -> None:
    opened = book()
    page, lists = opened["Questions"], opened["Lists"]
    offers = {str(each.sqref): each.formula1 for each in page.data_validations.dataValidation}
    for question in questions():
        cell = answer_cell(opened, question.key)
        has_words = bool(question.choices) or question.kind == "yes-no"
        assert (cell.coordinate in offers) is has_words, question.key
        assert cell.number_format == "@"
    first = offers[answer_cell(opened, "way").coordinate]
    words = [row[0].value for row in lists[first.split("!")[1].replace("$", "")]]
    assert words == ["trim", "wall", "attic", "basement", "crawlspace", "through"]


def test_answers_make_the_same_job_as_the_guided_questions(tmp_path: Path) -> None:
    made = read(answered(book(), S1), tmp_path)
    assert made.survey == survey_from(job_from(S1_KEPT, Names(job="job")))
    assert made.notes == ()


@pytest.mark.parametrize(
    ("key", "typed", "words"),
    [
        ("breaker", "big", "whole number"),
        ("way", "over the roof", "not one of these"),
        ("wall_length", "12-6", '"12-6"'),
        ("source_height", "unknown", "has to be known"),
        ("country", "Utopia", "two letters"),
        ("new_x", None, "has no answer"),
    ],
)
def test_a_wrong_answer_names_its_cell(key: str, typed: object, words: str, tmp_path: Path) -> None:
    opened = answered(book(), S1 | {key: typed})
    found = problems(opened, tmp_path)
    cell = f"Questions!{answer_cell(opened, key).coordinate}"
    assert any(each.where.endswith(cell) and words in each.read for each in found), found


def test_a_problem_of_the_job_names_the_answer_behind_it(tmp_path: Path) -> None:
    """A box beyond the end of its wall: 13 ft on a wall of 12 ft."""
    opened = answered(book(), S1 | {"new_x": "13 ft"})
    (found,) = problems(opened, tmp_path)
    assert found.where.endswith(f"Questions!{answer_cell(opened, 'new_x').coordinate}")


def test_a_job_of_answers_has_the_name_of_the_form_as_its_number(tmp_path: Path) -> None:
    answered(book(), S1).save(tmp_path / "smith 7.xlsx")
    assert read_form(tmp_path / "smith 7.xlsx").survey.job.id == "smith 7"
    answered(answered(book(), S1), {"job_number": "12"}).save(tmp_path / "smith.xlsx")
    assert read_form(tmp_path / "smith.xlsx").survey.job.id == "12"


def test_other_sheets_add_to_the_answers(tmp_path: Path) -> None:
    opened = answered(book(), S1)
    for heading, value in (("item", "cable-14-2"), ("length", "14 ft")):
        cell_of(opened, "Truck stock", 1, heading).value = value
    for heading, value in (("box", "source"), ("wires per screw", 1)):
        cell_of(opened, "Box contents", 1, heading).value = value
    for heading, value in (("id", 1.0), ("stud", "2x4")):
        cell_of(opened, "Walls", 1, heading).value = value
    survey = read(opened, tmp_path).survey
    assert survey.truck_stock[0].length_in == 168
    assert survey.boxes[0].contents.wires_per_screw == 1
    assert (len(survey.walls), survey.walls[0].stud, survey.walls[0].length_in) == (1, "2x4", 144)


def test_a_sheet_goes_before_what_is_only_taken_by_default(tmp_path: Path) -> None:
    opened = answered(book(), S1)
    cell_of(opened, "Job", "title", "Answer").value = "Bedroom outlet"
    cell_of(opened, "Finish", "compound", "Answer").value = "setting"
    survey = read(opened, tmp_path).survey
    assert (survey.job.title, survey.finish.compound) == ("Bedroom outlet", "setting")


def test_a_fact_said_twice_the_same_way_is_taken(tmp_path: Path) -> None:
    opened = answered(book(), S1)
    cell_of(opened, "Circuit", "breaker", "Answer").value = 15.0
    for heading, value in (("id", "1"), ("length", "144 in")):
        cell_of(opened, "Walls", 1, heading).value = value
    assert read(opened, tmp_path).survey.circuit.breaker_a == 15


def test_a_fact_said_in_two_ways_names_both_cells(tmp_path: Path) -> None:
    opened = answered(book(), S1)
    cell_of(opened, "Circuit", "breaker", "Answer").value = 20
    (found,) = problems(opened, tmp_path)
    assert found.where.endswith(f"Questions!{answer_cell(opened, 'breaker').coordinate}")
    assert "Circuit!B4" in found.read
    assert '"15"' in found.read and '"20"' in found.read


def test_an_answer_adds_to_a_job_that_the_sheets_state(tmp_path: Path) -> None:
    """The sample leaves the height of its level run and its insulation as stated elsewhere."""
    opened = book("nightstand")
    before = read(opened, tmp_path).survey
    assert before.house.lead_tested == "unknown"
    survey = read(answered(opened, {"lead": "none found", "breaker": 15}), tmp_path).survey
    assert survey.house.lead_tested == "none found"
    assert survey.boxes == before.boxes


def test_an_answer_against_the_sheets_names_both_cells(tmp_path: Path) -> None:
    opened = answered(book("nightstand"), {"source_x": "3 ft", "breaker": 20})
    found = problems(opened, tmp_path)
    assert ["Boxes!C5" in each.read or "Circuit!B4" in each.read for each in found] == [True, True]
    assert all("Questions!C" in each.where for each in found)


def test_an_answer_to_what_is_not_asked_is_noted(tmp_path: Path) -> None:
    made = read(answered(book(), S1 | {"distance": "6 ft"}), tmp_path)
    assert [f"question {NUMBERS['distance']}" in note for note in made.notes] == [True]


def test_the_finish_of_the_wall_is_answered_on_the_form(tmp_path: Path) -> None:
    opened = answered(book(), S1 | {"finish": "plaster"})
    assert read(opened, tmp_path).survey.walls[0].finish == "plaster"
    assert read(answered(opened, {"finish": "unknown"}), tmp_path).survey.walls[0].finish == (
        "unknown"
    )


def test_a_form_of_another_day_is_read_by_its_questions(tmp_path: Path) -> None:
    """All numbers after the finish are one less where that question is not asked yet."""
    opened = answered(book(), S1 | {"lead": "none found", "permit": "needed"})
    page = opened["Questions"]
    page.delete_rows(answer_cell(opened, "finish").row)
    for (cell,) in page.iter_rows(max_col=1):
        if str(cell.value).isdecimal() and int(cell.value) > NUMBERS["finish"]:
            cell.value = str(int(cell.value) - 1)
    house = read(opened, tmp_path).survey.house
    assert (house.lead_tested, house.permit) == ("none found", "needed")


def test_rows_of_questions_may_be_moved(tmp_path: Path) -> None:
    opened = answered(book(), S1)
    opened["Questions"].insert_rows(6, 3)
    assert read(opened, tmp_path).survey == survey_from(job_from(S1_KEPT, Names(job="job")))


def test_the_quick_form_without_a_wall(tmp_path: Path) -> None:
    """Box to box 71 in behind the baseboard, both 15 in up, cable at 3 in: 12 + 71 + 12."""
    left_out = ("wall_length", "source_x", "new_x", "first_stud")
    answers = {key: value for key, value in S1.items() if key not in left_out}
    survey = read(answered(book(), answers | {"distance": "71 in", "studs": 4}), tmp_path).survey
    assert [leg.length_in for leg in survey.runs[0].legs] == [12, 71, 12]
