"""What is said about TOML that cannot be read: place, line as written, and what to write."""

from __future__ import annotations

import tomllib
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from estimator.problems import InputError, Problem
from estimator.toml_files import read_toml, show_path, toml_place

# text, place, part of what to write
FAULTS = [
    ("a = 12' 6\"", "line 1, column 7", "Put text and measures in quotes"),
    ('a = "12\' 6""', "line 1, column 12", "between three apostrophes"),
    ("a = unknown", "line 1, column 5", "Put text and measures in quotes"),
    ("a = { b = 1, c = unknown }", "line 1, column 18", "Put text and measures in quotes"),
    ("a = 3/4", "line 1, column 6", "Put text and measures in quotes"),
    ("ok = 1\na = 3,5", "line 2, column 6", "Write a decimal point (12.5)"),
    ("a = .5", "line 1, column 5", "Write a digit on both sides of the point"),
    ("a = 012", "line 1, column 6", "Leave out the zero"),
    ("a = Yes", "line 1, column 5", "Write true or false"),
    ("a = \u201cx\u201d", "line 1, column 5", "straight quotes"),
    ('a = "x', "line 1, column 7", "End the text on its line"),
    ('a = "C:\\Users"', "line 1, column 10", "Write a backslash twice"),
    ("a =", "line 1, column 4", "Write a value after the = sign"),
    ("= 1", "line 1, column 1", "Write a name before the = sign"),
    ("a 1", "line 1, column 3", "Write one setting on a line: name = value"),
    ("firm name = 1", "line 1, column 6", "Write the name as one word, such as firm_name"),
    ("länge = 1", "line 1, column 2", "letters a to z"),
    ("[walls", "line 1, column 7", "Close the heading with ]"),
    ("[[walls]\na = 1", "line 1, column 8", "Close the heading with ]]"),
    ("d = 2026-13-01", "line 1, column 9", "Write a date as 2026-03-09"),
    ("d = 11/24/2026", "line 1, column 7", "Write 2026-11-24"),
    ("d = 24.11.2026", "line 1, column 10", "Write 2026-11-24"),
    ("d = 3/4/2026", "line 1, column 6", "Write 2026-03-04 or 2026-04-03"),
    ("a = [1 2]", "line 1, column 8", "Close what was opened"),
    ("a = [1,\nb = 2", "line 2, column 1", "The [ on line 1 is still open here"),
    ("\na = [{x = 1,\ny = 2}]", "line 2, column 13", "Close what was opened"),
    ("a = '''x\nb = 2\n\n", "line 2, column 6", "The text begun with three marks on line 1"),
    ("a = 1\n[a.b]", "line 2, column 5", "was already given as something else"),
]


@pytest.mark.parametrize(("text", "place", "write"), FAULTS, ids=[fault[0] for fault in FAULTS])
def test_a_fault_gives_place_line_and_advice(text: str, place: str, write: str) -> None:
    problem = only_problem(text)
    assert problem.where == f"job.toml: {place}"
    row = int(place.split(",", maxsplit=1)[0].removeprefix("line "))
    assert problem.read == f"cannot be read here: {text.splitlines()[row - 1].strip()}"
    assert write in problem.write


def test_a_name_given_twice_names_both_lines() -> None:
    problem = only_problem("[walls]\nlength = 1\n\nlength = 2\n")
    assert problem.where == "job.toml: line 4"
    assert problem.read == "walls.length stands more than once (already on line 2)."


@pytest.mark.parametrize(
    "number", ["nan", "-inf", "1e99999", "1e-99999", "1e999999999999999999999"]
)
def test_a_number_that_nobody_measures_is_refused_with_its_line(number: str) -> None:
    problem = only_problem(f"a = 1\nb = {number}\n")
    assert problem.where == "job.toml: line 2"
    assert problem.read == f"{number} is not a number that can be used."


def test_brackets_without_end_are_refused_in_plain_words() -> None:
    problem = only_problem("a = " + "[" * 100_000)
    assert "too deep" in problem.read


def test_numbers_with_decimals_stay_exact() -> None:
    assert read_toml("a = 0.1\nb = 85.00", "x") == {"a": Decimal("0.1"), "b": Decimal("85.00")}


def test_a_file_with_a_byte_order_mark_and_windows_line_ends(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(b'\xef\xbb\xbfa = "caf\xc3\xa9"\r\nb = 2\r\n')
    assert read_toml(path, "job.toml") == {"a": "café", "b": 2}


def test_windows_line_ends_do_not_move_the_place() -> None:
    assert only_problem("a = 1\r\nb = yes\r\n").where == "job.toml: line 2, column 5"


def test_control_characters_never_reach_the_screen() -> None:
    assert only_problem("a = \x1b[31m").read == "cannot be read here: a = ?[31m"


@pytest.mark.parametrize(
    ("raw", "read"),
    [
        (b"PK\x03\x04rest", "job.toml: is a workbook or a zip archive"),
        ("a = 1".encode("utf-16"), "job.toml: is written in UTF-16"),
        (b"a = 1\nb = '\xe9'\n", "job.toml: line 2: holds a character that is not UTF-8 (it"),
    ],
    ids=["workbook", "utf-16", "latin-1"],
)
def test_a_file_that_is_not_utf8_text(tmp_path: Path, raw: bytes, read: str) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(raw)
    with pytest.raises(InputError) as caught:
        read_toml(path, "job.toml")
    assert str(caught.value).startswith(read)


@pytest.mark.parametrize(
    ("name", "read"),
    [("none.toml", "there is no such file"), (".", "is a folder"), ("a\0b", "could not be read")],
)
def test_a_file_that_cannot_be_opened(tmp_path: Path, name: str, read: str) -> None:
    with pytest.raises(InputError, match=read):
        read_toml(tmp_path / name, "job.toml")


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path) -> bytes:
        raise PermissionError(13, "no")

    path = tmp_path / "job.toml"
    path.write_text("a = 1")
    monkeypatch.setattr(Path, "read_bytes", refuse)
    with pytest.raises(InputError, match="may not be read"):
        read_toml(path, "job.toml")


def test_places_as_people_read_them() -> None:
    assert show_path(("walls", 1, "height")) == "walls[1].height"
    text = "[[walls]]\n[[walls]]\nheight = 8\n"
    assert toml_place("job.toml", text, ("walls", 1, "height")) == (
        "job.toml: line 3, walls[1].height"
    )
    assert toml_place("job.toml", None, ("walls",)) == "job.toml: walls"


@given(st.text("ab=[]{}\"'#\n\\ .,12-", max_size=60))
@example("a = {x=1\n}")
def test_any_text_is_read_as_tomllib_reads_it_or_refused_in_our_words(text: str) -> None:
    try:
        want = tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        library = str(error).split(" (at")[0]
        with pytest.raises(InputError) as caught:
            read_toml(text, "job.toml")
        assert library not in str(caught.value)
        return
    assert read_toml(text, "job.toml") == want


def only_problem(text: str) -> Problem:
    with pytest.raises(InputError) as caught:
        read_toml(text, "job.toml")
    (problem,) = caught.value.problems
    return problem
