"""Books kept at hand while many jobs are priced: the same files are read once."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from estimator.catalog.books import BookFile
from estimator.catalog.levels import FoundBooks, find_books, read_found, settings_over
from estimator.catalog.records import Books
from estimator.catalog.shipped import Units
from estimator.catalog.words import read_language
from estimator.language import Language, LanguageCode
from estimator.pricing.books_for import layers_of, levels_for
from estimator.survey.reader import JobFile

MOST_KEPT = 8
"""Sets of books kept by one process, so that its memory does not grow with the jobs."""
_HOW_FILES_ARE_READ = "shop"
"""Section of the settings on which the reading of the other books depends."""


def books_at_hand(job: JobFile, chosen: Path | None, user: Path | None) -> Books:
    """Give a job's books, as `books_for` does; files that were read before are not read again.

    Raises:
        InputError: with every problem of the books.
    """
    found, units = find_books(levels_for(job, chosen, user)), job.survey.job.units
    layers = layers_of(job)
    if _HOW_FILES_ARE_READ in job.survey.settings:
        return read_found(found, units, layers)
    books = _kept(found, units)
    if not layers:
        return books
    shop = settings_over(found, units, layers)
    return replace(books, shop=shop, language=_spoken(shop.terms.language, found.words))


@lru_cache(maxsize=MOST_KEPT)
def _spoken(code: LanguageCode, files: tuple[BookFile, ...]) -> Language:
    return read_language(code, files)


@lru_cache(maxsize=MOST_KEPT)
def _kept(found: FoundBooks, units: Units) -> Books:
    return read_found(found, units)
