"""One row of the price build-up, and the few ways to make one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Cell, formula, words

HOURS_PLACES = 6
LONGEST_TEXT = 255
"""Characters of one text in a formula that every spreadsheet program takes."""


@dataclass(frozen=True, slots=True)
class Step:
    """One row of the build-up.

    Attributes:
        name: the defined name of its cell. how: words, or a formula that finds them.
        amount: whether it stands with the amounts, and not with rates and counts.
        choice: the words that may stand in the cell, where only some may.
    """

    name: str
    label: str
    cell: Cell
    how: str | Cell
    amount: bool = True
    choice: str = ""


def rate(name: str, label: str, cell: Cell, how: str | Cell = "") -> Step:
    """A rate, a count or hours: not yet money of this job."""
    return Step(name, label, cell, how, amount=False)


def choice(name: str, label: str, word: str, offered: Mapping[str, str]) -> Step:
    """One word out of a few; beside it stands what the word chosen means."""
    cell = words(word, looks.ENTRY_WORD)
    said = formula(by_word(name, {each: text(said) for each, said in offered.items()}),
                   offered[word], looks.TEXT)  # fmt: skip
    return Step(name, label, cell, said, amount=False, choice=",".join(offered))


def by_word(name: str, results: Mapping[str, str]) -> str:
    """Pick the formula that belongs to the word in a cell; the last one for any other word."""
    *first, (_, last) = results.items()
    picked = last
    for word, result in reversed(first):
        picked = f'IF({name}="{word}",{result},{picked})'
    return picked


def text(said: str) -> str:
    """Words of the program's own as a piece of a formula, in parts where they are long."""
    parts = [said[at : at + LONGEST_TEXT] for at in range(0, len(said), LONGEST_TEXT)] or [""]
    return "&".join('"' + part.replace('"', '""') + '"' for part in parts)


def hours(formula_text: str, value: Decimal) -> Cell:
    """Hours that follow from other cells."""
    return formula(formula_text, value, looks.figure(looks.HOURS))
