"""Doing it yourself against hiring it out, and the ways against each other, for the terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from decimal import Decimal

from estimator.outputs.compare_ways import counted_findings
from estimator.outputs.text_job import caution_lines, money, title_lines, ways_lines
from estimator.outputs.text_layout import COLUMNS, counted, heading, number, printable, wrapped
from estimator.pricing.compare import compare
from estimator.pricing.compare_hire import THIS_BID
from estimator.pricing.compare_parts import NOTHING
from estimator.pricing.compare_records import Against, CompareColumn, Comparison, CostLine
from estimator.pricing.records import Bid, RouteOption
from estimator.tables.own_or_hire import matters

AMOUNT = 15
"""Characters of a column of amounts."""
NAME = COLUMNS - 1 - 2 * AMOUNT
STOP = "Doing it yourself is not offered for this job. Its figures are withheld. Why:"
UNKNOWN = "unknown"
BETTER = {
    "own": "Doing it yourself costs {by} less than {hire}, all in.",
    "hire": "Hiring ({hire}) costs {by} less than doing it yourself, all in.",
    "same": "Doing it yourself and hiring ({hire}) cost the same, all in.",
    "unknown": "{hire}: the quote is not known, so nothing is set against it.",
}
CASH_AND_ALL_IN = (
    "Cash is what is paid out. All in counts your time, takes off what stays yours of a tool, and "
    "weighs what a mistake may cost by its chance."
)
AS_FAR_AS_KNOWN = "What is left out above is not in this."
DECIDES_NOTHING = "These have no figure. They may decide all the same."


def compare_text(bid: Bid) -> list[str]:
    """Rank the ways, then set doing it yourself against each hire bid."""
    made = compare(bid)
    return [
        *title_lines(bid),
        *ways_lines(bid, _way),
        *heading("Do it yourself, or hire"),
        *_stops(made),
        *_columns(bid, made),
        *_against(bid, made),
        *_unstated(bid, made),
        *_listed("Not stated in the job, so assumed", made.assumed),
        *_matters(bid),
        *caution_lines(),
    ]


def _way(bid: Bid, option: RouteOption) -> list[str]:
    chosen = " (this bid)" if option.chosen else ""
    made_of = (
        f"{option.route}{chosen}: {money(bid, option.cost)} labor and materials, "
        f"{money(bid, option.total)} in all; {number(option.hours, 2)} h, {option.order_text}, "
        f"{counted(option.members, 'member')}, {counted(option.openings, 'opening')}; findings: "
        f"{counted_findings(option.findings, option.blocked_by)}"
    )
    indent = " " * len("10. ")
    return [
        *wrapped(made_of, first=f"{option.rank:>2}. "),
        *wrapped(f"Why: {option.why}.", first=indent),
    ]


def _stops(made: Comparison) -> list[str]:
    if not made.stops:
        return []
    why = [line for each in made.stops for line in wrapped(each, first="- ", rest="  ")]
    return [*wrapped(STOP), *why, ""]


def _columns(bid: Bid, made: Comparison) -> Iterator[str]:
    """Each column with its lines and sums."""
    yield f"{'':<{NAME}}{'Cash':>{AMOUNT}}{'All in':>{AMOUNT}}"
    own = (made.own_column,) if made.own_column is not None else ()
    for column in (*own, *made.hires):
        yield from wrapped(_title(column))
        for line in column.lines:
            yield from _cost(bid, f"  {_named(line, column)}", line)
        yield from _line(bid, "  Together", column.cash, column.all_in)
        if column.left_out:
            yield from wrapped(f"Left out, not known: {', '.join(column.left_out)}.", first="  ")
        if column.notes:
            yield from wrapped(f"Note: {column.notes}", first="  ")
    yield ""
    yield from wrapped(CASH_AND_ALL_IN)


def _title(column: CompareColumn) -> str:
    return column.name if column.kind == "own" else f"Hire: {_called(column)}"


def _called(column: CompareColumn) -> str:
    """The name of a bid, inside a sentence."""
    return THIS_BID.lower() if column.kind == "this bid" else column.name


def _named(line: CostLine, column: CompareColumn) -> str:
    if line.kind == "time":
        return f"{line.name}, {number(column.hours, 2)} h"
    return line.name


def _cost(bid: Bid, name: str, line: CostLine) -> list[str]:
    """What a line costs; of a part that this job has none of, that it has none."""
    if line.how == NOTHING:
        return _with_words(name, (f"{NOTHING:>{2 * AMOUNT}}",))
    return _line(bid, name, line.cash, line.all_in)


def _line(bid: Bid, name: str, *amounts: Decimal | None) -> list[str]:
    """A name and its amounts; a long name takes lines of its own before them."""
    shown = [UNKNOWN if amount is None else money(bid, amount) for amount in amounts]
    return _with_words(name, shown)


def _with_words(name: str, amounts: Iterable[str]) -> list[str]:
    shown = "".join(f"{amount:>{AMOUNT}}" for amount in amounts)
    indent = name[: len(name) - len(name.lstrip())]
    *before, last = _fitted(printable(name), indent)  # printable() takes the indent off
    return [*before, f"{last:<{NAME}}{shown}"]


def _fitted(text: str, indent: str) -> list[str]:
    lines = []
    while len(indent + text) > NAME - 1:
        room = NAME - 1 - len(indent)
        cut = text.rfind(" ", 0, room)
        cut = cut if cut > 0 else room
        lines.append(indent + text[:cut])
        text = text[cut:].lstrip()
        indent = f"{indent[:2]}  "
    return [*lines, indent + text]


def _against(bid: Bid, made: Comparison) -> Iterator[str]:
    """What is better by how much, and at what worth of an hour that turns round."""
    hires = made.hires if made.own_column is not None else ()
    for against, hire in zip(made.against, hires, strict=True):
        by = "" if against.by is None else money(bid, against.by)
        yield ""
        said = BETTER[against.better].format(by=by, hire=_called(hire))
        own_left_out = made.own_column.left_out if made.own_column is not None else ()
        known = "" if not (own_left_out or hire.left_out) else f" {AS_FAR_AS_KNOWN}"
        yield from wrapped(f"{said}{known}")
        if against.better != "unknown":
            yield from _break_even(bid, made, against, hire)


def _break_even(bid: Bid, made: Comparison, against: Against, hire: CompareColumn) -> Iterator[str]:
    own = made.own_column
    if against.break_even is None:
        yield from wrapped(f"There is no break-even: {against.words}.")
    elif own is not None:
        zero = Decimal(0)
        worth = money(bid, against.break_even)
        sums = f"{money(bid, hire.before_time or zero)} - {money(bid, own.before_time or zero)}"
        hours = f"{number(own.hours, 2)} h - {number(hire.hours, 2)} h"
        yield from wrapped(f"Break-even: an hour of yours worth {worth}; {against.words}.")
        yield from wrapped(f"= ({sums}, before time) / ({hours})", first="  ")
    yield from _break_even_range(bid, made, against)


def _break_even_range(bid: Bid, made: Comparison, against: Against) -> Iterator[str]:
    """The same at the most and the least of hours, where these differ."""
    own = made.own
    if own is None or own.hours_low.value == own.hours_high.value:
        return
    ends = (
        (own.hours_low, against.break_even_high),
        (own.hours_high, against.break_even_low),
    )
    said = (
        f"{'none' if worth is None else money(bid, worth)} if it takes you "
        f"{number(hours.value or Decimal(0), 2)} h"
        for hours, worth in ends
    )
    yield from wrapped(f"The hours are uncertain: {', '.join(said)}.", first="  ")


def _unstated(bid: Bid, made: Comparison) -> list[str]:
    """What bids do not speak of: ask, and what it would cost."""
    asked = []
    for hire in made.hires:
        for part in hire.unstated:
            if part.amount is None:
                asked.append(f"{hire.name}: {part.part}; what it costs if not in it is not known.")
                continue
            cost = money(bid, part.amount)
            asked.append(f"{hire.name}: {part.part}, about {cost} if not in it ({part.how}).")
    return _listed("Not said in a bid: ask", asked)


def _listed(title: str, lines: tuple[str, ...] | list[str]) -> list[str]:
    if not lines:
        return []
    said = [line for each in lines for line in wrapped(each, first="- ", rest="  ")]
    return [*heading(title), *said]


def _matters(bid: Bid) -> Iterator[str]:
    """What money does not show, both sides, and where it is from."""
    yield from heading("What money does not show")
    yield from wrapped(DECIDES_NOTHING)
    for each in matters(bid.survey.job.country):
        yield from wrapped(each.topic)
        yield from wrapped(f"Yourself: {each.own} [{each.cite}]", first="  ", rest="    ")
        yield from wrapped(f"Hiring: {each.hire}", first="  ", rest="    ")
