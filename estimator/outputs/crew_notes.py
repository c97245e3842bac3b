"""What the crew looks at first as nobody measured it, and what it writes down for the office."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart, CrewRow
from estimator.outputs.finding_words import included
from estimator.pricing.records import Bid
from estimator.saying import capital, said, word
from estimator.takeoff.records import Assumption

_HOURS = (said("Date"), said("Who"), said("Phase"), said("How much was done"), said("Hours"))
_STOCK = (said("Date"), said("What"), said("Taken or put back"), said("Quantity"), said("Unit"))
_BLANK_LINES, _FREE_ROWS, _STOCK_ROWS = 3, 2, 4
_PHASE = 2
_TAKEN_IN_PRICE = ("", "paint")
"""Facts for which what was taken speaks of the price, which is no matter of the crew's."""


def look_first(bid: Bid) -> CrewPart:
    """Facts that nobody measured, each with what was taken for it and room for what is found."""
    open_facts = [each for each in bid.takeoff.assumptions if not each.decided]
    lines = [CrewLine(_fact(each), write=True) for each in open_facts]
    lines = lines or [CrewLine(said("Nothing: all that the job hangs on was measured."))]
    title = said("Look at this first: nobody measured it")
    return CrewPart("look-first", title, (CrewGroup("", tuple(lines)),))


def _fact(each: Assumption) -> str:
    """One fact, with what was taken for it where that is about the work."""
    about = capital(each.about)
    if each.fact in _TAKEN_IN_PRICE:
        return said("{about}.", about=about)
    return said("{about}. Taken: {taken}.", about=about, taken=each.taken)


def put_right(bid: Bid) -> Iterator[CrewPart]:
    """What the checks found and this job puts right; no part where there is nothing."""
    lines = tuple(CrewLine(text, tick=True) for text in included(bid))
    if lines:
        yield CrewPart("put-right", said("Put right on this job"), (CrewGroup("", lines),))


def notes(bid: Bid) -> CrewPart:
    """Lines and tables to write in; the columns are fields of the close-out file."""
    blank = tuple(CrewLine("", write=True) for _ in range(_BLANK_LINES))
    phases = dict.fromkeys(line.phase for line in bid.labor)
    rows = (*map(word, phases), *[""] * _FREE_ROWS)
    return CrewPart(
        "notes",
        said("Write down for the office"),
        (
            CrewGroup(said("What was found, or is not as this sheet has it"), blank),
            CrewGroup(said("Hours of each person"), headers=_HOURS, rows=tuple(map(_hours, rows))),
            CrewGroup(
                said("Material taken from the truck, or put back"),
                headers=_STOCK,
                rows=(CrewRow(("",) * len(_STOCK)),) * _STOCK_ROWS,
            ),
        ),
    )


def _hours(phase: str) -> CrewRow:
    """A row to write in, with its phase where one is given."""
    return CrewRow(tuple(phase if at == _PHASE else "" for at in range(len(_HOURS))))
