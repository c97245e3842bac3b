"""All problems of a job come at once, in line order, and none is said of what was refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.problems import InputError
from estimator.survey.reader import read_job, survey_from
from tests.survey.made_job import TEXT, changed, lines_named, marked_lines, problems, values

MANY = changed(
    ('title = "One more outlet"', 'title = 5 # here\nedition = "nec" # here'),
    ("breaker = 15", "braker = 15 # here"),
    ('length = "12 ft"', 'length = "12-6" # here'),
    ('kind = "nog"', 'kind = "nug" # here'),
    ('wall = "north"\nx = "34 in"', 'wall = "nroth" # here\nx = "2x4" # here'),
    ('to = "new"', 'to = "nwe" # here'),
    ('top = "4-1/2 in"', 'top = "four" # here\njoins_left = "strap" # here'),
)


def test_all_problems_come_at_once_in_line_order() -> None:
    found = problems(MANY)
    assert lines_named(found) == marked_lines(MANY)
    assert len(found) == 10


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('length = "12 ft"', ""),
        ('length = "12 ft"', 'length = "long"'),
        ('[[walls]]\nid = "north"', "[[walls]]"),
        ('id = "east"', "id = 7"),
        ('height = "100 in"', 'height = "high"'),
        ('kind = "attic"', 'kind = "atic"'),
        ('x = "34 in"', 'x = "here"'),
        ('cables = ["14-2"]', "cables = 14"),
        ('way = "wall"', "way = 5"),
        ('way = "wall"', "legs = 5"),
        ('way = "wall"', "legs = [5]"),
        ('way = "wall"', "route = 5\nway = 'wall'"),
        ('bottom = "0 in"\ntop = "4-1/2 in"', ""),
        ('[finish]', "[[truck_stock]]\nitem = 'a'\nquantity = true\n[finish]"),
        ('[finish]', "[overrides]\nhours = 3\n[finish]"),
        ('bottom = "3 ft"', 'bottom = "3 ft"\nkings = 5'),
        ('bottom = "3 ft"', 'bottom = "3 ft"\nkings = [1, "two"]'),
        ('bottom = "3 ft"', 'bottom = "3 ft"\ncripples = "none"'),
        ("[job]", "tree = 1\n[job]"),
        ('title = "One more outlet"', ""),
    ],
)  # fmt: skip
def test_one_refusal_hides_no_other_and_makes_no_other(old: str, new: str) -> None:
    """A dangling name is found whatever else is wrong."""
    alone = problems(changed((old, new)))
    both = problems(changed((old, new), ('to = "new"', 'to = "nwe"')))
    assert len(alone) == 1
    assert {each.read for each in both} == {alone[0].read, 'there is no box "nwe"'}


def test_a_wall_whose_name_cannot_be_read_may_be_the_one_meant() -> None:
    """Nothing is said of names that the refused table may have held."""
    text = changed(('id = "east"', "id = 7"), ('wall = "east"\nat', 'wall = "aest"\nat'))
    assert [each.read for each in problems(text)] == ["7 does not fit here"]


def test_a_table_that_could_not_be_read_leaves_no_name_dangling() -> None:
    text = "[job]\nid = 'a'\ntitle = 'b'\n" + TEXT[TEXT.index("[[boxes]]") :]
    assert [each.read for each in problems("walls = 3\n" + text)] == ["3 does not fit here"]


def test_a_program_hears_places_without_lines() -> None:
    with pytest.raises(InputError) as caught:
        survey_from(values(changed(('to = "new"', 'to = "nwe"'))))
    assert caught.value.problems[0].where == "survey: runs[0].to"


def test_a_missing_file_is_one_problem(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="there is no such file"):
        read_job(tmp_path / "none.toml")


def test_text_that_is_not_toml_names_its_line() -> None:
    text = changed(("breaker = 15", "breaker = = 15 # here"))
    assert lines_named(problems(text)) == marked_lines(text)
