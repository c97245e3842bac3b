"""What a crew reads before all else, and tests when all is done."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart
from estimator.pricing.records import Bid
from estimator.rules.safety_list import safety_list
from estimator.saying import listed, said, word
from estimator.survey.electrical import Box

AFTER = "After the work"
"""The heading of the safety list under which its tests stand."""
_NONE = said("none")


def cautions(bid: Bid) -> CrewPart:
    """Turn off, prove dead, and what to look out for in the order of the work."""
    first = CrewGroup(said("This job"), tuple(_ticks(_this_job(bid))))
    _, *listed_groups = safety_list(bid.survey, bid.findings)
    groups = (
        CrewGroup(word(title), tuple(_ticks(texts)))
        for title, texts in listed_groups
        if title != AFTER
    )
    return CrewPart("cautions", said("First: cautions"), (first, *groups))


def tests(bid: Bid) -> CrewPart:
    """What is tested when the work is done."""
    new = _names(box for box in _touched(bid) if not box.existing)
    lines: list[str] = [said("Test after the work: {boxes}.", boxes=new)]
    for title, texts in safety_list(bid.survey, bid.findings):
        if title == AFTER:
            lines += texts
    return CrewPart("tests", said("Last: tests"), (CrewGroup("", tuple(_ticks(lines))),))


def _ticks(texts: Iterable[str]) -> Iterator[CrewLine]:
    return (CrewLine(text, tick=True) for text in texts)


def _this_job(bid: Bid) -> Iterator[str]:
    """The breaker to turn off, and the boxes to prove dead."""
    amps, serves = bid.survey.circuit.breaker_a, listed(bid.survey.circuit.serves)
    if amps is None and not serves:
        yield said("Turn off the breaker. Nobody read its rating.")
    elif amps is None:
        yield said("Turn off the breaker of: {serves}. Nobody read its rating.", serves=serves)
    elif not serves:
        yield said("Turn off the breaker: {amps} A.", amps=amps)
    else:
        yield said("Turn off the breaker: {amps} A, {serves}.", amps=amps, serves=serves)
    old = _names(box for box in _touched(bid) if box.existing)
    yield said("Open and prove dead: {boxes}.", boxes=old)
    yield said(
        "Stop and call the office if you meet pipes, other cables, old flaking paint, crumbling "
        "old compound, or anything that is not as this sheet has it."
    )


def _touched(bid: Bid) -> list[Box]:
    """The boxes that cable of this job goes to or from."""
    names = {name for run in bid.survey.runs for name in (run.from_box, run.to_box)}
    return [box for box in bid.survey.boxes if box.id in names]


def _names(boxes: Iterator[Box]) -> str:
    return listed(box.id for box in boxes) or _NONE
