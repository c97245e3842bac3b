"""Each box for the crew: what it is, where it goes, what feeds it, what becomes of it."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.drawing.kind_words import room_called
from estimator.measures import show_length
from estimator.outputs.bid_words import device_there
from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart
from estimator.pricing.records import Bid
from estimator.saying import capital, listed, said, word
from estimator.survey.electrical import Box
from estimator.takeoff.records import BoxCount

_EXTENDER = "fit-box-extender"


def boxes(bid: Bid) -> CrewPart:
    """One line for each box that the work touches."""
    known = {box.id: box for box in bid.survey.boxes}
    lines = tuple(
        CrewLine(
            listed(_sentences(bid, known[count.box_id], count), " "),
            f"box:{count.box_id}",
            tick=True,
        )
        for count in bid.takeoff.boxes
    )
    return CrewPart("boxes", said("Boxes"), (CrewGroup("", lines),))


def _sentences(bid: Bid, box: Box, count: BoxCount) -> Iterator[str]:
    yield _what(bid, box, count)
    yield said("Place: {places}.", places=listed(places(bid, box)))
    yield from _cable(bid, box)
    yield from _inside(count)


def _what(bid: Bid, box: Box, count: BoxCount) -> str:
    """The device, the box, and whether that stays, is replaced or gets an extender."""
    device, kind = word(device_there(bid, box.device)), _kind(bid, count)
    if not box.existing:
        return said("Box {box} (new): {device}, in: {kind}.", box=box.id, device=device, kind=kind)
    if count.replaced:
        return said(
            "Box {box} (there now): {device}. Take the old box out and fit: {kind}.",
            box=box.id,
            device=device,
            kind=kind,
        )
    for task in bid.takeoff.tasks:
        if task.task == _EXTENDER and task.where in (box.id, f"box {box.id}"):
            return said(
                "Box {box} (there now): {device}. The box stays and gets an extender.",
                box=box.id,
                device=device,
            )
    return said("Box {box} (there now): {device}. The box stays.", box=box.id, device=device)


def _kind(bid: Bid, count: BoxCount) -> str:
    """What the takeoff calls the box that is fitted."""
    for part in bid.takeoff.parts:
        if part.item == count.item and part.group == "boxes":
            return word(part.description)
    rows = bid.books.materials.get(count.item, ())
    return word(rows[0].description) if rows else said("a box that is large enough")


def places(bid: Bid, box: Box) -> Iterator[str]:
    """Room, wall, from the left end, height: as far as they were measured."""
    wall = next((wall for wall in bid.survey.walls if wall.id == box.wall), None)
    room, units = box.room or (wall.room if wall else ""), bid.survey.job.units
    if room:
        yield said("room {room}", room=room_called(room))
    if box.wall:
        yield said("wall {wall}", wall=box.wall)
    if box.mount == "ceiling":
        yield said("on the ceiling")
    if box.x_in is not None:
        yield said("{length} from the left end of the wall", length=show_length(box.x_in, units))
    if box.height_in is not None:
        high = show_length(box.height_in, units)
        yield said("middle of the box {length} above the floor", length=high)
    if box.out_in is not None:
        yield said("{length} out from the wall", length=show_length(box.out_in, units))
    if box.x_in is None and not box.existing:
        yield said("not measured: mark it with the customer")
    elif not room and not box.wall and box.x_in is None:
        yield said("not measured")


def _cable(bid: Bid, box: Box) -> Iterator[str]:
    """What feeds the box, and what it feeds."""
    for run in bid.survey.runs:
        if run.to_box == box.id:
            yield said("Fed from box {box} by run {run}.", box=run.from_box, run=run.id)
    for run in bid.survey.runs:
        if run.from_box == box.id:
            yield said("Feeds box {box} by run {run}.", box=run.to_box, run=run.id)


def _inside(count: BoxCount) -> Iterator[str]:
    """Pigtails and joints."""
    if count.pigtails:
        yield said("{part}: {count}.", part=capital(word("pigtail")), count=count.pigtails)
    if count.joints:
        wires = ", ".join(map(str, count.joints))
        yield said("Wires under each {part}: {wires}.", part=word("wire connector"), wires=wires)
