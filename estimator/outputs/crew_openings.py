"""Each opening for the crew: size, place, what closes it, and the finish."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.drawing.kind_words import opening_called, room_called
from estimator.measures import show_length
from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart
from estimator.pricing.records import Bid
from estimator.saying import capital, listed, said, word
from estimator.takeoff.openings import Hole, holes

_FILLS = {
    "re-set": said("Cut the piece out whole: it goes back."),
    "new board": said("Closed with new {board}.", board=word("drywall")),
    "mesh": said("Closed with a mesh patch."),
    "plaster": said("Closed with {plaster}.", plaster=word("plaster")),
}
_SCOPES = {
    "none": said("Leave the openings open: others close them."),
    "closed": said("Close the openings; no {tape}.", tape=word("joint tape")),
    "taped": said("Close, tape and smooth the openings, ready to paint."),
    "painted": said("Close, tape, smooth and paint the openings."),
}
_PAINTS = {
    "wall": said("Paint the whole wall, corner to corner."),
    "spot": said("Paint only the patches."),
    "none": said("No paint."),
}
_COMPOUNDS = {
    "drying": said("{compound} that dries.", compound=word("Joint compound")),
    "setting": said("{compound} that sets.", compound=word("Joint compound")),
}


def openings(bid: Bid) -> CrewPart:
    """One line for each opening, then the finish."""
    found = [
        CrewLine(listed(_sentences(bid, hole), " "), f"opening:{hole.opening.id}", tick=True)
        for hole in holes(bid.survey)
    ]
    lines = found or [CrewLine(said("None besides those for the boxes."))]
    if found and (finish := listed(_finish(bid), " ")):
        lines.append(CrewLine(finish))
    return CrewPart("openings", said("Openings in the finish"), (CrewGroup("", tuple(lines)),))


def _sentences(bid: Bid, hole: Hole) -> Iterator[str]:
    units = bid.survey.job.units
    wide, high = show_length(hole.width_in, units), show_length(hole.height_in, units)
    name = capital(opening_called(hole.opening.id))
    yield said("{opening}: {width} wide, {height} high.", opening=name, width=wide, height=high)
    yield said("Place: {places}.", places=listed(_places(bid, hole)))
    yield _FILLS[hole.opening.fill]
    if not hole.visible and bid.survey.finish.scope == "none":
        yield said("Out of sight when all is back.")
    elif not hole.visible:
        yield said("Out of sight when all is back: close it, without finish.")


def _places(bid: Bid, hole: Hole) -> Iterator[str]:
    opening, units = hole.opening, bid.survey.job.units
    yield said("room {room}", room=room_called(hole.room))
    if opening.wall:
        yield said("wall {wall}", wall=opening.wall)
    if opening.surface == "ceiling":
        yield said("on the ceiling")
    if opening.left_in is not None:
        left = show_length(opening.left_in, units)
        yield said("left edge {length} from the left end of the wall", length=left)
    if opening.bottom_in is not None:
        bottom = show_length(opening.bottom_in, units)
        yield said("lower edge {length} above the floor", length=bottom)


def _finish(bid: Bid) -> Iterator[str]:
    """How far the walls are brought back, and with what."""
    finish, closing = bid.survey.finish, bid.takeoff.closing
    finished = finish.scope in ("taped", "painted")
    if finished and not closing.visible_openings:
        return
    paints = finish.scope == "painted" and bool(closing.paint_in2)
    yield _SCOPES["taped" if finish.scope == "painted" and not paints else finish.scope]
    if finished:
        yield _COMPOUNDS[finish.compound]
    if paints:
        yield _PAINTS[finish.paint]
