"""The Compare sheet: ways against each other, then doing it yourself against hiring it out."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import (
    Cell,
    Row,
    Sheet,
    formula,
    line_number,
    middle,
    words,
)
from estimator.outputs.charts import Bars, Picture
from estimator.outputs.compare_columns import (
    Sums,
    write_hire,
    write_own,
    write_tools,
    write_unstated,
)
from estimator.outputs.compare_inputs import write_inputs
from estimator.outputs.compare_ways import write_ways
from estimator.outputs.draft import UNKNOWN, Draft
from estimator.pricing.compare import (
    BELOW_OWN,
    HIRE_ALWAYS,
    OWN_ALWAYS,
    SAME_ALWAYS,
    compare,
)
from estimator.pricing.compare_records import Against, Comparison
from estimator.tables.own_or_hire import matters

NAME = "Compare"
WIDTHS = "6 30 13 13 42 22 13 10 10 10 10 11"
STOP_HEADERS = ("Line", "Doing it yourself", "Cash", "All in", "Why it is not offered")
SIDE_HEADERS = (
    "Line", "Who does it", "Cash", "All in", "Doing it yourself against it", "Which side of it",
    "Your hours", "Less by", "Same cost at an hour worth", "If it takes you longest",
    "If it takes you least",
)  # fmt: skip
MATTER_HEADERS = ("Line", "Matter", "Side", "Known from", "What to weigh", "Source")
STOP = "Doing it yourself is not offered for this job. Its figures are withheld."
SIDE_NOTE = (
    "Same cost at: (hire - doing it yourself, both before any time) / (your hours - your hours if "
    "you hire). It shows which side time is on; it decides nothing that money does not show."
)
BETTER = {
    "own": "costs less, all in", "hire": "costs more, all in", "same": "costs the same, all in",
    "unknown": "the quote is not known",
}  # fmt: skip
BELOW_OWN_CELL = "an hour worth less: do it yourself"
BELOW_HIRE_CELL = "an hour worth less: hire"
NONE = "none"
TO_ASK = "to ask"
_MONEY = looks.figure(looks.MONEY)
_HOURS = looks.figure(looks.HOURS)
_ZERO = Decimal(0)
_CHART_ROWS, _CHART_CM = 18, (8, 24)


def write_compare(draft: Draft) -> Sheet:
    """Write the sheet; where doing it yourself is not offered, the hire side alone."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Compare: one way against another, and doing it yourself")
    write_ways(draft, sheet)
    made = compare(draft.bid)
    sheet.section("Hiring, or doing it yourself")
    if made.stops:
        _write_stops(sheet, made)
    write_inputs(draft, sheet, made)
    sums = _write_columns(draft, sheet, made)
    _write_sides(draft, sheet, made, sums)
    write_unstated(draft, sheet, made.hires)
    _write_assumed(sheet, made)
    sheet.section("What money does not show")
    sheet.table("Own_or_hire", MATTER_HEADERS, _matters(draft))
    return sheet


def _write_stops(sheet: Sheet, made: Comparison) -> None:
    """Say plainly that doing it yourself is not offered, and why."""
    sheet.put([None, words(STOP, looks.SECTION)])
    rows = (
        [
            line_number(at), words("not offered", looks.STRONG), middle("withheld"),
            middle("withheld"), words(why, looks.STRONG),
        ]
        for at, why in enumerate(made.stops, start=1)
    )  # fmt: skip
    sheet.table("Stops", STOP_HEADERS, rows)
    sheet.skip()


def _write_columns(draft: Draft, sheet: Sheet, made: Comparison) -> list[Sums]:
    """Write all columns; gives the cells of their sums, doing it yourself first."""
    sums = []
    if made.own_column is not None:
        sheet.section("Doing it yourself")
        tools = write_tools(draft, sheet)
        sums.append(write_own(draft, sheet, made.own_column, tools))
    for at, hire in enumerate(made.hires, start=1):
        sheet.section(f"Hiring: {hire.name}")
        sums.append(write_hire(draft, sheet, at, hire))
        if hire.notes:
            sheet.note(f"Note: {hire.notes}")
    return sums


def _write_sides(draft: Draft, sheet: Sheet, made: Comparison, sums: list[Sums]) -> None:
    """Write the columns side by side, with the break-even hour, and the chart of them."""
    sheet.section("Side by side")
    table = sheet.table("Side_by_side", SIDE_HEADERS, _sides(draft, sheet, made, sums))
    sheet.note(SIDE_NOTE)
    columns = [*([made.own_column] if made.own_column else []), *made.hires]
    sheet.begin_block()
    sheet.skip()
    first, last = table.first_row + 1, table.last_row
    bars = (
        Bars("Cash", sheet.span("C", first, last), tuple(each.cash or _ZERO for each in columns)),
        Bars(
            "All in", sheet.span("D", first, last), tuple(each.all_in or _ZERO for each in columns)
        ),
    )
    labels = (sheet.span("B", first, last), tuple(each.name for each in columns))
    title, form, row = "Cash, and all in", draft.formats.money, sheet.next_row
    sheet.picture = Picture(title, labels, bars, form, _CHART_CM, row)
    sheet.skip(_CHART_ROWS)


def _sides(draft: Draft, sheet: Sheet, made: Comparison, sums: list[Sums]) -> Iterator[Row]:
    hires = sums
    own_row = 0
    at = 1
    if made.own_column is not None:
        own_row, hires = sheet.next_row, sums[1:]
        own = made.own_column
        yield [
            line_number(at), words(own.name), *_sum_cells(sums[0], (own.cash, own.all_in)),
            *[words("")] * 2, formula("own_hours", own.hours, _HOURS), *[words("")] * 4,
        ]  # fmt: skip
        at += 1
    for index, (hire, sum_of) in enumerate(zip(made.hires, hires, strict=True)):
        hours = formula(f"hire_hours_{index + 1}", hire.hours, _HOURS)
        amounts = _sum_cells(sum_of, (hire.cash, hire.all_in))
        rest: list[Cell | None] = [words("")] * 6
        if own_row:
            against = _Side(draft, sheet.next_row, own_row, sums[0].time, sum_of.time)
            rest = against.cells(made.against[index])
        yield [line_number(at + index), words(hire.name), *amounts, *rest[:2], hours, *rest[2:]]


def _sum_cells(sums: Sums, values: tuple[Decimal | None, Decimal | None]) -> list[Cell]:
    return [
        formula(cell, UNKNOWN if value is None else value, _MONEY)
        for cell, value in zip((sums.cash, sums.all_in), values, strict=True)
    ]


class _Side:
    """Formulas of one hire bid against doing it yourself, in one row of the table."""

    def __init__(self, draft: Draft, row: int, own_row: int, own_time: str, time: str) -> None:
        self._draft = draft
        self._unknown = f'D{row}="{UNKNOWN}"'
        self._by = f"(D{row}-D{own_row})"
        self._gap = f"(D{row}-{time}-D{own_row}+{own_time})"
        self._hours = f"G{row}"

    def cells(self, against: Against) -> list[Cell | None]:
        """What is better, which side of the hour, by how much, and the three hours."""
        own, hire, same = BETTER["own"], BETTER["hire"], BETTER["same"]
        better = f'IF({self._by}>0,"{own}",IF({self._by}<0,"{hire}","{same}"))'
        less = f"MAX({self._by},0-{self._by})"
        ends = (
            ("own_hours", against.break_even),
            ("MAX(own_hours_low,own_hours_high)", against.break_even_low),
            ("MIN(own_hours_low,own_hours_high)", against.break_even_high),
        )
        return [
            formula(self._or(better, BETTER["unknown"]), BETTER[against.better], looks.TEXT),
            formula(self._or(self._side(), UNKNOWN), _side_words(against), looks.TEXT),
            formula(self._or(less, UNKNOWN), _or_word(against.by, UNKNOWN), _MONEY),
            *(self._hour(hours, value, against) for hours, value in ends),
        ]

    def _or(self, text: str, word: str) -> str:
        return f'IF({self._unknown},"{word}",{text})'

    def _hour(self, hours: str, value: Decimal | None, against: Against) -> Cell:
        """The worth of an hour at which both cost the same, or that there is none."""
        more = f"({hours}-{self._hours})"
        ratio = self._draft.round_to(f"{self._gap}/{more}")
        text = f'IF({more}=0,"{NONE}",IF({self._gap}/{more}<0,"{NONE}",{ratio}))'
        word = UNKNOWN if against.better == "unknown" else NONE
        return formula(self._or(text, UNKNOWN), _or_word(value, word), _MONEY)

    def _side(self) -> str:
        """Which of the two costs less where an hour is worth less, or always."""
        gap, more = self._gap, f"(own_hours-{self._hours})"
        always = f'IF({gap}>0,"{OWN_ALWAYS}",IF({gap}<0,"{HIRE_ALWAYS}","{SAME_ALWAYS}"))'
        below = f'IF({more}>0,"{BELOW_OWN_CELL}","{BELOW_HIRE_CELL}")'
        return f"IF({more}=0,{always},IF({gap}/{more}<0,{always},{below}))"


def _side_words(against: Against) -> str:
    if against.better == "unknown":
        return UNKNOWN
    if against.break_even is None:
        return against.words
    return BELOW_OWN_CELL if against.words == BELOW_OWN else BELOW_HIRE_CELL


def _or_word(value: Decimal | None, word: str) -> Decimal | str:
    return word if value is None else value


def _write_assumed(sheet: Sheet, made: Comparison) -> None:
    if made.assumed:
        sheet.section("What was assumed, the job not saying it")
        for each in made.assumed:
            sheet.note(each)


def _matters(draft: Draft) -> Iterator[Row]:
    """Two rows a matter: what was read or is known of it, and what to ask of a firm."""
    sides = (
        side
        for each in matters(draft.bid.survey.job.country)
        for side in (
            (each.topic, "yourself", each.known_from, each.own, each.cite),
            (each.topic, "hiring", TO_ASK, each.hire, ""),
        )
    )
    for at, side in enumerate(sides, start=1):
        yield [line_number(at), *map(words, side)]
