"""What the customer's page says in words: the work with its counts, and what goes with it."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.drawing.kind_words import room_called
from estimator.guide.title_words import scope_of
from estimator.outputs.calendar_words import days_line, visit_words
from estimator.pricing.calendar import plan_calendar
from estimator.pricing.records import Bid
from estimator.saying import capital, listed, said, several, word
from estimator.survey.electrical import Box
from estimator.takeoff.records import Assumption

DEVICES = {
    "receptacle": ("receptacle", "receptacles"),
    "gfci receptacle": ("receptacle with ground-fault protection",
                        "receptacles with ground-fault protection"),
    "afci receptacle": ("receptacle with arc-fault protection",
                        "receptacles with arc-fault protection"),
    "damp receptacle": ("receptacle for a damp place", "receptacles for a damp place"),
    "wet receptacle": ("receptacle for a wet place", "receptacles for a wet place"),
    "damp gfci receptacle": ("receptacle with ground-fault protection for a damp place",
                             "receptacles with ground-fault protection for a damp place"),
    "wet gfci receptacle": ("receptacle with ground-fault protection for a wet place",
                            "receptacles with ground-fault protection for a wet place"),
    "switch": ("switch", "switches"),
    "three-way switch": ("three-way switch", "three-way switches"),
    "luminaire": ("light", "lights"),
    "none": ("box with a blank cover", "boxes with blank covers"),
}  # fmt: skip
SOCKETS = {
    "receptacle": ("socket", "sockets"),
    "gfci receptacle": ("socket with its own protection", "sockets with their own protection"),
    "afci receptacle": ("socket with its own protection", "sockets with their own protection"),
    "damp receptacle": ("socket for a damp place", "sockets for a damp place"),
    "wet receptacle": ("socket for a wet place", "sockets for a wet place"),
    "three-way switch": ("two-way switch", "two-way switches"),
}
_NORTH_AMERICA = ("US", "CA", "MX")
_FINISH = {
    "none": said("left open for others to close"),
    "closed": said("closed, not taped"),
    "taped": said("closed, taped and smoothed, ready to paint"),
    "painted": said("closed, taped, smoothed and painted"),
}
_PAINT = {
    "wall": said("Painting: the whole wall, corner to corner."),
    "spot": said("Painting: only the patches."),
    "none": said("Painting: no paint."),
}
CAUTIONS = said(
    "The power is turned off and proved dead before anything is opened. Local code and licensed "
    "practice decide. Old paint may hold lead, old compound and plaster asbestos, and pipes or "
    "cables may run hidden in walls: work stops if any of these is met."
)


def scope_lines(bid: Bid) -> Iterator[str]:
    """The work in plain words, with counts."""
    if bid.survey.job.scope:
        yield scope_of(bid.survey)
    yield from _new_boxes(bid)
    for box in bid.takeoff.boxes:
        if box.replaced:
            yield said(
                "The existing box {box} is too small and is replaced by a larger one.",
                box=box.box_id,
            )
    yield from _cable(bid)
    yield from _closing(bid)


def _new_boxes(bid: Bid) -> Iterator[str]:
    """How many new devices of each kind, and where."""
    counted = {box.box_id for box in bid.takeoff.boxes if not box.existing}
    kinds: dict[str, list[Box]] = {}
    for box in bid.survey.boxes:
        if box.id in counted:
            kinds.setdefault(box.device, []).append(box)
    for device, boxes in kinds.items():
        places = listed(_place(bid, box) for box in boxes)
        called = _called(bid, device, len(boxes))
        yield said(
            "{count} new {devices}: {places}.", count=len(boxes), devices=called, places=places
        )


def device_called(device: str) -> str:
    """One device of a kind, in words."""
    return word(DEVICES.get(device, (device, device))[0])


def _called(bid: Bid, device: str, count: int) -> str:
    """Name a device as people of the country do."""
    local = DEVICES if bid.survey.job.country in _NORTH_AMERICA else DEVICES | SOCKETS
    one, more = local.get(device, (device, device))
    return word(one if count == 1 else more)


def _place(bid: Bid, box: Box) -> str:
    """Say which box, and in which room."""
    wall = next((wall for wall in bid.survey.walls if wall.id == box.wall), None)
    room = box.room or (wall.room if wall else "")
    return said("{box} ({room})", box=box.id, room=room_called(room)) if room else box.id


def device_there(bid: Bid, device: str) -> str:
    """One device of a kind, as people of the job's country call it."""
    return _called(bid, device, 1)


def _cable(bid: Bid) -> Iterator[str]:
    runs = bid.takeoff.runs
    sources = dict.fromkeys(box.box_id for box in bid.takeoff.boxes if box.role == "source")
    if runs:
        if not sources:
            yield several(len(runs), "New cable in {count} run.", "New cable in {count} runs.")
            return
        yield several(
            len(runs),
            "New cable in {count} run, fed from the existing box {boxes}.",
            "New cable in {count} runs, fed from the existing box {boxes}.",
            boxes=listed(sources, said(" and ")),
        )


def _closing(bid: Bid) -> Iterator[str]:
    """What is opened and how far it is brought back."""
    finish, openings = bid.survey.finish, bid.takeoff.closing.openings
    if not openings:
        yield said("No openings in walls or ceilings besides those for the boxes.")
        return
    finished = finish.scope in ("taped", "painted")
    hidden = openings - bid.takeoff.closing.visible_openings if finished else 0
    if openings > hidden:
        unpainted = finish.scope == "painted" and not bid.takeoff.closing.paint_in2
        back = _FINISH["taped"] if unpainted else _FINISH[finish.scope]
        yield several(
            openings - hidden,
            "{count} opening in walls or ceilings, {finish}.",
            "{count} openings in walls or ceilings, {finish}.",
            finish=back,
        )
    if hidden:
        yield several(
            hidden,
            "{count} opening out of sight, closed and not finished.",
            "{count} openings out of sight, closed and not finished.",
        )
    if finish.scope == "painted" and bid.takeoff.closing.paint_in2:
        yield _PAINT[finish.paint]


def visit_lines(bid: Bid) -> Iterator[tuple[str, str]]:
    """Each visit by number, what is done, and the wait after it; then the days of them all."""
    calendar = plan_calendar(bid)
    for visit in calendar.visits:
        yield said("Visit {number}", number=visit.number), visit_words(visit)
    yield said("Time"), days_line(calendar, bid.survey.job.locale, bid.books.language)


def assumption_said(each: Assumption) -> str:
    """One assumption as a sentence; the second total is named where it has it."""
    about, taken = capital(each.about), each.taken
    if each.in_second_total:
        return said("{about}: {taken} (if not: second total).", about=about, taken=taken)
    if taken.endswith("."):
        return said("{about}: {taken}", about=about, taken=taken)
    return said("{about}: {taken}.", about=about, taken=taken)
