"""The list of words: read, laid over the one that comes along, and every fault named."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from estimator.catalog.books import BookFile
from estimator.catalog.check import check_books
from estimator.catalog.shipped import copy_books
from estimator.catalog.words import read_language, read_words
from estimator.language import ENGLISH, Language, OtherWord
from estimator.problems import InputError
from estimator.saying import capital, listed, lower, said, several, small, word

HEAD = "english,es,es_sure,fr,fr_sure,note\n"
ES = {"box": OtherWord("caja"), "stud": OtherWord("montante", sure=False)}


def spoken(tmp_path: Path, rows: str, code: str = "es") -> Language:
    path = tmp_path / "words.csv"
    path.write_text(HEAD + rows, encoding="utf-8")
    return read_language(code, [BookFile(path)])


def test_a_word_of_the_users_goes_before_the_shipped_one(tmp_path: Path) -> None:
    mine = spoken(tmp_path, "stud,palo derecho,yes,,,\n")
    assert mine.say(word("stud")) == "palo derecho"
    assert mine.say(word("switch")) not in ("switch", "")


def test_a_word_that_is_not_sure_keeps_the_english_in_brackets() -> None:
    spanish = Language("es", ES)
    assert spanish.say(word("stud")) == "montante [stud]"
    assert spanish.say(word("box")) == "caja"


def test_a_word_without_a_row_stays_as_it_is() -> None:
    assert Language("es", ES).say(word("Our own thing")) == "Our own thing"


def test_text_that_nobody_marked_is_never_told() -> None:
    """A customer called Box stays Box."""
    assert Language("es", ES).say("box") == "box"


def test_sayings_inside_sayings_are_told(tmp_path: Path) -> None:
    mine = spoken(tmp_path, '"{count} of {what}","{what}, {count} veces",,,,\nbox,caja,,,,\n')
    made = said("{count} of {what}", count=2, what=listed([word("box"), "A"], " "))
    assert (made, mine.say(made)) == ("2 of box A", "caja A, 2 veces")
    assert mine.say(capital(made)) == "Caja A, 2 veces"


@pytest.mark.parametrize(
    ("made", "want"),
    [(capital(word("box")), "Caja"), (small(word("Box")), "box"), (lower(word("BOX")), "box")],
)
def test_letters_are_changed_after_it_is_told(made: str, want: str) -> None:
    assert Language("es", ES).say(made) == want


def test_english_is_the_text_itself() -> None:
    made = several(1, "{count} opening", "{count} openings")
    assert (made, ENGLISH.say(made)) == ("1 opening", "1 opening")
    assert ENGLISH.say(word("stud")) == "stud"


@pytest.mark.parametrize(
    ("locale", "code", "want"),
    [("en_US", "es", "es_US"), ("en_CA", "fr", "fr_CA"), ("en_US", "fr", "fr"),
     ("en-GB", "en", "en-GB"), ("de_DE", "es", "es")],
)  # fmt: skip
def test_dates_are_in_the_language_and_of_the_country(locale: str, code: str, want: str) -> None:
    """Which locales there are: Unicode CLDR, read off Babel's list of them."""
    assert Language(code).dates(locale) == want


@pytest.mark.parametrize(
    ("row", "read"),
    [
        (",caja,,,,\n", "row 2, column english: there is no English word."),
        ("box,caja,,,,\nbox,cajón,,,,\n", 'row 3, column english: "box" stands more than once.'),
        ("box,caja,perhaps,,,\n", 'row 2, column es_sure: "perhaps" is not yes or no.'),
        ("{count} boxes,cajas,,,,\n", "row 2, column es: "),
        ("box,caja {,,,,\n", "row 2, column es: "),
        ("{count} boxes,{count:x} cajas,,,,\n", "row 2, column es: "),
        ("{count} boxes,{count!s} cajas,,,,\n", "row 2, column es: "),
    ],
)
def test_each_fault_is_named_with_its_row(row: str, read: str) -> None:
    problems = read_words(HEAD + row, "mine/words.csv").problems
    assert len(problems) == 1
    assert f"{problems[0].where}: {problems[0].read}".startswith(f"mine/words.csv: {read}")


def test_a_wrong_list_stops_a_language_and_not_english(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="stands more than once"):
        spoken(tmp_path, "box,caja,,,,\nbox,caja,,,,\n")
    assert spoken(tmp_path, "box,caja,,,,\nbox,caja,,,,\n", "en") is ENGLISH


def test_a_check_of_books_looks_at_the_words(tmp_path: Path) -> None:
    copy_books(tmp_path)
    assert check_books(tmp_path, date(2026, 1, 2)).errors == ()
    with (tmp_path / "words.csv").open("a", encoding="utf-8") as file:
        file.write(",nada,,,,\n")
    errors = check_books(tmp_path, date(2026, 1, 2)).errors
    assert [each.read for each in errors] == ["there is no English word."]
