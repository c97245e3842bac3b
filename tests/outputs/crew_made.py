"""Crew sheets to look at: lines by part, and languages made up for tests."""

from __future__ import annotations

from dataclasses import dataclass

from estimator.language import ENGLISH, Language
from estimator.outputs.crew_records import CrewLine, CrewSheet
from estimator.outputs.crew_sheet import crew_sheets
from estimator.pricing.records import Bid


@dataclass(frozen=True, slots=True)
class Turned(Language):
    """Says all words but the last the other way round, as another grammar would."""

    def sentence(self, english: str, plural: str, count: int | None) -> str:
        chosen = plural if plural and count != 1 else english
        *words, last = chosen.split(" ")
        return " ".join([*reversed(words), last])

    def word(self, english: str) -> str:
        return f"({self.code}) {english}"


SPANISH_MADE_UP = Turned("es")
BOTH = (ENGLISH, SPANISH_MADE_UP)


def english(bid: Bid) -> CrewSheet:
    return crew_sheets(bid, (ENGLISH,))[0]


def lines_of(sheet: CrewSheet) -> list[CrewLine]:
    return [line for part in sheet.parts for group in part.groups for line in group.lines]


def texts_of(sheet: CrewSheet) -> list[str]:
    """Every text on the sheet, top to bottom."""
    found = [sheet.title, *sheet.head]
    for part in sheet.parts:
        found.append(part.title)
        for group in part.groups:
            found += [group.title, *(line.text for line in group.lines), *group.headers]
            found += [cell for row in group.rows for cell in row.cells]
    return found


def part_texts(sheet: CrewSheet, key: str) -> list[str]:
    (part,) = (each for each in sheet.parts if each.key == key)
    return [line.text for group in part.groups for line in group.lines]
