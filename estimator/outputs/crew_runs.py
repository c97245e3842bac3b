"""Each run of cable for the crew: its cut, its way leg by leg, what is bored and fitted."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.measures import show_length
from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart
from estimator.pricing.records import Bid
from estimator.route.paths import run_paths
from estimator.route.records import PathLeg, RunPath
from estimator.saying import listed, said, several, word
from estimator.takeoff.records import CableCut, RunCount

_GOES = {
    "up": said("up"),
    "down": said("down"),
    "along": said("along"),
    "across": said("across"),
    "through": said("through"),
}
_HOW = {
    "bored": said("through bored holes"),
    "notched": said("in notches"),
    "fished": said("fished"),
    "exposed": said("in the open"),
}
_WAYS = {
    "trim": said("behind the trim"),
    "wall": said("in the wall"),
    "over": said("over the ceiling"),
    "under": said("under the floor"),
    "through": said("straight through the wall"),
    "typed": said("as listed"),
}


def runs(bid: Bid) -> CrewPart:
    """One line for each run of cable."""
    counts = {count.run_id: count for count in bid.takeoff.runs}
    cuts = {cut.run_id: (order.kind, cut) for order in bid.takeoff.cable for cut in order.cuts}
    lines = []
    for path in run_paths(bid.survey):
        kind, cut = cuts[path.run.id]
        count = counts[path.run.id]
        sentences = (_what(bid, kind, cut, count), _legs(bid, path), *_wood(bid, path, count))
        lines.append(CrewLine(listed(sentences, " "), f"run:{path.run.id}", tick=True))
    return CrewPart("runs", said("Cable runs"), (CrewGroup("", tuple(lines)),))


def _what(bid: Bid, kind: str, cut: CableCut, count: RunCount) -> str:
    return said(
        "Run {run}: {cable} cable from box {start} to box {end}, {way}. Cut {cut}.",
        run=cut.run_id,
        cable=kind,
        start=cut.from_box,
        end=cut.to_box,
        way=_WAYS[count.way],
        cut=show_length(cut.cut_in, bid.survey.job.units),
    )


def _legs(bid: Bid, path: RunPath) -> str:
    """The way in order, from the feeding box on."""
    whole = show_length(path.path_in, bid.survey.job.units)
    legs = listed(_leg(bid, leg) for leg in path.legs)
    return said("In order: {legs}; {length} from box to box.", legs=legs, length=whole)


def _leg(bid: Bid, leg: PathLeg) -> str:
    length, how = show_length(leg.length_in, bid.survey.job.units), _HOW[leg.method]
    go = _GOES[leg.go]
    if leg.wall is None:
        return said("{go} {length} ({how})", go=go, length=length, how=how)
    return said("{go} {length} (wall {wall}, {how})", go=go, length=length, wall=leg.wall, how=how)


def _wood(bid: Bid, path: RunPath, count: RunCount) -> Iterator[str]:
    """What the run passes, is bored through and fastened with; nothing of what there is none."""
    passed = _passed(count)
    if passed:
        yield said("Passes: {members}.", members=listed(passed))
    yield from _holes(bid, path, count)
    fitted = (
        (word("protection plate"), count.protection_plates),
        (word("staple"), count.staples),
        (word("sealed hole"), count.sealant),
    )
    parts = [said("{part} x {count}", part=part, count=many) for part, many in fitted if many]
    if parts:
        yield said("Fit: {parts}.", parts=listed(parts))
    if count.assumed:
        yield said("Nobody measured where the studs stand: find them first.")


def _passed(count: RunCount) -> list[str]:
    crossed = (
        (word("stud"), count.studs),
        *((word(kind), many) for kind, many in count.listed),
        (word("corner"), count.corners),
        (word("obstacle"), count.obstacles),
    )
    return [said("{part} x {count}", part=part, count=many) for part, many in crossed if many]


def _holes(bid: Bid, path: RunPath, count: RunCount) -> Iterator[str]:
    size_in = bid.books.shop.practice.hole_in if path.run.hole_in is None else path.run.hole_in
    size = show_length(size_in, bid.survey.job.units)
    if count.bored:
        yield several(
            count.bored,
            "Bore {count} member, hole {size}.",
            "Bore {count} members, hole {size}.",
            size=size,
        )
    if count.notched:
        yield several(count.notched, "Notch {count} member.", "Notch {count} members.")
    if count.plate_holes:
        yield several(
            count.plate_holes,
            "Bore {count} hole through {plates} x {part}.",
            "Bore {count} holes through {plates} x {part}.",
            plates=count.plates_pierced,
            part=word("wall plate"),
        )
    if count.floor_holes:
        yield several(
            count.floor_holes,
            "Bore {count} hole through the floor.",
            "Bore {count} holes through the floor.",
        )
