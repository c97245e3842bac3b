"""Collects what is to be told in other languages: sentences from the code, words from the books.

`python -m tests.words.collected` lays new sentences into the catalogs and new words into the list,
drops what nothing says any more, and keeps what is there. What is empty then is to be translated.
"""

from __future__ import annotations

import ast
import csv
import io
import tomllib
from collections.abc import Iterator
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from estimator.catalog.shipped import shipped_catalogs
from estimator.language import CATALOGS
from tests.words.said_words import said_words

ROOT = Path(__file__).parents[2]
PACKAGE, DATA = ROOT / "estimator", ROOT / "estimator" / "tables" / "data"
OTHERS = ("es", "fr")
KEYWORDS: dict[str, tuple[int, ...]] = {"said": (0,), "several": (1, 2)}
"""Which arguments are sentences. Babel's own reader passes over calls inside f-strings."""
LIST = shipped_catalogs() / "words.csv"
COLUMNS = ("english", "es", "es_sure", "fr", "fr_sure", "note")
_TERMS = ("included", "excluded")
_TABLES = {
    "rules": ("title",),
    "assumed": ("about", "taken"),
    "visits": ("what",),
    "safety_list": ("heading", "text"),
    "cautions": ("text",),
}
_HEADER = """# Sentences of the tool in another language; names in braces stay as they are.
# After a sentence in the code was changed: python -m tests.words.collected"""


_NOT_KEPT = tuple(
    f'"{each}'
    for each in (
        "Project-Id", "Report-Msgid", "POT-Creation", "PO-Revision", "Last-Translator",
        "Language-Team", "Generated-By",
    )
)  # fmt: skip
"""Lines of a catalog's head that would say nothing, or another thing on every day."""


def sentences() -> Catalog:
    """Every sentence that the code says, with its plural where it has one."""
    found = Catalog(header_comment="")
    for path in sorted(PACKAGE.rglob("*.py")):
        tree = ast.parse(path.read_text("utf-8"))
        here = _from_saying(tree)
        for each in ast.walk(tree):
            if isinstance(each, ast.Call) and ast.unparse(each.func) in here:
                found.add(_written_out(path, each))
    return found


def _from_saying(tree: ast.Module) -> set[str]:
    """Names in a file that say a sentence; other rooms have functions called alike."""
    taken = (
        name.name
        for each in ast.walk(tree)
        if isinstance(each, ast.ImportFrom) and each.module == "estimator.saying"
        for name in each.names
    )
    return set(taken) & set(KEYWORDS)


def _written_out(path: Path, call: ast.Call) -> str | tuple[str, ...]:
    """The sentence of a call, and the one for several; both stand there as they are."""
    texts = [call.args[at] for at in KEYWORDS[call.func.id]]  # type: ignore[attr-defined]
    if not all(isinstance(each, ast.Constant) for each in texts):
        raise ValueError(f"{path}, line {call.lineno}: write the sentence out")
    said = tuple(str(each.value) for each in texts)  # type: ignore[attr-defined]
    return said if len(said) > 1 else said[0]


def words() -> dict[str, str]:
    """Words and lines of shipped books and tables, with where each comes from."""
    found: dict[str, str] = {}
    for text, origin in _words():
        if any(char.isalpha() for char in text):
            found.setdefault(text, origin)
    return found


def _words() -> Iterator[tuple[str, str]]:
    yield from ((each, "words") for each in said_words())
    for folder in (shipped_catalogs(), shipped_catalogs("metric")):
        for book, columns in {
            "materials": ("description", "aisle", "unit"),
            "labor": ("description", "unit"),
        }.items():
            for row in rows(folder / f"{book}.csv"):
                yield from ((row[column], book) for column in columns)
        terms = tomllib.loads((folder / "shop.toml").read_text("utf-8"))
        yield from _terms(terms)
    for table, columns in _TABLES.items():
        for row in rows(DATA / f"{table}.csv"):
            yield from ((row[column], table) for column in columns)
            if table == "visits":
                yield from ((part, table) for part in row["what"].partition(", ")[::2] if part)


def _terms(shop: dict[str, dict[str, object]]) -> Iterator[tuple[str, str]]:
    for key, value in shop["terms"].items():
        if key.endswith("_line") and value:
            yield str(value), "shop"
        if key in _TERMS and isinstance(value, list):
            yield from ((str(each), "shop") for each in value)
    yield str(shop["price"]["permit_filed_by"]), "shop"


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def catalog(code: str) -> Catalog:
    """The catalog of a language as it is on file."""
    path = CATALOGS / f"{code}.po"
    if not path.exists():
        return Catalog(locale=code)
    with path.open("rb") as file:
        return read_po(file, locale=code)


def updated(code: str) -> str:
    """The catalog of a language with the sentences of the code, as text."""
    had, made = catalog(code), Catalog(locale=code, header_comment=_HEADER, fuzzy=False)
    for message in sentences():
        if message.id:
            old = had.get(message.id)
            kept = made.add(message.id, old.string if old is not None else "")
            kept.flags.discard("python-format")  # "% of" is no place
    written = io.BytesIO()
    write_po(written, made, width=0, sort_output=True, omit_header=False)
    lines = written.getvalue().decode().splitlines(keepends=True)
    return "".join(line for line in lines if not line.startswith(_NOT_KEPT))


def listed() -> list[dict[str, str]]:
    """The list of words with every word of the books, in their order."""
    had = {row["english"]: row for row in rows(LIST)}
    empty = dict.fromkeys(COLUMNS, "")
    return [
        empty
        | had.get(word, {})
        | {"english": word, "note": had.get(word, {}).get("note") or origin}
        for word, origin in words().items()
    ]


if __name__ == "__main__":
    for each in OTHERS:
        (CATALOGS / f"{each}.po").write_text(updated(each), encoding="utf-8")
    rows = listed()
    with LIST.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, COLUMNS, lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)
