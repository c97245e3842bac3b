"""The list of words: what a word or a line of the books is called in other languages."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from string import Formatter
from typing import NamedTuple

from estimator.catalog.books import BookFile
from estimator.catalog.cells import CellReader
from estimator.catalog.columns import Fault, fault_at, read_rows
from estimator.catalog.csv_table import Heading, read_table
from estimator.catalog.shipped import WORDS_FILE, shipped_catalogs
from estimator.language import CODES, ENGLISH, SOURCE, Language, LanguageCode, OtherWord
from estimator.problems import InputError, Problem
from estimator.reading import MeasureError
from estimator.text_files import read_text

ENGLISH_COLUMN = "english"
OTHERS = tuple(code for code in CODES if code != SOURCE)
SURE = tuple(f"{code}_sure" for code in OTHERS)
_KNOWN = (ENGLISH_COLUMN, *OTHERS, *SURE, "note")
_YES = {"yes": True, "": True, "no": False}

Words = Mapping[str, Mapping[str, OtherWord]]
SHIPPED = BookFile(shipped_catalogs() / WORDS_FILE, f"shipped {WORDS_FILE}")


class WordsRead(NamedTuple):
    """What each English word is called, by language; and what is wrong with the list."""

    words: Words
    problems: tuple[Problem, ...]


def read_words(text: str, name: str) -> WordsRead:
    """Read a list of words.

    A column of a language may be missing, and so may a word in it: then the English stands. A
    sentence with places ({count}) must keep them all.

    Args:
        text: the whole file.
        name: what to call it in problems.

    Raises:
        InputError: headings that cannot be used, or a quote out of place.
    """
    table = read_table(text, name, _KNOWN, (ENGLISH_COLUMN,))
    faults: list[Fault] = []
    readers: dict[str, CellReader] = dict.fromkeys(SURE, _sure)
    rows = tuple(read_rows(table, readers, faults))
    words: dict[str, dict[str, OtherWord]] = {code: {} for code in OTHERS}
    seen: set[str] = set()
    for row, values in rows:
        english = values[ENGLISH_COLUMN]
        faults += _row_faults(table.heading, row, values, seen)
        seen.add(english)
        for code in OTHERS:
            if values.get(code):
                sure = values.get(f"{code}_sure", True)
                words[code][english] = OtherWord(values[code], sure)
    ordered = sorted(faults)
    return WordsRead(words, tuple(fault.problem(name, table.heading) for fault in ordered))


def _sure(text: str) -> bool:
    """Read whether a word is what people say."""
    if text.lower() not in _YES:
        hint = "Write yes, or no for a word that is to be checked."
        raise MeasureError(text, "reject", "is not yes or no", hint)
    return _YES[text.lower()]


def _row_faults(
    heading: Heading, row: int, values: Mapping[str, str], seen: Iterable[str]
) -> Iterator[Fault]:
    """Check one row: it has an English word, once, and every sentence keeps its places."""
    english = values[ENGLISH_COLUMN]
    if not english:
        write = "Write the English word or line, as the books have it."
        yield fault_at(heading, row, ENGLISH_COLUMN, "there is no English word.", write)
    if english in seen:
        read = f'"{english}" stands more than once.'
        yield fault_at(heading, row, ENGLISH_COLUMN, read, "Keep one of the rows.")
    for code in OTHERS:
        if values.get(code) and places(values[code]) != places(english):
            read = f'"{values[code]}" does not have the same places in braces as "{english}".'
            write = f"Use each of these once: {', '.join(sorted(places(english) or ())) or 'none'}."
            yield fault_at(heading, row, code, read, write)


def places(sentence: str) -> frozenset[str] | None:
    """Names of the places in a sentence; None where its braces hold more, or cannot be read."""
    try:
        parts = [(name, form, change) for _, name, form, change in Formatter().parse(sentence)]
    except ValueError:
        return None
    if any(form or change for _, form, change in parts):
        return None
    return frozenset(name for name, _, _ in parts if name is not None)


def word_problems(file: BookFile) -> tuple[Problem, ...]:
    """Everything that is wrong with a list of words."""
    try:
        return _read(file).problems
    except InputError as error:
        return error.problems


def _read(file: BookFile) -> WordsRead:
    return read_words(read_text(file.path, file.name), file.name)


def read_language(code: LanguageCode, files: Sequence[BookFile]) -> Language:
    """Give a language with its words: those that come along, and lists of the user's over them.

    Args:
        code: one of CODES.
        files: lists of the user's own, the nearest last.

    Raises:
        InputError: everything that is wrong in any of the lists.
    """
    if code == SOURCE:
        return ENGLISH
    reads = [_read(file) for file in (SHIPPED, *files)]
    problems = [problem for each in reads for problem in each.problems]
    if problems:
        raise InputError(problems)
    return Language(code, {k: v for each in reads for k, v in each.words[code].items()})
